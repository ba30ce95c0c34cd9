"""WCAG 2.2 A and AA by axe-core, light and dark, narrow and wide; no sideways scroll at 320 px."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.site.serving import Served

AXE = (Path(__file__).parent / "node_modules/axe-core/axe.min.js").read_text("utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
JUDGE = """async (rules) => {
  const found = await axe.run(document, {runOnly: rules, resultTypes: ['violations'],
                                         rules: {'target-size': {enabled: true}}});
  const where = v => v.nodes.map(n => n.target.join(' ')).join(', ');
  return found.violations.map(v => v.id + ' at ' + where(v));
}"""
OVERFLOW = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_no_page_has_a_barrier(
    written_site: Path, visited: list[str], browser: Browser, scheme: str, width: int
) -> None:
    found = {}
    context = browser.new_context(
        color_scheme="dark" if scheme == "dark" else "light",
        viewport={"width": width, "height": 800},
        reduced_motion="reduce",
    )
    with Served(written_site) as served:
        page = context.new_page()
        for path in visited:
            page.goto(served.page(path))
            page.evaluate(AXE)
            if barriers := page.evaluate(JUDGE, RULES):
                found[path] = barriers
    context.close()
    assert found == {}


@pytest.mark.parametrize("width", [320, 360, 1280])
def test_no_page_scrolls_sideways(
    written_site: Path, pages: list[str], visited: list[str], browser: Browser, width: int
) -> None:
    """WCAG 2.2, 1.4.10 (reflow): 320 CSS px without scrolling in two dimensions.

    At that width every page is visited, always: one long word in one part's facts is enough.
    """
    context = browser.new_context(viewport={"width": width, "height": 800})
    wide = {}
    with Served(written_site) as served:
        page = context.new_page()
        for path in pages if width == 320 else visited:
            page.goto(served.page(path))
            if (too_much := page.evaluate(OVERFLOW)) > 1:
                wide[path] = too_much
    context.close()
    assert wide == {}
