"""All changes, by episode, and one of them as a sentence."""

from __future__ import annotations

import pytest

from hoistbook.history.state import Change
from hoistbook.pages.changes import ChangesContext, change_rows, changes_page, sentence_of
from hoistbook.pages.desk import desk_of
from tests.pages.sample import sample_material

DESK = desk_of(sample_material())


def test_every_episode_says_what_it_changed_from_the_one_before() -> None:
    made = changes_page(DESK).context
    assert isinstance(made, ChangesContext)
    assert [(each.number, each.title) for each in made.episodes] == [
        (1, "The first pump"),
        (2, "The second pump"),
    ]
    first = [(row.part.text if row.part else row.what, row.kind) for row in made.episodes[0].rows]
    assert first == [("Fuel pump", "fitted")]


def test_first_and_last_stand_side_by_side() -> None:
    made = changes_page(DESK).context
    assert isinstance(made, ChangesContext)
    assert [(row.what, row.before, row.after) for row in made.whole] == [
        ("Boost", "none, stated", "0.5\N{NO-BREAK SPACE}bar, stated")
    ]


@pytest.mark.parametrize(
    ("subject", "expected"),
    [
        ("settings:boost", "Boost: 0.5_bar, stated, before none, stated"),
        ("part:pump", "Fuel pump: replaced by Larger fuel pump"),
        ("part:pump-2", "Larger fuel pump: fitted"),
        ("join:pump-2 outlet", "Larger fuel pump outlet: joined to Bracket in"),
    ],
)
def test_a_change_reads_as_one_sentence(subject: str, expected: str) -> None:
    change: Change = next(each for each in DESK.changes[2] if each.subject == subject)
    (row,) = change_rows(DESK, [change], 1)
    assert sentence_of(DESK, row).replace("\N{NO-BREAK SPACE}", "_") == expected
