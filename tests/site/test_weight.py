"""Every page of the demo is light: its elements, their depth, and what it loads."""

from __future__ import annotations

import gzip
from collections.abc import Mapping
from pathlib import Path

from lxml import html

BARS: Mapping[str, int] = {
    "elements": 1400,
    "depth": 32,
    "HTML": 40_000,
    "styles": 15_000,
    "scripts": 30_000,
    "all": 500_000,
    "files": 25,
}
"""Most of each. Elements and depth: dom-size audit of Lighthouse; the others, in bytes as they
travel (text compressed by gzip, RFC 1952), are this project's own."""


def test_no_page_has_too_many_elements_or_loads_too_much(
    written_site: Path, pages: list[str]
) -> None:
    heavy = {}
    for page in pages:
        weight = weight_of(written_site / page)
        over = {name: value for name, value in weight.items() if value > BARS[name]}
        if over:
            heavy[page] = over
    assert heavy == {}


def weight_of(page: Path) -> dict[str, int]:
    body = page.read_bytes()
    root = html.document_fromstring(body)
    for template in root.iter("template"):
        template.clear()  # What it holds is no element of the page.
    loaded = root.xpath("//script/@src | //link[@rel='stylesheet' or @rel='icon']/@href")
    loaded += root.xpath("//img/@src")
    sizes = {name: travelling(page.parent / name) for name in set(map(str, loaded))}
    return {
        "elements": sum(1 for _ in root.iter("*")),
        "depth": max(
            1 + sum(1 for _ in leaf.iterancestors()) for leaf in root.xpath("//*[not(*)]")
        ),
        "HTML": len(gzip.compress(body)),
        "styles": sum(size for name, size in sizes.items() if name.endswith(".css")),
        "scripts": sum(size for name, size in sizes.items() if name.endswith(".js")),
        "all": len(gzip.compress(body)) + sum(sizes.values()),
        "files": 1 + len(sizes),
    }


def travelling(file: Path) -> int:
    content = file.read_bytes()
    return len(gzip.compress(content)) if file.suffix in {".css", ".js", ".svg"} else len(content)
