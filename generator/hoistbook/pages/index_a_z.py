"""The index: everything that has a page or a place on one, by its first letter."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from hoistbook.figures.figure import Figure
from hoistbook.pages import links
from hoistbook.pages.broken import broken_rows
from hoistbook.pages.claims import score_of
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexEntry:
    """One line of the index."""

    text: str
    address: str
    what: str
    """"part", "figure", "episode 3", "caution"."""
    note: str
    """What became of a part; empty for all else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """The entries that begin with one letter."""

    letter: str
    id: str
    entries: tuple[IndexEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexContext(Sheet):
    """`index-a-z.html`: the index."""

    letters: tuple[Letter, ...]


def index_page(desk: Desk) -> Page:
    """Return the index."""
    title = desk.words("index.title")
    entries = sorted(_entries(desk), key=lambda each: (sort_key(each.text), each.address))
    letters = tuple(
        Letter(letter=letter, id=_anchor(letter), entries=tuple(members))
        for letter, members in groupby(entries, key=lambda each: _letter(each.text))
    )
    return Page(
        address=links.INDEX,
        template="index-a-z.html",
        title=title,
        description=desk.words("index.description", title=desk.material.journal.title),
        context=IndexContext(
            heading=title,
            margin=desk.margin(),
            contents=tuple(Link(text=each.letter, address=f"#{each.id}") for each in letters),
            letters=letters,
        ),
    )


def _entries(desk: Desk) -> Iterator[IndexEntry]:
    words = desk.words
    yield from _lists(desk)
    for part_id in desk.states[desk.last].parts:
        part = desk.part(part_id)
        yield IndexEntry(
            text=part.text, address=part.address, what=words("index.part"), note=part.fate
        )
    for number, episode in desk.episodes.items():
        what = desk.episode(number).text.casefold()
        yield IndexEntry(text=episode.title, address=links.episode(number), what=what, note="")
    for caution in desk.material.cautions:
        yield IndexEntry(
            text=caution.title,
            address=links.caution(caution.id),
            what=words("index.caution"),
            note="",
        )
    worked_out = {
        figure.key.quantity
        for number in desk.figures
        for figure in desk.listed(number)
        if isinstance(figure, Figure)
    }
    for quantity in sorted(worked_out):
        yield IndexEntry(
            text=desk.titles[quantity],
            address=links.workings(quantity),
            what=words("index.figure"),
            note="",
        )
    for term in words.below("term"):
        yield IndexEntry(
            text=words(f"term.{term}.word"),
            address=links.term(term),
            what=words("index.term"),
            note="",
        )


def _lists(desk: Desk) -> Iterator[IndexEntry]:
    """Yield the lists that a reader may look for by what they answer."""
    lists = (
        ("claims.title", links.CLAIMS, score_of(desk)),
        ("broke.title", links.BROKE, broken_rows(desk)),
    )
    for title, address, present in lists:
        if present:
            text, what = desk.words(title), desk.words("index.list")
            yield IndexEntry(text=text, address=address, what=what, note="")


def sort_key(text: str) -> str:
    """Return a text without case and marks on its letters, so that É stands with E."""
    parts = unicodedata.normalize("NFKD", text.casefold())
    return "".join(each for each in parts if not unicodedata.combining(each))


def _letter(text: str) -> str:
    first = sort_key(text)[:1].upper()
    return first if first.isalpha() else "0-9"


def _anchor(letter: str) -> str:
    return f"letter-{letter.casefold()}"
