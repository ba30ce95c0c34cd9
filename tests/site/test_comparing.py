"""Any two episodes compared in the browser differ in what the command says that they differ in."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

from playwright.sync_api import Browser, Page

from hoistbook.history.differences import differences
from hoistbook.pages.change_rows import change_rows, on_the_car
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pipeline import build
from tests.site.serving import STRICT_POLICY, Served

CONTENT = Path(__file__).resolve().parents[2] / "content"


def compared(page: Page, first: int, last: int) -> set[str]:
    """Return the subjects that the page says are different."""
    choices = page.locator("#choice select")
    choices.nth(0).select_option(str(first))
    choices.nth(1).select_option(str(last))
    page.get_by_role("button", name="Compare").click()
    heads = page.locator("#choice tbody th")
    said = heads.evaluate_all("heads => heads.map(h => (h.querySelector('a') || h).textContent)")
    return set(map(str, said))


def expected(desk: Desk, first: int, last: int) -> set[str]:
    changes = filter(on_the_car, differences(desk.states[first], desk.states[last]))
    return {
        " ".join(each for each in (*(part.text for part in row.parts), row.what) if each)
        for row in change_rows(desk, changes, first)
    }


def test_two_episodes_compared_differ_as_the_command_says(
    written_site: Path, browser: Browser
) -> None:
    material = build(CONTENT).material
    assert material is not None
    desk = desk_of(material)
    with Served(written_site, policy=STRICT_POLICY) as site:
        page = browser.new_page()
        page.goto(site.page("changes/index.html"))
        for first, last in combinations(desk.states, 2):
            assert compared(page, first, last) == expected(desk, first, last), (first, last)
        page.close()
