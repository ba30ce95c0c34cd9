"""What comes next: planned, waited for, soon to expire, numbers missing."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.authored.records import Done, PieceUsed, Verb
from hoistbook.pages.desk import desk_of
from hoistbook.pages.next import NextContext, next_page
from tests.pages.sample import FIRST, JOURNAL, PLACE, SECOND, euro, part, sample_material


def context(**more: object) -> NextContext:
    second = replace(SECOND, **more)  # type: ignore[arg-type]
    journal = replace(JOURNAL, episodes=(FIRST, second))
    made = next_page(desk_of(sample_material(journal))).context
    assert isinstance(made, NextContext)
    return made


def test_what_is_planned_stands_with_its_price_and_since_when() -> None:
    (row,) = context().planned
    assert (row.part.text, row.price, row.since.text) == (
        "Charge cooler",
        "140.00\N{NO-BREAK SPACE}EUR",
        "Episode 1",
    )


def test_what_is_ordered_is_waited_for() -> None:
    new = part("valve", "Boost valve", system="charge air", paid=euro("60"))
    order = Done(verb=Verb.ORDERED, part="valve", place=PLACE, new_part=new)
    assert [row.part.text for row in context(done=(*SECOND.done, order)).waiting] == [
        "Boost valve"
    ]


def test_what_was_replaced_does_not_wait_on_the_shelf() -> None:
    names = [row.part.text for row in context().on_hand]
    assert "Fuel pump" not in names
    assert "Bracket" in names


def test_what_nobody_fits_to_a_car_does_not_wait_on_the_shelf() -> None:
    overalls = part("overalls", "Overalls", kind="clothing", system="safety")
    names = [row.part.text for row in context(got=(*SECOND.got, overalls)).on_hand]
    assert names == ["Fuel hose, 8 mm", "Bracket", "Pump cradle"]


def test_what_expires_stands_by_its_date() -> None:
    assert [(row.part.text, row.until) for row in context().expiring] == [
        ("Larger fuel pump", "1 January 2030")
    ]


def test_a_number_that_is_missing_says_what_to_give() -> None:
    assert [(row.title, row.missing) for row in context().missing] == [
        ("Fuel pump margin", ("flow of pump-2",))
    ]


def test_of_pieces_partly_used_only_those_left_stand_with_their_price() -> None:
    bends = part("bends", "Bends", count=6, paid=euro("60.50"))
    receipt = replace(FIRST.bought[0], parts=(bends,), postage=None)
    pipe = part("pipe", "Pipe", made_from=(PieceUsed(part="bends", count=4, place=PLACE),))
    rows = context(bought=(receipt,), made=(pipe,)).on_hand
    assert [
        (row.count, row.price.replace("\N{NO-BREAK SPACE}", " "))
        for row in rows
        if row.part.text == "Bends"
    ] == [("2 off", "20.17 EUR")]
