"""However long a journal grows, every page stays small, and the site grows no faster than it."""

from __future__ import annotations

import gzip
import re
from pathlib import Path

import pytest

from hoistbook.pipeline import build
from tests.helpers.large import large_journal

MOST_ELEMENTS = 1400
"""Lighthouse warns of a page with more (dom-size audit, 1,400 elements)."""
MOST_BYTES = 40_000
"""Of a page's HTML, compressed: a bar of this project's own."""


def site_of(folder: Path, episodes: int, parts: int) -> dict[str, bytes]:
    built = build(large_journal(folder, episodes, parts))
    assert built.problems == ()
    assert built.tree is not None
    return built.tree


def elements(html: bytes) -> int:
    """Return how many elements a page has; what a template holds is not among them."""
    shown = re.sub(rb"<template>.*?</template>", b"", html, flags=re.DOTALL)
    return len(re.findall(rb"<[a-z]", shown))


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> tuple[dict[str, bytes], dict[str, bytes]]:
    folder = tmp_path_factory.mktemp("growth")
    return site_of(folder, 20, 200), site_of(folder, 40, 400)


def test_no_page_of_a_long_journal_is_large(
    sites: tuple[dict[str, bytes], dict[str, bytes]],
) -> None:
    pages = {path: html for path, html in sites[1].items() if path.endswith(".html")}
    large = {
        path: (elements(html), len(gzip.compress(html)))
        for path, html in pages.items()
        if elements(html) > MOST_ELEMENTS or len(gzip.compress(html)) > MOST_BYTES
    }
    assert large == {}


def test_twice_the_journal_is_no_more_than_twice_the_site(
    sites: tuple[dict[str, bytes], dict[str, bytes]],
) -> None:
    half, whole = (sum(map(len, site.values())) for site in sites)
    assert whole < 2.2 * half
