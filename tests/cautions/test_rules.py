"""Which page owes which caution, why, and whether in full."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import pytest

from hoistbook.authored.records import Part
from hoistbook.cautions.caution import Owed
from hoistbook.cautions.rules import owed as owed_for
from hoistbook.cautions.rules import owed_by_workings
from hoistbook.cautions.subjects import estimates_in, part_subject, quantity_subject
from hoistbook.cautions.texts import CAUTIONS
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.figure import Figure, Figures, Key
from hoistbook.problems import Place
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


def test_a_note_is_prose_it_tells_of_work_and_only_names_things(owed: Written) -> None:
    reading = "{compression: 12 / 12 bar, note: 'warm engine, spark plugs out'}"
    page = owed(f"measured: [{reading}]")["/episodes/1/"]
    assert lines(page) == ["line electrics", "full exhaust-gas"]
    assert [each.because for each in page] == [("spark plugs",), ("warm engine",)]


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
    "prose",
    [
        "There was no lead lamp, no grinder, no charger.",
        "Without any welding, and never under the car.",
        "It need not be welded. We didn't solder it.",
        "I have no need for a jack, nor the axle stands.",
        "It hasn\u2019t been welded yet.",
        "A jack plug, a strut brace and a throttle cable.",
    ],
)
def test_what_was_not_there_or_is_called_alike_calls_for_nothing(
    owed: Written, prose: str
) -> None:
    assert owed("summary: s", prose=prose)["/episodes/1/"] == ()


@pytest.mark.parametrize(
    "prose",
    [
        "There was no room, so we welded it outdoors.",
        "It is not only welded but painted.",
        "Nobody helped. Welded alone.",
    ],
)
def test_a_negation_of_something_else_takes_no_caution_away(owed: Written, prose: str) -> None:
    assert lines(owed("summary: s", prose=prose)["/episodes/1/"]) == ["full welding"]


def test_a_tool_or_a_day_is_work_in_a_line_of_work_and_a_mention_in_prose(owed: Written) -> None:
    prose = "The neighbour spoke of the grinder, and of a morning on the rollers."
    pages = owed("summary: s", "work: ['Rollers and grinder, 2 h']", prose=prose)
    assert lines(pages["/episodes/1/"]) == ["line welding", "line power-runs"]
    assert lines(pages["/episodes/2/"]) == ["full welding", "full power-runs"]


def test_the_prose_is_no_reason_where_a_field_is_one(owed: Written) -> None:
    page = owed("work: ['Weld the bung, 2 h']", prose="Welded, after grinding.")["/episodes/1/"]
    assert [(each.caution.id, each.because) for each in page] == [("welding", ("Weld the bung",))]


def test_prose_that_tells_of_work_outdoes_a_field_that_only_names_the_part(owed: Written) -> None:
    page = owed("got: [{part: p, came: given, system: cooling}]", prose="I drained the coolant.")[
        "/episodes/1/"
    ]
    assert lines(page) == ["full hot-coolant"]
    assert page[0].because == ("drained the coolant",)


@pytest.mark.parametrize(
    ("name", "caution"),
    [
        ("Fuel-proof seal", "fuel"),
        ("Cable 4 mm2, red and black", "electrics"),
        ("Fuses assorted", "electrics"),
        ("Weld-in bung", "welding"),
    ],
)
def test_a_part_without_a_system_owes_by_what_it_is(name: str, caution: str) -> None:
    part = Part(id="p", name=name, place=Place("build.yaml"))
    assert lines(owed_for(full=[part_subject(part)])) == [f"full {caution}"]


def test_a_hose_that_burst_and_a_new_clamp_owe_the_caution_on_charge_air(owed: Written) -> None:
    pages = owed(
        "done: [{broke: elbow}]",
        "got: [{part: clamp, came: given, kind: clamp}]\ndone: [{fitted: clamp}]",
        parts="{part: elbow, name: Elbow, system: charge air}",
    )
    assert lines(pages["/episodes/1/"]) == ["full compressed-air"]
    assert lines(pages["/episodes/2/"]) == ["full compressed-air", "full road-law"]
    assert lines(pages["/parts/elbow/"]) == ["line compressed-air"]


def test_the_page_of_a_turbocharger_owes_hot_oil_and_exhaust(owed: Written) -> None:
    part = "{part: turbo, name: Big one, kind: turbocharger}"
    assert lines(owed("summary: s", parts=part)["/parts/turbo/"]) == [
        "line hot-oil",
        "line rotating-parts",
        "line exhaust-gas",
        "line compressed-air",
    ]


def test_work_of_an_episode_is_preceded_by_the_lines_of_what_it_calls_for(owed: Written) -> None:
    pages = owed("work: ['Welding, 1 h']", prose="The Radiator comes next year.")
    assert [(each.caution.id, each.ahead) for each in pages["/episodes/1/"]] == [
        ("hot-coolant", False),
        ("welding", True),
    ]
    assert not any(each.ahead for each in (*pages["/"], *pages["/changes/"]))


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
        "/workings/chain/beside/": ["line fuel", "line estimates"],
        "/workings/chain/pipes/": ["line fuel", "line estimates"],
        "/claims/": ["line fuel", "line estimates"],
        "/workings/injector_duty/": ["line fuel", "full estimates"],
        "/workings/power_to_mass/": [],
        "/workings/pressure_ratio/": ["full estimates"],
    }


@pytest.mark.parametrize(
    ("named", "caution"),
    [
        ("fuel", "fuel"),
        ("injector", "fuel"),
        ("pump_", "fuel"),
        ("coolant", "hot-coolant"),
        ("oil_", "hot-oil"),
        ("voltage", "electrics"),
        ("wheel_power", "power-runs"),
        ("wheel_torque", "power-runs"),
    ],
)
def test_workings_owe_the_caution_of_what_their_quantity_is_about(
    named: str, caution: str
) -> None:
    about = {each.quantity for each in CATALOGUE if each.quantity.startswith(named)}
    for quantity in about:
        assert f"line {caution}" in lines(owed_for(lines=[quantity_subject(quantity)])), quantity


def test_a_page_with_estimates_owes_their_line_and_one_with_measurements_does_not() -> None:
    unsure = Figures(episode=1, figures=(figure("power", Evidence.ESTIMATED),))
    sure = Figures(episode=1, figures=(figure("power", Evidence.MEASURED),))
    assert lines(owed_for(lines=estimates_in(unsure))) == ["line estimates"]
    assert lines(owed_for(lines=estimates_in(sure))) == []


def test_a_join_that_calls_for_a_caution_is_named_as_its_page_prints_it(owed: Written) -> None:
    named = WORK["look-alikes"].replace("{part: block,", "{part: block, name: Engine block,")
    (found,) = [each for each in owed(named)["/episodes/1/"] if each.caution.id == "look-alikes"]
    assert found.because == ("Engine block gallery to Adapter block end",)


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
