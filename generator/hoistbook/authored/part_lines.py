"""A part on one line: `Turbine inlet gasket, 2 off, 6.40 EUR each`."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.kinds import system_told_by
from hoistbook.authored.lines import (
    Piece,
    looks_like_money,
    pieces,
    unclear_piece,
    unparted_piece,
)
from hoistbook.authored.nodes import Node, Text
from hoistbook.authored.records import Came, Part
from hoistbook.values.money import Money, parse_money
from hoistbook.values.name import is_latin, to_id
from hoistbook.values.slip import Slip

MOST = 9999
"""Pieces of one entry; more is a slip of the keyboard."""

ONE = "keep the one that was paid; as keys and values a part may have `paid` and `list`"


@dataclass(frozen=True, slots=True)
class Price:
    """A price for all, or for each."""

    money: Money
    each: bool = False

    def of(self, count: int) -> Money:
        """Return the price of so many together."""
        factor = Decimal(count if self.each else 1)
        return Money(self.money.amount * factor, self.money.currency)


def parse_price(text: str, context: Context) -> Price | Slip:
    """Return the price in "6.40 EUR each", or what is wrong with it."""
    if text in ("free", "nothing", "gift"):
        hint = "leave the price out and say how it came: given or supplied free"
        return Slip("no-price", f"`{text}` is not an amount of money", hint)
    amount = re.sub(r"\s+each$", "", text)
    each = amount != text
    found = parse_money(amount, context.numbers, context.currency, of_one=each)
    if isinstance(found, Slip):
        return found
    if found.amount < 0:
        return Slip(
            "negative-price",
            "a price cannot be less than nothing",
            "money that comes back stands under `done` (sold, sent back) or `spent`",
        )
    return Price(found, each)


@dataclass(frozen=True, slots=True)
class Origin:
    """How a part came, and with which other part."""

    came: Came
    came_with: str | None = None


def parse_origin(text: str) -> Origin | Slip | None:
    """Return how a part came; None when the words do not say so."""
    if text in ("with the car", "with car"):
        return Origin(Came.WITH)
    if text.startswith("with ") and to_id(text[5:]):
        return Origin(Came.WITH, to_id(text[5:]))
    words = [came.value for came in Came if came not in (Came.WITH, Came.MADE)]
    if text in words:
        return Origin(Came(text))
    return None


def count_of(words: str, context: Context) -> int | Slip:
    """Return the count in "4 off" or "4", or what is wrong with it."""
    digits = words.removesuffix(" off")
    if digits.isascii() and digits.isdigit() and 1 <= int(digits[:9]) <= MOST:
        return int(digits)
    return Slip("bad-count", f"`{words}` is not a count", f"a whole number from 1 to {MOST}")


def made_id(name: str, node: Node, context: Context) -> str:
    """Return the id made from a name; say so where nobody could guess it."""
    made = to_id(name)
    if not made:
        message = f"`{name}` has no letter or digit to make an id of"
        context.problem("bad-id", message, node.place, "give an id: `part: turbo`")
    elif not is_latin(name):
        message = f"`{name}` is known as `{made}`"
        context.notice("id-made", message, node.place, "`part:` gives it an id of your own")
    return made


def part_of_line(node: Text, context: Context) -> Part | None:
    """Read `Turbine inlet gasket, 2 off, 6.40 EUR each`."""
    line = fields.text(node, context)
    first, *rest = pieces(line or "") or [Piece("", 0)]
    if not first.text:
        return None
    if isinstance(parse_money(first.text, context.numbers), Money):
        message = f"`{first.text}` is a price, and no part stands before it"
        hint = "between brackets a comma ends a value: quote a line that holds one"
        context.problem("no-name", message, node.place, hint)
        return None
    told = _told(first, rest, node, context)
    return None if told is None else _part(told, node, context)


@dataclass(slots=True)
class _Told:
    """What the pieces of a line tell of a part."""

    name: list[str]
    count: int = 1
    price: Price | None = None
    origin: Origin = Origin(Came.BOUGHT)


def _told(first: Piece, rest: list[Piece], node: Text, context: Context) -> _Told | None:
    """Sort the pieces of a line by what they are; None after noting that one is none of it."""
    told = _Told([first.text])
    for piece in rest:
        found = _piece(piece, node, context)
        match found:
            case int():
                told.count = found
            case Price() if told.price is not None:
                slip = Slip("two-prices", f"`{piece.text}` is the second price of this part", ONE)
                context.slip(slip, node, piece.offset)
                return None
            case Price():
                told.price = found
            case Origin():
                told.origin = found
            case str():
                told.name.append(found)
            case None:
                return None
    return told


def _part(told: _Told, node: Text, context: Context) -> Part | None:
    """Return the part that a line tells of."""
    whole_name = ", ".join(told.name)
    unparted = unparted_piece(whole_name)
    if unparted:
        context.slip(unparted, node)
        return None
    made = made_id(whole_name, node, context)
    if not made:
        return None
    return Part(
        id=made,
        name=whole_name,
        place=node.place,
        system=system_told_by(whole_name),
        count=told.count,
        paid=told.price.of(told.count) if told.price else None,
        came=told.origin.came,
        came_with=told.origin.came_with,
    )


def _piece(piece: Piece, node: Text, context: Context) -> int | Price | Origin | str | None:
    found: int | Price | Origin | Slip | str | None
    if re.fullmatch(r"\d+ off", piece.text, re.ASCII):
        found = count_of(piece.text, context)
    elif unclear := unclear_piece(piece.text):
        found = unclear
    elif looks_like_money(piece.text) or piece.text == "free":
        found = parse_price(piece.text, context)
    else:
        found = parse_origin(piece.text) or piece.text
    if isinstance(found, Slip):
        if found.code == "no-currency" and piece.text.isdigit():
            found = replace(found, hint=f"{found.hint}; for a count, {piece.text} off")
        context.slip(found, node, piece.offset)
        return None
    return found
