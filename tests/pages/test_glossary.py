"""The words that a viewer may not know: explained on a page of their own, and led to."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoistbook.figures.catalogue import QUANTITIES
from hoistbook.pages.desk import desk_of
from hoistbook.pages.glossary import GlossaryContext, Term, glossary_page
from hoistbook.pages.index_a_z import IndexContext, index_page
from tests.pages.sample import sample_material

DESK = desk_of(sample_material())
THEMES = Path(__file__).parents[2] / "themes"


def terms() -> dict[str, Term]:
    made = glossary_page(DESK).context
    assert isinstance(made, GlossaryContext)
    return {each.id: each for each in made.terms}


@pytest.mark.parametrize(
    "word",
    # What a reader of the demo who knows cars, but not their engineering, asked about.
    [
        "gauge",
        "absolute",
        "lambda",
        "inducer",
        "mean effective pressure",
        "95 % band",
        "dash size",
        "squish",
        "off",
        "kW/t",
        "duty",
        "static flow",
        "dead time",
        "T25",
        "30R9",
        "30R10",
        "20R3",
        "not referred to any reference air",
        "had to meet",
        "stated",
    ],
)
def test_a_word_that_readers_ask_about_is_explained(word: str) -> None:
    assert any(word in each.word for each in terms().values())


def test_terms_stand_by_the_alphabet_and_each_says_something_in_short() -> None:
    words = [each.word for each in terms().values()]
    assert words[:4] == [
        "30R9, 30R10, 20R3",
        "95 % band",
        "absolute",
        "at the crank, at the wheels",
    ]
    assert len(words) == len(set(words))
    for each in terms().values():
        assert each.means.endswith(".")
        assert 20 < len(each.means) < 330, each.word


def test_the_word_of_a_figure_leads_to_a_term_that_is_there() -> None:
    led = {each for quantity in QUANTITIES if (each := DESK.term(quantity))}
    assert {"/glossary/#duty", "/glossary/#mean-pressure", "/glossary/#mach"} <= led
    assert {each.removeprefix("/glossary/#") for each in led} <= set(terms())
    assert DESK.term("air_density") == ""


def test_a_link_of_a_template_leads_to_a_term_that_is_there() -> None:
    written = "".join(each.read_text(encoding="utf-8") for each in THEMES.glob("*/*.html"))
    anchors = re.findall(r"/glossary/#([\w-]+)", written)
    assert anchors
    assert set(anchors) <= set(terms())


def test_the_index_has_every_word_too() -> None:
    made = index_page(DESK).context
    assert isinstance(made, IndexContext)
    entries = {each.text: each for letter in made.letters for each in letter.entries}
    assert (entries["lambda"].address, entries["lambda"].what) == ("/glossary/#lambda", "word")
