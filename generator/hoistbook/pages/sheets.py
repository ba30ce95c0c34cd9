"""Long lists on several sheets, so that a page stays small however long a journal grows.

A list that grows by episodes is cut between episodes. The sheet that is still being filled stands
on the page of the list; a full one is filed under the page, by the first episode on it, and what
is on it stays there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hoistbook.pages.desk import Desk
from hoistbook.pages.shown import Link

MOST_ROWS = 120
"""Of one sheet, unless a single episode has more: half of the elements that a page may have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Filed:
    """An episode whose rows stand on another sheet: its place on the page of the list."""

    id: str
    """The anchor that its rows had while the sheet was being filled."""
    link: Link
    title: str


def sheets_of(weights: Mapping[int, int], most: int = MOST_ROWS) -> tuple[tuple[int, ...], ...]:
    """Return the episodes by sheet, in order; the last sheet is the one still being filled.

    Examples
    --------
    >>> sheets_of({0: 2, 1: 3, 2: 4, 3: 9, 4: 1}, most=6)
    ((0, 1), (2,), (3,), (4,))
    """
    sheets: list[list[int]] = [[]]
    room = most
    for number, weight in weights.items():
        if sheets[-1] and weight > room:
            sheets.append([])
            room = most
        sheets[-1].append(number)
        room -= weight
    return tuple(tuple(each) for each in sheets)


def filed_at(page: str, sheet: tuple[int, ...]) -> str:
    """Return the address of a full sheet of a page."""
    return f"{page}from-{sheet[0]}/"


def filed_on(desk: Desk, page: str, sheets: tuple[tuple[int, ...], ...]) -> tuple[Filed, ...]:
    """Return the episodes whose rows stand on full sheets."""
    return tuple(
        Filed(
            id=f"episode-{number}",
            link=Link(
                text=desk.episode(number).text,
                address=f"{filed_at(page, sheet)}#episode-{number}",
            ),
            title=desk.episodes[number].title if number in desk.episodes else "",
        )
        for sheet in sheets[:-1]
        for number in sheet
    )
