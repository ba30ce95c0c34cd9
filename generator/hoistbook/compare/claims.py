"""Claims: a sentence with a number, held against the figure that it names, at its conditions."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from hoistbook.authored.records import BoostBySpeed, Claim, Given, Journal
from hoistbook.compare.search import end_above, end_below, margin_over_boost
from hoistbook.compare.verdicts import ClaimVerdict, Result
from hoistbook.engineering import GLOSSARY
from hoistbook.figures.base import Inputs
from hoistbook.figures.catalogue import CATALOGUE, MEASURED, QUANTITIES
from hoistbook.figures.digits import place, places, rounded
from hoistbook.figures.figure import Figure, Figures, Key, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import KnownRun, known_runs, up_to
from hoistbook.figures.learning import calibrated
from hoistbook.figures.stage import estimate
from hoistbook.history.state import Dated, State
from hoistbook.problems import closest
from hoistbook.units import dimension, to_unit
from hoistbook.values.quantity import Quantity

OF_PART = re.compile(r"^(?P<figure>.+?)\s+(?:of|in)\s+(?:the\s+)?(?P<part>\S.*)$")


def _names() -> dict[str, str]:
    """Return every wording that names a quantity."""
    names = {title.casefold(): quantity for quantity, title in MEASURED.items()}
    for row in CATALOGUE:
        if row.title:
            words = (row.title, row.quantity.replace("_", " "), *row.also_called)
            names |= {each.casefold(): row.quantity for each in words}
    return names


NAMES: Mapping[str, str] = _names()
"""Title or synonym, in small letters -> quantity."""


def claim_verdicts(
    journal: Journal, states: Sequence[State], figures: Sequence[Figures]
) -> tuple[ClaimVerdict, ...]:
    """Return the verdict on every claim, in the order of the episodes."""
    runs = known_runs(journal, states)
    by_episode = {
        state.episode: (state, of_state, up_to(runs, state))
        for state, of_state in zip(states, figures, strict=True)
    }
    return tuple(
        _verdict(claim, *by_episode[episode.number])
        for episode in journal.episodes
        for claim in episode.claims
        if episode.number in by_episode
    )


def _verdict(
    claim: Claim, state: State, figures: Figures, runs: Sequence[KnownRun]
) -> ClaimVerdict:
    episode = state.episode
    key = key_of(claim.quantity, figures)
    if isinstance(key, str):
        return _unknown(claim, episode, None, key)
    wrong = _wrong_bound(claim, key)
    if wrong:
        return _unknown(claim, episode, key, wrong)
    if not claim.conditions:
        return _answered(claim, episode, key, figures.get(key.quantity, key.subject), None)
    asked = at_conditions(state, claim)
    inputs = calibrated(inputs_of(asked), asked, runs)
    return _answered(claim, episode, key, estimate(inputs, key), inputs)


def _answered(
    claim: Claim, episode: int, key: Key, found: Figure | Missing | None, inputs: Inputs | None
) -> ClaimVerdict:
    """Return the verdict on a figure, worked out from the inputs where there are conditions."""
    if isinstance(found, Figure):
        return _judged(claim, episode, found, inputs)
    why = f"Not known yet: give {'; '.join(found.give)}." if found else _does_not_apply(key)
    return _unknown(claim, episode, key, why)


def _unknown(claim: Claim, episode: int, key: Key | None, why: str) -> ClaimVerdict:
    return ClaimVerdict(
        claim=claim, episode=episode, result=Result.UNKNOWN, figure=key, margin=None, why=why
    )


def _wrong_bound(claim: Claim, key: Key) -> str:
    """Return why a bound cannot be held against the figure, empty when all can."""
    term = GLOSSARY[key.quantity]
    title = QUANTITIES[key.quantity]
    for bound in claim.bounds:
        if dimension(bound.unit) != dimension(term.unit):
            return f"{title} is not told in {bound.unit}: write it in {term.metric}."
        if bound.reference == "gauge" and "absolute" in key.quantity:
            return f"{title} is absolute and {bound.text} is gauge: write it absolute."
    return ""


def _does_not_apply(key: Key) -> str:
    return f"There is no such figure of {key.subject} as the car is then."


def key_of(words: str, figures: Figures) -> Key | str:
    """Return the figure that words name, or a sentence that says why none is meant."""
    text = " ".join(words.casefold().split())
    quantity, subject = NAMES.get(text), ""
    if quantity is None and (match := OF_PART.match(text)):
        quantity, subject = NAMES.get(match["figure"]), match["part"]
    if quantity is None:
        near = closest(text, NAMES)
        meant = f'; "{near}" is one' if near else ""
        return f'"{words}" names no figure{meant}.'
    subjects = [each.key.subject for each in figures.figures if each.key.quantity == quantity]
    part = subject.strip().replace(" ", "-")
    if part:
        return Key(quantity, part)
    if not subjects or "engine" in subjects:
        return Key(quantity)
    if len(subjects) == 1:
        return Key(quantity, subjects[0])
    return f'Say of which part: "{words} of {subjects[0]}" or of {", ".join(subjects[1:])}.'


def at_conditions(state: State, claim: Claim) -> State:
    """Return the state with the claim's conditions, as exact, in the place of its settings."""
    settings: dict[str, Dated[Given | BoostBySpeed]] = {
        name: Dated(
            value=Given(value=replace(value, half_width=0.0), place=claim.place),
            episode=state.episode,
        )
        for name, value in claim.conditions.items()
    }
    return replace(state, settings={**state.settings, **settings})


def _judged(claim: Claim, episode: int, figure: Figure, inputs: Inputs | None) -> ClaimVerdict:
    """Hold the figure's central value against the bounds; the sentence tells of its band."""
    units = [bound.unit for bound in claim.bounds]
    value = to_unit(figure.value, units[0])
    margin = min(_margin(claim, value))
    return ClaimVerdict(
        claim=claim,
        episode=episode,
        result=Result.HOLDS if margin >= 0 else Result.FAILS,
        figure=figure.key,
        margin=margin,
        why=_why(claim, figure, units[0], inputs),
    )


def _margin(claim: Claim, value: float) -> list[float]:
    """Return by which share of each bound the value stays clear of it, in the author's unit.

    Of a bound at zero there is no share: its margin is the distance itself.
    """
    return [clear / (abs(bound) or 1.0) for clear, bound in _clear(claim, value)]


def _clear(claim: Claim, value: float) -> list[tuple[float, float]]:
    """Return by how much the value stays clear of each bound, and the bound, in its unit."""
    bounds = sorted(to_unit(bound.value, bound.unit) for bound in claim.bounds)
    if claim.relation == "below":
        return [(bounds[0] - value, bounds[0])]
    if claim.relation == "above":
        return [(value - bounds[0], bounds[0])]
    low, high = bounds
    return [(value - low, low), (high - value, high)]


def _spare(claim: Claim, value: float, unit: str) -> str:
    """Return the margin in words; of a share in points, since a share of a share misleads."""
    margin, (clear, bound) = min(zip(_margin(claim, value), _clear(claim, value), strict=True))
    if unit == "%":
        return f"{abs(clear):.0f} points"
    return f"{100 * abs(margin):.0f} %" if bound else f"{abs(clear):.3g} {unit}"


def _result(claim: Claim, figure: Figure, unit: str, inputs: Inputs | None) -> str:
    """Return the result with its margin, and where boost is a condition, from where it turns."""
    value = to_unit(figure.value, unit)
    spare = _spare(claim, value, unit)
    holds = min(_margin(claim, value)) >= 0
    boost = claim.conditions.get("boost")
    if inputs is None or boost is None:
        return f"{spare} to spare." if holds else f"Missed by {spare}."
    asked = _written(boost.value, boost)
    result = (
        f"Holds at {asked} with {spare} to spare"
        if holds
        else f"Does not hold at {asked}, missed by {spare}"
    )
    turn = _turn(claim, figure.key, unit, inputs, boost)
    return f"{result}; {turn}." if turn else f"{result}."


def _turn(claim: Claim, key: Key, unit: str, inputs: Inputs, boost: Quantity) -> str:
    """Return from or up to which boost a claim holds, empty where it does not turn nearby.

    Nothing is said of how much more boost would make a claim hold.
    """
    base = next((each for each in inputs.bases if each.key == "boost"), None)
    if base is None or isinstance(base.value, tuple):
        return ""
    margin = margin_over_boost(
        inputs, key, lambda value: min(_margin(claim, to_unit(value, unit)))
    )
    offset = boost.value - base.value
    holds = margin(base.value) >= 0
    above = end_above(margin, base.value) if holds else None
    if above is not None:
        return f"stops holding at {_written(above + offset, boost)}"
    below = end_below(margin, base.value)
    if below is None:
        return ""
    return f"holds {'from' if holds else 'up to'} {_written(below + offset, boost)}"


def _written(pressure: float, like: Quantity) -> str:
    """Return a pressure in the unit of another, to about 1 kPa."""
    value = to_unit(pressure, like.unit)
    at = math.floor(math.log10(to_unit(1e3, like.unit)) + 1e-9)
    return f"{rounded(value, at).normalize():f} {like.unit} {like.reference or ''}".strip()


def _number(value: float, at: int) -> str:
    return f"{rounded(value, at):,}".replace("-", "\N{MINUS SIGN}")


def _why(claim: Claim, figure: Figure, unit: str, inputs: Inputs | None) -> str:
    value, low, high = (to_unit(each, unit) for each in (figure.value, figure.low, figure.high))
    value_place, band_place = places(value, low, high) if high > low else (place(value, 3), 0)
    label = "" if unit == "-" else f" {unit}"
    where = f", {figure.headline} at {figure.at_speed:,.0f} rpm" if figure.at_speed else ""
    sentence = (
        f"{figure.evidence.value.capitalize()}: {_number(value, value_place)}{label}{where}; "
        f"95 % between {_number(low, band_place)} and {_number(high, band_place)}{label}."
    )
    ends = {min(_margin(claim, each)) >= 0 for each in (low, high)}
    across = "" if len(ends) == 1 else " The band reaches across the bound."
    return f"{sentence} {_result(claim, figure, unit, inputs)}{across}"
