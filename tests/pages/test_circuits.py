"""Circuits, and joins on the pages of parts and episodes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from hoistbook.fit.flows import Flow
from hoistbook.fit.verdict import Service, Verdict
from hoistbook.notices import notices_of
from hoistbook.pages.circuits import CircuitsContext, circuit_files, circuits_on, circuits_page
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.joins import joins_made, joins_of
from hoistbook.pages.next import NextContext, next_page
from hoistbook.values.end import Medium
from tests.pages.joined import RIGHT, WRONG, bench, material


@pytest.fixture
def wrong(tmp_path: Path) -> Desk:
    return desk_of(material(tmp_path, WRONG))


@pytest.fixture
def right(tmp_path: Path) -> Desk:
    return desk_of(material(tmp_path, WRONG, RIGHT))


def circuits(desk: Desk) -> CircuitsContext:
    context = circuits_page(desk).context
    assert isinstance(context, CircuitsContext)
    return context


def test_a_look_alike_is_warned_of_until_it_is_put_right(wrong: Desk) -> None:
    (row,) = circuits(wrong).warnings
    assert (row.verdict, row.a.full, row.b.full) == (
        "looks right, do not join",
        "Rc 1/8 taper, female",
        "1/8 NPT, male",
    )
    assert row.tell_apart == "a thread gauge over ten threads: 28 or 27 to the inch, 0.34 mm apart"
    assert [each.never for each in bench(wrong).joins] == [True, False]


def test_every_verdict_and_flow_has_its_word_in_the_table(right: Desk) -> None:
    assert [right.word("verdict", each) for each in Verdict] == list(Verdict)
    assert [right.word("flow", each) for each in Flow] == list(Flow)


def test_what_a_join_carries_is_printed_in_the_journal_s_units(tmp_path: Path) -> None:
    hot = WRONG.replace("1/8 NPT male,", '"1/8 NPT male, at 3 bar, at 110 degC",')
    folder, other = tmp_path / "metric", tmp_path / "imperial"
    for each, units in ((folder, "metric"), (other, "imperial")):
        each.mkdir()
        made = material(each, hot)
        judged = made.joins[1][0]
        carried = replace(judged, service=Service(Medium.OIL, 3.0, 110.0))
        journal = replace(made.journal, units=units)
        desk = desk_of(replace(made, journal=journal, joins=(made.joins[0], (carried,))))
        (row,) = joins_made(desk, 1)
        assert (
            row.service.replace("\N{NO-BREAK SPACE}", " ")
            == {
                "metric": "3 bar gauge, 110 °C",
                "imperial": "43.5 psi gauge, 230 °F",
            }[units]
        )


def test_after_it_is_put_right_nothing_warns(right: Desk) -> None:
    assert circuits(right).warnings == ()
    assert [each.verdict for each in joins_made(right, 2)] == ["mates with sealant", "mates"]
    assert [each.never for each in joins_made(right, 1)] == [True, False]


def test_the_notice_of_a_look_alike_stands_at_its_line_and_in_its_episode_alone(
    right: Desk,
) -> None:
    (notice,) = notices_of(right.material)

    assert notice.code == "look-alike"
    assert notice.episode == 1
    assert notice.message.startswith(
        "block oil gallery to adapter block end: looks right, do not join: 1/8 NPT (10.29 mm, "
    )
    assert notice.place is not None
    assert "block oil gallery" in notice.place.text


def test_a_look_alike_that_stays_is_noticed_once(tmp_path: Path) -> None:
    found = material(tmp_path, WRONG, "---\ntitle: Idle\n---\n")

    assert [notice.episode for notice in notices_of(found)] == [1]


def test_what_its_author_knows_is_no_notice(tmp_path: Path) -> None:
    known = WRONG.replace("    sealed with", "    knowingly: to show the leak\n    sealed with")

    found = material(tmp_path, known)

    assert notices_of(found) == ()
    (row,) = circuits(desk_of(found)).warnings
    assert row.knowingly == "to show the leak"


def test_a_join_that_needs_an_adapter_names_those_on_the_shelf(tmp_path: Path) -> None:
    reduced = """\
---
title: Reduced
got:
  - {part: one, came: given, ends: {end: -6 JIC male}}
  - {part: two, came: given, ends: {end: -8 JIC female}}
  - {part: reducer, came: given, ends: {a: -6 JIC female, b: -8 JIC male}}
done:
  - fitted: [one, two]
joins:
  - one end to two end
---
"""
    (row,) = joins_made(desk_of(material(tmp_path, reduced)), 1)

    assert (row.verdict, [each.text for each in row.between]) == ("needs adapter", ["Reducer"])


def test_a_circuit_is_told_in_words_in_the_order_of_the_flow(right: Desk) -> None:
    (oil,) = circuits(right).circuits
    told = [(row.a.part.text, row.a.name, row.b.part.text, row.b.name) for row in oil.joins]
    assert (oil.id, oil.title) == ("oil", "Oil")
    assert told == [
        ("Block", "oil gallery", "Taper", "block end"),
        ("Taper", "hose end", "Feed", "block end"),
    ]
    assert [link.text for link in oil.earlier] == ["Episode 1", "Episode 2"]


def test_an_open_end_says_what_on_the_shelf_would_close_it(right: Desk) -> None:
    (open_end,) = circuits(right).circuits[0].open
    (closer,) = [each for each in open_end.closers if each.part.text == "Turbo adapter"]
    assert (open_end.part.text, open_end.end) == ("Feed", "turbo end")
    assert (closer.end, closer.verdict, closer.on_hand) == ("hose end", "mates", True)


def test_of_many_parts_that_would_close_an_open_end_the_first_few_are_named(
    tmp_path: Path,
) -> None:
    spare = "  - {{part: spare-{n}, came: given, ends: {{hose end: -4 JIC male}}}}\n"
    spares = "".join(spare.format(n=n) for n in range(9))
    many = WRONG.replace("got:\n", f"got:\n{spares}", 1)

    ((open_end,),) = (each.open for each in circuits(desk_of(material(tmp_path, many))).circuits)

    assert [each.part.text for each in open_end.closers] == [f"Spare {n}" for n in range(6)]
    assert open_end.more == "and 3 more"


def test_the_page_of_what_comes_next_lists_open_ends_and_what_is_forgotten(right: Desk) -> None:
    context = next_page(right).context
    assert isinstance(context, NextContext)

    assert [(each.part.text, each.end) for each in context.open] == [("Feed", "turbo end")]
    sleeve = next(each for each in context.forgotten if each.id == "heat-sleeve")
    assert (sleeve.item, sleeve.why) == (
        "Fire sleeve / heat sleeve",
        "drain and feed next to turbine",
    )
    assert [each.text for each in sleeve.because_of] == ["Feed"]


def test_a_part_shows_the_verdict_of_each_of_its_ends(wrong: Desk) -> None:
    found = joins_of(wrong, "adapter")
    assert {key.end: row.verdict for key, row in found.items()} == {
        "block end": "looks right, do not join",
        "hose end": "mates",
    }


def test_a_circuit_that_stays_as_it_was_keeps_its_drawing(tmp_path: Path) -> None:
    idle = "---\ntitle: Idle\n---\n"
    desk = desk_of(material(tmp_path, WRONG, idle, RIGHT.replace("Right", "Later")))

    (then,) = circuits_on(desk, 1)
    assert then.picture.address == "/charts/circuit-oil-episode-1.svg"
    assert then.picture.text == (
        "The circuit of Oil, in the order of the flow: 3 parts, 2 joins, 1 open end. "
        "The same stands below as a list."
    )
    assert [(each.a.name, each.b.name, each.verdict) for each in then.joins] == [
        ("oil gallery", "block end", "looks right, do not join"),
        ("hose end", "block end", "mates"),
    ]
    assert [(each.part.text, each.name, each.full) for each in then.open] == [
        ("Feed", "turbo end", "-4 JIC 37 degree flare, female")
    ]
    assert circuits_on(desk, 2) == ()
    assert list(circuit_files(desk, lambda make, _: make())) == [
        f"charts/circuit-oil-episode-{number}{for_a_phone}.svg"
        for number in (0, 1, 3)
        for for_a_phone in ("", "-narrow")
    ]


def test_a_journal_without_ends_says_how_to_write_them(tmp_path: Path) -> None:
    bare = material(tmp_path, "---\ntitle: Idle\n---\n")
    bare = replace(bare, states=bare.states[1:2], joins=bare.joins[1:2])
    empty = replace(bare, states=(replace(bare.states[0], parts={}),))
    empty = replace(empty, figures=empty.figures[1:2], changes=((),))

    context = circuits_page(desk_of(empty)).context

    assert isinstance(context, CircuitsContext)
    assert context.circuits == ()
    assert context.lead.startswith("No part of this journal has ends yet")


def test_a_chain_of_parts_is_narrow_enough_for_a_telephone(right: Desk) -> None:
    assert circuits(right).circuits[0].picture.width <= 320
