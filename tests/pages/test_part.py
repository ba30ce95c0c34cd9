"""The page of one part."""

from __future__ import annotations

import pytest

from hoistbook.pages.desk import desk_of
from hoistbook.pages.page import Page
from hoistbook.pages.part import PartContext, part_pages
from tests.pages.sample import sample_material

PAGES = {each.address: each for each in part_pages(desk_of(sample_material()))}


def context(part_id: str) -> PartContext:
    page: Page = PAGES[f"/parts/{part_id}/"]
    assert isinstance(page.context, PartContext)
    return page.context


def entries(part_id: str) -> dict[str, str]:
    return {
        row.label: row.text.replace("\N{NO-BREAK SPACE}", "_") or row.links[0].text
        for row in context(part_id).entries
    }


def test_every_part_has_a_page_that_names_it_alone() -> None:
    titles = [page.title for page in PAGES.values()]
    assert len(titles) == len(set(titles)) == 8


def test_it_says_what_the_part_is_and_where_it_came_from() -> None:
    assert entries("pump-2") == {
        "Kind": "Fuel pump",
        "System": "Fuel",
        "How it came": "bought used",
        "Paid": "120.00_GBP",
        "Bought": "Pump bench, 1 November 2025",
        "Had to meet": "flow for 100 kW",
        "Good until": "1 January 2030",
        "First written down": "Episode 2",
    }
    assert entries("pump")["How it came"] == "bought new"
    assert entries("cradle")["Hours to make"] == "1.5_h"


@pytest.mark.parametrize(
    ("part_id", "lead"),
    [
        ("pump", "Replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar."),
        ("pump-2", "Fitted since episode 2."),
        ("cooler", "Planned, not bought."),
        ("gloves", "Status: on hand."),
    ],
)
def test_what_became_of_it_comes_first(part_id: str, lead: str) -> None:
    assert context(part_id).lead == lead


def test_a_fact_carries_its_evidence() -> None:
    (fact,) = context("pump").facts
    assert (fact.name, fact.value, fact.evidence) == ("Flow", "95\N{NO-BREAK SPACE}L/h", "stated")


def test_an_end_says_what_it_is_joined_to_from_either_side() -> None:
    (outlet,) = context("pump-2").ends
    (bore,) = context("bracket").ends
    assert outlet.joined is not None
    assert bore.joined is not None
    assert (outlet.joined.text, outlet.joined_end) == ("Bracket", "in")
    assert (bore.joined.text, bore.joined_end) == ("Larger fuel pump", "outlet")
    assert context("pump").ends[0].joined is None


def test_its_history_is_told_by_episode() -> None:
    told = [(link.text, row.kind, row.because) for link, row in context("pump").history]
    assert told == [
        ("Episode 1", "fitted", ""),
        ("Episode 2", "replaced", "ran out at 0.5 bar"),
    ]


def test_a_made_part_names_its_pieces() -> None:
    assert [each.text for each in context("cradle").pieces] == ["Fuel hose, 8 mm"]
