"""Rounding to the cent, and spreading an amount over parts so that the shares add up to it."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from math import floor

from hoistbook.values.money import coins


def smallest_unit(currency: str) -> Decimal:
    """Return the amount to which sums in a currency are rounded: its smallest unit (ISO 4217).

    Examples
    --------
    >>> smallest_unit("EUR"), smallest_unit("JPY"), smallest_unit("TND")
    (Decimal('0.01'), Decimal('1'), Decimal('0.001'))
    """
    return Decimal(1).scaleb(-coins(currency))


def rounded(amount: Fraction, currency: str) -> Decimal:
    """Return an amount rounded to the cent, halves away from zero.

    Notes
    -----
    Council Regulation (EC) No 1103/97, Article 5, rounds converted amounts to the nearest cent
    and a result that is exactly half-way up; an amount that came back is rounded like the same
    amount paid, so that the two cancel.

    Examples
    --------
    >>> rounded(Fraction("10.005"), "EUR"), rounded(Fraction("-10.005"), "EUR")
    (Decimal('10.01'), Decimal('-10.01'))
    """
    unit = smallest_unit(currency)
    steps = floor(abs(amount) / Fraction(unit) + Fraction(1, 2))
    return (steps if amount >= 0 else -steps) * unit


def spread(total: Decimal, weights: Sequence[Fraction], currency: str) -> tuple[Decimal, ...]:
    """Return shares of a total in proportion to weights, each to the cent, that add up to it.

    Every share is rounded down; the cents left over go one each to the shares that lost most by
    it, the first of equals first (the method of largest remainders).

    Parameters
    ----------
    total
        Whole cents; negative when it came back.
    weights
        Not negative; when all of them are zero, all weigh the same.
    currency
        Of the total, for its smallest unit.

    Examples
    --------
    >>> spread(Decimal("10.00"), [Fraction(1)] * 3, "EUR")
    (Decimal('3.34'), Decimal('3.33'), Decimal('3.33'))
    """
    if not weights:
        return ()
    unit = smallest_unit(currency)
    if not any(weights):
        weights = [Fraction(1)] * len(weights)
    steps = Fraction(total) / Fraction(unit)
    exact = [steps * weight / sum(weights) for weight in weights]
    down = [floor(share) for share in exact]
    by_loss = sorted(range(len(weights)), key=lambda index: down[index] - exact[index])
    for index in by_loss[: int(steps) - sum(down)]:
        down[index] += 1
    return tuple(share * unit for share in down)
