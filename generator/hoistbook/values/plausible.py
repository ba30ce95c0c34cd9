"""Numbers that read rightly and yet look like a slip: a pump in L/min, a pipe in metres."""

from __future__ import annotations

import re
from functools import cache

from hoistbook.units import dimension, from_unit, to_unit, units_of
from hoistbook.values.number import NUMBER
from hoistbook.values.quantity import Quantity, parse_quantity
from hoistbook.values.slip import Slip

SEA_LEVEL = 101_325.0
"""Pressure of the standard atmosphere [Pa], close enough for what is met in practice."""


def likely_slip(name: str, quantity: Quantity, usual: str) -> Slip | None:
    """Return a notice about a number far outside of practice, naming the likely slip.

    Parameters
    ----------
    name
        What the number is, as "boost".
    quantity
        The number as read.
    usual
        The range met in practice, as "20 mm to 120 mm" or "0.1 to 0.9"; "0.1 bar to 4 bar or 0"
        where zero is met too; empty for none. Of pressures it is above the air.

    Examples
    --------
    >>> from hoistbook.values.quantity import parse_quantity
    >>> pipe = parse_quantity("51 m", ("length",))
    >>> likely_slip("bore", pipe, "4 mm to 150 mm").hint
    'did you mean 51 mm?'
    """
    if not usual:
        return None
    usual, _, or_zero = usual.partition(" or ")
    low, high, unit = _range(usual)
    value = quantity.value - (SEA_LEVEL if quantity.reference == "absolute" else 0.0)
    # A mass flow says nothing about a range of volume flows without a density.
    if low <= value <= high or dimension(quantity.unit) != dimension(unit):
        return None
    if or_zero and (value == 0 or (quantity.reference == "absolute" and abs(value) < low)):
        return None
    written = to_unit(quantity.value, quantity.unit)
    number = re.match(NUMBER, quantity.text)
    candidates = [
        unit
        for unit in units_of(dimension(quantity.unit))
        if unit not in ("-", quantity.unit) and low <= from_unit(written, unit) <= high
    ]
    hint = "look at the number and its unit"
    if quantity.reference == "absolute":
        if low <= quantity.value <= high:
            hint = f"did you mean {quantity.text.replace('absolute', 'gauge')}?"
    elif re.search(r"\d[.,]\d{3}\b", quantity.text) and low <= quantity.value * 1000 <= high:
        hint = f"did you mean {_shown(written * 1000, quantity.unit)}?"
    elif candidates and number:
        hint = f"did you mean {number[0]} {candidates[0]}?"
    elif low <= from_unit(written / 10, quantity.unit) <= high:
        hint = f"did you mean {_shown(written / 10, quantity.unit)}?"
    return Slip("unlikely", f"{name} of {quantity.text} is far from the usual {usual}", hint)


def _shown(value: float, unit: str) -> str:
    return f"{value:g}{'' if unit in (':1', '-') else ' '}{unit.strip('-')}"


@cache
def _range(usual: str) -> tuple[float, float, str]:
    ends = [parse_quantity(end) for end in usual.split(" to ")]
    low, high = (end for end in ends if isinstance(end, Quantity))
    return low.value, high.value, high.unit
