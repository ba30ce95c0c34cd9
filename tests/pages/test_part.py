"""The page of one part."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.authored.records import Done, Verb
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.page import Page
from hoistbook.pages.part import PartContext, part_pages
from hoistbook.pages.tally import AmountsContext, tally_pages
from tests.pages.sample import FIRST, JOURNAL, PLACE, SECOND, euro, part, sample_material

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


def cost(desk: Desk, part_id: str) -> list[tuple[str, str, str, str]]:
    """Return what a part cost: label, amount, note, address."""
    made = next(each.context for each in part_pages(desk) if each.address == f"/parts/{part_id}/")
    assert isinstance(made, PartContext)
    return [
        (
            row.label,
            (row.links[0].text if row.links else row.text).replace("\N{NO-BREAK SPACE}", "_"),
            row.note.replace("\N{NO-BREAK SPACE}", "_"),
            row.links[0].address if row.links else "",
        )
        for row in made.cost
    ]


def test_what_it_cost_leads_to_its_amount_in_the_tally() -> None:
    desk = desk_of(sample_material())
    at = "/tally/#amount-pump-2"
    assert cost(desk, "pump-2") == [
        ("Paid", "120.00_GBP", "", at),
        ("Rate", "0.8 GBP for 1 EUR, invented", "", at),
        ("In the tally", "150.00_EUR", "", at),
    ]
    at = "/tally/#amount-pump"
    assert cost(desk, "pump") == [
        ("Paid", "89.00_EUR", "", at),
        ("Its share of postage, tax and discount", "6.06_EUR", "", at),
        ("In the tally", "95.06_EUR", "", at),
        ("List price", "99.00_EUR", "", ""),
    ]
    assert cost(desk, "bracket") == []


def test_a_price_that_is_not_paid_says_so() -> None:
    at = "/tally/#amount-cooler"
    assert cost(desk_of(sample_material()), "cooler") == [("Price, planned", "140.00_EUR", "", at)]


def test_what_came_back_for_it_has_an_amount_of_its_own() -> None:
    sold = Done(verb=Verb.SOLD, part="pump", amount=euro("40"), place=PLACE)
    second = replace(SECOND, done=(*SECOND.done, sold))
    material = sample_material(replace(JOURNAL, episodes=(FIRST, second)))
    told = cost(desk_of(material), "pump")
    assert told[-1] == ("Sold for", "40.00_EUR", "", "/tally/#amount-pump_2")


def test_a_part_leads_to_the_sheet_on_which_its_amount_is_filed() -> None:
    many = tuple(part(f"piece-{at}", f"Piece {at}", paid=euro("1")) for at in range(120))
    receipt = replace(FIRST.bought[0], parts=(*FIRST.bought[0].parts, *many))
    first = replace(FIRST, bought=(receipt,))
    desk = desk_of(sample_material(replace(JOURNAL, episodes=(first, SECOND))))
    assert cost(desk, "pump")[0][3] == "/tally/from-1/#amount-pump"
    (sheet,) = [each for each in tally_pages(desk) if each.address == "/tally/from-1/"]
    assert isinstance(sheet.context, AmountsContext)
    assert "amount-pump" in [row.id for row in sheet.context.rows]


def test_an_end_says_what_it_is_joined_to_from_either_side() -> None:
    (outlet,) = context("pump-2").ends
    (bore,) = context("bracket").ends
    assert outlet.joined is not None
    assert bore.joined is not None
    assert (outlet.joined.text, outlet.joined_end) == ("Bracket", "in")
    assert (bore.joined.text, bore.joined_end) == ("Larger fuel pump", "outlet")
    assert context("pump").ends[0].joined is None


def test_its_history_is_told_by_episode() -> None:
    assert [(each.episode.text, each.what) for each in context("pump").history] == [
        ("Episode 1", "fitted"),
        ("Episode 2", "replaced by Larger fuel pump: ran out at 0.5 bar"),
    ]


def test_a_made_part_names_its_pieces() -> None:
    assert [each.text for each in context("cradle").pieces] == ["Fuel hose, 8 mm"]
