"""A reader's own numbers in what stands beside the way to power: road, pipes, oil, bench."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.site.test_own_numbers import BY_YOURS


def number_in(text: str) -> float:
    found = re.search(r"[\d,]*\.?\d+", text)
    assert found, text
    return float(found[0].replace(",", ""))


def open_page(site: Path, browser: Browser, name: str) -> Page:
    page = browser.new_page()
    page.goto((site / name / "index.html").as_uri())
    return page


def value(place: Locator) -> float:
    return number_in(place.locator("[data-value]").first.inner_text())


def test_one_number_runs_through_all_gears_and_back(written_site: Path, browser: Browser) -> None:
    page = open_page(written_site, browser, "workings/chain/beside")
    gears = [page.locator(f"[data-working='road_speed of gear-{n}']") for n in (1, 3, 5)]
    before = [each.inner_text() for each in gears]
    speeds = [value(each) for each in gears]
    final = gears[0].get_by_label("ratio of the final drive", exact=True)
    final.fill(f"{2 * number_in(final.input_value())} ± 0.0001")
    final.press("Enter")
    # v = U N / (60 i_g i_f): twice the final drive is half the speed in every gear.
    for gear, speed in zip(gears, speeds, strict=True):
        assert value(gear) == pytest.approx(speed / 2, rel=0.01)
        expect(gear.locator("[data-after]")).to_have_text(BY_YOURS)
    expect(page.get_by_role("status")).to_have_text(re.compile("^These are your numbers, not the"))
    page.get_by_role("button", name="Back to the build's numbers").click()
    assert [each.inner_text() for each in gears] == before
    assert page.locator("form, input[type=range]").count() == 0
    page.close()


@pytest.mark.parametrize(
    ("quantity", "working", "label", "power"),
    [
        # Each by its formula: choking with the square of the bore, the torque of
        # a bolt and the voltage of a wire in proportion.
        ("choked_flow", "choked_flow of throttle-body", "diameter of the throat, in mm", 2),
        ("voltage_drop", "voltage_drop of fuel-pump-2", "current in the cable, in A", 1),
        ("tightening_torque", "tightening_torque of exhaust-studs", "nut factor", 1),
    ],
)
def test_a_working_of_its_own_follows_its_formula(
    written_site: Path, browser: Browser, quantity: str, working: str, label: str, power: int
) -> None:
    page = open_page(written_site, browser, f"workings/{quantity}")
    sheet = page.locator(f"[data-working='{working}']").first
    before = value(sheet)
    field = sheet.get_by_label(label, exact=True)
    field.fill(str(2 * number_in(field.input_value())))
    field.press("Enter")
    expect(sheet.locator("[data-after]").first).to_have_text(BY_YOURS)
    assert value(sheet) == pytest.approx(2**power * before, rel=0.12)
    page.close()
