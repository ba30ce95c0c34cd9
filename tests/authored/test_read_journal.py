"""A journal of two episodes becomes the records it says."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from hoistbook.authored.records import (
    Came,
    Done,
    End,
    Given,
    Part,
    PieceUsed,
    Receipt,
    Spent,
    Verb,
)
from hoistbook.problems import Place
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity
from tests.authored.journals import FIRST, episode_of, journal_of

BUILD_FILE = """\
format: 1
title: From the barn to the hill
author: The owner
about: A small car.
goal: 100 kW at the wheels
address: https://journal.example/hill/
language: en
currency: EUR
also show: [GBP, USD]
numbers: point
units: imperial
budget: 6500 EUR
theme: jobsheet
car:
  name: Dunnock 1.6
  paid: 900 EUR
  date: 2025-08-30
  mass: 948 kg, measured
  engine: {displacement: 1598 cc, cylinders: 4}
  gearing: {gears: [3.55, 1.95], final drive: 3.94}
settings: {boost: none, fuel: petrol}
parts:
  - {part: airbox, name: Airbox with panel filter, kind: airbox}
spent: ["Trailer, hire shop, 60 EUR"]
private: the seller's number
"""


def eur(amount: str) -> Money:
    return Money(Decimal(amount), "EUR")


def at(line: int, column: int, text: str, file: str = FIRST) -> Place:
    return Place(file, line, column, text)


def test_build_yaml_tells_of_the_journal_and_the_car_as_bought(tmp_path: Path) -> None:
    journal = journal_of(tmp_path, {"build.yaml": BUILD_FILE, FIRST: "---\ntitle: One\n---\n"})

    assert (journal.title, journal.author, journal.about, journal.goal, journal.address) == (
        "From the barn to the hill",
        "The owner",
        "A small car.",
        "100 kW at the wheels",
        "https://journal.example/hill/",
    )
    assert (journal.currency, journal.also_show, journal.budget) == (
        "EUR",
        ("GBP", "USD"),
        eur("6500"),
    )
    assert (journal.numbers, journal.units, journal.theme, journal.car_name) == (
        "point",
        "imperial",
        "jobsheet",
        "Dunnock 1.6",
    )
    start = journal.start
    assert start is not None
    assert {key: given.value for key, given in start.car.items()} == {
        "mass": Quantity(948.0, "kg", "948 kg", evidence=Evidence.MEASURED),
        "engine displacement": Quantity(pytest.approx(1598e-6), "cc", "1598 cc"),
        "engine cylinders": 4.0,
        "gearing gears": "3.55 / 1.95",
        "gearing final drive": 3.94,
    }
    assert start.car["mass"].evidence is Evidence.MEASURED
    assert {key: given.value for key, given in start.settings.items()} == {
        "boost": "none",
        "fuel": "petrol",
    }
    assert [(part.id, part.system, part.came, part.came_with) for part in start.got] == [
        ("airbox", "induction", Came.WITH, None)
    ]
    assert [(each.what, each.to, each.amount, each.date) for each in start.spent] == [
        ("Dunnock 1.6", None, eur("900"), date(2025, 8, 30)),
        ("Trailer", "hire shop", eur("60"), None),
    ]


def test_a_title_is_all_an_episode_needs(tmp_path: Path) -> None:
    files = {
        "episodes/02-two.md": "\ufeff---\r\ntitle: Two\r\n---\r\nProse.\r\n",
        FIRST: "---\ntitle: One\n---",
    }
    one, two = journal_of(tmp_path, files).episodes

    assert (one.number, one.title, one.file, one.prose) == (1, "One", FIRST, "")
    assert (two.number, two.title, two.prose, two.prose_line) == (2, "Two", "Prose.\n", 4)


def test_a_number_in_the_file_beats_the_one_in_the_folders_name(tmp_path: Path) -> None:
    assert episode_of(tmp_path, "episode: 12").number == 12


def test_a_line_does_for_a_part(tmp_path: Path) -> None:
    lines = """\
bought:
  - from: Turbine shop
    date: 2026-01-20
    number: R-7
    postage: 38 EUR
    discount: 5 EUR
    tax: 1 EUR
    charged: 690.80 EUR
    parts:
      - Turbine inlet gasket, 2 off, 6.40 EUR each, used
      - Flange, with turbine-inlet-gasket"""
    (receipt,) = episode_of(tmp_path, lines).bought

    assert receipt == Receipt(
        supplier="Turbine shop",
        date=date(2026, 1, 20),
        number="R-7",
        postage=eur("38"),
        discount=eur("5"),
        tax=eur("1"),
        charged=eur("690.80"),
        place=at(4, 5, "  - from: Turbine shop"),
        parts=(
            Part(
                id="turbine-inlet-gasket",
                name="Turbine inlet gasket",
                system="exhaust",
                count=2,
                paid=eur("12.80"),
                came=Came.USED,
                place=at(12, 9, "      - Turbine inlet gasket, 2 off, 6.40 EUR each, used"),
            ),
            Part(
                id="flange",
                name="Flange",
                came=Came.WITH,
                came_with="turbine-inlet-gasket",
                place=at(13, 9, "      - Flange, with turbine-inlet-gasket"),
            ),
        ),
    )


A_PART = """\
got:
  - part: injectors
    kind: injectors
    name: Injectors, set of four
    count: 4
    kept: 4
    maker: A maker
    part number: "0123"
    list: 20 EUR each
    came: already owned
    facts: {static flow: "340 cc/min at 3 bar, measured", colour: grey, pin: 6.0}
    ends: {inlet: 14 mm O-ring}
    link: https://shop.example/i
    must: flow for 100 kW
    good until: 2030-12-31
    note: bench tested"""
FACTS_LINE = '    facts: {static flow: "340 cc/min at 3 bar, measured", colour: grey, pin: 6.0}'


def test_a_mapping_says_all_there_is_to_say_of_a_part(tmp_path: Path) -> None:
    (part,) = episode_of(tmp_path, A_PART).got

    assert part == Part(
        id="injectors",
        name="Injectors, set of four",
        kind="injectors",
        system="fuel",
        count=4,
        kept=4,
        maker="A maker",
        part_number="0123",
        list_price=eur("80"),
        came=Came.OWNED,
        facts={
            "static flow": Given(
                value=Quantity(
                    pytest.approx(340e-6 / 60),
                    "cc/min",
                    "340 cc/min at 3 bar",
                    evidence=Evidence.MEASURED,
                    at=Quantity(300e3, "bar", "3 bar"),
                ),
                evidence=Evidence.MEASURED,
                place=at(13, 26, FACTS_LINE),
            ),
            "colour": Given(value="grey", place=at(13, 67, FACTS_LINE)),
            "pin": Given(value=6.0, place=at(13, 78, FACTS_LINE)),
        },
        ends={
            "inlet": End(
                name="inlet",
                text="14 mm O-ring",
                place=at(14, 19, "    ends: {inlet: 14 mm O-ring}"),
            )
        },
        link="https://shop.example/i",
        must="flow for 100 kW",
        good_until=date(2030, 12, 31),
        note="bench tested",
        place=at(4, 5, "  - part: injectors"),
    )


def test_a_name_is_made_from_the_id_and_the_id_from_a_name(tmp_path: Path) -> None:
    lines = "got: [{part: oil-feed, came: given}, {name: Ölkühler, came: given}]"

    assert [(part.id, part.name) for part in episode_of(tmp_path, lines).got] == [
        ("oil-feed", "Oil feed"),
        ("olkuhler", "Ölkühler"),
    ]


def test_money_that_is_not_a_part_is_a_line_or_a_mapping(tmp_path: Path) -> None:
    lines = """\
spent:
  - Decking the head, machine shop, 90 EUR
  - Refund for core, -20 EUR
  - {what: Entry, to: Club, amount: 65 GBP, date: 2026-05-01, system: safety, charged: 77 EUR}"""

    assert [
        (each.what, each.to, each.amount, each.date, each.system, each.charged)
        for each in episode_of(tmp_path, lines).spent
    ] == [
        ("Decking the head", "machine shop", eur("90"), None, None, None),
        ("Refund for core", None, eur("-20"), None, None, None),
        ("Entry", "Club", Money(Decimal(65), "GBP"), date(2026, 5, 1), "safety", eur("77")),
    ]
    assert isinstance(episode_of(tmp_path, lines).spent[0], Spent)


def test_what_was_made_says_from_what(tmp_path: Path) -> None:
    lines = """\
made:
  - part: manifold
    kind: exhaust manifold
    from: 4 off bend-48, flange-head
    hours: 11 h"""
    (part,) = episode_of(tmp_path, lines).made

    assert (part.came, part.hours, part.system) == (Came.MADE, 11.0, "exhaust")
    assert part.made_from == (
        PieceUsed(part="bend-48", count=4, place=part.made_from[0].place),
        PieceUsed(part="flange-head", count=1, place=part.made_from[0].place),
    )


def test_deeds_name_one_verb_and_one_part_or_several(tmp_path: Path) -> None:
    lines = """\
done:
  - fitted: [Turbo, manifold]
    because: it was time
  - fitted: fuel-pump-2
    instead of: fuel-pump
  - sold: airbox
    for: 40 EUR
    to: a neighbour
    date: 2026-02-01
    count: 1
  - planned: Oil cooler core, 85 EUR
  - ordered: {part: radiator, list: 120 EUR}
  - planned: turbo"""
    deeds = episode_of(tmp_path, lines).done

    assert [(done.verb, done.part) for done in deeds] == [
        (Verb.FITTED, "turbo"),
        (Verb.FITTED, "manifold"),
        (Verb.FITTED, "fuel-pump-2"),
        (Verb.SOLD, "airbox"),
        (Verb.PLANNED, "oil-cooler-core"),
        (Verb.ORDERED, "radiator"),
        (Verb.PLANNED, "turbo"),
    ]
    assert deeds[3] == Done(
        verb=Verb.SOLD,
        part="airbox",
        amount=eur("40"),
        to="a neighbour",
        date=date(2026, 2, 1),
        count=1,
        place=at(8, 11, "  - sold: airbox"),
    )
    assert [deeds[1].because, deeds[2].instead_of] == ["it was time", "fuel-pump"]
    assert [part and (part.paid, part.list_price) for part in (d.new_part for d in deeds[4:])] == [
        (eur("85"), None),
        (None, eur("120")),
        None,
    ]
