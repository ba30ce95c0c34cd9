"""The index: everything that has a place in the journal, by its first letter."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.pages.desk import desk_of
from hoistbook.pages.index_a_z import IndexContext, index_page
from tests.pages.sample import FIRST, JOURNAL, SECOND, part, sample_material


def letters(*names: str) -> dict[str, list[str]]:
    more = tuple(part(f"part-{at}", name) for at, name in enumerate(names))
    journal = replace(JOURNAL, episodes=(FIRST, replace(SECOND, got=more)))
    made = index_page(desk_of(sample_material(journal))).context
    assert isinstance(made, IndexContext)
    return {each.letter: [entry.text for entry in each.entries] for each in made.letters}


def test_parts_figures_episodes_and_cautions_stand_under_their_letters() -> None:
    found = letters()
    assert found["F"] == ["Fuel", "Fuel hose, 8 mm", "Fuel pump"]
    assert found["I"] == ["inducer", "Injector duty"]
    assert found["T"] == [
        "T2, T3, T25",
        "The first pump",
        "The second pump",
        "turbine housing ratio",
    ]


def test_a_letter_with_a_mark_stands_with_the_plain_one_and_digits_together() -> None:
    found = letters("Écrou", "engine mount", "3-way valve", "9 mm hose")
    assert found["E"] == ["Écrou", "effectiveness", "end, join", "engine mount"]
    assert found["0-9"] == ["3-way valve", "30R9, 30R10, 20R3", "9 mm hose", "95 % band"]


def test_an_entry_says_what_it_is_and_what_became_of_it() -> None:
    made = index_page(desk_of(sample_material())).context
    assert isinstance(made, IndexContext)
    entries = {entry.text: entry for letter in made.letters for entry in letter.entries}
    pump = entries["Fuel pump"]
    assert (pump.what, pump.note) == (
        "part",
        "replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar",
    )
    assert entries["The second pump"].what == "episode 2"


def test_the_lists_that_answer_a_question_are_found_by_their_names() -> None:
    made = index_page(desk_of(sample_material())).context
    assert isinstance(made, IndexContext)
    entries = {entry.text: entry for letter in made.letters for entry in letter.entries}
    assert (entries["Claims"].what, entries["Claims"].address) == ("list", "/claims/")
    assert "What broke" not in entries
