"""A parts list copied in the browser is, read back from the clipboard, the file word for word."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.site.serving import STRICT_POLICY, Served

FORMS = {"Copy as text": "txt", "Copy as Markdown": "md", "Copy as CSV": "csv"}
WHOLE = ", with all parts"


def copied(page: Page, button: str) -> str:
    page.get_by_role("button", name=button, exact=True).click()
    expect(page.get_by_role("status")).to_have_text("Copied to the clipboard.")
    expect(page.get_by_role("button", name=button, exact=True)).to_be_focused()
    text = page.evaluate("navigator.clipboard.readText()")
    assert isinstance(text, str)
    return text


def file(site: Path, name: str) -> str:
    return (site / "data" / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("button", FORMS)
def test_a_copied_list_is_the_file(written_site: Path, browser: Browser, button: str) -> None:
    suffix = FORMS[button]
    with Served(written_site, policy=STRICT_POLICY) as site:
        context = browser.new_context(permissions=["clipboard-read", "clipboard-write"])
        page = context.new_page()
        page.goto(site.page("parts/index.html"))
        assert copied(page, button) == file(written_site, f"parts-list.{suffix}")
        assert copied(page, f"{button}{WHOLE}") == file(written_site, f"parts-list-whole.{suffix}")
        page.goto(site.page("episodes/3/index.html"))
        assert copied(page, button) == file(written_site, f"parts-list-episode-3.{suffix}")
        context.close()


def test_from_disk_the_list_is_copied_too(written_site: Path, browser: Browser) -> None:
    page = browser.new_page()
    page.goto((written_site / "parts/index.html").as_uri())
    page.get_by_role("button", name="Copy as text", exact=True).click()
    expect(page.get_by_role("status")).to_have_text("Copied to the clipboard.")
    page.close()


def test_the_parts_list_can_be_shown_as_at_an_episode(
    written_site: Path, browser: Browser
) -> None:
    page = browser.new_page()
    page.goto((written_site / "systems/fuel/index.html").as_uri())
    rows = page.locator("tr[data-from]")
    everything = rows.count()
    assert everything > 10
    page.get_by_label("Show the list as at").select_option("0")
    shown = page.locator("tr[data-from]:visible")
    assert 0 < shown.count() == page.locator("tr[data-from='0']").count() < everything
    told = page.get_by_text("The list is shown as at: As bought")
    page.emulate_media(media="print")
    assert told.is_visible()
    page.emulate_media(media="screen")
    page.get_by_label("Show the list as at").select_option("")
    assert shown.count() == everything
    page.close()
