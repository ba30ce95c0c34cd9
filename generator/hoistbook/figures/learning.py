"""Learning from power runs: what was measured weighs the samples of what was assumed.

The samples are drawn again by their weights, all inputs of one sample together, so that what only
the run ties together stays tied: it fixes the product of volumetric and gross indicated efficiency
and leaves each of them nearly as unknown as before. What the run says of the shape over engine
speed goes to the filling.

References
----------
Smith and Gelfand, *The American Statistician* 46 (1992) 84: sampling, weighing, sampling again;
from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from hoistbook.figures.base import CALIBRATED, Base, Inputs, Learnt
from hoistbook.figures.chain import work_out
from hoistbook.figures.draws import (
    SAMPLES,
    WIDTHS_PER_DEVIATION,
    Samples,
    band,
    share_of_variance,
)
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import AIR, KnownRun
from hoistbook.figures.lessons import LESSONS
from hoistbook.figures.readings import (
    Reading,
    Weighing,
    gaps_of,
    readings_of,
    surprise,
    weighed,
)
from hoistbook.history.state import State, Status
from hoistbook.values.evidence import Evidence

LEAST_SHARE = 0.005
"""Least share of a reading's variance from which on an input learns from it."""
WORTH_SAYING = 0.10
"""Share of its half band that an assumed input must have moved or lost to be called calibrated."""
MOST_SHAPE = 0.2
"""Most that a run may bend the filling: a pull that begins before the throttle is open says
nothing of the engine."""

BREATHING = ("engine", "cylinder head", "camshaft", "pistons", "intake manifold")
"""Kinds of parts with which the filling of an engine changes: no run outlasts them."""

FILLING = "volumetric_efficiency"
PRODUCT_OF = (FILLING, "reference_indicated_efficiency")
"""The two factors that power knows only the product of."""
OF_CRANK = ("brake_mean_effective_pressure", "power", "torque", "power_to_mass")
OF_WHEELS = ("wheel_power", "wheel_torque")
OF_AIR = ("engine_air_flow", "fuel_flow", "injector_duty", "pump_margin")
"""Figures that the notes on learning stand beside."""


def calibrated(inputs: Inputs, state: State, runs: Sequence[KnownRun]) -> Inputs:
    """Return the inputs of a state's figures after what the runs have told of this engine.

    Parameters
    ----------
    inputs
        Inputs of the state, as given, logged and assumed.
    state
        The state.
    runs
        The runs that it has seen, oldest first.
    """
    readings = [
        reading
        for run in runs
        if breathing(run.state) == breathing(state)
        for reading in _told(run, inputs, state)
    ]
    if not readings:
        return inputs
    weighing = weighed(readings)
    chosen = drawn_again(weighing.weights)
    taught = _by_names(readings)
    learners = frozenset(base.key for base in inputs.bases if _learns(base, readings))
    learnt = _bent(_all_learnt(inputs, learners, chosen, taught), readings, weighing)
    return replace(
        learnt,
        conditions=inputs.conditions | {CALIBRATED},
        notes=(*inputs.notes, *_notes(readings, weighing)),
    )


def breathing(state: State) -> tuple[str, ...]:
    """Return the parts on the car that the filling of its engine rests on."""
    return tuple(
        sorted(
            name
            for name, each in state.parts.items()
            if each.part.kind in BREATHING and each.status is Status.FITTED
        )
    )


def _told(run: KnownRun, inputs: Inputs, state: State) -> list[Reading]:
    """Return what a run tells of the engine that the inputs describe, nothing of another."""
    own = inputs_of(run.state)
    shared = frozenset(base.key for base in own.bases if _same(base, own, inputs))
    if not {FILLING, "displacement"} <= shared:
        return []
    logged = {base.key for base in inputs.bases if base.of_day == run.day}
    return readings_of(run, _transfer(own, inputs_of(state)), shared | logged)


def _same(base: Base, own: Inputs, inputs: Inputs) -> bool:
    """Return whether an input of a run's state is one of the estimate's, too."""
    other = next((each for each in inputs.bases if each.key == base.key), None)
    if other is None or base.name in AIR:
        return False
    aside = replace(other, value=base.value, episode=base.episode, place=base.place)
    return base == aside and (base.key == FILLING or _same_values(base, own, other, inputs))


def _same_values(base: Base, own: Inputs, other: Base, inputs: Inputs) -> bool:
    """Return whether two inputs agree; over engine speed, wherever both are known."""
    if not isinstance(base.value, tuple) or not isinstance(other.value, tuple):
        return base.value == other.value
    theirs = dict(zip(inputs.speeds, other.value, strict=True))
    return all(
        value == theirs.get(speed, value)
        for speed, value in zip(own.speeds, base.value, strict=True)
    )


def _transfer(own: Inputs, inputs: Inputs) -> str:
    """Return what lies between a run's engine and the estimate's: a key of `LESSONS`."""
    if ("boosted" in own.conditions) != ("boosted" in inputs.conditions):
        return "with and without boost"
    if "boosted" in own.conditions and _boost(own) != _boost(inputs):
        return "another boost"
    return "the same boost"


def _boost(inputs: Inputs) -> float | None:
    """Return the highest boost asked for, None where none is."""
    return next((float(np.max(each.value)) for each in inputs.bases if each.key == "boost"), None)


def drawn_again(weights: Samples) -> NDArray[np.intp]:
    """Return which samples stand in the place of all: each about as often as it weighs.

    Systematic: of equal weights every sample stands once, in its own place, so that a run that
    says nothing changes nothing.
    """
    positions = (np.arange(SAMPLES) + 0.5) / SAMPLES
    return np.minimum(np.searchsorted(np.cumsum(weights), positions), SAMPLES - 1)


def _learns(base: Base, readings: Sequence[Reading]) -> bool:
    """Return whether any reading has something to say of an input."""
    if base.half_width <= 0:
        return False
    deviations = base.deviations()
    return any(
        base.key in reading.shared and share_of_variance(deviations, reading.levels) > LEAST_SHARE
        for reading in readings
    )


def _all_learnt(
    inputs: Inputs, learners: frozenset[str], chosen: NDArray[np.intp], taught: tuple[str, int]
) -> Inputs:
    """Return inputs of which the learners have the samples that are left of them."""
    bases = (
        _learnt(base, chosen, taught) if base.key in learners and base.half_width > 0 else base
        for base in inputs.bases
    )
    return replace(inputs, bases=tuple(bases))


def _learnt(base: Base, chosen: NDArray[np.intp], taught: tuple[str, int]) -> Base:
    """Return an input with the samples that are left of it.

    What has learnt next to nothing keeps its value and its words: only its samples are tied to
    those of the others.
    """
    deviations = base.deviations()[chosen]
    shift = float(deviations.mean())
    low, high = band(deviations)
    half_width = float(high - low) / 2
    moved = max(abs(shift), base.half_width - half_width) / base.half_width
    names, episode = taught
    kept = chosen.astype(np.uint16).tobytes()
    learnt = Learnt(kept=kept, half_width=base.half_width, shift=shift)
    if moved < WORTH_SAYING and base.key not in PRODUCT_OF:
        return replace(base, learnt=replace(learnt, shift=0.0))
    values = np.asarray(base.value) + shift
    return replace(
        base,
        value=tuple(values.tolist()) if isinstance(base.value, tuple) else float(values),
        half_width=half_width,
        evidence=Evidence.ESTIMATED,
        origin=f"calibrated by {names}",
        episode=max(base.episode, episode),
        learnt=learnt,
    )


def _by_names(readings: Sequence[Reading]) -> tuple[str, int]:
    """Return the runs that taught, in words, and the last of their episodes."""
    episodes = sorted({reading.run.episode for reading in readings})
    if len(episodes) == 1:
        return f"the run of episode {episodes[0]}", episodes[0]
    *some, last = map(str, episodes)
    return f"the runs of episodes {', '.join(some)} and {last}", episodes[-1]


def _bent(inputs: Inputs, readings: Sequence[Reading], weighing: Weighing) -> Inputs:
    """Return inputs with the shape over engine speed that the nearest power run has shown.

    The filling takes it, all its samples alike. The central value of the efficiency, apart from
    its samples, is set to where the central values of all inputs read what the samples read in
    the mean: a product of means is not the mean of the product.
    """
    powers = [each for each in readings if each.quantity in ("power", "wheel_power")]
    if not inputs.speeds or not powers:
        return inputs
    teacher = min(reversed(powers), key=lambda each: LESSONS[each.transfer].half_width)
    gaps, leverage = _central(teacher, weighing)
    shape = np.clip((gaps - gaps.mean()) / leverage, -MOST_SHAPE, MOST_SHAPE)
    open_level = (gaps.mean() - teacher.levels @ weighing.weights) / leverage.mean()
    bases = {base.key: base for base in inputs.bases}
    filling, efficiency = (bases[key] for key in PRODUCT_OF)
    bent = np.asarray(filling.value) * np.exp(np.interp(inputs.speeds, teacher.speeds, shape))
    bases[FILLING] = replace(filling, value=tuple(bent.tolist()))
    if efficiency.learnt is not None and not isinstance(efficiency.value, tuple):
        moved = efficiency.value * float(np.exp(open_level))
        shift = efficiency.learnt.shift + moved - efficiency.value
        bases[efficiency.key] = replace(
            efficiency, value=moved, learnt=replace(efficiency.learnt, shift=shift)
        )
    return replace(inputs, bases=tuple(bases.values()))


def _central(reading: Reading, weighing: Weighing) -> tuple[Samples, Samples]:
    """Return what the central values leave open of a reading after learning, by engine speed.

    Beside it stands by how many per cent power moves with one per cent of filling: by more than
    one, since friction takes its part whatever the filling.
    """
    chosen = drawn_again(weighing.weights)
    inputs = _all_learnt(reading.inputs, reading.shared, chosen, ("", 0))
    worked = work_out(inputs, sampled=False, only=(reading.quantity,))
    gaps = gaps_of(worked, reading.quantity, reading.speeds, reading.read)[:, 0]
    brake, friction, pumping = (
        worked.values[f"{name}_mean_effective_pressure"][:, 0]
        for name in ("brake", "friction", "pumping")
    )
    at = [inputs.speeds.index(each) for each in reading.speeds]
    return gaps, ((brake + friction + pumping) / brake)[at]


def _notes(readings: Sequence[Reading], weighing: Weighing) -> list[tuple[str, str]]:
    """Return what has to be said beside the figures that have learnt."""
    names, _ = _by_names(readings)
    quantities = {reading.quantity for reading in readings}
    told = [
        f"An estimate, not a measurement, calibrated by {names}.",
        *([] if quantities & AIR_READ else [PRODUCT]),
        *_remaining(readings),
        *_disagreements(readings, weighing),
    ]
    notes = [(quantity, text) for quantity in (*OF_CRANK, *OF_WHEELS, *OF_AIR) for text in told]
    if "power" not in quantities:
        notes += [(quantity, AT_THE_WHEELS) for quantity in OF_CRANK]
    return notes


AIR_READ = {"engine_air_flow", "injector_duty"}
"""Readings that tell filling and efficiency apart."""
PRODUCT = (
    "Power alone fixes the product of volumetric and gross indicated efficiency and cannot tell "
    "the two apart: air and fuel stay less well known."
)
AT_THE_WHEELS = (
    "The run was at the wheels: of the crank it tells no more than the range of what the "
    "drivetrain takes allows."
)


def _remaining(readings: Sequence[Reading]) -> list[str]:
    """Return what stays uncertain between the nearest run and the estimate."""
    nearest = min((LESSONS[each.transfer].half_width, each.transfer) for each in readings)[1]
    lesson = LESSONS[nearest]
    if not lesson.half_width:
        return []
    words = (
        "between a run without boost and an estimate with it"
        if "without" in nearest
        else ("between a run and an estimate at another boost")
    )
    return [f"The band holds {100 * lesson.half_width:g} % for what may lie {words}."]


DISAGREE = "The runs disagree, with one another or with what was assumed before them, so far"
"""How the sentence begins that says so."""


def _which(reading: Reading, readings: Sequence[Reading]) -> str:
    """Return which run of its episode a reading is of, where that has several."""
    logs = {each.run.run.log for each in readings if each.run.episode == reading.run.episode}
    return f" ({reading.run.run.log.rpartition('/')[2]})" if len(logs) > 1 else ""


def _disagreements(readings: Sequence[Reading], weighing: Weighing) -> list[str]:
    """Return a sentence for each run that lies off what was expected of it."""
    found = []
    for reading in readings:
        if abs(surprise(reading)) <= WIDTHS_PER_DEVIATION:
            continue
        off = 100 * (np.exp(reading.levels.mean()) - 1)
        side = "above" if off > 0 else "below"
        found.append(
            f"The run of episode {reading.run.episode}{_which(reading, readings)} read "
            f"{abs(off):.0f} % {side} what was expected, outside its band: look for a slip in the "
            "car's data or in the log."
        )
    if weighing.trust < 1:
        found.append(
            f"{DISAGREE} that the runs were given "
            f"only {100 * weighing.trust:.2g} % of their weight."
        )
    return list(dict.fromkeys(found))
