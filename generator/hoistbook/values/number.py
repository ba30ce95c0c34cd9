"""Numbers as authors write them: what a comma and a point mean in this journal."""

from __future__ import annotations

import re
from decimal import Decimal

from hoistbook.values.slip import Slip

LONGEST = 15
"""Digits that a double carries whole; a longer number is a slip of the keyboard."""

MINUS = "\N{MINUS SIGN}"

NUMBER = rf"[-+{MINUS}]?\d[\d.,'\u00a0\u202f\u2009]*"
"""A pattern for what looks like a number, commas and points included."""


def parse_number(text: str, numbers: str = "point") -> Decimal | Slip:
    """Return the number in a text, by what the journal says stands before the decimals.

    The journal's decimal mark is read as such. The other mark groups thousands where it stands
    so that it can mean nothing else; where it could as well be a decimal mark, both readings
    are shown.

    Examples
    --------
    >>> parse_number("1,234.50"), parse_number("1.234,50", "comma")
    (Decimal('1234.50'), Decimal('1234.50'))
    >>> parse_number("1,250", "comma")
    Decimal('1.250')
    >>> parse_number("1,5").message
    '`1,5` has two readings: 1.5 and 15'
    """
    plain = re.sub(r"['\u00a0\u202f\u2009]", "", text).replace(MINUS, "-")
    decimal, group = (",", ".") if numbers == "comma" else (".", ",")
    if len(re.sub(r"\D", "", plain)) > LONGEST:
        return Slip("bad-number", f"`{text}` has more than {LONGEST} digits", "check the number")
    whole, *decimals = plain.split(decimal)
    if len(decimals) > 1 or (decimals and group in decimals[0]):
        return _not_a_number(text, numbers)
    if group in whole and not _grouped(whole, group, numbers, bool(decimals)):
        return _two_readings(text, plain, group, decimal)
    digits = whole.replace(group, "") + ("." + decimals[0] if decimals and decimals[0] else "")
    if not re.fullmatch(r"[-+]?\d+(\.\d+)?", digits, re.ASCII):
        return _not_a_number(text, numbers)
    return Decimal(digits)


def _grouped(whole: str, group: str, numbers: str, decimals: bool) -> bool:
    """Tell whether the grouping mark can only be one."""
    groups = whole.lstrip("+-").split(group)
    well_formed = len(groups[0]) in (1, 2, 3) and groups[0] != "0"
    well_formed = well_formed and all(len(piece) == 3 for piece in groups[1:])
    # Labels and web pages write 1.250 for one and a quarter, whatever the journal writes.
    settled = numbers == "point" or decimals or len(groups) > 2
    return well_formed and settled


def _two_readings(text: str, plain: str, group: str, decimal: str) -> Slip:
    if plain.count(group) > 1 or decimal in plain:
        return _not_a_number(text, "comma" if decimal == "," else "point")
    mark = "comma" if decimal == "," else "point"
    if plain.lstrip("+-").startswith("0"):
        return Slip(
            "decimal-mark",
            f"`{text}` is not written as this journal writes decimals, with a {mark}",
            f"write {plain.replace(group, decimal)}, or set `numbers:` in build.yaml",
        )
    as_decimal, as_group = plain.replace(group, decimal), plain.replace(group, "")
    return Slip(
        "two-readings",
        f"`{text}` has two readings: {plain.replace(group, '.')} and {as_group}",
        f"write {as_decimal} or {as_group}; this journal writes a {mark} before the decimals "
        "(`numbers:` in build.yaml)",
    )


def _not_a_number(text: str, numbers: str) -> Slip:
    example = "1234,5" if numbers == "comma" else "1234.5"
    return Slip("bad-number", f"`{text}` is not a number", f"write it as {example}")
