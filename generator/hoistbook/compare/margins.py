"""By how much a value stays clear of what a claim allows."""

from __future__ import annotations

from hoistbook.authored.records import Claim
from hoistbook.units import to_unit


def margins(claim: Claim, value: float) -> list[float]:
    """Return by which share of each bound the value stays clear of it, in the author's unit.

    Of a bound at zero there is no share: its margin is the distance itself.
    """
    return [clear / (abs(bound) or 1.0) for clear, bound in clear_of(claim, value)]


def clear_of(claim: Claim, value: float) -> list[tuple[float, float]]:
    """Return by how much the value stays clear of each bound, and the bound, in its unit."""
    bounds = sorted(to_unit(bound.value, bound.unit) for bound in claim.bounds)
    if claim.relation == "below":
        return [(bounds[0] - value, bounds[0])]
    if claim.relation == "above":
        return [(value - bounds[0], bounds[0])]
    low, high = bounds
    return [(value - low, low), (high - value, high)]
