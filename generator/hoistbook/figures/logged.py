"""What a run has logged stands in the place of what was set or assumed, while the set-up lasts."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

import numpy as np

from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.inputs import grid, inputs_of
from hoistbook.figures.known_runs import AIR, KnownRun, at_the_run
from hoistbook.figures.power_runs import Binned
from hoistbook.history.state import State

REACH = 500.0
"""A log stands for an input when it reaches to within this of the highest engine speed, 1/min:
what was never logged near full power is not known there."""

MANIFOLD = "manifold_absolute_pressure"


def as_logged(state: State, runs: Sequence[KnownRun]) -> Inputs:
    """Return the inputs of a state, with what the last run of its very set-up has logged.

    Parameters
    ----------
    state
        The build as at one episode.
    runs
        The runs that it has seen, oldest first.
    """
    own = inputs_of(state)
    told = [run for run in runs if any(run.inputs.values())]
    alike = [run for run in told if set_up(inputs_of(run.state)) == set_up(own)]
    if not alike:
        return own
    run = alike[-1]
    boost = run.inputs.get("boost", {})
    inputs = inputs_of(state, at=_speeds(own, boost))
    bases = {base.key: base for base in inputs.bases}
    if boost:
        bases["boost"] = _boost(inputs, boost, run)
        inputs = replace(inputs, notes=_notes(inputs, boost, run))
    for name in ("lambda_ratio", "charge_temperature"):
        values = run.inputs.get(name)
        if values and inputs.speeds and max(values) >= inputs.speeds[-1] - REACH:
            bases[name] = _over(inputs.speeds, _logged(name, run), values)
    if "charge_temperature" in bases:
        bases["charge_temperature"] = _in_the_air_of(inputs, bases["charge_temperature"], run)
    return replace(inputs, bases=tuple(bases.values()))


@lru_cache(maxsize=256)
def set_up(inputs: Inputs) -> tuple[tuple[str, object], ...]:
    """Return what of the inputs makes the power of an engine, without the air of the day."""
    worked = work_out(inputs, sampled=False, only=("power",))
    rests_on = worked.rests_on.get("power", tuple(worked.bases))
    return tuple(
        (base.key, base.value)
        for base in inputs.bases
        if base.name not in AIR and base.key in rests_on
    )


def _speeds(own: Inputs, boost: Binned) -> tuple[float, ...]:
    """Return the engine speeds at which author or log give a boost, 1/min."""
    if not boost or not own.speeds:
        return own.speeds
    given = own.speeds if any(base.key == "boost" for base in own.bases) else ()
    logged = grid(min(boost), max(boost))
    return tuple(sorted({*given, *(each for each in logged if each <= own.speeds[-1])}))


def _logged(name: str, run: KnownRun) -> Base:
    """Return an input as it was at a run."""
    return next(base for base in at_the_run(run).bases if base.key == name)


def _over(speeds: tuple[float, ...], base: Base, values: Binned) -> Base:
    """Return an input at other engine speeds; beyond those of the log the last value is held."""
    logged = np.interp(speeds, tuple(values), tuple(values.values()))
    return replace(base, value=tuple(logged.tolist()))


def _boost(inputs: Inputs, boost: Binned, run: KnownRun) -> Base:
    """Return the logged boost, and beyond the speeds of the log what the settings say."""
    logged = _over(inputs.speeds, _logged("boost", run), boost)
    own = next((base for base in inputs.bases if base.key == "boost"), None)
    speeds = np.array(inputs.speeds)
    beyond = (speeds < min(boost)) | (speeds > max(boost))
    if own is None or not beyond.any():
        return logged
    values = np.where(beyond, own.value, logged.value)
    near = min(boost) - REACH <= speeds[0] and speeds[-1] <= max(boost) + REACH
    return replace(
        logged,
        value=tuple(values.tolist()),
        half_width=logged.half_width if near else max(logged.half_width, own.half_width),
        origin=f"{logged.origin}; beyond its engine speeds, {own.origin}",
    )


def _notes(inputs: Inputs, boost: Binned, run: KnownRun) -> tuple[tuple[str, str], ...]:
    """Return the notes, with what is now said of the boost."""
    others = tuple(each for each in inputs.notes if each[0] != MANIFOLD)
    text = f"Boost is that of the log of {run.name} from {min(boost):,.0f} to {max(boost):,.0f}"
    return (*others, (MANIFOLD, f"{text} rpm."))


def _in_the_air_of(inputs: Inputs, charge: Base, run: KnownRun) -> Base:
    """Return a logged charge temperature, moved by how much warmer the air is than at the run."""
    here, there = (
        next((base for base in each.bases if base.key == "air_temperature"), None)
        for each in (inputs, at_the_run(run))
    )
    if here is None or there is None:
        return charge
    warmer = float(np.max(here.value)) - float(np.max(there.value))
    widths = (charge.half_width, here.half_width, there.half_width)
    moved = f", moved by {warmer:+.0f} K for the air" if round(warmer) else ""
    return replace(
        charge,
        value=tuple((np.asarray(charge.value) + warmer).tolist()),
        half_width=math.hypot(*widths),
        of_day="",
        origin=f"{charge.origin}{moved}",
    )
