"""Settings, joins, measurements, claims and prose of an episode become the records they say."""

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
    Join,
    JoinEnd,
    ProseLink,
    Reading,
    Work,
)
from hoistbook.problems import Place, picture
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity
from tests.authored.journals import FIRST, episode_of, journal_of, lay_down, messages


def eur(amount: str) -> Money:
    return Money(Decimal(amount), "EUR")


def at(line: int, column: int, text: str, file: str = FIRST) -> Place:
    return Place(file, line, column, text)


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
  - Grind, 30 min
  - Polish, 1:15
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
        ("Grind", 0.5),
        ("Polish", 1.25),
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
        "  name the folder that holds it, or begin one with `format: 1` and `title: ...` in it",
        "build.yaml:1:1\nproblem: this journal has no episode\n"
        "  begin with episodes/01-some-words/episode.md",
    ]


def test_files_under_a_name_a_little_unlike_ours_are_found(tmp_path: Path) -> None:
    (tmp_path / "Episodes").mkdir()
    (tmp_path / "build.yml").write_text("format: 1\ntitle: A car\n")

    read = read_journal(tmp_path)

    assert [picture(each) for each in read.problems] == [
        "build.yaml:1:1\nproblem: there is no file build.yaml here\n"
        "  rename build.yml to build.yaml",
        "build.yaml:1:1\nproblem: this journal has no episode\n  rename Episodes to episodes",
    ]


def test_a_folder_inside_the_journal_is_told_the_journal(tmp_path: Path) -> None:
    inner = tmp_path / "my car/episodes"
    inner.mkdir(parents=True)
    (tmp_path / "my car/build.yaml").write_text("format: 1\ntitle: A car\n")

    read = read_journal(inner)

    assert picture(read.problems[0]) == (
        "build.yaml:1:1\nproblem: there is no file build.yaml here\n"
        "  name the folder that holds it: my car"
    )


@pytest.mark.parametrize("start", [b"PK\x03\x04", b"\xd0\xcf\x11\xe0\xa1", b"\x1f\x8b\x08"])
def test_a_spreadsheet_is_no_log(tmp_path: Path, start: bytes) -> None:
    run = "measured: [{power run: {log: run.csv, at: wheels}}]"
    lay_down(tmp_path, {FIRST: f"---\ntitle: One\n{run}\n---\n"})
    (tmp_path / "episodes/01-one/run.csv").write_bytes(start + bytes(20))

    (problem,) = read_journal(tmp_path).problems

    assert picture(problem) == (
        "episodes/01-one/run.csv:1:1\nproblem: this is a spreadsheet or an archive, not text\n"
        "  export it as text, a CSV"
    )


def test_an_empty_build_yaml_says_so(tmp_path: Path) -> None:
    assert messages(tmp_path, {"build.yaml": "", FIRST: "---\ntitle: One\n---\n"}) == [
        "build.yaml:1:1: this file is empty"
    ]


def test_what_was_made_takes_a_line_and_boost_a_mapping(tmp_path: Path) -> None:
    lines = """\
made: ["Bracket, left, 2.5 h", Sump shield]
car: {gearing: {gears: "3.5, 2.1, 1.4"}}
settings: {boost: {3000 rpm: 0.4 bar gauge, 5000 rpm: 0.6 bar gauge}}"""
    episode = episode_of(tmp_path, lines)

    assert [(part.id, part.name, part.hours, part.came) for part in episode.made] == [
        ("bracket-left", "Bracket, left", 2.5, Came.MADE),
        ("sump-shield", "Sump shield", None, Came.MADE),
    ]
    assert episode.car["gearing gears"].value == "3.5 / 2.1 / 1.4"
    boost = episode.settings["boost"]
    assert isinstance(boost, BoostBySpeed)
    assert boost.speeds == (3000.0, 5000.0)


def test_a_list_of_boost_that_counts_from_vacuum_is_refused(tmp_path: Path) -> None:
    lines = "settings: {boost: {3000 rpm: 1.2 bar absolute, 5000 rpm: 1.5 bar gauge}}"
    said = messages(tmp_path, {FIRST: f"---\ntitle: One\n{lines}\n---\n"})

    assert said == [
        f"{FIRST}:3:30: `1.2 bar absolute` counts from vacuum, and boost by speed from the air"
    ]
