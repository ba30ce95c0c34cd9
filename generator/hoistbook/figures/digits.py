"""How many digits of a number its band allows: the one rule, for pages and verdicts alike."""

from __future__ import annotations

import math
from decimal import ROUND_HALF_UP, Decimal


def place(value: float, digits: int) -> int:
    """Return the power of ten of the last of so many significant digits of a number."""
    return math.floor(math.log10(abs(value))) - digits + 1 if value else 0


def rounded(value: float, at: int) -> Decimal:
    """Return a number rounded half up at a power of ten; never a negative zero."""
    step = Decimal(1).scaleb(at)
    steps = (Decimal(repr(float(value))) / step).quantize(Decimal(1), ROUND_HALF_UP)
    number = steps * step if steps else Decimal(0)
    return number.quantize(Decimal(1)) if at >= 0 else number.quantize(step)


def exact(value: float, digits: int) -> Decimal:
    """Return a number that has no band at no more than so many significant digits.

    Zeros that end its decimals are dropped: without a band they would claim what nobody said.
    """
    number = rounded(value, place(value, digits)).normalize()
    return number.quantize(Decimal(1)) if number == number.to_integral_value() else number


def place_of_band(low: float, high: float) -> int:
    """Return the power of ten at which a value and the two ends of its band are rounded.

    Two digits of half the band's width are kept where these are 35 or less, else one (the
    rounding rule of the Particle Data Group, Review of Particle Physics, introduction, section
    5.3), and the value ends where its band does (JCGM 100:2008, 7.2.6): it reads the same
    everywhere.
    """
    half = (high - low) / 2
    first = math.floor(math.log10(half))
    leading = half / 10.0**first * 100
    return first - 1 if leading < 354.5 else first
