"""Claims: a sentence with a number, held against the figure that it names, at its conditions."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from hoistbook.authored.kinds import car_facts
from hoistbook.authored.records import Claim, Given, Journal
from hoistbook.compare.claim_words import not_there, reaches_across, spare_of, why_of
from hoistbook.compare.margins import margins
from hoistbook.compare.verdicts import ClaimVerdict, Result
from hoistbook.engineering import GLOSSARY
from hoistbook.figures.base import Inputs
from hoistbook.figures.catalogue import CATALOGUE, MEASURED, QUANTITIES
from hoistbook.figures.figure import Figure, Figures, Key, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import KnownRun, known_runs, up_to
from hoistbook.figures.learning import calibrated
from hoistbook.figures.map_inputs import with_map
from hoistbook.figures.stage import estimate
from hoistbook.history.state import Dated, State
from hoistbook.problems import closest
from hoistbook.units import dimension, to_unit

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
        return _answered(claim, state, key, figures.get(key.quantity, key.subject), None)
    asked = at_conditions(state, claim)
    inputs = calibrated(inputs_of(asked), asked, runs)
    return _answered(claim, state, key, estimate(with_map(inputs, asked), key), inputs)


def _answered(
    claim: Claim, state: State, key: Key, found: Figure | Missing | None, inputs: Inputs | None
) -> ClaimVerdict:
    """Return the verdict on a figure, worked out from the inputs where there are conditions.

    The inputs are those before the compressor's map was read, which says another thing of each
    boost.
    """
    if isinstance(found, Figure):
        return _judged(claim, state, found, inputs)
    why = f"Not known yet: give {'; '.join(found.give)}." if found else not_there(key, state)
    return _unknown(claim, state.episode, key, why)


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
            if bound.unit == "-":
                return f"`{bound.text}` has no unit: write it in {term.metric}."
            return f"{title} is not told in {bound.unit}: write it in {term.metric}."
        if bound.reference == "gauge" and "absolute" in key.quantity:
            return f"{title} is absolute and {bound.text} is gauge: write it absolute."
    return ""


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
    """Return the state with the claim's conditions, as exact, in the place of what it has."""
    exact = {
        name: Given(value=replace(value, half_width=0.0), place=claim.place)
        for name, value in claim.conditions.items()
    }
    car, settings = dict(state.car), dict(state.settings)
    for name, value in exact.items():
        if name in car_facts():
            car[name] = Dated(value=value, episode=state.episode)
        else:
            settings[name] = Dated(value=value, episode=state.episode)
    return replace(state, car=car, settings=settings)


def _judged(claim: Claim, state: State, figure: Figure, inputs: Inputs | None) -> ClaimVerdict:
    """Hold the figure's central value against the bounds; the sentence tells of its band."""
    margin = min(margins(claim, to_unit(figure.value, claim.bounds[0].unit)))
    return ClaimVerdict(
        claim=claim,
        episode=state.episode,
        result=Result.HOLDS if margin >= 0 else Result.FAILS,
        figure=figure.key,
        margin=margin,
        why=why_of(claim, figure, state, inputs),
        found=figure,
        spare=spare_of(claim, figure),
        across=reaches_across(claim, figure),
    )
