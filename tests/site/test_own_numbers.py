"""A reader's own numbers: what the browser works out is what the program works out.

The browser is the judge of the JavaScript, NumPy of the numbers: values agree within 1e-9 of each.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from hoistbook.engineering import FORMULAS
from hoistbook.pages.javascript import inputs_of, javascript
from tests.engineering.handbook import read_cases
from tests.site.serving import STRICT_POLICY, Served

RANDOM_INPUTS = 500
CENTRE = 1e-9
BY_YOURS = re.compile(r"^, 95 % band .+, worked out from your numbers$")


HANDBOOK = read_cases()


def typical(name: str) -> dict[str, float]:
    """Return inputs of a formula as some worked example of the handbook has them."""
    case = next(case for case in HANDBOOK if name in case.formulas)
    worked = case.worked()
    return {key: float(worked[key]) for key in inputs_of(FORMULAS[name])}


def about(name: str) -> list[dict[str, float]]:
    """Return random inputs of a formula, from half to one and a half of a worked example."""
    random = np.random.default_rng(sorted(FORMULAS).index(name))
    usual = typical(name)
    return [
        {key: value * float(random.uniform(0.5, 1.5)) for key, value in usual.items()}
        for _ in range(RANDOM_INPUTS)
    ]


def values_of(name: str, cases: list[dict[str, float]]) -> list[float | None]:
    """Return what a formula comes to in each case, None where it comes to no number."""
    columns = {key: np.array([each[key] for each in cases]) for key in cases[0]}
    with np.errstate(all="ignore"):
        values = np.broadcast_to(FORMULAS[name](**columns), len(cases))
    return [float(each) if math.isfinite(each) else None for each in values]


def test_every_formula_gives_the_same_in_the_browser(browser: Browser) -> None:
    page = browser.new_page()
    for name in sorted(FORMULAS):
        cases = about(name)
        theirs = page.evaluate(
            f"(cases) => {{ const formula = {javascript(FORMULAS[name])};"
            "return cases.map((each) => formula(...each))"
            ".map((each) => Number.isFinite(each) ? each : null); }",
            [list(each.values()) for each in cases],
        )
        values = values_of(name, cases)
        assert sum(each is not None for each in values) > RANDOM_INPUTS / 2, name
        for given, found, ours in zip(cases, theirs, values, strict=True):
            same = None if ours is None else pytest.approx(ours, rel=CENTRE)
            assert found == same, (name, given)
    page.close()


@pytest.fixture
def chain(written_site: Path, browser: Browser) -> Iterator[Page]:
    """Return the page of the whole chain, served under a strict policy; no script may complain."""
    with Served(written_site, policy=STRICT_POLICY) as served:
        page = browser.new_page()
        complaints: list[str] = []
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on("console", lambda said: complaints.append(said.text))
        page.goto(served.page("workings/chain/index.html"))
        yield page
        page.close()
        assert complaints == []


REREAD = """() => {
  const differences = [];
  for (const sheet of hoistbook.sheets) {
    sheet.cause = "";
    sheet.worked = hoistbook.workOut(sheet.chain, new Map());
    for (const {element, text, print} of sheet.texts) {
      // Behind the band the page says how the build's number is known, which no script does.
      const printed = print && print().replace(`, ${hoistbook.table.words.by_yours}`, "");
      const begins = element.matches("[data-after]") && text.startsWith(`${printed}, `);
      if (print && printed !== text && !begins) {
        differences.push([sheet.place.dataset.working, text, printed]);
      }
    }
  }
  return differences;
}"""


def test_every_working_reads_in_the_browser_as_it_is_printed(
    written_site: Path, browser: Browser
) -> None:
    page = browser.new_page()
    opened = 0
    for path in sorted(written_site.glob("workings/**/index.html")):
        page.goto(path.as_uri())
        if page.locator("input.own").count():
            opened += 1
            assert page.evaluate(REREAD) == [], path
    assert opened > 30
    page.close()


def step(page: Page, name: str) -> Locator:
    return page.locator(f"[data-working='{name}']")


def field(page: Page, working: str, label: str) -> Locator:
    return step(page, working).get_by_label(label, exact=True)


def number_in(text: str) -> float:
    found = re.match(r"[\d,.]+", text)
    assert found, text
    return float(found[0].replace(",", ""))


def test_an_overtyped_number_runs_through_the_chain_and_back(chain: Page) -> None:
    before = {
        each: step(chain, each).inner_text() for each in ("power", "torque", "vapour_pressure")
    }
    displacement = field(chain, "engine_air_flow", "displacement, in cc")
    builds = displacement.input_value()
    displacement.fill("2,000")
    displacement.press("Enter")
    expect(chain.get_by_role("status")).to_have_text(
        re.compile(r"^These are your numbers, not the")
    )
    assert field(chain, "power", "displacement, in cc").input_value() == "2,000"
    share = 2000 / number_in(builds)
    for name in ("power", "torque"):
        grown = number_in(step(chain, name).locator("[data-value]").inner_text()) / number_in(
            before[name].partition(": ")[2]
        )
        assert grown == pytest.approx(share, rel=0.06)
        expect(step(chain, name).locator("[data-after]")).to_have_text(BY_YOURS)
    same = step(chain, "vapour_pressure").locator("[data-value]").inner_text()
    assert same in before["vapour_pressure"]
    chain.get_by_role("button", name="Back to the build's numbers").click()
    assert {each: step(chain, each).inner_text() for each in before} == before
    assert displacement.input_value() == builds
    expect(chain.get_by_role("status")).to_have_text("")


def test_a_result_may_be_overtyped_too_and_a_band_given(chain: Page) -> None:
    mean_pressure = field(chain, "power", "brake mean effective pressure, in bar")
    mean_pressure.fill("10 ± 0.000001")
    mean_pressure.press("Enter")
    torque = number_in(step(chain, "torque").locator("[data-value]").inner_text())
    size = number_in(field(chain, "power", "displacement, in cc").input_value())
    # Heywood, Internal Combustion Engine Fundamentals, equation 2.20: M = p V / (2 pi n_R).
    assert torque == pytest.approx(10e5 * size * 1e-6 / (4 * math.pi), rel=0.01)


def test_what_a_log_gave_follows_the_number_that_is_written_for_it(chain: Page) -> None:
    before = step(chain, "charge_temperature").inner_text()
    assert ", measured" in before
    logged = field(chain, "charge_density", "temperature of the charge, in K")
    for written, value, after in (
        ("333.15 ± 2", "60.0 °C", ", 95 % band 58.0 to 62.0 °C, yours"),
        ("warm", "no number", ""),
    ):
        logged.fill(written)
        logged.press("Enter")
        expect(step(chain, "charge_temperature").locator("[data-value]")).to_have_text(value)
        expect(step(chain, "charge_temperature").locator("[data-after]")).to_have_text(after)
    chain.get_by_role("button", name="Back to the build's numbers").click()
    assert step(chain, "charge_temperature").inner_text() == before


@pytest.mark.parametrize(
    ("working", "label", "written", "said"),
    [
        (
            "engine_air_flow",
            "displacement, in cc",
            "0",
            "No number comes of displacement 0: it has to be above zero.",
        ),
        (
            "engine_air_flow",
            "displacement, in cc",
            "-1600",
            "No number comes of displacement -1600: it has to be above zero.",
        ),
        (
            "mixture_factor",
            "lambda",
            "3",
            "No number comes of lambda 3: what is worked out from it holds from 0.78 to 1.05.",
        ),
        (
            "vapour_pressure",
            "relative humidity, in %",
            "140",
            "No number comes of relative humidity 140: what is worked out from it holds from "
            "0\N{NO-BREAK SPACE}% to 100\N{NO-BREAK SPACE}%.",
        ),
        (
            "power",
            "displacement, in cc",
            "1,6 L",
            "No number comes of displacement “1,6 L”: write it as 1,234.5, with a band as "
            "1,234.5 ± 10.",
        ),
        (
            "manifold_absolute_pressure",
            "boost, in bar",
            "NaN",
            "No number comes of boost “NaN”: write it as 1,234.5, with a band as 1,234.5 ± 10.",
        ),
        (
            "manifold_absolute_pressure",
            "boost, in bar",
            "-5",
            "With these numbers there is no temperature at the compressor outlet.",
        ),
    ],
)
def test_what_cannot_be_is_named_and_no_number_stands(
    chain: Page, working: str, label: str, written: str, said: str
) -> None:
    wrong = field(chain, working, label).first
    wrong.fill(written)
    wrong.press("Enter")
    expect(chain.get_by_role("status")).to_have_text(said)
    expect(step(chain, "power").locator("[data-value]")).to_have_text("no number")
    expect(step(chain, "power").locator("[data-after]")).to_have_text("")
    wrong.fill("")
    wrong.press("Enter")
    expect(chain.get_by_role("status")).to_have_text("")


def test_a_working_of_its_own_reads_itself_again_from_disk(
    written_site: Path, browser: Browser
) -> None:
    page = browser.new_page()
    page.goto((written_site / "workings/injector_duty/index.html").as_uri())
    sheet = page.locator("[data-chain]").first
    count = sheet.get_by_label("number of injectors", exact=True)
    before = number_in(sheet.locator("[data-value]").inner_text())
    count.fill(f"{int(count.input_value()) * 2}")
    count.press("Enter")
    expect(sheet.get_by_role("status")).to_have_text(re.compile("^These are your numbers"))
    assert number_in(sheet.locator("[data-value]").inner_text()) < 0.6 * before
    expect(sheet.locator("[data-limit]")).to_have_text("within")
    expect(sheet.locator("[data-input=injector_count]")).to_have_text("8, yours")
    page.close()


def test_without_scripts_the_build_s_numbers_stand_in_the_working(
    written_site: Path, browser: Browser
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((written_site / "workings/power/index.html").as_uri())
    assert page.locator("input").count() == 0
    numbers = page.locator("[data-chain] mn.displacement").all_text_contents()
    assert numbers
    assert all(re.fullmatch(r"[\d,.]+", each) for each in numbers)
    context.close()
