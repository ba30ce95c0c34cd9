"""The addresses of all pages and files, and how one page links to another.

Links are relative and end in `index.html`, so that the site works from disk, under a sub-path and
at the root of a host alike.
"""

from __future__ import annotations

import posixpath
import re
from urllib.parse import quote, unquote

from hoistbook.figures.figure import Key

HOME = "/"
EPISODES = "/episodes/"
PARTS = "/parts/"
SYSTEMS = "/systems/"
NEXT = "/next/"
SPEC = "/spec/"
TALLY = "/tally/"
WORKINGS = "/workings/"
CHANGES = "/changes/"
CLAIMS = "/claims/"
BROKE = "/changes/#broke"
CIRCUITS = "/circuits/"
BENCH = "/circuits/bench/"
CAUTIONS = "/cautions/"
INDEX = "/index-a-z/"
GLOSSARY = "/glossary/"
DATA = "/data/"
CHARTS = "/charts/"
ATOM = "/feed.xml"
JSON_FEED = "/feed.json"
CHAIN = "/workings/chain/"
CHAIN_PIPES = "/workings/chain/pipes/"
BESIDE = "/workings/chain/beside/"
FORMULAS = "/workings/formulas/"
ACCURACY = "/workings/accuracy/"
OWN_NUMBERS = "/assets/own-numbers.js"
SITEMAP = "/sitemap.xml"
ROBOTS = "/robots.txt"

_SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:", re.IGNORECASE)


def episode(number: int) -> str:
    """Return the address of an episode."""
    return f"{EPISODES}{number}/"


def episode_file(number: int, name: str) -> str:
    """Return the address of a file that stands beside an episode, by its path from there."""
    return f"{episode(number)}{quote(name)}"


def captions(number: int) -> str:
    """Return the address of an episode's captions."""
    return episode_file(number, "captions.vtt")


def term(term_id: str) -> str:
    """Return where a word is explained."""
    return f"{GLOSSARY}#{term_id}"


def part(part_id: str) -> str:
    """Return the address of a part."""
    return f"{PARTS}{part_id}/"


def system(system_id: str) -> str:
    """Return the address of the parts of one system, where the parts list is filed by system."""
    return f"{SYSTEMS}{system_id}/"


def spec(number: int | None = None) -> str:
    """Return the address of the spec sheet, now or as at an episode."""
    return SPEC if number is None else f"{SPEC}{number}/"


def workings(quantity: str) -> str:
    """Return the address of the workings of all figures of one quantity."""
    return f"{WORKINGS}{quantity}/"


def formula_topic(topic: str) -> str:
    """Return the address of the formulas of one topic."""
    return f"{FORMULAS}{topic}/"


def entry(key: Key, number: int) -> str:
    """Return the anchor of one figure's entry as at one episode, without its `#`."""
    return f"{key.anchor}-episode-{number}"


def figure(key: Key, number: int) -> str:
    """Return the address of the workings of one figure as at the episode that last changed it."""
    return f"{workings(key.quantity)}#{entry(key, number)}"


def caution(caution_id: str) -> str:
    """Return the address of a caution's full text."""
    return f"{CAUTIONS}#{caution_id}"


def parts_list(of: int | str | None, suffix: str, *, whole: bool = False) -> str:
    """Return the address of the parts list of an episode, a system or the journal, as a file.

    Parameters
    ----------
    of
        The number of the episode or the name of the system; None for the whole journal.
    suffix
        "txt", "md" or "csv".
    whole
        Whether parts that are no longer in the build stand in it too.
    """
    part = f"episode-{of}" if isinstance(of, int) else (of or "").replace(" ", "-")
    return f"{DATA}parts-list{'-' if part else ''}{part}{'-whole' if whole else ''}.{suffix}"


def chart(name: str, suffix: str = "svg") -> str:
    """Return the address of a chart, or of its data with the suffix "csv"."""
    return f"{CHARTS}{name}.{suffix}"


def file_path(address: str) -> str:
    """Return the path in the written tree of an address.

    Examples
    --------
    >>> file_path("/episodes/3/#tally")
    'episodes/3/index.html'
    >>> file_path("/feed.xml")
    'feed.xml'
    >>> file_path("/episodes/3/before%20%26%20after.jpg")
    'episodes/3/before & after.jpg'
    """
    path = unquote(address.partition("#")[0].removeprefix("/"))
    return f"{path}index.html" if path.endswith("/") or not path else path


def relative(start: str, target: str) -> str:
    """Return the link from the page at one address to another address.

    A target that is not ours (one with a scheme) is returned as it is.

    Examples
    --------
    >>> relative("/episodes/3/", "/workings/pipe_velocity/#pipe-2-episode-3")
    '../../workings/pipe_velocity/index.html#pipe-2-episode-3'
    >>> relative("/", "/feed.xml")
    'feed.xml'
    >>> relative("/spec/", "/spec/#fuel")
    '#fuel'
    """
    if _SCHEME.match(target):
        return target
    path, mark, anchor = target.partition("#")
    if path in ("", start) and mark:
        return f"#{anchor}"
    folder = posixpath.dirname(file_path(start))
    return quote(posixpath.relpath(file_path(path), folder or ".")) + mark + anchor


def absolute(base: str, address: str) -> str:
    """Return the full URL of an address of a journal that has one, without `index.html`."""
    return base.rstrip("/") + address
