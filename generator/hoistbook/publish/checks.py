"""Looks a finished site over before it may take the place of the old one.

What is looked for here are faults that a theme, or we, can make: a page without a caution that it
owes, a link to nothing, a request to another host.
"""

from __future__ import annotations

import html
import posixpath
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from urllib.parse import unquote, urlsplit

from hoistbook.problems import Problem
from hoistbook.publish.swap import MARK

_TAG = re.compile(r"<([a-z][a-z0-9]*)((?:\s[^<>]*)?)>")
_ATTRIBUTE = re.compile(r'\s([a-zA-Z:_-]+)="([^"]*)"')
_FETCHING = frozenset(("src", "srcset", "poster", "data", "action", "background"))
"""Attributes whose address a browser may ask for without being told to."""
_FETCHING_LINKS = frozenset(
    ("stylesheet", "icon", "preload", "prefetch", "preconnect", "manifest")
)
_STYLE_ADDRESS = re.compile(r"""(?:url\(|@import)\s*["']?\s*(?:[a-z]+:)?//""", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Reference:
    """One address that a page names, and whether the browser asks for it by itself."""

    address: str
    fetched: bool


@dataclass(frozen=True, slots=True)
class Seen:
    """What a page names, and the names by which it can be pointed at."""

    references: tuple[Reference, ...]
    anchors: frozenset[str]


def site_problems(tree: Mapping[str, bytes]) -> tuple[Problem, ...]:
    """Return what is wrong with the links and requests of a whole site."""
    seen = {path: look_at(content) for path, content in tree.items() if path.endswith(".html")}
    problems = [
        problem
        for path, page in seen.items()
        for reference in page.references
        for problem in _reference_problems(path, reference, tree, seen)
    ]
    problems += [
        _fault("outside-request", path, "its style asks another host for something")
        for path, content in tree.items()
        if path.endswith(".css") and _STYLE_ADDRESS.search(content.decode())
    ]
    if MARK not in tree.get("index.html", b""):
        problems.append(_fault("no-mark", "index.html", f"it lacks {MARK.decode()}>"))
    return tuple(problems)


@lru_cache(maxsize=512)
def look_at(content: bytes) -> Seen:
    """Return what a page names.

    It is asked for the pictures of a page and again for its links.

    Our templates escape `<` and `"` wherever a text is put in, so tags can be told from text
    without parsing the page.
    """
    references: list[Reference] = []
    anchors: set[str] = set()
    for tag, inside in _TAG.findall(content.decode()):
        attributes = {name.lower(): html.unescape(v) for name, v in _ATTRIBUTE.findall(inside)}
        if "id" in attributes:
            anchors.add(attributes["id"])
        references += _references(tag, attributes)
    return Seen(tuple(references), frozenset(anchors))


def _references(tag: str, attributes: Mapping[str, str]) -> Iterator[Reference]:
    for name, value in attributes.items():
        if name == "srcset":
            yield from (Reference(each.split()[0], True) for each in value.split(","))
        elif name in _FETCHING:
            yield Reference(value, True)
        elif name == "href":
            relations = set(attributes.get("rel", "").split())
            yield Reference(value, tag == "link" and bool(relations & _FETCHING_LINKS))


def _reference_problems(
    path: str, reference: Reference, tree: Mapping[str, bytes], seen: Mapping[str, Seen]
) -> Iterable[Problem]:
    parts = urlsplit(reference.address)
    if parts.scheme or parts.netloc:
        if reference.fetched and parts.scheme != "data":
            yield _fault("outside-request", path, f"it asks another host for {reference.address}")
        return
    if parts.path.startswith("/"):
        yield _fault("rooted-link", path, f"its link {reference.address} fails under a sub-path")
        return
    target = _target(path, unquote(parts.path))
    if target not in tree:
        yield _fault("lost-link", path, f"its link {reference.address} leads to nothing")
    elif parts.fragment and target in seen and unquote(parts.fragment) not in seen[target].anchors:
        yield _fault("lost-link", path, f"nothing on {target} is named {parts.fragment}")


@lru_cache(maxsize=65536)
def _target(path: str, link: str) -> str:
    return posixpath.normpath(posixpath.join(posixpath.dirname(path), link)) if link else path


def _fault(code: str, path: str, what: str) -> Problem:
    return Problem(code, f"the page {path} cannot be published: {what}")
