"""What is wrong with a record, or worth saying about a car, and exactly where it is written.

A mistake of the author's is a value of this module, never an exception: every stage hands its
problems on and all of them are reported at once.
"""

from __future__ import annotations

import difflib
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
    """Something the record says about the car that its owner should look at; never stops anything."""

    code: str
    message: str
    place: Place | None = None
    hint: str = ""
    episode: int | None = None


def closest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word nearest to a misspelt one, or None when nothing is near."""
    near = difflib.get_close_matches(word.casefold(), sorted(known), n=1, cutoff=0.6)
    return near[0] if near else None
