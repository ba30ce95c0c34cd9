"""Up to which boost a claim holds: a search over the central values of the chain."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

from hoistbook.figures.base import Inputs, keyed
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Key
from hoistbook.figures.map_inputs import with_map
from hoistbook.figures.summary import headline_value
from hoistbook.history.state import State

STEP = 10e3
"""Boost is tried in steps of this [Pa]; a claim that fails and holds again between two steps is
not seen to."""
NARROW = 2e3
"""Step once an end was found and the map is read anew there [Pa]."""
FINE = 250.0
"""How closely the end is found [Pa]."""
LEAST, MOST_BEYOND = 5e3, 50e3
"""Lowest boost that is tried, and how far beyond a small one the search goes [Pa]."""
TURNS = 3
"""How often the compressor's map is read anew at the end that was found."""

Margin = Callable[[float], float]
"""Boost [Pa] -> by how much a claim holds there."""
MarginAt = Callable[[float], Margin]
"""Boost at which the compressor's map is read [Pa] -> margin over boost."""


def margin_over_boost(
    inputs: Inputs, state: State, key: Key, of_value: Callable[[float], float]
) -> MarginAt:
    """Return the margin of a claim over boost, with what the map says at one boost.

    Reading the map takes as long as ten margins, and moves the end by a hundredth of a bar.

    Parameters
    ----------
    inputs
        Inputs at the claim's conditions.
    state
        The state that they are of.
    key
        The figure that the claim is about.
    of_value
        Value of the figure, SI -> margin.
    """
    name = (keyed(key.quantity, key.subject),)

    def at(boost: float, inputs: Inputs) -> Inputs:
        bases = (
            replace(base, value=boost) if base.key == "boost" else base for base in inputs.bases
        )
        return replace(inputs, bases=tuple(bases))

    @cache
    def margin_at(read_at: float) -> Margin:
        read = with_map(at(read_at, inputs), state)

        def margin(boost: float) -> float:
            worked = work_out(at(boost, read), sampled=False, only=name)
            value = headline_value(worked, key)
            return -1.0 if value is None else of_value(value)

        return margin

    return margin_at


def end_above(margin_at: MarginAt, boost: float) -> float | None:
    """Return the boost above at which a claim stops holding; None where it holds on, or never did.

    The search ends at twice the boost: nobody asked about more.
    """
    return _settled(margin_at, boost, boost + max(boost, MOST_BEYOND), STEP)


def end_below(margin_at: MarginAt, boost: float) -> float | None:
    """Return the boost below at which a claim begins or stops to hold, None without one."""
    return _settled(margin_at, boost, LEAST, -STEP)


def _settled(margin_at: MarginAt, start: float, limit: float, step: float) -> float | None:
    """Return the first change, with the map read at the change itself."""
    margin = margin_at(start)
    holds = margin(start) >= 0
    found = _end(margin, start, limit, step)
    for _ in range(TURNS):
        if found is None:
            break
        margin, before = margin_at(found), found
        onwards = (margin(found) >= 0) == holds
        narrow = NARROW if (step > 0) == onwards else -NARROW
        found = _end(margin, found, limit if onwards else start, narrow)
        if found is not None and abs(found - before) <= FINE:
            break
    return found


def _end(margin: Margin, start: float, limit: float, step: float) -> float | None:
    """Return the first change between holding and not, going from one boost to another."""
    holds = margin(start) >= 0
    here = start
    while here != limit:
        there = min(here + step, limit) if step > 0 else max(here + step, limit)
        if (margin(there) >= 0) != holds:
            return _between(margin, here, there, holds)
        here = there
    return None


def _between(margin: Margin, here: float, there: float, holds: bool) -> float:
    """Return the change between two boosts, by halving."""
    while abs(there - here) > FINE:
        middle = (here + there) / 2
        if (margin(middle) >= 0) == holds:
            here = middle
        else:
            there = middle
    return (here + there) / 2
