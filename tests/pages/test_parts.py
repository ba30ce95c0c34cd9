"""The list of all parts, once, with the episodes in which each stood in the build."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.pages.desk import desk_of
from hoistbook.pages.parts import PartsContext, parts_pages
from hoistbook.pages.parts_copy import parts_list_files
from hoistbook.pages.parts_listed import MOST_ROWS
from tests.pages.sample import FIRST, JOURNAL, SECOND, part, sample_material

(PAGE,) = parts_pages(desk_of(sample_material()))
assert isinstance(PAGE.context, PartsContext)
SYSTEMS = PAGE.context.systems
ROWS = {row.part.text: row for system in SYSTEMS for row in system.rows}


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", "_")


def test_systems_stand_in_the_order_of_a_car_and_every_part_in_its_own() -> None:
    assert [(each.id, each.title, len(each.rows), plain(each.spent)) for each in SYSTEMS] == [
        ("induction", "Induction", 1, "0.00_EUR"),
        ("charge-air", "Charge air", 1, "0.00_EUR"),
        ("fuel", "Fuel", 4, "258.30_EUR"),
        ("chassis", "Chassis", 1, "0.00_EUR"),
        ("workshop", "Workshop", 1, "0.00_EUR"),
    ]


def test_a_part_says_what_it_cost_where_and_what_it_had_to_meet() -> None:
    row = ROWS["Larger fuel pump"]
    assert row.cost is not None
    assert (plain(row.cost.text), row.cost.address) == ("150.00_EUR", "/tally/#amount-pump-2")
    assert (plain(row.price), row.bought, row.came) == (
        "120.00_GBP",
        "Pump bench, 1 November 2025",
        "bought used",
    )
    assert (row.ends, row.must, row.link) == (
        ("outlet: 8 mm barb",),
        "flow for 100 kW",
        "https://shop.example/pump-2",
    )


def test_a_part_says_from_and_until_which_episode_it_stood_in_the_build() -> None:
    assert (ROWS["Fuel pump"].start, ROWS["Fuel pump"].until) == (1, 2)
    assert ROWS["Fuel pump"].part.dropped
    assert (ROWS["Larger fuel pump"].start, ROWS["Larger fuel pump"].until) == (2, None)
    assert (ROWS["Airbox"].start, ROWS["Airbox"].came) == (0, "with the car")


def test_what_is_planned_is_in_the_list_and_says_so() -> None:
    row = ROWS["Charge cooler"]
    assert (row.status, row.part.fate, row.part.dropped) == (
        "planned",
        "planned, not bought",
        False,
    )


def test_the_description_counts_the_parts() -> None:
    assert PAGE.description == (
        "All 8 parts of A car for the hill: sizes, prices, where they came from, and what became "
        "of each."
    )


def test_a_long_list_is_filed_by_system_and_the_page_says_where() -> None:
    bolts = tuple(part(f"bolt-{n}", f"Bolt {n}", system="workshop") for n in range(MOST_ROWS))
    journal = replace(JOURNAL, episodes=(FIRST, replace(SECOND, got=bolts)))
    whole, *systems = parts_pages(desk_of(sample_material(journal)))
    assert isinstance(whole.context, PartsContext)
    assert whole.context.systems == ()
    assert [(each.id, each.link.address, each.count) for each in whole.context.filed][-1] == (
        "workshop",
        "/systems/workshop/",
        MOST_ROWS,
    )
    assert [each.address for each in systems][-1] == "/systems/workshop/"


def test_the_page_of_a_system_has_a_list_of_its_own_to_take_away() -> None:
    bolts = tuple(part(f"bolt-{n}", f"Bolt {n}", system="workshop") for n in range(MOST_ROWS))
    journal = replace(JOURNAL, episodes=(FIRST, replace(SECOND, got=bolts)))
    desk = desk_of(sample_material(journal))
    (fuel,) = [each for each in parts_pages(desk) if each.address == "/systems/fuel/"]
    assert isinstance(fuel.context, PartsContext)
    assert [each.file for each in fuel.context.copy.copies] == [
        "/data/parts-list-fuel.txt",
        "/data/parts-list-fuel.md",
        "/data/parts-list-fuel.csv",
    ]
    lines = parts_list_files(desk)["data/parts-list-fuel.txt"].decode().splitlines()
    assert lines[0] == "Parts list: A car for the hill, Fuel, as at episode 2"
    assert [line for line in lines[2:] if line.isupper()] == ["FUEL"]
    assert [line for line in lines if line.startswith("Caution: ")] != []
