"""From the log of a power run to measured power and torque over engine speed.

A log is as it comes: unsorted, with repeated speeds and with gaps. Its samples are sorted into
bins of a full hundred 1/min, and each bin's median stands for it, which is all the smoothing there
is. A run at the wheels stays at the wheels.
"""

from __future__ import annotations

from itertools import compress

import numpy as np

from hoistbook.authored.records import Log, PowerRun
from hoistbook.engineering.power import power_of_torque, torque
from hoistbook.figures.figure import Curve
from hoistbook.figures.spreads import spread
from hoistbook.values.evidence import Evidence

BIN = 100.0
"""Width of a bin of engine speed, 1/min."""
SMOOTHING = "Each point is the median of all samples within 50 rpm of it."

Binned = dict[float, float]
"""Engine speed in the middle of a bin, 1/min -> median of its samples, SI."""


def binned(log: Log, column: str) -> Binned:
    """Return the medians of one column by engine speed, ascending; empty where there are none."""
    speeds = np.asarray(log.columns.get("speed", ()), dtype=float)
    values = np.asarray(log.columns.get(column, ()), dtype=float)
    if len(speeds) == 0 or len(speeds) != len(values):
        return {}
    # A crankshaft that hardly turns would fall into the bin of one that stands.
    good = np.isfinite(speeds) & np.isfinite(values) & (speeds > BIN / 2)
    centres = np.round(speeds[good] / BIN) * BIN
    order = np.argsort(centres, kind="stable")
    every, starts = np.unique(centres[order], return_index=True)
    samples = np.split(values[good][order], starts[1:])
    return {
        float(centre): float(np.median(each)) for centre, each in zip(every, samples, strict=False)
    }


def pulling(log: Log) -> Log:
    """Return a log without its overrun: rollers go on logging while the car rolls out.

    In one bin with the pull, samples of no power or less would be taken for the scatter of it.
    """
    drive = np.asarray(log.columns.get("power") or log.columns.get("torque") or (), dtype=float)
    pulls = ~(drive <= 0)
    return Log(
        columns={name: tuple(compress(cells, pulls)) for name, cells in log.columns.items()}
    )


def measured_power(log: Log) -> Binned:
    """Return power by engine speed [W], from the log's own column or from its torque."""
    own = binned(log, "power")
    if own:
        return own
    by_torque = binned(log, "torque")
    return {
        speed: power_of_torque(engine_speed=speed, torque=value)
        for speed, value in by_torque.items()
    }


def measured_torque(log: Log) -> Binned:
    """Return torque by engine speed [N m], from the log's own column or from its power."""
    own = binned(log, "torque")
    if own:
        return own
    return {
        speed: torque(power=value, engine_speed=speed)
        for speed, value in measured_power(log).items()
    }


def place_of(run: PowerRun) -> str:
    """Return `wheel` or `crank`."""
    return "crank" if run.at == "crank" else "wheel"


def scaled(values: Binned, factor: float) -> Binned:
    """Return binned values times a factor."""
    return {speed: value * factor for speed, value in values.items()}


def share_of(run: PowerRun) -> float:
    """Return half the band of a run's readings, as a share of them."""
    return spread(f"{place_of(run)}_power", Evidence.MEASURED, 1.0)


def curve_of(run: PowerRun, values: Binned) -> Curve:
    """Return binned values as a curve with the band of the rollers or the engine brake."""
    share = share_of(run)
    return Curve(
        speeds=tuple(values),
        values=tuple(values.values()),
        low=tuple(value * (1 - share) for value in values.values()),
        high=tuple(value * (1 + share) for value in values.values()),
    )
