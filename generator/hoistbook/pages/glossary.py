"""The glossary: words that a viewer may not know."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.index_a_z import sort_key
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A word and what it means."""

    id: str
    word: str
    means: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GlossaryContext(Sheet):
    """`glossary.html`: the words, by the alphabet."""

    terms: tuple[Term, ...]


def glossary_page(desk: Desk) -> Page:
    """Return the page of words that a viewer may not know."""
    words = desk.words
    terms = (
        Term(id=each, word=words(f"term.{each}.word"), means=words(f"term.{each}.means"))
        for each in words.below("term")
    )
    title = words("glossary.title")
    return Page(
        address=links.GLOSSARY,
        template="glossary.html",
        title=title,
        description=words("glossary.description", title=desk.material.journal.title),
        context=GlossaryContext(
            heading=title,
            margin=desk.margin(),
            lead=words("glossary.lead"),
            terms=tuple(sorted(terms, key=lambda each: sort_key(each.word))),
        ),
    )
