"""The sentence on a claim: what the figure is, the result with its margin, the conditions."""

from __future__ import annotations

import math
from collections.abc import Iterator

from hoistbook.authored.records import BoostBySpeed, Claim, Given
from hoistbook.compare.margins import clear_of, margins
from hoistbook.compare.search import end_above, end_below, margin_over_boost
from hoistbook.figures.base import Inputs
from hoistbook.figures.catalogue import QUANTITIES
from hoistbook.figures.digits import place, place_of_band, rounded
from hoistbook.figures.figure import AS_RUN, Figure, Key
from hoistbook.history.state import State, Status
from hoistbook.history.words import value_words
from hoistbook.problems import closest
from hoistbook.units import dimension, printed_unit, to_unit
from hoistbook.values.quantity import Quantity

ALONE = "(this claim alone; no boost is proposed here)"
"""Stands beside every boost that nobody asked about."""


def why_of(claim: Claim, figure: Figure, state: State, inputs: Inputs | None) -> str:
    """Return what a figure is, with its band, and how the claim stands to it."""
    unit = claim.bounds[0].unit
    value, low, high = (to_unit(each, unit) for each in (figure.value, figure.low, figure.high))
    at = place_of_band(low, high) if high > low else place(value, 3)
    label = f" {printed_unit(unit)}".rstrip()
    where = f", {figure.headline} at {figure.at_speed:,.0f} rpm" if figure.at_speed else ""
    sentence = (
        f"{figure.evidence.value.capitalize()}: {_number(value, at)}{label}{where}; "
        f"95 % between {_number(low, at)} and {_number(high, at)}{label}"
        f"{_standard(figure)}."
    )
    across = " The band reaches across the bound." if reaches_across(claim, figure) else ""
    said = f"{sentence} {_result(claim, figure, unit, state, inputs)}{across}"
    return " ".join([said, *_conditions(claim, state)])


def _standard(figure: Figure) -> str:
    """Return by which standard a power stands there, as every power has to say."""
    if figure.power_standard == AS_RUN:
        return ", not referred to any reference air"
    return f", by {figure.power_standard}" if figure.power_standard else ""


def reaches_across(claim: Claim, figure: Figure) -> bool:
    """Tell whether a claim holds at one end of the figure's band and not at the other."""
    ends = (to_unit(each, claim.bounds[0].unit) for each in (figure.low, figure.high))
    return len({min(margins(claim, each)) >= 0 for each in ends}) > 1


def spare_of(claim: Claim, figure: Figure) -> str:
    """Return the margin in words, without its sign.

    Of a share it is told in points, since a share of a share misleads; of a temperature in
    degrees, since its unit counts from a point that nobody means.
    """
    unit = claim.bounds[0].unit
    value = to_unit(figure.value, unit)
    margin, (clear, bound) = min(zip(margins(claim, value), clear_of(claim, value), strict=True))
    if unit == "%":
        return f"{abs(clear):.0f} points"
    if bound and dimension(unit) != "temperature":
        return f"{100 * abs(margin):.0f} %"
    return f"{_number(abs(clear), place(clear, 2))} {printed_unit(unit)}".rstrip()


def _result(claim: Claim, figure: Figure, unit: str, state: State, inputs: Inputs | None) -> str:
    """Return the result with its margin, and where boost is a condition, from where it turns."""
    value = to_unit(figure.value, unit)
    spare = spare_of(claim, figure)
    holds = min(margins(claim, value)) >= 0
    boost = claim.conditions.get("boost")
    if inputs is None or boost is None:
        return f"{spare} to spare." if holds else f"Missed by {spare}."
    asked = _written(boost.value, boost)
    result = (
        f"Holds at {asked} with {spare} to spare"
        if holds
        else f"Does not hold at {asked}, missed by {spare}"
    )
    turn = _turn(claim, figure.key, unit, state, inputs, boost)
    return f"{result}; {turn}." if turn else f"{result}."


def _turn(claim: Claim, key: Key, unit: str, state: State, inputs: Inputs, boost: Quantity) -> str:
    """Return from or up to which boost a claim holds, empty where it does not turn nearby.

    Nothing is said of how much more boost would make a claim hold.
    """
    base = next((each for each in inputs.bases if each.key == "boost"), None)
    if base is None or isinstance(base.value, tuple):
        return ""
    margin_at = margin_over_boost(
        inputs, state, key, lambda value: min(margins(claim, to_unit(value, unit)))
    )
    offset = boost.value - base.value
    holds = margin_at(base.value)(base.value) >= 0
    above = end_above(margin_at, base.value) if holds else None
    if above is not None:
        return f"stops holding at {_written(above + offset, boost)} {ALONE}"
    below = end_below(margin_at, base.value)
    if below is None:
        return ""
    side = "from" if holds else "up to"
    return f"holds {side} {_written(below + offset, boost)} {ALONE}"


def _written(pressure: float, like: Quantity) -> str:
    """Return a pressure in the unit of another, to about 1 kPa."""
    value = to_unit(pressure, like.unit)
    at = math.floor(math.log10(to_unit(1e3, like.unit)) + 1e-9)
    return f"{rounded(value, at).normalize():f} {like.unit} {like.reference or ''}".strip()


def _number(value: float, at: int) -> str:
    return f"{rounded(value, at):,}".replace("-", "\N{MINUS SIGN}")


def _conditions(claim: Claim, state: State) -> Iterator[str]:
    """Yield at which conditions a claim was worked out, where its episode has others."""
    others = [
        name for name, wanted in claim.conditions.items() if not _is_set(name, wanted, state)
    ]
    if others:
        own = ", ".join(f"{name} {_own(name, state)}" for name in others)
        yield (
            f"Worked out at the claim's own {' and '.join(others)} (episode {state.episode} "
            f"itself: {own}); all else as at episode {state.episode}."
        )


def _set_to(name: str, state: State) -> Given | BoostBySpeed | None:
    dated = state.settings.get(name) or state.car.get(name)
    return dated.value if dated else None


def _is_set(name: str, wanted: Quantity, state: State) -> bool:
    own = _set_to(name, state)
    value = own.value if isinstance(own, Given) else None
    if not isinstance(value, Quantity):
        return value == wanted.value
    return (value.value, value.reference) == (wanted.value, wanted.reference)


def _own(name: str, state: State) -> str:
    own = _set_to(name, state)
    if isinstance(own, BoostBySpeed):
        top = max(own.pressures, key=lambda each: each.value)
        return f"by speed, up to {top.text}"
    return value_words(own) if own else "not set"


def not_there(key: Key, state: State) -> str:
    """Return why the car has no such figure as at an episode."""
    title, at = QUANTITIES[key.quantity], f"as at episode {state.episode}"
    if key.subject == "engine":
        return f"There is no such figure as the car is at episode {state.episode}: {title}."
    part = state.parts.get(key.subject)
    if part is None:
        near = closest(key.subject, state.parts)
        meant = f'; "{near}" is one' if near else ""
        return f'There is no part "{key.subject}" {at}{meant}.'
    if part.status is not Status.FITTED:
        return f"{part.part.name} is not fitted {at}: it is {part.how_gone or part.status}."
    return f'"{title}" is no figure of {part.part.name}.'
