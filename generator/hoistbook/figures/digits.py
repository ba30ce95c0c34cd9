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


def places(value: float, low: float, high: float) -> tuple[int, int]:
    """Return the powers of ten at which a value and its band are rounded.

    The band keeps two digits of half its width where these are 35 or less, else one (the rounding
    rule of the Particle Data Group, Review of Particle Physics, introduction, section 5.3). The
    value itself ends at the largest power of ten that is no more than two thirds of half the band,
    but keeps two digits of its own where the band has them too, and stays inside its band.
    """
    half = (high - low) / 2
    first = math.floor(math.log10(half))
    leading = half / 10.0**first * 100
    band_place = first - 1 if leading < 354.5 else first
    value_place = math.floor(math.log10(half * 2 / 3))
    if value:
        value_place = min(value_place, max(place(value, 2), band_place))
    inside = rounded(low, band_place) <= rounded(value, value_place) <= rounded(high, band_place)
    return (value_place if inside else min(value_place, band_place)), band_place
