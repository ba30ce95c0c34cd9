"""What is wrong with a record, or worth saying about a car, and exactly where it is written.

A mistake of the author's is a value of this module, never an exception: every stage hands its
problems on and all of them are reported at once.
"""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Self


@dataclass(frozen=True, slots=True)
class Place:
    """Where something stands: a file of the journal, a line and a column (both from 1)."""

    file: str
    """Path relative to the journal's folder, with forward slashes."""
    line: int = 1
    column: int = 1
    text: str = ""
    """The line itself, without its line end."""

    def moved(self, columns: int) -> Self:
        """Return the place a number of columns further right on the same line."""
        return replace(self, column=self.column + columns)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Problem:
    """Something that makes the record unreadable or contradictory; it stops publishing."""

    code: str
    """A word or two joined by hyphens, as `unknown-key`."""
    message: str
    """What is wrong, one sentence without a full stop at its end."""
    place: Place | None = None
    hint: str = ""
    """What to write instead."""


@dataclass(frozen=True, slots=True)
class Notice:
    """Something about the car that its owner should look at; never stops anything."""

    code: str
    message: str
    place: Place | None = None
    hint: str = ""
    episode: int | None = None


NEARLY = 0.85
"""Cutoff of `closest` for a name among many that are like one another: a letter or two astray."""


def closest(word: str, known: Iterable[str], cutoff: float = 0.6) -> str | None:
    """Return the known word nearest to a misspelt one, or None when nothing is near.

    The cutoff is the share of letters in common, 0 to 1; short words need a higher one.
    """
    near = difflib.get_close_matches(word.casefold(), sorted(known), n=1, cutoff=cutoff)
    return near[0] if near else None


WIDEST = 90
"""Characters of an author's line that a picture shows; of a longer one, those around the place."""


def picture(told: Problem | Notice, folder: str = "") -> str:
    """Return a problem or notice as it is printed: where, what, the line with a caret, what to do.

    Parameters
    ----------
    told
        The problem or notice.
    folder
        The journal's folder as the reader knows it; put before the file's path.
    """
    lines = []
    if told.place is not None:
        lines.append(f"{folder}/{told.place}" if folder else str(told.place))
    word = "problem" if isinstance(told, Problem) else "notice"
    lines.append(f"{word}: {told.message}")
    if told.place is not None and told.place.text.strip():
        lines.extend(f"    {line}" for line in line_and_caret(told.place))
    if told.hint:
        lines.append(f"  {told.hint}")
    return "\n".join(lines)


def line_and_caret(place: Place) -> tuple[str, str]:
    """Return the author's line, cut to what fits, and a line below it that points at the place."""
    line = place.text.expandtabs(1).rstrip()
    start = max(0, place.column - 1 - WIDEST * 2 // 3) if len(line) > WIDEST else 0
    shown = line[start : start + WIDEST]
    before, after = "…" if start else "", "…" if start + WIDEST < len(line) else ""
    width = sum(_cells(letter) for letter in shown[: place.column - 1 - start])
    return before + shown + after, " " * (len(before) + width) + "^"


def _cells(letter: str) -> int:
    """Return how many columns of a terminal a character takes (Unicode Standard Annex 11)."""
    if unicodedata.combining(letter):
        return 0
    return 2 if unicodedata.east_asian_width(letter) in "WF" else 1
