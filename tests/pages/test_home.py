"""The home page: one paragraph and one ruled table."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from hoistbook.pages.desk import desk_of
from hoistbook.pages.home import HomeContext, home_page
from hoistbook.pages.page import Material
from hoistbook.pages.tally import tally_of
from hoistbook.values.money import Money
from tests.pages.sample import JOURNAL, sample_material


def context(material: Material) -> HomeContext:
    made = home_page(desk_of(material)).context
    assert isinstance(made, HomeContext)
    return made


def told(material: Material) -> list[str]:
    lines = []
    for row in context(material).rows:
        number = row.number
        said = [row.text]
        if number:
            said += [number.value, number.evidence, number.band, number.headline]
        said += [link.text for link in row.links] + [row.note]
        lines.append(f"{row.label}: " + "; ".join(each for each in said if each))
    return [line.replace("\N{NO-BREAK SPACE}", "_") for line in lines]


def test_it_says_what_car_and_goal_how_far_what_cost_what_power_and_what_is_new() -> None:
    assert told(sample_material()) == [
        "Car: Small car 1.6; its spec sheet",
        "Goal: 100 kW at the wheels",
        "So far: 2 episodes, the latest:; The second pump; 8 November 2025",
        "Has cost: 1,253.30_EUR; the whole tally; 746.70_EUR left of the budget of 2,000.00_EUR",
        "Makes, measured: 66_kW; measured; 59 to 73_kW; highest, at 6,000_rpm; "
        "at the wheels, not referred to any reference air, Episode 2",
        "Claims: 1 does not hold; all claims",
        "Latest change: Fuel pump: replaced by Larger fuel pump; Episode 2",
    ]


def test_a_budget_that_is_overrun_is_said_so_in_words() -> None:
    material = sample_material(replace(JOURNAL, budget=Money(Decimal("1000"), "EUR")))
    over = "over the budget of 1,000.00_EUR by 253.30_EUR"
    assert told(material)[3] == f"Has cost: 1,253.30_EUR; the whole tally; {over}"
    assert context(material).margin.budget == "over budget by 253.30\N{NO-BREAK SPACE}EUR"
    assert context(sample_material()).margin.budget.startswith("746.70")
    lines = {row.label: row.text for row in tally_of(desk_of(material), 2).lines}
    assert lines["Over the budget"] == "253.30\N{NO-BREAK SPACE}EUR"


def test_without_a_run_it_says_what_is_estimated() -> None:
    rows = told(replace(sample_material(), comparisons=()))
    assert rows[4] == (
        "Makes, by estimate: 80_kW; estimated; 71 to 89_kW; highest, at 6,000_rpm; "
        "at the crank, not referred to any reference air"
    )


def test_a_run_of_an_earlier_episode_stands_with_the_estimate_of_now() -> None:
    material = sample_material()
    earlier = replace(material.comparisons[0], episode=1)
    labels = [row.label for row in context(replace(material, comparisons=(earlier,))).rows]
    assert labels[4:6] == ["Makes, measured", "Makes, by estimate"]


def test_a_journal_of_a_title_alone_has_a_home_page() -> None:
    journal = replace(JOURNAL, about=None, goal=None, car_name=None, budget=None)
    material = sample_material(journal)
    assert home_page(desk_of(material)).description == "The journal of a build."
    assert context(material).about == ""
