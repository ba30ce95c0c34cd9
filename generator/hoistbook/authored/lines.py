"""Short forms: one line for a part, for money spent, for an hour of work."""

from __future__ import annotations

import re
from dataclasses import dataclass

_COMMA = re.compile(r",(?!\d)\s*|(?<!\d),\s*")
_MONEY = re.compile(r"(?i)[-+€£$¥]?\s*\d[\d.,']*\s*(?:[a-z]{2,4}|[€£$¥])?(\s+each)?")
_MONEY_AFTER_CODE = re.compile(r"[A-Z]{3}\s+\d[\d.,']*(\s+each)?")


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of a line between commas."""

    text: str
    offset: int
    """Characters between the start of the line and the piece."""


def pieces(line: str) -> list[Piece]:
    """Split a line at its commas, except inside a number such as 6,40.

    Examples
    --------
    >>> [piece.text for piece in pieces("Turbine inlet gasket, 2 off, 6,40 EUR each")]
    ['Turbine inlet gasket', '2 off', '6,40 EUR each']
    """
    found, start = [], 0
    for comma in [*_COMMA.finditer(line), None]:
        end = comma.start() if comma else len(line)
        text = line[start:end]
        if text.strip():
            found.append(Piece(text.strip(), start + len(text) - len(text.lstrip())))
        start = comma.end() if comma else end
    return found


def looks_like_money(text: str) -> bool:
    """Tell whether a piece is meant as an amount of money, rightly written or not."""
    return bool(_MONEY.fullmatch(text) or _MONEY_AFTER_CODE.fullmatch(text))
