"""What comes of figures and claims that the owner of the car should look at."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from hoistbook.authored.compressor_maps import CHARGERS
from hoistbook.authored.prose_links import figure_named
from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.authored.standards import AS_RUN
from hoistbook.compare.verdicts import Result
from hoistbook.engineering import FORMULAS, GLOSSARY
from hoistbook.figures.figure import Figure, LimitState
from hoistbook.figures.known_runs import ENOUGH
from hoistbook.figures.learning import DISAGREE
from hoistbook.fit.forgotten import known_sundry, near_sundry
from hoistbook.history.bench import UNBOUGHT
from hoistbook.history.state import State, Status
from hoistbook.history.words import join_words
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.page import Material
from hoistbook.problems import Notice, Place
from hoistbook.values.quantity import Quantity

STANDARD_HINT = "its power is shown as observed, with the air of its day"
LEFT_IN_HINT = "its power is shown as the log has it; with the air of its day it is observed power"
WEATHER = 0.03
"""How far the weather moves the air's pressure at a place, as a share (common practice, no
source)."""
REPORTED_HINT = (
    "a weather report's pressure is reduced to sea level: of the settings it is the `sea level "
    "pressure`, and a run has that on the spot"
)
FAR_OFF_HINT = (
    "look for a slip in the car's data, in the log's units or in `at` (wheels or crank); where "
    "there is none, the engine is not what the episodes say"
)
OF_RUNS = ("power", "wheel_power")
"""Figures whose notes say whether runs disagree."""
LOOK_ALIKE_HINT = "write knowingly: with a reason where it is meant"


def notices_of(material: Material) -> tuple[Notice, ...]:
    """Return the notices of everything worked out."""
    return (
        *_over_limit(desk_of(material)),
        *_claims(material),
        *_standards(material),
        *_far_off(material),
        *_disagreeing_runs(desk_of(material)),
        *_disagreeing(desk_of(material)),
        *_air_of_another_height(desk_of(material)),
        *_look_alikes(desk_of(material)),
        *_not_needed(material),
        *_without_number(material),
        *_boost_from_nowhere(desk_of(material)),
        *_other_counts(material),
        *_boost_left_out(material),
    )


def _over_limit(desk: Desk) -> Iterator[Notice]:
    """Yield a notice in the episode that brought a figure over its limit, and in no later one."""
    places = {each.number: each.place for each in desk.material.episodes}
    for number in desk.figures:
        for each in desk.listed(number):
            if isinstance(each, Figure) and each.episode == number and _is_over(each):
                text, subject = desk.formats.figure(each), desk.subject(each.key)
                of = f" of {subject.text}" if subject else ""
                yield Notice(
                    "over-limit",
                    f"{desk.titles[each.key.quantity]}{of}: {text.sentence}, {text.limit}",
                    each.place or places.get(number),
                    text.limit_detail,
                    number,
                )


def _is_over(figure: Figure) -> bool:
    return figure.limit is not None and figure.limit.state is LimitState.OVER


def _standards(material: Material) -> Iterator[Notice]:
    """Yield why a run is not referred to the standard that was asked for, or not undone."""
    for each in material.comparisons:
        for reason in each.referred.reasons:
            said = f"power run: {reason}"
            hint = STANDARD_HINT if each.referred.left_in == AS_RUN else LEFT_IN_HINT
            yield Notice("power-standard", said, each.run.place, hint, each.episode)


def _far_off(material: Material) -> Iterator[Notice]:
    """Yield where a run lies outside what was expected of it at every engine speed."""
    for each in material.comparisons:
        if each.out_of >= ENOUGH and not each.inside:
            said = (
                f"power run: at none of {each.out_of} engine speeds is what was measured within "
                "the 95 % band of what was expected"
            )
            yield Notice("far-off", said, each.run.place, FAR_OFF_HINT, each.episode)


def _disagreeing_runs(desk: Desk) -> Iterator[Notice]:
    """Yield in the episode from which runs disagree too far to be believed in full."""
    places = {each.number: each.place for each in desk.material.episodes}
    told = False
    for number, figures in desk.figures.items():
        found = [each for name in OF_RUNS if isinstance(each := figures.get(name), Figure)]
        notes = (note for each in found for note in each.notes)
        said = next((note for note in notes if note.startswith(DISAGREE)), "")
        if said and not told:
            message = f"power runs: {said[0].lower()}{said[1:].rstrip('.')}"
            yield Notice("runs-disagree", message, places.get(number), FAR_OFF_HINT, number)
        told = bool(said)


DIMENSIONS = {
    "displacement_of_cylinders": ("displacement", "bore, stroke and number of cylinders"),
    "compression_ratio_of_volumes": ("compression_ratio", "the volumes of the cylinder"),
}
"""What is worked out of dimensions -> what the author states of the same, and of which."""


def _disagreeing(desk: Desk) -> Iterator[Notice]:
    """Yield where a stated number and the dimensions lie apart by more than both bands allow."""
    told: set[str] = set()
    for number, figures in desk.figures.items():
        for quantity, (name, of) in DIMENSIONS.items():
            found = figures.get(quantity)
            bases = figures.inputs.bases if figures.inputs else ()
            stated = next((each for each in bases if each.name == name), None)
            if (
                stated is None
                or not isinstance(found, Figure)
                or not isinstance(stated.value, float)
            ):
                continue
            apart = max(found.low - stated.value, stated.value - found.high)
            if apart > stated.half_width and quantity not in told:
                told.add(quantity)
                ours, theirs = (
                    desk.formats.quantity(each, name) for each in (found.value, stated.value)
                )
                said = f"{GLOSSARY[name].words}: {theirs} is stated, {ours} follows from {of}"
                hint = "one of these numbers is a slip: measure or look up again"
                yield Notice("dimensions-disagree", said, stated.place, hint, number)


def _air_of_another_height(desk: Desk) -> Iterator[Notice]:
    """Yield where a pressure on the spot is not that of the height that the place is said to have.

    Once for each, in the episode of a run or of the setting.
    """
    told: set[Place | None] = set()
    for number, state in desk.states.items():
        height, air = _quantity(state, "altitude"), state.settings.get("air pressure")
        spots = [(each.value.pressure, each.value.place, each.episode) for each in state.runs]
        spots += [(_quantity(state, "air pressure"), air.value.place, number)] if air else []
        for spot, place, episode in spots:
            if spot is None or height is None or episode != number or place in told:
                continue
            usual = float(FORMULAS["standard_pressure"](altitude=height.value))
            if abs(spot.value / usual - 1) > WEATHER:
                told.add(place)
                theirs = desk.formats.quantity(spot.value, "air_pressure")
                said = f"air of {theirs} at a height of {height.text}, where it is some"
                some = desk.formats.quantity(usual, "air_pressure")
                yield Notice(
                    "air-of-another-height", f"{said} {some}", place, REPORTED_HINT, number
                )


def _quantity(state: State, key: str) -> Quantity | None:
    """Return the quantity that a setting holds."""
    dated = state.settings.get(key)
    value = dated.value.value if dated and isinstance(dated.value, Given) else None
    return value if isinstance(value, Quantity) else None


def _look_alikes(desk: Desk) -> Iterator[Notice]:
    """Yield a notice in the episode from which two ends must not be joined, and in no later."""
    before: set[str] = set()
    for number in desk.states:
        alarms = {join_words(each.join): each for each in desk.verdicts(number) if each.alarms}
        for words, each in alarms.items():
            if words not in before:
                hint = f"tell apart: {each.fit.tell_apart}; {LOOK_ALIKE_HINT}"
                said = f"{words}: {each.fit.verdict}: {each.fit.why}"
                yield Notice("look-alike", said, each.join.place, hint, number)
        before = set(alarms)


def _not_needed(material: Material) -> Iterator[Notice]:
    """Yield a notice for what is dismissed and stands on no list."""
    for episode in material.episodes:
        for words, place in episode.not_needed:
            if known_sundry(words) is None:
                near = near_sundry(words)
                hint = f"did you mean `{near}`?" if near else "its word stands on the page Next"
                said = f"nothing that is usually forgotten is called `{words}`"
                yield Notice("not-on-the-list", said, place, hint, episode.number)


def _without_number(material: Material) -> Iterator[Notice]:
    """Yield a notice for each link of the prose to a figure that the car does not have then."""
    figures = {each.episode: each for each in material.figures}
    for episode in material.episodes:
        for link in (each for each in episode.links if each.kind == "figure"):
            named = figure_named(link.target)
            at = episode.number if named.episode is None else int(named.episode)
            if at in figures and figures[at].get(named.quantity, named.subject) is None:
                said = f"`figure:{link.target}` prints no number: there is none as at episode {at}"
                hint = "with `@` and a number it is as at an earlier episode: `figure:power@1`"
                yield Notice("no-number", said, link.place, hint, episode.number)


def _boost_from_nowhere(desk: Desk) -> Iterator[Notice]:
    """Yield a notice in the episode from which boost is set and nothing fitted makes any."""
    told = False
    for number, state in desk.states.items():
        boost = state.settings.get("boost")
        lacking = boost is not None and _is_boost(boost.value) and not _is_charged(state)
        if boost is not None and lacking and not told:
            said = "boost is set, and no fitted part is a turbocharger or a supercharger"
            hint = (
                "write its part as keys and values with `kind: supercharger` or "
                "`kind: turbocharger`; until then the engine is reckoned as a turbocharged one"
            )
            yield Notice("no-charger", said, boost.value.place, hint, number)
        told = lacking


def _other_counts(material: Material) -> Iterator[Notice]:
    """Yield a notice where a part comes in another number than it was planned or ordered in."""
    for before, after in pairwise(material.states):
        for name, here in after.parts.items():
            earlier = before.parts.get(name)
            if (
                earlier is None
                or earlier.status not in UNBOUGHT
                or here.status in UNBOUGHT
                or earlier.part.count == here.part.count
            ):
                continue
            counts = f"{earlier.status} as {earlier.part.count} and comes as {here.part.count}"
            hint = f"if all came, write `count: {earlier.part.count}` here, and the price of all"
            yield Notice(
                "other-count", f"`{name}` was {counts}", here.part.place, hint, after.episode
            )


def _boost_left_out(material: Material) -> Iterator[Notice]:
    """Yield why the boost of a log is left out, beside what was set."""
    for each in material.comparisons:
        if each.boost_slip is not None:
            slip = each.boost_slip
            said = f"the log of the run of episode {each.episode} has {slip.message}"
            yield Notice(slip.code, said, each.run.place, slip.hint, each.episode)


def _is_boost(given: Given | BoostBySpeed) -> bool:
    """Tell whether more than the air outside is asked for."""
    each = given.pressures if isinstance(given, BoostBySpeed) else (given.value,)
    return any(
        isinstance(value, Quantity) and value.reference != "absolute" and value.value > 0
        for value in each
    )


def _is_charged(state: State) -> bool:
    return any(
        each.part.kind in CHARGERS and each.status is Status.FITTED
        for each in state.parts.values()
    )


def _claims(material: Material) -> Iterator[Notice]:
    for each in material.claims:
        if each.result is not Result.HOLDS:
            said = f'claim "{each.claim.text}": {each.result}'
            yield Notice("claim", said, each.claim.place, each.why, each.episode)
