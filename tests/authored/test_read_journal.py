"""A journal of two episodes becomes the records it says."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.authored.records import (
    BoostBySpeed,
    Came,
    Chapter,
    Correction,
    Decision,
    Done,
    End,
    Given,
    Join,
    JoinEnd,
    Part,
    PieceUsed,
    ProseLink,
    Reading,
    Receipt,
    Spent,
    Verb,
    Work,
)
from hoistbook.problems import Place, picture
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity
from tests.authored.journals import FIRST, episode_of, journal_of, messages

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


def test_a_mapping_says_all_there_is_to_say_of_a_part(tmp_path: Path) -> None:
    lines = """\
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
    (part,) = episode_of(tmp_path, lines).got
    facts_line = (
        '    facts: {static flow: "340 cc/min at 3 bar, measured", colour: grey, pin: 6.0}'
    )

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
                place=at(13, 26, facts_line),
            ),
            "colour": Given(value="grey", place=at(13, 67, facts_line)),
            "pin": Given(value=6.0, place=at(13, 78, facts_line)),
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


def test_settings_hold_quantities_words_and_boost_by_speed(tmp_path: Path) -> None:
    lines = """\
settings:
  boost:
    - 3000 rpm: 0.4 bar gauge, measured
    - 4000 rpm: 0.8 bar gauge
  fuel: ethanol blend 74 %, measured
  mixture: lambda 0.82
  oil: 10W-40, fresh
  regulator: fixed"""
    settings = episode_of(tmp_path, lines).settings
    boost = settings.pop("boost") if isinstance(settings, dict) else None

    assert isinstance(boost, BoostBySpeed)
    assert (boost.speeds, [each.value for each in boost.pressures], boost.evidence) == (
        (3000.0, 4000.0),
        [40e3, 80e3],
        Evidence.MEASURED,
    )
    assert {key: (given.value, given.evidence) for key, given in settings.items()} == {
        "fuel": ("ethanol blend 74 %", Evidence.MEASURED),
        "mixture": (Quantity(0.82, "lambda", "lambda 0.82"), Evidence.STATED),
        "oil": ("10W-40, fresh", Evidence.STATED),
        "regulator": ("fixed", Evidence.STATED),
    }


JOINED = """\
got:
  - {part: turbo, came: given, ends: {Oil In: M12x1.5 female}}
  - {part: feed-hose, name: Feed hose, came: given, ends: {end: M12x1.5 male}}
joins:
  - turbo oil in to feed-hose end
  - join: Feed hose to turbo drain
    sealed with: washer
    torque: 25 N m
    knowingly: yes
    note: ok"""


def test_a_join_names_two_ends(tmp_path: Path) -> None:
    first, second = episode_of(tmp_path, JOINED).joins

    assert first == Join(
        a=JoinEnd(part="turbo", end="Oil In"),
        b=JoinEnd(part="feed-hose", end="end"),
        place=at(7, 5, "  - turbo oil in to feed-hose end"),
    )
    assert (second.a, second.b) == (
        JoinEnd(part="feed-hose", end="end"),
        JoinEnd(part="turbo", end="drain"),
    )
    assert (second.sealed_with, second.torque, second.knowingly, second.note) == (
        "washer",
        Quantity(25.0, "N m", "25 N m"),
        "yes",
        "ok",
    )


def test_a_join_may_name_a_part_of_a_later_episode(tmp_path: Path) -> None:
    files = {
        FIRST: "---\ntitle: One\njoins: [a x to b y]\n---\n",
        "episodes/02-two.md": "---\ntitle: Two\ngot: ['A, given', 'B, given']\n---\n",
    }

    assert [join.b.part for join in journal_of(tmp_path, files).episodes[0].joins] == ["b"]


def test_readings_share_the_last_unit_and_are_measured(tmp_path: Path) -> None:
    lines = """\
measured:
  - compression: 12.1 / 12.3 / 12.0 bar
    when: before
    note: warm engine
  - run time: 58.41 s, 55.93 s
  - mass: 905 kg +- 4 kg, estimated
  - plug colour: pale brown"""
    readings = episode_of(tmp_path, lines).measured

    assert all(isinstance(each, Reading) for each in readings)
    assert [
        (each.what, [value.value for value in each.values], each.before_work, each.text)
        for each in readings
        if isinstance(each, Reading)
    ] == [
        ("compression", pytest.approx([1.21e6, 1.23e6, 1.20e6]), True, "12.1 / 12.3 / 12.0 bar"),
        ("run time", [58.41, 55.93], False, "58.41 s, 55.93 s"),
        ("mass", [905.0], False, "905 kg +- 4 kg, estimated"),
        ("plug colour", [], False, "pale brown"),
    ]
    assert [
        value.evidence for each in readings if isinstance(each, Reading) for value in each.values
    ] == [Evidence.MEASURED] * 5 + [Evidence.ESTIMATED]


def test_claims_have_a_figure_bounds_and_conditions(tmp_path: Path) -> None:
    lines = """\
claims:
  - injector duty below 85 % at boost 0.8 bar gauge, mixture lambda 0.82
  - velocity in hot-pipe below 100 m/s
  - power between 110 kW and 95 kW"""
    first, second, third = episode_of(tmp_path, lines).claims

    assert (first.quantity, first.relation, [each.value for each in first.bounds]) == (
        "injector duty",
        "below",
        [0.85],
    )
    assert {name: value.value for name, value in first.conditions.items()} == {
        "boost": 80e3,
        "mixture": 0.82,
    }
    assert second.quantity == "velocity in hot-pipe"
    assert (third.relation, [each.text for each in third.bounds]) == (
        "between",
        ["95 kW", "110 kW"],
    )


def test_chapters_decisions_work_and_corrections(tmp_path: Path) -> None:
    lines = """\
chapters: [0:00 On the bench, 4:10 Flanges]
decisions:
  - {question: Which core?, chose: the wide one, over: the deep one, because: it clears}
work:
  - Weld the drain bung, and paint it, 2.5 h
  - Sweep up
  - {what: Wire, hours: 3}
corrections:
  - 2026-05-01, injector flow 550 not 500 cc/min, misread the label
  - {date: 2026-05-02, text: a slip}"""
    episode = episode_of(tmp_path, lines)

    assert episode.chapters == (
        Chapter(seconds=0, title="On the bench"),
        Chapter(seconds=250, title="Flanges"),
    )
    assert episode.decisions == (
        Decision(
            question="Which core?",
            chose="the wide one",
            over=("the deep one",),
            because="it clears",
            place=episode.decisions[0].place,
        ),
    )
    assert [(work.what, work.hours) for work in episode.work] == [
        ("Weld the drain bung, and paint it", 2.5),
        ("Sweep up", None),
        ("Wire", 3.0),
    ]
    assert isinstance(episode.work[0], Work)
    assert episode.corrections == (
        Correction(
            date=date(2026, 5, 1),
            text="injector flow 550 not 500 cc/min, misread the label",
            place=episode.corrections[0].place,
        ),
        Correction(date=date(2026, 5, 2), text="a slip", place=episode.corrections[1].place),
    )


def test_prose_links_are_found_with_their_places(tmp_path: Path) -> None:
    prose = """\
The [turbo](part:turbo) makes
[injector *duty*](figure:injector_duty) as in [the first](episode:1).

![Boost](chart:boost)
"""
    episode = episode_of(tmp_path, "", prose=prose)

    assert episode.links == (
        ProseLink(
            kind="part", target="turbo", text="turbo", place=at(5, 13, prose.split("\n")[0])
        ),
        ProseLink(
            kind="figure",
            target="injector_duty",
            text="injector duty",
            place=at(6, 19, prose.split("\n")[1]),
        ),
        ProseLink(
            kind="episode", target="1", text="the first", place=at(6, 59, prose.split("\n")[1])
        ),
        ProseLink(
            kind="chart", target="boost", text="Boost", place=at(8, 10, prose.split("\n")[3])
        ),
    )


def test_a_journal_that_writes_commas_is_read_so(tmp_path: Path) -> None:
    files = {
        "build.yaml": "format: 1\ntitle: Ein Auto\nnumbers: comma\ncurrency: CHF\n",
        FIRST: (
            "---\ntitle: Eins\nbought:\n  - from: Laden\n    date: 2026-01-20\n"
            "    charged: 1.234,50 CHF\n"
            '    parts: ["Dichtung, 2 off, 6,40 EUR each"]\n'
            "settings: {boost: '0,8 bar gauge'}\nwork: ['Schweißen, 2,5 h']\n---\n"
        ),
    }
    (episode,) = journal_of(tmp_path, files).episodes

    assert episode.bought[0].charged == Money(Decimal("1234.50"), "CHF")
    assert episode.bought[0].parts[0].paid == eur("12.80")
    assert episode.work[0].hours == 2.5


def test_private_notes_reach_no_record(tmp_path: Path) -> None:
    secret = "xyzzy"
    files = {
        "build.yaml": f"format: 1\ntitle: A car\nprivate: {secret}\n",
        FIRST: (
            f"---\ntitle: One\nprivate: [{secret}, {secret}]\ngot:\n"
            f"  - {{name: Seat, came: given, private: {secret},"
            f" ends: {{in: 3 mm, private: {secret}}}}}\n"
            f"done:\n  - fitted: seat\n    private: {{why: {secret}}}\n---\nProse.\n"
        ),
    }

    assert secret not in repr(journal_of(tmp_path, files))


def test_a_folder_without_build_yaml_says_so(tmp_path: Path) -> None:
    read = read_journal(tmp_path)

    assert [picture(each) for each in read.problems] == [
        "build.yaml:1:1\nproblem: there is no file build.yaml here\n"
        "  name the folder that holds it",
        "build.yaml:1:1\nproblem: this journal has no episode\n"
        "  begin with episodes/01-some-words/episode.md",
    ]


def test_an_empty_build_yaml_says_so(tmp_path: Path) -> None:
    assert messages(tmp_path, {"build.yaml": "", FIRST: "---\ntitle: One\n---\n"}) == [
        "build.yaml:1:1: this file is empty"
    ]
