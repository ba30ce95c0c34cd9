"""How a number is known."""

from __future__ import annotations

from enum import StrEnum


class Evidence(StrEnum):
    """The evidence behind a number, best first; the words are the ones that pages print."""

    MEASURED = "measured"
    ESTIMATED = "estimated"
    STATED = "stated"
    """Said by a maker, a seller or the author, who sets what is adjusted."""
    ASSUMED = "assumed"
