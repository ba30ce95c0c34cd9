"""What is printed at a time: a line of heading and a table below it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A heading and a table; a heading of a column that begins with `>` stands over numbers."""

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
