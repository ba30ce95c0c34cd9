"""The list of formulas is whole, in order, and counts what the tests check."""

from __future__ import annotations

from hoistbook.engineering import FORMULAS
from hoistbook.engineering.formula_list import TOPICS, formula_list
from tests.engineering.write_check_counts import TARGET, check_counts


def test_the_counts_are_those_of_the_handbook() -> None:
    assert TARGET.read_text("utf-8") == check_counts(), (
        "run: python -m tests.engineering.write_check_counts"
    )


def test_every_formula_stands_once_under_its_topic() -> None:
    listed = formula_list()

    assert sorted(one.name for one in listed) == sorted(FORMULAS)
    topics = [one.topic for one in listed]
    assert list(dict.fromkeys(topics)) == list(TOPICS.values())
    assert topics == sorted(topics, key=list(TOPICS.values()).index)


def test_every_listed_formula_has_reference_summary_and_a_check_value() -> None:
    lacking = [
        one.name
        for one in formula_list()
        if not (one.reference.title and one.where and one.check_values)
        or not one.summary.startswith("Return ")
    ]

    assert lacking == []


def test_a_formula_names_those_that_take_its_result() -> None:
    listed = {one.name: one for one in formula_list()}

    assert listed["pipe_velocity"].taken_by == ("mach_number", "pipe_pressure_loss")
    assert listed["mach_number"].taken_by == ()
