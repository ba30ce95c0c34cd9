"""Expected and got: what was said of a power run, what the model makes of its day, what it gave.

All three stand in the same place. A run at the wheels is held against the estimate at the wheels,
which carries the loss on the way there as an uncertain input; a measured number is not converted.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from hoistbook.authored.records import Journal, Log, PowerRun
from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.defaults import spread
from hoistbook.figures.figure import Curve, Figures, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.power_runs import Binned, binned, curve_of, measured_power, place_of
from hoistbook.figures.stage import estimates, state_of
from hoistbook.history.state import Dated, State
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

COMPARED_EVERY = 500.0
"""Engine speeds at which an estimate is held against a run, 1/min."""

LOGGED = {
    "boost": "boost",
    "lambda": "lambda_ratio",
    "charge temperature": "charge_temperature",
}
"""Column of a log -> the input that it replaces."""


def comparisons(
    journal: Journal, states: Sequence[State], figures: Sequence[Figures]
) -> tuple[Comparison, ...]:
    """Return expected and got for every power run whose log gives a power, oldest first."""
    by_episode = {state.episode: state for state in states}
    runs = states[-1].runs if states else ()
    found = []
    for dated in runs:
        log = journal.logs.get(dated.value.log)
        state = state_of(dated, by_episode)
        if log is not None and state is not None and measured_power(log):
            found.append(_compared(dated, log, inputs_of(state)))
    return tuple(found)


def _compared(dated: Dated[PowerRun], log: Log, inputs: Inputs) -> Comparison:
    run = dated.value
    measured = curve_of(run, measured_power(log))
    said_then, why_none = _estimate(run, inputs)
    then = at_the_run(inputs, run, log)
    on_the_day = _estimate(run, then)[0] if then.speeds else None
    speeds, inside = _inside(measured, said_then or on_the_day)
    return Comparison(
        episode=dated.episode,
        run=run,
        measured=measured,
        said_then=said_then,
        same_conditions=on_the_day,
        inside=inside,
        out_of=len(speeds),
        why_none=why_none,
        compared=speeds,
    )


def _estimate(run: PowerRun, inputs: Inputs) -> tuple[Curve | None, str]:
    """Return the estimated power in the place of the run, or why there is none."""
    quantity = "power" if place_of(run) == "crank" else "wheel_power"
    for each in estimates(inputs):
        if each.key.quantity != quantity:
            continue
        if isinstance(each, Missing):
            return None, f"Nothing was estimated: give {'; '.join(each.give)}."
        return each.curve, ""
    return None, "Nothing was estimated."


def at_the_run(inputs: Inputs, run: PowerRun, log: Log) -> Inputs:
    """Return the inputs as they were at a run.

    The air is the run's; boost, mixture and charge temperature are those of its log where it has
    them. The engine speeds are those at which the run and all of these are known.
    """
    measured = _air_of(run)
    curves = {name: binned(log, column) for column, name in LOGGED.items()}
    curves = {name: curve for name, curve in curves.items() if curve}
    speeds = _common_speeds(inputs, log, curves)
    for name, curve in curves.items():
        measured[name] = _logged(name, [curve[speed] for speed in speeds], run)
    kept = [_at_speeds(base, inputs, speeds) for base in inputs.bases if base.key not in measured]
    return replace(inputs, speeds=tuple(speeds), bases=(*kept, *measured.values()))


def _common_speeds(inputs: Inputs, log: Log, curves: Mapping[str, Binned]) -> list[float]:
    """Return the run's engine speeds at which boost and all that was logged are known."""
    boost_known = "boost" in curves or "unboosted" in inputs.conditions
    return [
        speed
        for speed in measured_power(log)
        if all(speed in curve for curve in curves.values())
        and (boost_known or inputs.speeds[0] <= speed <= inputs.speeds[-1])
    ]


def _at_speeds(base: Base, inputs: Inputs, speeds: Sequence[float]) -> Base:
    """Return an input over engine speed at other speeds; any other as it is."""
    if not isinstance(base.value, tuple):
        return base
    values = np.interp(speeds, inputs.speeds, base.value)
    return replace(base, value=tuple(float(each) for each in values))


def _air_of(run: PowerRun) -> dict[str, Base]:
    """Return the air of the run as far as it was written down."""
    air: dict[str, Quantity | None] = {
        "air_pressure": run.pressure,
        "air_temperature": run.temperature,
        "relative_humidity": run.humidity,
    }
    return {
        name: Base(
            name=name,
            value=value.value,
            half_width=(
                spread(name, Evidence.MEASURED, value.value)
                if value.half_width is None
                else value.half_width
            ),
            evidence=Evidence.MEASURED,
            origin="the air of the power run",
            place=run.place,
        )
        for name, value in air.items()
        if value is not None
    }


def _logged(name: str, values: list[float], run: PowerRun) -> Base:
    """Return an input as the run's log has it over engine speed."""
    return Base(
        name=name,
        value=tuple(values),
        half_width=spread(name, Evidence.MEASURED, max(values, default=0.0)),
        evidence=Evidence.MEASURED,
        origin="the log of the power run",
        place=run.place,
        floor=-np.inf,
    )


def _inside(measured: Curve, estimate: Curve | None) -> tuple[tuple[float, ...], int]:
    """Return the compared speeds, and at how many of them the measured power is in the band."""
    if estimate is None:
        return (), 0
    band = dict(zip(estimate.speeds, zip(estimate.low, estimate.high, strict=True), strict=True))
    power = dict(zip(measured.speeds, measured.values, strict=True))
    speeds = tuple(each for each in measured.speeds if each in band and each % COMPARED_EVERY == 0)
    inside = [band[speed][0] <= power[speed] <= band[speed][1] for speed in speeds]
    return speeds, sum(inside)
