"""Short forms: one line for a part, for money spent, for an hour of work."""

from __future__ import annotations

import re
from dataclasses import dataclass

from hoistbook.values.number import MINUS, parse_number
from hoistbook.values.slip import Slip

_COMMA = re.compile(r",(?!\d)\s*|(?<!\d),\s*")
_MONEY = re.compile(
    rf"(?i)[-+{MINUS}€£$¥]?\s*\d[\d.,']*\s*"
    r"(?:[a-z]{2,4}|euros?|pounds?|dollars?|francs?|[€£$¥])?(\s+each)?"
)
_MONEY_AFTER_CODE = re.compile(r"[A-Z]{3}\s+\d[\d.,']*(\s+each)?")
_HOURS = re.compile(r"(\d[\d.,]*)\s*(h|hrs?|hours?|mins?|minutes?)\.?", re.ASCII)
_CLOCK = re.compile(r"(\d{1,3}):([0-5]\d)(?:\s*h)?", re.ASCII)
_COUNT = re.compile(
    r"(?i)(?:x ?(\d{1,4})|(\d{1,4}) ?(?:x|of)|(?:qty|quantity)\.? ?(\d{1,4}))",
    re.ASCII,
)
_COUNT_BEFORE = re.compile(r"(\d{1,4}) ?[x\u00d7] (?=[^\W\d])", re.ASCII)
_PRICE_AND_MORE = re.compile(
    r"([€£]\s?\d[\d.,]*|\d[\d.,]*\s?(?:[A-Z]{3}|[€£]))[\s/]+(\S.*)", re.ASCII
)
_COUNT_OR_PRICE_IN_NAME = re.compile(
    r"\s(?:\d{1,4} off\b.*|[€£]\s?\d[\d.,]*|\d[\d.,]*\s?(?:EUR|GBP|USD|CHF|[€£])(?: each)?$)",
    re.ASCII,
)


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


def unclear_piece(text: str) -> Slip | None:
    """Return what a piece is that looks like a count or a price and is written as neither.

    Examples
    --------
    >>> unclear_piece("x4").hint, unclear_piece("0.20 GBP ea").hint
    ('write 4 off', 'write 0.20 GBP each')
    >>> unclear_piece("5 L") is None
    True
    """
    count = _COUNT.fullmatch(text)
    if count:
        (number,) = filter(None, count.groups())
        return Slip("unclear-count", f"`{text}` looks like a count", f"write {number} off")
    price = _PRICE_AND_MORE.fullmatch(text)
    if price and not looks_like_money(text):
        each = " each" if re.match(r"(?i)ea|a piece|per|apiece|pc", price[2]) else ""
        message = f"`{text}` looks like a price with more behind it"
        return Slip("unclear-price", message, f"write {price[1]}{each}")
    return None


def unparted_piece(name: str) -> Slip | None:
    """Return where a part's name goes on with a count or a price, for want of a comma."""
    before = _COUNT_BEFORE.match(name)
    if before:
        hint = f"write {name[before.end() :]}, {before[1]} off"
        return Slip("unclear-count", f"`{before[0].strip()}` looks like a count", hint)
    found = _COUNT_OR_PRICE_IN_NAME.search(name)
    if found is None:
        return None
    hint = "put a comma before a count or a price, or write the part as keys and values"
    message = f"`{found[0].strip()}` stands in the name of this part"
    return Slip("no-comma", message, hint, found.start() + 1)


def hours_in(text: str, numbers: str) -> float | Slip | None:
    """Return the hours in "2.5 h", "30 min" or "1:30"; None when the words are no time.

    Examples
    --------
    >>> hours_in("2.5 h", "point"), hours_in("30 min", "point"), hours_in("1:30", "point")
    (2.5, 0.5, 1.5)
    """
    clock = _CLOCK.fullmatch(text)
    if clock:
        return int(clock[1]) + int(clock[2]) / 60
    match = _HOURS.fullmatch(text)
    if match is None:
        return None
    number = parse_number(match[1], numbers)
    if isinstance(number, Slip):
        return number
    return float(number) / (60 if match[2].startswith("m") else 1)


def looks_like_money(text: str) -> bool:
    """Tell whether a piece is meant as an amount of money, rightly written or not."""
    return bool(_MONEY.fullmatch(text) or _MONEY_AFTER_CODE.fullmatch(text))
