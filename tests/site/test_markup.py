"""Every page, style sheet and drawing of the demo's site is valid HTML, CSS and SVG."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

from lxml import html

CHECKER = Path(__file__).parent / "node_modules/vnu-jar/build/dist/vnu.jar"
"""The W3C's markup checker, as published on the npm registry."""

BEYOND_THE_CHECKER = re.compile(
    # The checker has no origin to compare 'self' with; the browser tests judge the policy.
    r"violates Content Security Policy \(meta tag\)"
)


def test_every_page_style_sheet_and_drawing_is_valid_markup(written_site: Path) -> None:
    files = sorted(
        str(p) for p in written_site.rglob("*") if p.suffix in {".html", ".css", ".svg"}
    )
    command = ["java", "-Xss4m", "-jar", str(CHECKER), "--format", "json", "--stdout"]
    command += ["--exit-zero-always", "--also-check-css", "--also-check-svg", *files]
    answer = subprocess.run(command, capture_output=True, text=True, check=True)
    found = [
        f"{Path(m['url'].removeprefix('file:')).relative_to(written_site)}:"
        f"{m.get('lastLine', 0)}: {m['message']}"
        for m in json.loads(answer.stdout)["messages"]
        if not BEYOND_THE_CHECKER.search(m["message"])
    ]
    assert found == []


def test_every_page_has_a_language_one_heading_and_a_title_of_its_own(
    written_site: Path, pages: list[str]
) -> None:
    titles: dict[str, list[str]] = {}
    for page in pages:
        root = html.document_fromstring((written_site / page).read_bytes())
        assert root.get("lang"), page
        assert len(root.xpath("//h1")) == 1, page
        titles.setdefault(root.findtext(".//title") or "", []).append(page)
    assert {title: where for title, where in titles.items() if len(where) > 1} == {}


def test_no_style_or_script_stands_inside_a_page(written_site: Path, pages: list[str]) -> None:
    for page in pages:
        root = html.document_fromstring((written_site / page).read_bytes())
        inline = root.xpath(
            "//@style | //style | //script[not(@src) and not(starts-with(@type, 'application/'))]"
        )
        assert inline == [], page
        assert root.xpath('//meta[@http-equiv="Content-Security-Policy"]'), page
