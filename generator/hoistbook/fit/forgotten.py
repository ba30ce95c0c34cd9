"""What is usually forgotten: sundries that the kinds present call for and the parts list lacks."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from hoistbook.authored.records import Episode
from hoistbook.fit.tables import Row, table
from hoistbook.history.state import PartState, State, Status
from hoistbook.problems import closest


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgotten:
    """One sundry that nobody wrote down."""

    id: str
    """By which its author dismisses it."""
    item: str
    why: str
    """Why it is forgotten, and what to heed; may be empty."""
    because_of: tuple[str, ...]
    """Ids of the parts that call for it."""
    area: str
    provenance: str


def forgotten(state: State, not_needed: Collection[str] = ()) -> tuple[Forgotten, ...]:
    """Return the sundries that a build calls for and does not list, in the table's order.

    Parameters
    ----------
    state : State
        The build as at one episode.
    not_needed : collection of str
        Ids of sundries that the author says are not needed.
    """
    present = [each for each in state.parts.values() if _counts(each)]
    listed = _listed(state)
    return tuple(
        _entry(row, callers)
        for row in table("sundries")
        if row["id"] not in not_needed
        and (callers := _callers(row, present))
        and not re.search(row["had_by"], listed, re.IGNORECASE | re.MULTILINE)
    )


def _counts(part: PartState) -> bool:
    """Tell whether a part is of the project: not gone, and not one the car came with."""
    return part.status is not Status.GONE and bool(part.known_in)


def _listed(state: State) -> str:
    """Return what was ever written down, a line each: what was used up is not forgotten."""
    lines = [f"{each.part.name}, {each.part.kind or ''}" for each in state.parts.values()]
    lines += [dated.value.sealed_with or "" for dated in state.joins]
    return "\n".join(lines)


def _callers(row: Row, present: Collection[PartState]) -> tuple[str, ...]:
    kinds = set(row["asked_by"].split(";"))
    return tuple(each.part.id for each in present if each.part.kind in kinds)


def _entry(row: Row, callers: tuple[str, ...]) -> Forgotten:
    return Forgotten(
        id=row["id"],
        item=row["item"],
        why="; ".join(text for text in (row["why_forgotten"], row["note"]) if text),
        because_of=callers,
        area=row["area"],
        provenance=row["provenance"],
    )


def known_sundry(words: str) -> str | None:
    """Return the id of the sundry that words begin with, its id or its item, or None.

    Examples
    --------
    >>> known_sundry("heat-sleeve, it runs cold"), known_sundry("Fire sleeve / heat sleeve")
    ('heat-sleeve', 'heat-sleeve')
    """
    said = words.casefold().strip()
    begun = said.partition(",")[0].strip()
    rows = table("sundries")
    return next(
        (row["id"] for row in rows if begun == row["id"] or said == row["item"].casefold()), None
    )


def dismissed(episodes: Iterable[Episode]) -> frozenset[str]:
    """Return the ids of the sundries that episodes say are not needed."""
    return frozenset(
        known
        for episode in episodes
        for words, _ in episode.not_needed
        if (known := known_sundry(words))
    )


def near_sundry(word: str) -> str | None:
    """Return the id nearest to a misspelt one, or None."""
    return closest(word.partition(",")[0], [row["id"] for row in table("sundries")])
