"""All changes, by episode, and one of them as a sentence."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoistbook.history.state import Change, ChangeKind
from hoistbook.pages.change_rows import change_rows, change_table, sentence_of
from hoistbook.pages.changes import ChangesContext, changes_pages
from hoistbook.pages.desk import desk_of
from tests.pages.sample import sample_material

DESK = desk_of(sample_material())


def test_every_episode_says_what_it_changed_from_the_one_before() -> None:
    (page,) = changes_pages(DESK)
    made = page.context
    assert isinstance(made, ChangesContext)
    assert [(each.number, each.title) for each in made.episodes] == [
        (1, "The first pump"),
        (2, "The second pump"),
    ]
    first = [
        (row.parts[0].text if row.parts else row.what, row.kind) for row in made.episodes[0].rows
    ]
    assert first == [("Fuel pump", "fitted")]


def test_first_and_last_stand_side_by_side() -> None:
    (page,) = changes_pages(DESK)
    made = page.context
    assert isinstance(made, ChangesContext)
    assert [(row.what, row.before, row.after) for row in made.whole] == [
        ("Boost", "none", "0.5\N{NO-BREAK SPACE}bar, as set")
    ]


@pytest.mark.parametrize(
    ("subject", "expected"),
    [
        ("settings:boost", "Boost: 0.5_bar, as set, before none"),
        ("part:pump", "Fuel pump: replaced by Larger fuel pump"),
        ("part:pump-2", "Larger fuel pump: fitted"),
        ("join:pump-2 outlet", "Larger fuel pump outlet: joined to Bracket in"),
    ],
)
def test_a_change_reads_as_one_sentence(subject: str, expected: str) -> None:
    change: Change = next(each for each in DESK.changes[2] if each.subject == subject)
    (row,) = change_rows(DESK, [change], 1)
    assert sentence_of(DESK, row).replace("\N{NO-BREAK SPACE}", "_") == expected


def test_what_broke_says_so_though_it_was_replaced() -> None:
    material = sample_material()
    *earlier, last = material.states
    broken = replace(last.parts["pump"], broke_in=last.episode)
    states = (*earlier, replace(last, parts={**last.parts, "pump": broken}))
    desk = desk_of(replace(material, states=states))
    change = next(each for each in desk.changes[2] if each.subject == "part:pump")
    (row,) = change_rows(desk, [change], 1)
    assert row.after == "broke; replaced by Larger fuel pump"


def test_parts_that_the_same_befell_share_a_row() -> None:
    (turned, *_) = [each for each in DESK.changes[2] if each.kind == "fitted"]
    twin = replace(turned, subject="part:bracket")
    shared = change_table(DESK, [turned, twin], 2, DESK.part)
    # As at episode 2 one of them is fitted and the other on hand: only what reads alike is shared.
    assert [[each.text for each in row.parts] for row in shared] == [
        ["Larger fuel pump"],
        ["Bracket"],
    ]
    alike = change_table(DESK, [turned, replace(turned, subject="part:pump-2")], 2, DESK.part)
    assert [len(row.parts) for row in alike] == [2]


def test_an_end_that_was_parted_and_joined_anew_is_one_row() -> None:
    (made,) = [each for each in DESK.changes[2] if each.kind == "joined"]
    parted = replace(made, kind=ChangeKind.PARTED, before=made.after, after=None)
    (row,) = change_table(DESK, [parted, made], 1, DESK.part)
    assert row.parted == row.joined
    assert (row.parts[0].text, row.what) == ("Larger fuel pump", "outlet")


def test_what_became_of_a_part_is_said_once_and_only_by_what_an_episode_did_not_know() -> None:
    first, second = DESK.naming(1), DESK.naming(2)
    told = "replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar"
    assert [first("pump").fate, first("pump").fate, second("pump").fate] == [told, "", ""]
    assert [DESK.naming()("pump").fate, first("cooler").fate] == [told, "planned, not bought"]


def test_a_page_of_an_episode_names_a_part_as_it_was_called_then() -> None:
    material = sample_material()
    last = material.states[-1]
    pump = last.parts["pump"]
    called = replace(pump, part=replace(pump.part, name="Pump, as the receipt has it"))
    renamed = replace(last, parts=last.parts | {"pump": called})
    desk = desk_of(replace(material, states=(*material.states[:-1], renamed)))
    assert desk.naming(1)("pump").text == pump.part.name
    assert desk.naming(2)("pump").text == "Pump, as the receipt has it"
    assert desk.naming()("pump").text == "Pump, as the receipt has it"


def test_what_a_section_above_has_said_of_a_part_is_a_short_mark_in_those_below() -> None:
    told: set[str] = set()
    above, below = DESK.naming(1, told), DESK.naming(1, told)
    whole = "replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar"
    assert [above("pump").fate, above("pump").fate] == [whole, ""]
    assert [below("pump").fate, below("pump").fate] == ["until episode 2", ""]
    assert (DESK.naming(2)("pump").fate, DESK.naming(2)("pump").mark) == ("", "")


def test_running_text_has_a_mark_that_gives_no_story_away() -> None:
    marks = {id_: DESK.part(id_).mark for id_ in ("pump", "pump-2", "cooler", "hose")}
    assert marks == {
        "pump": "until episode 2",
        "pump-2": "",
        "cooler": "planned, not bought",
        "hose": "",
    }


def test_a_script_can_tell_any_two_states_apart_as_the_command_does() -> None:
    (page,) = changes_pages(DESK)
    assert isinstance(page.context, ChangesContext)
    compared = page.context.compared
    assert compared["points"] == [[0, "As bought"], [1, "Episode 1"], [2, "Episode 2"]]
    rows = {(row[0], row[1]): row[2:] for row in compared["rows"]}  # type: ignore[attr-defined]
    assert rows[1, "part:pump"] == ["", "fitted"]
    assert rows[2, "part:pump"] == ["fitted", "replaced by Larger fuel pump"]
