"""A formula too long for a phone is broken before an operator instead of running out of sight."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser

HEIGHTS = "[...document.querySelectorAll('.formula math')].map((each) => each.clientHeight)"
HIDDEN = """[...document.querySelectorAll('.formula')]
  .filter((each) => each.scrollWidth > each.clientWidth).map((each) => each.textContent)"""
BEGINNINGS = """[...document.querySelectorAll('.formula math')].flatMap((each) => {
  const left = each.getBoundingClientRect().left;
  return [...each.children].slice(1)
    .filter((row) => row.getBoundingClientRect().left < left + 2)
    .map((row) => row.firstElementChild.textContent);
})"""
"""What stands first on each further line of the formulas."""


def test_a_long_formula_is_broken_before_an_operator_on_a_phone(
    written_site: Path, browser: Browser
) -> None:
    address = (written_site / "workings/engine_air_flow/index.html").as_uri()
    with browser.new_context(viewport={"width": 1280, "height": 900}) as context:
        page = context.new_page()
        page.goto(address)
        whole = page.evaluate(HEIGHTS)
        assert page.evaluate(BEGINNINGS) == []
        page.set_viewport_size({"width": 360, "height": 900})
        broken = page.evaluate(HEIGHTS)
        assert page.evaluate(HIDDEN) == []
        # Of the working with the numbers put in; in symbols it is short enough.
        assert set(page.evaluate(BEGINNINGS)) == {"×"}
        assert any(narrow > wide for wide, narrow in zip(whole, broken, strict=True))


def test_no_working_of_the_whole_chain_runs_out_of_sight_on_a_phone(
    written_site: Path, browser: Browser
) -> None:
    with browser.new_context(viewport={"width": 360, "height": 900}) as context:
        page = context.new_page()
        for sheet in sorted(written_site.glob("workings/chain/**/index.html")):
            page.goto(sheet.as_uri())
            assert page.evaluate("document.querySelectorAll('.formula math').length") >= 10
            assert page.evaluate(HIDDEN) == [], sheet
