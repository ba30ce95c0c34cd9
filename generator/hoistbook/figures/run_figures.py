"""Figures that a power run has measured: as run, or referred to the journal's power standard."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from hoistbook.authored.records import PowerRun
from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.defaults import DEFAULTS, PRACTICE
from hoistbook.figures.figure import Curve, Figure, Key
from hoistbook.figures.known_runs import KnownRun
from hoistbook.figures.power_runs import SMOOTHING, Binned, curve_of, place_of, scaled, share_of
from hoistbook.figures.referred import Referred, air_bases
from hoistbook.figures.stretches import between
from hoistbook.figures.summary import summed_up
from hoistbook.values.evidence import Evidence

BANDS = {
    "wheel": "the rollers, the tyres on them and how the car is strapped down",
    "crank": "the engine brake",
}
"""What the band of a measured power stands for."""
HELD_BACK = (
    "{at} the manifold was more than 0.1 bar below the air: the throttle was not open, and "
    "nothing of full load is learnt from there."
)
ON_THE_WAY = ("dry_air_pressure", "stated_correction_factor", "power_correction_factor")
"""What is worked out of the air of a run before its power is referred to a standard."""


def measured_figures(known: KnownRun) -> Mapping[str, Figure]:
    """Return the figures of a run by quantity: power and torque, and what referred them."""
    found: dict[str, Figure] = {}
    moved = known.referred.taken_out != 1 or known.referred.put_in != 1
    for quantity, values in (("power", known.power), ("torque", known.torque)):
        name = f"{place_of(known.run)}_{quantity}"
        own = _as_printed(known, Key(name), values)
        found[name] = _worked(known, own, quantity) if moved else own
    if moved:
        power = found[f"{place_of(known.run)}_power"]
        found |= _steps(power)
    return found


def _as_printed(known: KnownRun, key: Key, values: Binned) -> Figure:
    """Return a figure of a run with its curve, as a plain reading."""
    curve = curve_of(known.run, scaled(values, known.referred.put_in))
    top = int(np.argmax(curve.values))
    return Figure(
        key=key,
        value=curve.values[top],
        low=curve.low[top],
        high=curve.high[top],
        evidence=Evidence.MEASURED,
        inputs=(),
        formula="",
        episode=known.episode,
        at_speed=curve.speeds[top],
        headline="highest",
        curve=curve,
        notes=(*notes_of(known.run, known.referred), *held_back(known)),
        standard=known.referred.standard,
        place=known.run.place,
    )


def held_back(known: KnownRun) -> tuple[str, ...]:
    """Return what to say of a log whose boost is left out, or begins at a closed throttle."""
    if known.boost_slip is not None:
        return (f"The log has {known.boost_slip.message}.",)
    if not known.held_back:
        return ()
    speeds = tuple(sorted({*known.power, *known.held_back}))
    at = between(np.flatnonzero(np.isin(speeds, known.held_back)), speeds)
    return (HELD_BACK.format(at=f"{at[0].upper()}{at[1:]}"),)


def _worked(known: KnownRun, printed: Figure, quantity: str) -> Figure:
    """Return a figure of a run with the working that refers it to a standard, or undoes one."""
    inputs = _inputs(known, printed.at_speed or 0.0)
    name = f"{'corrected' if known.referred.standard else 'observed'}_{quantity}"
    (worked,) = summed_up(work_out(inputs, only=(name,)), Key(name))
    if not isinstance(worked, Figure) or printed.curve is None:
        return printed
    low, high = worked.low / worked.value, worked.high / worked.value
    return replace(
        printed,
        value=worked.value,
        low=worked.low,
        high=worked.high,
        inputs=worked.inputs,
        formula=worked.formula,
        budget=worked.budget,
        curve=_banded(printed.curve, low, high),
        own=inputs,
        worked_as=name,
    )


def _banded(curve: Curve, low: float, high: float) -> Curve:
    return replace(
        curve,
        low=tuple(value * low for value in curve.values),
        high=tuple(value * high for value in curve.values),
    )


def _inputs(known: KnownRun, speed: float) -> Inputs:
    """Return what a run's power at an engine speed starts from: its log and the air of its day."""
    standards, taken_out = known.referred, known.referred.taken_out != 1
    power = known.stated[speed] if speed in known.stated else max(known.stated.values())
    base = Base(
        name="stated_power" if taken_out else "observed_power",
        value=power,
        half_width=share_of(known.run) * power,
        evidence=Evidence.MEASURED,
        origin=f"the log of {known.name}",
        episode=known.episode,
        place=known.run.place,
        of_day=known.day,
    )
    air = air_bases(known.run)
    if "relative_humidity" not in air:
        default = DEFAULTS["relative_humidity"]
        air["relative_humidity"] = Base(
            name="relative_humidity",
            value=default.value,
            half_width=default.half_width,
            evidence=Evidence.ASSUMED,
            origin=f"default: {default.reason}",
            ceiling=1.0,
        )
    conditions = {"power run"}
    if taken_out:
        conditions |= {"stated", f"stated by {standards.stated}"}
    if standards.standard:
        conditions |= {"referred", f"referred to {standards.standard}"}
    return Inputs(speeds=(speed,), bases=(base, *air.values()), conditions=frozenset(conditions))


def _steps(power: Figure) -> Mapping[str, Figure]:
    """Return what stands between a run's air and its power, each with its own working."""
    if power.own is None:
        return {}
    return {
        each.key.quantity: replace(
            each, episode=power.episode, own=power.own, place=power.place, step=True
        )
        for each in summed_up(work_out(power.own))
        if isinstance(each, Figure) and each.key.quantity in ON_THE_WAY
    }


def notes_of(run: PowerRun, standards: Referred) -> tuple[str, ...]:
    """Return what has to be said beside a measured power."""
    where = "at the crank" if run.at == "crank" else "at the wheels"
    by = standards.standard or "none, as observed"
    return (
        f"Measured {where}; power standard: {by}.",
        *(f"{each[0].upper()}{each[1:]}." for each in standards.reasons),
        SMOOTHING,
        f"The band is {100 * share_of(run):g} %, for {BANDS[place_of(run)]} ({PRACTICE}).",
    )
