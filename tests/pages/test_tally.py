"""The running cost as pages print it; its sums have tests of their own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.authored.records import Done, Verb
from hoistbook.compare.verdicts import Comparison
from hoistbook.pages.cost_of_power import cost_of_power
from hoistbook.pages.desk import desk_of
from hoistbook.pages.tally import TallyContext, tally_of, tally_pages
from tests.pages.sample import FIRST, JOURNAL, PLACE, SECOND, curve, euro, sample_material

DESK = desk_of(sample_material())
(PAGE,) = tally_pages(DESK)
assert isinstance(PAGE.context, TallyContext)
CONTEXT = PAGE.context


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", "_")


def test_it_stands_as_at_an_episode_and_leaves_out_what_is_nothing() -> None:
    assert [(row.label, plain(row.text)) for row in tally_of(DESK, 1).lines] == [
        ("Spent in this episode", "108.30_EUR"),
        ("Spent so far", "1,008.30_EUR"),
        ("The same at list price", "1,018.30_EUR"),
        ("Planned", "140.00_EUR"),
        ("Budget", "2,000.00_EUR"),
        ("Left of the budget", "991.70_EUR"),
    ]


def test_without_a_budget_none_is_spoken_of() -> None:
    desk = desk_of(sample_material(replace(JOURNAL, budget=None)))
    labels = [row.label for row in tally_of(desk, 2).lines]
    assert not {"Budget", "Left of the budget"} & set(labels)
    assert desk.margin().budget == ""


def test_a_part_without_a_price_is_named() -> None:
    assert [each.text for each in tally_of(DESK, 2).unpriced] == ["Bracket"]


def test_the_running_total_runs_from_the_car_as_bought() -> None:
    assert [(row.episode.text, plain(row.here), plain(row.total)) for row in CONTEXT.running] == [
        ("As bought", "900.00_EUR", "900.00_EUR"),
        ("Episode 1", "108.30_EUR", "1,008.30_EUR"),
        ("Episode 2", "245.00_EUR", "1,253.30_EUR"),
    ]


def test_every_amount_stands_once_with_its_own_currency_and_stage() -> None:
    assert [
        (row.number, row.what, row.stage, plain(row.amount), plain(row.home))
        for row in CONTEXT.rows
    ] == [
        (0, "The car", "", "", "900.00_EUR"),
        (1, "Fuel pump", "", "", "95.06_EUR"),
        (1, "Fuel hose, 8 mm", "", "", "13.24_EUR"),
        (1, "Charge cooler", "planned", "", "140.00_EUR"),
        (2, "Larger fuel pump", "", "120.00_GBP", "150.00_EUR"),
        (2, "Day on the rollers", "", "", "95.00_EUR"),
    ]


@pytest.mark.parametrize(
    ("id_", "fate", "mark"),
    [("pump", "", "sold"), ("airbox", "sold in episode 2 for 40.00_EUR", "")],
    ids=["told where it was bought", "told here"],
)
def test_a_sale_is_said_once(id_: str, fate: str, mark: str) -> None:
    sold = Done(verb=Verb.SOLD, part=id_, amount=euro("40"), place=PLACE)
    second = replace(SECOND, done=(*SECOND.done, sold))
    (page,) = tally_pages(desk_of(sample_material(replace(JOURNAL, episodes=(FIRST, second)))))
    assert isinstance(page.context, TallyContext)
    (row,) = (each for each in page.context.rows if each.home.startswith("\N{MINUS SIGN}"))
    assert row.part is not None
    assert (plain(row.part.fate), row.kind) == (fate, mark)


def test_the_description_says_the_total() -> None:
    assert plain(PAGE.description) == (
        "What A car for the hill has cost so far: 1,253.30_EUR, every amount once, by episode and "
        "by system."
    )


def run(episode: int, watts: float, at: str = "wheels") -> Comparison:
    (made,) = sample_material().comparisons
    return replace(
        made, episode=episode, run=replace(made.run, at=at), measured=curve(0, watts / 2, watts)
    )


def test_a_kilowatt_gained_has_cost_what_was_spent_between_two_runs() -> None:
    material = replace(sample_material(), comparisons=(run(1, 46e3), run(2, 66e3)))
    cost = cost_of_power(desk_of(material), 2)
    assert cost is not None
    assert cost.number is not None
    # 245 EUR of episode 2 over 20 kW; half widths of 4.6 and 6.6 kW make one of 8.04 kW:
    # 245 / 28.04 = 8.7 and 245 / 11.96 = 20.5.
    assert (plain(cost.number.value), plain(cost.number.band), cost.number.evidence) == (
        "12_EUR/kW",
        "9 to 20_EUR/kW",
        "measured",
    )
    assert plain(cost.note).startswith(
        "245.00_EUR spent between the run of episode 1, 46_kW at the wheels, and that of episode 2"
    )


@pytest.mark.parametrize(
    "runs",
    [(run(2, 66e3),), (run(1, 46e3, "crank"), run(2, 66e3)), (run(1, 60e3), run(2, 66e3))],
    ids=["one run", "at different places", "the bands leave open whether anything was gained"],
)
def test_without_a_sure_gain_no_cost_of_power_is_given(runs: tuple[Comparison, ...]) -> None:
    assert cost_of_power(desk_of(replace(sample_material(), comparisons=runs)), 2) is None
