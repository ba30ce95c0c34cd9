"""The site by keyboard alone, and the clipboard after copying a parts list."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.site.serving import Served

STOPS = """() => [...document.querySelectorAll('a[href],button,summary,input,select,video')]
  .filter(e => !e.disabled && e.tabIndex >= 0 && e.checkVisibility()).length"""
FOCUS = """() => {
  const e = document.activeElement;
  if (!e || e === document.body) return null;
  const box = e.getBoundingClientRect(), style = getComputedStyle(e);
  return {name: e.tagName + ' ' + e.textContent.trim().slice(0, 40), href: e.getAttribute('href'),
          outlined: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 1,
          seen: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth};
}"""


def tab_through(page: Page) -> list[dict[str, object]]:
    """Press Tab until the focus leaves the page; return each stop."""
    stops: list[dict[str, object]] = []
    for _ in range(page.evaluate(STOPS)):
        page.keyboard.press("Tab")
        stop = page.evaluate(FOCUS)
        if stop is None:
            break
        stops.append(stop)
    return stops


@pytest.mark.parametrize("forced", ["none", "active"])
def test_every_stop_is_seen_and_outlined_and_the_first_skips_to_the_content(
    written_site: Path, visited: list[str], browser: Browser, forced: str
) -> None:
    """WCAG 2.2, 2.4.1 (bypass blocks), 2.4.7 (focus visible), 2.4.11 (focus not obscured)."""
    context = browser.new_context(
        viewport={"width": 1280, "height": 800},
        forced_colors="active" if forced == "active" else "none",
    )
    with Served(written_site) as served:
        page = context.new_page()
        for path in visited:
            page.goto(served.page(path))
            stops = tab_through(page)
            assert len(stops) == page.evaluate(STOPS), path
            assert str(stops[0]["href"]).startswith("#"), path
            assert [s for s in stops if not (s["outlined"] and s["seen"])] == [], path
    context.close()


def test_from_the_first_page_to_an_episode_and_on_to_the_next_by_keyboard(
    written_site: Path, browser: Browser
) -> None:
    context = browser.new_context()
    with Served(written_site) as served:
        page = context.new_page()
        page.goto(served.page("index.html"))
        follow(page, "episodes/index.html")
        follow(page, "1/index.html")
        follow(page, "2/index.html")
        assert page.url == served.page("episodes/2/index.html")
    context.close()


def follow(page: Page, ending: str) -> None:
    """Tab to the first link whose address ends so, and press Enter on it."""
    for _ in range(page.evaluate(STOPS)):
        page.keyboard.press("Tab")
        stop = page.evaluate(FOCUS)
        if stop and str(stop["href"]).endswith(ending):
            with page.expect_navigation():
                page.keyboard.press("Enter")
            return
    pytest.fail(f"no link to {ending} on {page.url}")
