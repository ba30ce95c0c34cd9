"""The running cost as pages print it; its sums have tests of their own."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.pages.desk import desk_of
from hoistbook.pages.tally import TallyContext, tally_of, tally_page
from tests.pages.sample import JOURNAL, sample_material

DESK = desk_of(sample_material())
PAGE = tally_page(DESK)
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


def test_the_description_says_the_total() -> None:
    assert plain(PAGE.description) == (
        "What A car for the hill has cost so far: 1,253.30_EUR, every amount once, by episode and "
        "by system."
    )
