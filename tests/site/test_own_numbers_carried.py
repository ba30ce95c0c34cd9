"""A reader's own numbers on all sheets of the chain: they go along in the address.

The browser is the judge of the JavaScript, NumPy of the numbers: central values agree within 1e-9
and ends of bands within 1e-6, relative to the value.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.draws import band
from hoistbook.figures.figure import Figure
from hoistbook.figures.variants import at_one_speed
from hoistbook.pipeline import work_out as read_and_work_out
from tests.site.conftest import REPOSITORY
from tests.site.serving import STRICT_POLICY, Served
from tests.site.test_own_numbers import BY_YOURS
from tests.site.test_weight import BARS

SHEETS = ("", "pipes/", "beside/")
RANDOM_CHAINS, FEW_CHAINS = 500, 120
"""Of all sheets together, with `--all` and on every other run."""
CENTRE, ENDS = 1e-9, 1e-6
NO_BREAK = "\N{NO-BREAK SPACE}"
WHOLE = "From air to power and fuel"
YOURS = "These are your numbers, not the build's. Yours: "


@pytest.fixture(scope="module")
def inputs() -> Inputs:
    """Return what the sheets of the demo's chain start from."""
    material = read_and_work_out(REPOSITORY / "content").material
    assert material is not None
    figures = material.figures[-1]
    power = figures.get("power")
    assert figures.inputs is not None
    assert isinstance(power, Figure)
    return at_one_speed(figures.inputs, power.at_speed)


@pytest.fixture
def sheet(browser: Browser) -> Iterator[Page]:
    """Return a page on which no script may complain."""
    page = browser.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("console", lambda said: complaints.append(said.text))
    yield page
    page.close()
    assert complaints == []


def address(site: Path, name: str = "", numbers: str = "") -> str:
    return (site / f"workings/chain/{name}index.html").as_uri() + numbers


def step(page: Page, name: str) -> Locator:
    return page.locator(f"[data-working='{name}']")


def overtype(page: Page, working: str, label: str, text: str) -> None:
    field = step(page, working).get_by_label(label, exact=True).first
    field.fill(text)
    field.press("Enter")


def number(page: Page, working: str) -> float:
    text = step(page, working).locator("[data-value]").inner_text()
    found = re.match(r"[\d,.]+", text)
    assert found, text
    return float(found[0].replace(",", ""))


def go(page: Page, title: str) -> None:
    page.locator("nav.sheets").get_by_role("link", name=title).click()
    page.wait_for_load_state("load")


def test_there_are_samples_that_runs_have_weighed(inputs: Inputs) -> None:
    # Without any the test below would not see whether the browser draws them again.
    assert any(base.learnt for base in inputs.bases)


def own_numbers(inputs: Inputs) -> Iterator[dict[str, float]]:
    """Yield random own numbers, one to five at a time, within a fifth of the build's."""
    random = np.random.default_rng(2024)
    bases = [base for base in inputs.bases if base.value != 0 and base.ceiling == math.inf]
    while True:
        yield {
            bases[n].key: float(np.max(bases[n].value)) * float(random.uniform(0.8, 1.2))
            for n in random.choice(len(bases), size=random.integers(1, 6), replace=False)
        }


def with_own(base: Base, value: float) -> Base:
    """Return an input with a reader's value: its band as wide, or wider in proportion."""
    wider = max(1.0, abs(value / float(np.max(base.value))))
    learnt = base.learnt and replace(
        base.learnt, half_width=base.learnt.half_width * wider, shift=base.learnt.shift * wider
    )
    return replace(base, value=value, half_width=base.half_width * wider, learnt=learnt)


def by_python(inputs: Inputs, own: Mapping[str, float]) -> dict[str, tuple[float, float, float]]:
    bases = tuple(
        with_own(base, own[base.key]) if base.key in own else base for base in inputs.bases
    )
    worked = work_out(replace(inputs, bases=bases))
    found = {}
    for name in worked.steps:
        column = worked.values[name][0]
        low, high = band(column[1:]) if len(column) > 1 else (column[0], column[0])
        found[name] = (float(column[0]), float(low), float(high))
    return found


WRITTEN = """(own) => {
  const [sheet] = hoistbook.sheets;
  if (!Object.keys(own).every((name) => sheet.parameters.has(name))) { return ""; }
  const entries = Object.entries(own).map(([name, value]) => {
    const [parameter] = sheet.parameters.get(name);
    const {scale, zero} = hoistbook.table.quantities[parameter].formula;
    return [name, {value, half: null, text: String((value - zero) / scale), parameter}];
  });
  sheet.own = new Map(entries);
  sheet.read();
  return sheet.cause ? "" : location.hash;
}"""
"""Writes numbers on the first sheet as a reader does, with more digits than are printed, and
returns the fragment of its links; nothing where no formula takes them, or holds for them."""

CARRIED = """async (address) => {
  const [sheet] = hoistbook.sheets;
  if (location.hash !== address) {
    await new Promise((done) => {
      addEventListener("hashchange", done, {once: true});
      location.hash = address;
    });
  }
  const names = sheet.workings.map((each) => each.dataset.working)
    .filter((name) => sheet.steps.has(name));
  return names.map((name) => [name, ...sheet.reading(name)]);
}"""


def test_the_whole_chain_gives_the_same_on_its_sheets_in_the_browser(
    written_site: Path, browser: Browser, inputs: Inputs, pytestconfig: pytest.Config
) -> None:
    wanted = RANDOM_CHAINS if pytestconfig.getoption("--all") else FEW_CHAINS
    pages = []
    for name in SHEETS:
        pages.append(browser.new_page())
        pages[-1].goto(address(written_site, name))
    compared = 0
    for own in own_numbers(inputs):
        numbers = pages[0].evaluate(WRITTEN, own)
        if not numbers:
            continue
        found = {
            name: reading for page in pages for name, *reading in page.evaluate(CARRIED, numbers)
        }
        ours = by_python(inputs, own)
        assert set(found) == set(ours), own
        for name, (value, low, high) in ours.items():
            scale = max(abs(value), abs(low), abs(high))
            assert found[name][0] == pytest.approx(value, rel=CENTRE, abs=1e-12), (name, own)
            assert found[name][1:] == pytest.approx([low, high], rel=0, abs=ENDS * scale), name
        compared += 1
        if compared == wanted:
            break
    for page in pages:
        page.close()


def test_a_boost_moves_power_fuel_injectors_pump_and_on_the_next_sheets_pipes(
    written_site: Path, sheet: Page
) -> None:
    follows = {
        WHOLE: ("power", "fuel_flow", "injector_duty", "pump_margin"),
        "The rest of the car": ("compressor_power", "pump_power"),
        "Pipes and throats": ("mach_number of hot-pipe", "pipe_velocity of intake-pipe"),
    }
    builds: dict[str, float] = {}
    sheet.goto(address(written_site))
    for title, names in follows.items():
        if title != WHOLE:
            go(sheet, title)
        builds |= {name: number(sheet, name) for name in names}
    go(sheet, WHOLE)
    assert "#" not in sheet.url
    overtype(sheet, "manifold_absolute_pressure", "boost, in bar", "0.4 ± 0.01")
    for title, names in follows.items():
        if title != WHOLE:
            go(sheet, title)
        expect(sheet.get_by_role("status")).to_have_text(f"{YOURS}boost 0.4 ± 0.01{NO_BREAK}bar.")
        for name in names:
            expect(step(sheet, name).locator("[data-after]")).to_have_text(BY_YOURS)
        # Less boost is less of all of these, but for what the pump has left.
        assert {name: number(sheet, name) > builds[name] for name in names} == {
            name: name == "pump_margin" for name in names
        }
    # Where a formula takes the boost in another unit it stands in that.
    assert step(sheet, "fill_time").get_by_label("rise of pressure").input_value() == "40 ± 1"
    assert sheet.url.endswith("/pipes/index.html#boost=0.4+%C2%B1+0.01+bar")


def test_the_address_holds_the_numbers_until_the_reader_goes_back_to_the_build_s(
    written_site: Path, sheet: Page
) -> None:
    with Served(written_site, base="/garage/log/", policy=STRICT_POLICY) as served:
        bare = served.page("workings/chain/index.html")
        sheet.goto(bare)
        before = sheet.locator("main").inner_text()
        overtype(sheet, "injector_duty", "number of injectors", "8")
        assert sheet.url == f"{bare}#injector_count=8"
        # Someone who is sent the address, or loads it anew, sees the same; an anchor keeps it.
        sheet.goto(served.page("workings/chain/pipes/index.html") + "#injector_count=8")
        sheet.get_by_role("navigation", name="Before and after").get_by_text(
            "power and fuel"
        ).click()
        sheet.reload()
        expect(sheet.get_by_role("status")).to_have_text(f"{YOURS}number of injectors 8.")
        assert (
            step(sheet, "injector_duty").get_by_label("number of injectors").input_value() == "8"
        )
        sheet.get_by_role("link", name="Skip to the sheet").press("Enter")
        sheet.wait_for_url(f"{bare}#injector_count=8")
        sheet.get_by_role("button", name="Back to the build's numbers").click()
        assert sheet.url == bare
        assert sheet.locator("main").inner_text() == before
        assert "#" not in "".join(
            link.get_attribute("href") or "" for link in sheet.locator("[data-onward] a").all()
        )
        # The host is told of no number.
        assert not [path for _, path in served.asked if "injector" in path]


@pytest.mark.parametrize(
    ("numbers", "said"),
    [
        (
            "boost=lots",
            "No number comes of boost “lots”: write it as 1,234.5, with a band as 1,234.5 ± 10.",
        ),
        (
            "boost=0,8+bar",
            "No number comes of boost “0,8”: write it as 1,234.5, with a band as 1,234.5 ± 10.",
        ),
        (
            "boost=12+psi",
            "No number comes of boost “12 psi”: write it as 1,234.5, with a band as 1,234.5 ± 10.",
        ),
        (
            "displacement=1e400+cc",
            "No number comes of displacement “1e400”: write it as 1,234.5, with a band as "
            "1,234.5 ± 10.",
        ),
        ("displacement=-1+cc", "No number comes of displacement -1: it has to be above zero."),
        (
            "lambda_ratio=3",
            "No number comes of lambda 3: what is worked out from it holds from 0.78 to 1.05.",
        ),
    ],
)
def test_what_an_address_says_is_looked_over_as_what_is_typed(
    written_site: Path, sheet: Page, numbers: str, said: str
) -> None:
    sheet.goto(address(written_site, "", f"#{numbers}"))
    expect(sheet.get_by_role("status")).to_have_text(said)
    expect(step(sheet, "injector_duty").locator("[data-value]")).to_have_text("no number")
    sheet.get_by_role("button", name="Back to the build's numbers").click()
    expect(step(sheet, "injector_duty").locator("[data-value]")).not_to_have_text("no number")


def test_an_address_without_a_number_that_the_chain_has_is_the_build_s(
    written_site: Path, sheet: Page
) -> None:
    sheet.goto(address(written_site))
    before = sheet.locator("main").inner_text()
    sheet.goto(address(written_site, "", "#boost=&sails=3"))
    expect(sheet.get_by_role("status")).to_have_text("")
    assert sheet.locator("main").inner_text() == before


def test_print_says_at_its_head_whose_numbers_these_are(written_site: Path, sheet: Page) -> None:
    sheet.goto(address(written_site, "", "#boost=0.4+bar"))
    expect(sheet.get_by_role("status")).to_have_text(f"{YOURS}boost 0.4{NO_BREAK}bar.")
    sheet.emulate_media(media="print")
    head = "getComputedStyle(document.querySelector('[data-chain]'), '::before').content"
    assert sheet.evaluate(head) == f'"{YOURS}boost 0.4{NO_BREAK}bar."'
    assert not sheet.get_by_role("button").is_visible()


def test_no_sheet_is_too_heavy_with_its_fields(written_site: Path, sheet: Page) -> None:
    for name in SHEETS:
        sheet.goto(address(written_site, name))
        assert sheet.locator("input.own").count() > 30
        assert sheet.locator("*").count() <= BARS["elements"], name
