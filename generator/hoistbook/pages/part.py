"""The page of one part: what it is, where it came from, what it fits and what became of it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from hoistbook.authored.records import JoinEnd, Part
from hoistbook.history.state import Change, PartState, Status
from hoistbook.pages import links
from hoistbook.pages.amounts import amounts_by_part
from hoistbook.pages.became import standing
from hoistbook.pages.desk import Desk
from hoistbook.pages.joins import JoinRow, joins_of, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.part_cost import cost_of
from hoistbook.pages.parts import bought_at
from hoistbook.pages.receipts import came_of, count_of
from hoistbook.pages.shown import Entry, FigureRow, Link, PartRef, Sheet
from hoistbook.values.end_reading import parse_end


@dataclass(frozen=True, slots=True, kw_only=True)
class FactRow:
    """A stated property."""

    name: str
    value: str
    evidence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EndRow:
    """An end of the part and what it is joined to."""

    name: str
    text: str
    joined: PartRef | None
    joined_end: str
    full: str
    """The end in the trade's full form; empty where that says no more than its text."""
    unclear: str
    """What its text leaves open and what to measure; empty where it is clear."""
    join: JoinRow | None
    """The join with its verdict."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartEvent:
    """What befell the part in one episode."""

    episode: Link
    what: str
    """"broke: a hot nut; 8 fitted, 1 spare, 1 gone"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartContext(Sheet):
    """`part.html`: one part."""

    part: PartRef
    entries: tuple[Entry, ...]
    """Kind, system, count, maker, supplier and the like, as far as known."""
    cost: tuple[Entry, ...]
    """What was paid for it and what that came to in the tally, each leading there."""
    note: str
    link: str
    """Full URL; empty without."""
    facts: tuple[FactRow, ...]
    warnings: tuple[JoinRow, ...]
    """Joins of this part that must not be made."""
    ends: tuple[EndRow, ...]
    pieces: tuple[PartRef, ...]
    """What it was made from."""
    figures: tuple[FigureRow, ...]
    """Figures of which it is the subject, as at the last episode."""
    history: tuple[PartEvent, ...]
    """What happened to it, in order."""


def part_pages(desk: Desk) -> Iterator[Page]:
    """Yield the page of every part."""
    history, amounts = _histories(desk), amounts_by_part(desk)
    for state in desk.states[desk.last].parts.values():
        id_ = state.part.id
        cost = cost_of(desk, state.part, amounts.get(id_, ()))
        yield _page(desk, state, cost, history.get(id_, ()))


def _histories(desk: Desk) -> dict[str, tuple[PartEvent, ...]]:
    """Return what happened to each part, in one walk over all changes."""
    found: dict[str, tuple[PartEvent, ...]] = {}
    for number, changes in desk.changes.items():
        for change in changes:
            about, _, name = change.subject.partition(":")
            if about == "part":
                what = _befell(desk, change, desk.states[number].parts[name], number)
                event = PartEvent(episode=desk.episode(number), what=what)
                found[name] = (*found.get(name, ()), event)
    return found


def _befell(desk: Desk, change: Change, state: PartState, number: int) -> str:
    """Return all that one episode did to a part: what broke says so though it was replaced.

    The reason stands with what it is the reason of, which is the first: why it broke.
    """
    broke = state.broke_in == number
    replaced = state.replaced_by if state.replaced_in == number else None
    gone = state.status is Status.GONE and state.since == number
    said = [
        desk.words("change.broke") if broke else "",
        desk.words("change.replaced_by", part=desk.part_name(replaced)) if replaced else "",
        standing(desk.words, desk.part_name, state) if gone else "",
    ]
    first, *others = [each for each in said if each] or [desk.word("change", change.kind)]
    if change.because:
        first = desk.words("part.event", what=first, because=change.because)
    counted = _standing(desk, state)
    if counted and first == desk.words("change.fitted"):
        return counted
    return "; ".join(each for each in (first, *others, counted) if each)


def _page(
    desk: Desk,
    state: PartState,
    cost: tuple[Entry, ...],
    history: tuple[PartEvent, ...],
) -> Page:
    part, words = state.part, desk.words
    address = links.part(part.id)
    joins = joins_of(desk, part.id)
    lead = _lead(desk, state)
    return Page(
        address=address,
        template="part.html",
        title=desk.words("part.page_title", name=part.name, id=part.id),
        description=words(
            "part.description", name=part.name, title=desk.material.journal.title, lead=lead
        ),
        context=PartContext(
            heading=part.name,
            margin=desk.margin(),
            lead=lead,
            part=desk.part(part.id),
            entries=tuple(_entries(desk, state)),
            cost=cost,
            note=part.note or "",
            link=part.link or "",
            facts=tuple(
                FactRow(
                    name=name[:1].upper() + name[1:],
                    value=desk.fact(given.value),
                    evidence=desk.evidence(given),
                )
                for name, given in part.facts.items()
            ),
            warnings=tuple(never_joined(joins.values())),
            ends=_ends(part, joins),
            pieces=tuple(desk.part(each.part) for each in part.made_from),
            figures=tuple(_figures(desk, part.id)),
            history=history,
        ),
        owed=desk.owed(address),
    )


def _lead(desk: Desk, state: PartState) -> str:
    became = desk.became(state.part.id)
    if became:
        return became[:1].upper() + became[1:] + "."
    if state.status == "fitted" and state.fitted_in is not None:
        return desk.words(
            "part.fitted_since", episode=desk.episode(state.fitted_in).text.casefold()
        )
    return desk.words("part.status", status=desk.word("status", state.status))


def _entries(desk: Desk, state: PartState) -> Iterator[Entry]:
    part, words = state.part, desk.words
    texts = (
        ("kind", desk.kind(part.kind)),
        ("system", desk.system(part.system)),
        ("count", count_of(desk, part)),
        ("standing", _standing(desk, state)),
        ("maker", part.maker or ""),
        ("part_number", part.part_number or ""),
        ("came", came_of(desk, part)),
        ("bought", bought_at(desk, part.id)),
        ("must", part.must or ""),
        ("good_until", desk.formats.date(part.good_until) if part.good_until else ""),
        ("hours", desk.hours(part.hours)),
    )
    for key, text in texts:
        if text:
            yield Entry(label=words(f"part.{key}"), text=text)
    yield Entry(label=words("part.known"), links=(desk.episode(state.known_in),))


def _standing(desk: Desk, state: PartState) -> str:
    """Return how many of several are on the car and left; empty where its status says it all."""
    shown = standing(desk.words, desk.part_name, state)
    return shown if state.status == "fitted" and shown != desk.word("status", state.status) else ""


def _ends(part: Part, joins: Mapping[JoinEnd, JoinRow]) -> tuple[EndRow, ...]:
    rows = []
    for end in part.ends.values():
        key = JoinEnd(part=part.id, end=end.name)
        join, typed = joins.get(key), parse_end(end.text)
        other = join.beside(links.part(part.id), end.name) if join else None
        rows.append(
            EndRow(
                name=end.name[:1].upper() + end.name[1:],
                text=end.text,
                joined=other.part if other else None,
                joined_end=other.name if other else "",
                full="" if typed.unclear or _says_no_more(typed.full, end.text) else typed.full,
                unclear=f"{typed.unclear}: {typed.measure}" if typed.unclear else "",
                join=join,
            )
        )
    return tuple(rows)


def _says_no_more(full: str, text: str) -> bool:
    """Tell whether the full form has only words that the text has."""
    return set(_WORDS.findall(full.casefold())) <= set(_WORDS.findall(text.casefold()))


_WORDS = re.compile(r"[\w./-]+")


def _figures(desk: Desk, part_id: str) -> Iterator[FigureRow]:
    for figure in desk.listed(desk.last):
        if figure.key.subject == part_id:
            yield desk.row(figure)
