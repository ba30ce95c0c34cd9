"""What is different between any two states, in words."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest

from hoistbook.authored.records import Journal
from hoistbook.history.differences import differences
from hoistbook.history.fold import fold
from hoistbook.history.state import Change, ChangeKind, State
from hoistbook.pages.words import load_words

Written = Callable[..., Journal]

BUILD = """
    car: {mass: 948 kg, engine cylinders: 4}
    settings: {boost: none, fuel: petrol}
    parts: [pump, box, {part: stud, count: 4}]
"""


def lines(before: State, after: State) -> list[str]:
    return [line_of(change) for change in differences(before, after)]


def line_of(change: Change) -> str:
    became = f"{change.before} -> {change.after}"
    because = f" because {change.because}" if change.because else ""
    return f"{change.episode} {change.kind} {change.subject}: {became}{because}"


@pytest.fixture
def states(written: Written) -> tuple[State, ...]:
    journal = written(
        """
        got: ['New pump, given', 'Hose, given']
        car: {mass: 942 kg, engine cylinders: 6}
        settings:
          boost: [3000 rpm: 0.4 bar gauge, 5000 rpm: 0.6 bar gauge]
        joins: [pump out to box in]
        """,
        """
        done:
          - {fitted: new-pump, instead of: pump, because: it ran out}
          - {sold: box, for: 20 EUR, because: in the way}
          - {broke: stud, count: 1}
          - {planned: 'Cooler, 80 EUR'}
        joins: [{join: new-pump out to hose a, knowingly: cones differ}]
        """,
        """
        done:
          - {ordered: cooler}
          - {broke: hose, because: it was old}
          - {took off: new-pump, because: noise}
        car: {mass: 948 kg}
        """,
        build=BUILD,
    )
    folded = fold(journal)
    assert folded.problems == ()
    return folded.states


def test_one_episode_changes_the_state_before_it(states: tuple[State, ...]) -> None:
    assert lines(states[0], states[1]) == [
        "1 set car:mass: 948 kg -> 942 kg",
        "1 set car:engine cylinders: 4 -> 6",
        "1 set settings:boost: none -> 0.4 bar gauge at 3000 rpm, 0.6 bar gauge at 5000 rpm",
        "1 came part:new-pump: None -> on hand",
        "1 came part:hose: None -> on hand",
        "1 joined join:pump out: None -> pump out to box in",
    ]
    assert lines(states[1], states[2]) == [
        "2 replaced part:pump: fitted -> replaced by New pump because it ran out",
        "2 gone part:box: fitted -> sold because in the way",
        "2 broke part:stud: fitted -> fitted, 3 of 4 left",
        "2 fitted part:new-pump: on hand -> fitted because it ran out",
        "2 planned part:cooler: None -> planned",
        "2 parted join:pump out: pump out to box in -> None",
        "2 joined join:new-pump out: None -> new-pump out to hose a because cones differ",
    ]
    assert lines(states[2], states[3]) == [
        "3 set car:mass: 942 kg -> 948 kg",
        "3 taken off part:new-pump: fitted -> on hand because noise",
        "3 broke part:hose: on hand -> on hand, broken because it was old",
        "3 ordered part:cooler: planned -> ordered",
        "3 parted join:new-pump out: new-pump out to hose a -> None",
    ]


def test_states_far_apart_differ_only_in_what_lasted(states: tuple[State, ...]) -> None:
    assert lines(states[0], states[3]) == [
        "1 set car:engine cylinders: 4 -> 6",
        "1 set settings:boost: none -> 0.4 bar gauge at 3000 rpm, 0.6 bar gauge at 5000 rpm",
        "2 replaced part:pump: fitted -> replaced by New pump because it ran out",
        "2 gone part:box: fitted -> sold because in the way",
        "2 broke part:stud: fitted -> fitted, 3 of 4 left",
        "3 taken off part:new-pump: None -> on hand because noise",
        "3 broke part:hose: None -> on hand, broken because it was old",
        "3 ordered part:cooler: None -> ordered",
    ]


def test_a_state_does_not_differ_from_itself(states: tuple[State, ...]) -> None:
    assert all(differences(state, state) == () for state in states)


def test_from_a_later_state_the_changes_lead_back(states: tuple[State, ...]) -> None:
    assert lines(states[1], states[0]) == [
        "0 set car:mass: 942 kg -> 948 kg",
        "0 set car:engine cylinders: 6 -> 4",
        "0 set settings:boost: 0.4 bar gauge at 3000 rpm, 0.6 bar gauge at 5000 rpm -> none",
        "0 not yet known part:new-pump: on hand -> None",
        "0 not yet known part:hose: on hand -> None",
        "0 parted join:pump out: pump out to box in -> None",
    ]


def test_a_value_that_is_set_again_as_it_was_is_no_change(written: Written) -> None:
    states = fold(written("settings: {boost: none}", build="settings: {boost: none}")).states
    assert differences(*states) == ()


def test_of_several_pieces_some_can_change(written: Written) -> None:
    states = fold(
        written(
            "got: ['Stud, 9 off, given']",
            "done: [{fitted: stud, count: 4}]",
            "done: [{fitted: stud, count: 2}]",
            "done: [{took off: stud, count: 1}]",
            "made: [{part: rail, from: 3 off stud}]",
        )
    ).states
    assert [line for pair in pairwise(states[1:]) for line in lines(*pair) if "stud" in line] == [
        "2 fitted part:stud: on hand -> 4 of 9 fitted",
        "3 fitted part:stud: 4 of 9 fitted -> 6 of 9 fitted",
        "4 taken off part:stud: 6 of 9 fitted -> 5 of 9 fitted",
        "5 built in part:stud: 5 of 9 fitted -> 5 of 6 fitted, 6 of 9 left",
    ]


def test_one_of_several_breaks_on_the_car_and_a_spare_one_takes_its_place(
    written: Written,
) -> None:
    states = fold(
        written(
            "got: ['Stud, 10 off, given']",
            "done: [{fitted: stud, count: 8}]",
            "done: [{broke: stud, count: 1, because: a hot nut}]",
            "done: [{fitted: stud, count: 1}]",
        )
    ).states
    assert lines(states[2], states[3]) == [
        "3 broke part:stud: 8 of 10 fitted -> 7 of 9 fitted, 9 of 10 left because a hot nut"
    ]
    assert lines(states[3], states[4]) == [
        "4 fitted part:stud: 7 of 9 fitted, 9 of 10 left -> 8 of 9 fitted, 9 of 10 left"
    ]
    assert states[4].parts["stud"].fitted_in == 2


def test_what_broke_and_was_replaced_in_one_episode_says_that_it_broke(written: Written) -> None:
    states = fold(
        written(
            "got: ['Stud, 10 off, given']",
            "done: [{fitted: stud, count: 8}]",
            """
            done:
              - {broke: stud, count: 1, because: a hot nut}
              - {fitted: stud, count: 1}
            """,
        )
    ).states
    assert lines(states[2], states[3]) == [
        "3 broke part:stud: 8 of 10 fitted -> 8 of 9 fitted, 9 of 10 left because a hot nut"
    ]


def test_of_a_shared_purchase_the_friend_s_pieces_are_not_missed(written: Written) -> None:
    shared = "{part: strap, count: 8, kept: 4, paid: 8 EUR each}"
    states = fold(written(f"bought: [{{from: Shop, date: 2026-01-20, parts: [{shared}]}}]")).states
    assert lines(*states) == ["1 came part:strap: None -> on hand"]


@pytest.mark.parametrize("kind", ChangeKind)
def test_pages_have_a_word_for_every_sort_of_change(kind: ChangeKind) -> None:
    assert load_words("en")(f"change.{kind.replace(' ', '_')}")
