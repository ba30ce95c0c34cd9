"""A safety notice that the work calls for."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution: its texts, and the kinds of work and parts that call for it."""

    id: str
    title: str
    line: str
    """One line, for pages that owe only a mention."""
    text: tuple[str, ...]
    """The full text by paragraphs; the last defers to local codes and licensed practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Owed:
    """A caution that one page owes, in full or as a line, and what on that page calls for it."""

    caution: Caution
    full: bool
    because: tuple[str, ...]
    """Names of the parts or work that call for it, as the page prints them."""
    ahead: bool = False
    """Whether its line also stands before the work that the page describes."""
