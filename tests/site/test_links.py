"""Every link of every page leads somewhere, and every page can be reached from the first."""

from __future__ import annotations

import posixpath
import urllib.parse
from pathlib import Path

import pytest
from lxml import html

FETCHED = (
    "//img/@src | //script/@src | //source/@src | //track/@src | //video/@src | //video/@poster"
)
LINKED = "//a/@href | //link/@href"


@pytest.fixture(scope="module")
def documents(written_site: Path, pages: list[str]) -> dict[str, html.HtmlElement]:
    return {page: html.document_fromstring((written_site / page).read_bytes()) for page in pages}


def inside(page: str, address: str) -> tuple[str, str] | None:
    """Return the path and fragment that a relative address leads to, None for another host's."""
    parts = urllib.parse.urlsplit(address)
    if parts.scheme or parts.netloc:
        return None
    path = urllib.parse.unquote(parts.path)
    target = posixpath.normpath(posixpath.join(posixpath.dirname(page), path)) if path else page
    return target, urllib.parse.unquote(parts.fragment)


def test_every_link_has_a_file_and_every_fragment_an_anchor(
    written_site: Path, documents: dict[str, html.HtmlElement]
) -> None:
    anchors = {page: set(root.xpath("//@id")) for page, root in documents.items()}
    lost = []
    for page, root in documents.items():
        for address in root.xpath(f"{LINKED} | {FETCHED}"):
            goal = inside(page, address)
            if goal is None:
                continue
            path, fragment = goal
            if not (written_site / path).is_file() or (
                fragment and path in anchors and fragment not in anchors[path]
            ):
                lost.append(f"{page}: {address}")
    assert lost == []


def test_every_page_is_reached_from_the_first(documents: dict[str, html.HtmlElement]) -> None:
    reached, waiting = {"index.html"}, ["index.html"]
    while waiting:
        page = waiting.pop()
        goals = [inside(page, address) for address in documents[page].xpath("//a/@href")]
        for path in sorted({goal[0] for goal in goals if goal}):
            if path in documents and path not in reached:
                reached.add(path)
                waiting.append(path)
    assert sorted(set(documents) - reached - {"404.html"}) == []


def test_nothing_is_fetched_from_another_host(documents: dict[str, html.HtmlElement]) -> None:
    for page, root in documents.items():
        fetched = root.xpath(f"{FETCHED} | //link[@rel='stylesheet' or @rel='icon']/@href")
        assert [address for address in fetched if inside(page, address) is None] == [], page
