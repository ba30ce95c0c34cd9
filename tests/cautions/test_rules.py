"""Which page owes which caution, why, and whether in full."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import pytest

from hoistbook.cautions.caution import Owed
from hoistbook.cautions.rules import owed as owed_for
from hoistbook.cautions.rules import owed_by_workings
from hoistbook.cautions.subjects import estimates_in
from hoistbook.cautions.texts import CAUTIONS
from hoistbook.figures.figure import Figure, Figures, Key
from hoistbook.values.evidence import Evidence

Pages = dict[str, tuple[Owed, ...]]
Written = Callable[..., Pages]


def lines(owed: Iterable[Owed]) -> list[str]:
    return [f"{'full' if each.full else 'line'} {each.caution.id}" for each in owed]


# One piece of work for each hazard, as a careful author writes it down.
WORK = {
    "fuel": "got: [{part: p, came: given, system: fuel}]\ndone: [{fitted: p}]",
    "ethanol": "settings: {fuel: ethanol blend 74 %}",
    "hot-coolant": "got: [{part: p, came: given, system: cooling}]\ndone: [{fitted: p}]",
    "hot-oil": "work: ['Oil change, 1 h']",
    "look-alikes": (
        "got:\n"
        "  - {part: block, came: given, ends: {gallery: 1/8 BSPT female}}\n"
        "  - {part: adapter, came: given, ends: {block end: 1/8 NPT male}}\n"
        "done: [{fitted: [block, adapter]}]\n"
        "joins: [block gallery to adapter block end]"
    ),
    "lifting": "work: ['Jacked up and on axle stands, 1 h']",
    "springs": "work: ['Front struts apart, 3 h']",
    "welding": "work: ['Weld the drain bung into the sump, 2.5 h']",
    "electrics": "work: ['Soldered the sensor plugs, 2.5 h']",
    "brakes": "got: [{part: p, came: given, system: brakes}]\ndone: [{fitted: p}]",
    "rotating-parts": "work: ['Timing belt, 4 h']",
    "exhaust-gas": "chapters: ['0:00 First start']",
    "power-runs": "work: ['A morning on the rollers, 4 h']",
    "compressed-air": "work: ['Pressure test of the charge pipes, 1 h']",
    "road-law": "got: [{part: p, came: given, system: body}]\ndone: [{fitted: p}]",
    "competition-rules": "spent: ['Scrutineering, the club, 20 EUR']",
}


@pytest.mark.parametrize(("caution", "work"), WORK.items(), ids=WORK)
def test_work_calls_for_the_full_text(owed: Written, caution: str, work: str) -> None:
    assert f"full {caution}" in lines(owed(work)["/episodes/1/"])


def test_every_caution_but_that_on_estimates_is_called_for_by_some_work() -> None:
    assert [*WORK, "estimates"] == [caution.id for caution in CAUTIONS]


def test_a_power_run_owes_its_own_caution_and_that_on_exhaust_gas(owed: Written) -> None:
    run = "power run: {log: run.csv, at: wheels, power standard: none}"
    page = owed(f"measured: [{run}]")["/episodes/1/"]
    assert lines(page) == ["full exhaust-gas", "full power-runs"]
    assert [each.because for each in page] == [("power run",)] * 2


def test_a_measurement_owes_what_its_note_tells_of(owed: Written) -> None:
    reading = "{compression: 12 / 12 bar, note: 'warm engine, spark plugs out'}"
    page = owed(f"measured: [{reading}]")["/episodes/1/"]
    assert lines(page) == ["full electrics", "full exhaust-gas"]
    assert page[0].because == ("compression",)


def test_selling_the_car_owes_nothing(owed: Written) -> None:
    assert owed("done: [{sold: car, for: 900 EUR}]")["/episodes/1/"] == ()


def test_the_prose_owes_the_full_text_of_the_work_it_describes(owed: Written) -> None:
    page = owed("summary: s", prose="We welded it, under the car.")["/episodes/1/"]
    assert lines(page) == ["full lifting", "full welding"]
    assert [each.because for each in page] == [("under the car",), ("welded",)]


def test_the_prose_owes_a_line_for_a_thing_it_only_names(owed: Written) -> None:
    page = owed("summary: s", prose="The Radiator comes next year.")["/episodes/1/"]
    assert lines(page) == ["line hot-coolant"]
    assert page[0].because == ("Radiator",)


def test_quiet_work_owes_nothing(owed: Written) -> None:
    assert owed("work: ['Sweeping the floor, 1 h']", prose="It is tidy.")["/episodes/1/"] == ()


@pytest.mark.parametrize(
    ("before", "verb"),
    [
        ("took off", "fitted"),
        ("arrived", "took off"),
        ("took off", "tried"),
        ("arrived", "broke"),
    ],
)
def test_a_part_worked_on_owes_the_full_text(owed: Written, before: str, verb: str) -> None:
    part = "{part: p, name: Fine part, system: cooling}"
    pages = owed(f"done: [{{{before}: p}}]", f"done: [{{{verb}: p}}]", parts=part)
    assert lines(pages["/episodes/2/"])[0] == "full hot-coolant"
    assert pages["/episodes/2/"][0].because == ("Fine part",)


@pytest.mark.parametrize(
    "only_named",
    [
        "bought: [{from: S, date: 2026-01-20, parts: [{part: p, paid: 9 EUR, system: cooling}]}]",
        "got: [{part: p, came: given, system: cooling}]",
        "done: [{planned: {part: p, paid: 9 EUR, system: cooling}}]",
        "got: [{part: p, came: given, system: cooling}]\ndone: [{sold: p}]",
    ],
)
def test_a_part_only_named_owes_a_line(owed: Written, only_named: str) -> None:
    assert lines(owed(only_named)["/episodes/1/"]) == ["line hot-coolant"]


def test_making_and_joining_are_work(owed: Written) -> None:
    made = "made: [{part: q, system: fuel}]\njoins: [p a to q b]"
    page = owed(made, parts="{part: p, system: brakes}")["/episodes/1/"]
    assert lines(page) == ["full fuel", "full lifting", "full brakes"]


def test_part_pages_and_lists_owe_lines(owed: Written) -> None:
    pages = owed(
        """
        got:
          - {part: pump, came: given, system: fuel}
          - {part: mat, came: given, system: workshop}
        done:
          - fitted: pump
          - planned: {part: disc, paid: 9 EUR, system: brakes}
        """,
        parts="{part: radiator, system: cooling}",
    )
    assert lines(pages["/parts/pump/"]) == ["line fuel", "line road-law"]
    assert lines(pages["/parts/mat/"]) == []
    assert lines(pages["/parts/radiator/"]) == ["line hot-coolant"]
    assert lines(pages["/parts/"]) == [
        "line fuel",
        "line hot-coolant",
        "line lifting",
        "line brakes",
        "line road-law",
    ]
    assert lines(pages["/next/"]) == ["line lifting", "line brakes"]
    assert lines(pages["/spec/0/"]) == ["line hot-coolant"]
    assert lines(pages["/spec/1/"]) == ["line fuel", "line hot-coolant", "line road-law"]
    assert pages["/spec/"] == pages["/spec/1/"]
    assert pages["/tally/"] == ()


def test_the_page_of_cautions_owes_all_of_them_in_full(owed: Written) -> None:
    page = owed("summary: s")["/cautions/"]
    assert [each.caution for each in page] == list(CAUTIONS)
    assert all(each.full for each in page)


def test_changes_and_the_first_page_owe_lines_of_the_episodes(owed: Written) -> None:
    pages = owed("work: ['Oil change, 1 h']", "work: ['Welding, 1 h']", "work: ['Brazing, 1 h']")
    assert lines(pages["/changes/"]) == ["line hot-oil", "line lifting", "line welding"]
    assert pages["/changes/"][2].because == ("Welding", "Brazing")
    assert lines(pages["/"]) == ["line welding", "line road-law", "line estimates"]


def test_the_car_on_alcohol_owes_its_caution_on_every_sheet_from_then_on(owed: Written) -> None:
    pages = owed("settings: {fuel: methanol}", "summary: s")
    assert lines(pages["/episodes/2/"]) == ["line ethanol"]
    assert lines(pages["/spec/0/"]) == []
    assert lines(pages["/spec/2/"]) == ["line ethanol"]


def figure(quantity: str, evidence: Evidence) -> Figure:
    return Figure(
        key=Key(quantity),
        value=1.0,
        low=0.9,
        high=1.1,
        evidence=evidence,
        inputs=(),
        formula="",
        episode=1,
    )


def test_workings_say_in_full_what_an_estimate_is() -> None:
    figures = (
        figure("injector_duty", Evidence.ESTIMATED),
        figure("pressure_ratio", Evidence.ASSUMED),
        figure("power_to_mass", Evidence.MEASURED),
    )
    pages = owed_by_workings([Figures(episode=1, figures=figures)])
    assert {address: lines(page) for address, page in pages.items()} == {
        "/workings/": ["line fuel", "line estimates"],
        "/workings/chain/": ["line fuel", "line estimates"],
        "/workings/injector_duty/": ["line fuel", "full estimates"],
        "/workings/power_to_mass/": [],
        "/workings/pressure_ratio/": ["full estimates"],
    }


def test_a_page_with_estimates_owes_their_line_and_one_with_measurements_does_not() -> None:
    unsure = Figures(episode=1, figures=(figure("power", Evidence.ESTIMATED),))
    sure = Figures(episode=1, figures=(figure("power", Evidence.MEASURED),))
    assert lines(owed_for(lines=estimates_in(unsure))) == ["line estimates"]
    assert lines(owed_for(lines=estimates_in(sure))) == []


def test_a_look_alike_that_was_put_right_is_owed_by_its_episode_alone(owed: Written) -> None:
    right = """
        got: [{part: taper, came: given, ends: {block end: 1/8 BSPT male}}]
        done: [{took off: adapter}, {fitted: taper}]
        joins: [block gallery to taper block end]
    """
    pages = owed(WORK["look-alikes"], right)

    owing = [address for address, page in pages.items() if "look-alikes" in str(page)]
    assert owing == ["/cautions/", "/episodes/1/", "/changes/"]


def test_a_look_alike_that_holds_is_owed_by_all_pages_that_show_it(owed: Written) -> None:
    pages = owed(WORK["look-alikes"])

    owing = [address for address, page in pages.items() if "look-alikes" in str(page)]
    assert owing == [
        "/cautions/",
        "/circuits/",
        "/circuits/bench/",
        "/episodes/1/",
        "/parts/block/",
        "/parts/adapter/",
        "/changes/",
        "/",
    ]
