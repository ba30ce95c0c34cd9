"""What power runs read, against what every sample of the inputs says they should have read.

Every sample of the inputs expects a reading; the nearer that is to what was read, the more the
sample weighs (Bayes' rule, by importance sampling).

References
----------
Kong, Liu and Wong, *J. American Statistical Association* 89 (1994) 278: the effective sample size;
from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from hoistbook.figures.base import Inputs
from hoistbook.figures.chain import Worked, work_out
from hoistbook.figures.draws import SAMPLES, WIDTHS_PER_DEVIATION, Samples
from hoistbook.figures.known_runs import KnownRun, apart, at_the_run
from hoistbook.figures.lessons import LESSONS
from hoistbook.figures.spreads import spread
from hoistbook.values.evidence import Evidence

LEAST_EFFECTIVE = SAMPLES // 40
"""Fewest effective samples that still tell a band; a run that leaves fewer is trusted less."""
EVERY = 500.0
"""Engine speeds at which a run is held against the samples, 1/min, where it has three of them."""
FARTHEST = 1_000.0
"""Factor beyond which what was expected is so far off that it does not matter how far."""

INSTRUMENT = {"power": "crank_power"}
"""Quantity -> the key under which the spread of its instrument stands, where they differ."""


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """What a run read of one quantity, against every sample of the inputs."""

    run: KnownRun
    transfer: str
    """What lies between the run and the estimate: a key of `LESSONS`."""
    shared: frozenset[str]
    """The inputs that are the same in the estimate."""
    quantity: str
    inputs: Inputs
    """Those of the run, at the engine speeds that are compared."""
    speeds: tuple[float, ...]
    """Those of them at which the quantity was read."""
    read: tuple[float, ...]
    """SI."""
    gaps: Samples
    """Logarithm of read over expected, speeds by samples."""

    @property
    def levels(self) -> Samples:
        """Return the mean gap over engine speed, by sample."""
        levels: Samples = self.gaps.mean(axis=0)
        return levels


@dataclass(frozen=True, slots=True, eq=False)
class Weighing:
    """How much each sample weighs after the readings."""

    weights: Samples
    """Sum 1."""
    trust: float
    """Share of the readings' own precision that was used: less than 1 where they and the samples
    disagree so far that hardly any sample would be left."""


def readings_of(run: KnownRun, transfer: str, shared: frozenset[str]) -> list[Reading]:
    """Return what a run tells; of its inputs only the shared ones are those of the estimate."""
    inputs = apart(at_the_run(run, EVERY), run, shared)
    worked = _expected(inputs, tuple(run.results))
    found = []
    for quantity, values in run.results.items():
        speeds = tuple(each for each in inputs.speeds if values.get(each, 0.0) > 0)
        if not speeds or quantity not in worked.values:
            continue
        read = tuple(values[each] for each in speeds)
        gaps = gaps_of(worked, quantity, speeds, read)[:, 1:]
        found.append(Reading(run, transfer, shared, quantity, inputs, speeds, read, gaps))
    return found


@lru_cache(maxsize=64)
def _expected(inputs: Inputs, quantities: tuple[str, ...]) -> Worked:
    """Return what the samples expect of a run; kept, since many states learn from one run."""
    return work_out(inputs, only=quantities)


def gaps_of(
    worked: Worked, quantity: str, speeds: tuple[float, ...], read: tuple[float, ...]
) -> Samples:
    """Return the logarithm of read over expected, speeds by central value and samples."""
    at = [worked.inputs.speeds.index(each) for each in speeds]
    measured = np.array(read)[:, np.newaxis]
    gaps: Samples = np.log(measured / np.maximum(worked.values[quantity][at], measured / FARTHEST))
    return gaps


def covariance_of(readings: Sequence[Reading]) -> Samples:
    """Return the covariance of the readings' levels, as shares squared.

    Readings of one instrument share its error, those of one run what lies between it and the
    estimate, and each has its own scatter.
    """
    count = len(readings)
    covariance = np.zeros((count, count))
    for a, one in enumerate(readings):
        for b, other in enumerate(readings):
            shares = []
            if one.quantity == other.quantity:
                name = INSTRUMENT.get(one.quantity, one.quantity)
                shares.append(spread(name, Evidence.MEASURED, 1.0))
            if one.run is other.run:
                shares.append(LESSONS[one.transfer].half_width)
            if one is other:
                shares.append(LESSONS["repeat"].half_width)
            covariance[a, b] = sum((share / WIDTHS_PER_DEVIATION) ** 2 for share in shares)
    return covariance


def weighed(readings: Sequence[Reading]) -> Weighing:
    """Return the weight of each sample: the likelihood of all that was read.

    Where fewer than `LEAST_EFFECTIVE` samples would be left, the readings are trusted by half as
    much, and so on, until enough are.
    """
    levels = np.stack([reading.levels for reading in readings])
    precise = np.linalg.inv(covariance_of(readings))
    misfit = np.einsum("ai,ab,bi->i", levels, precise, levels)
    trust = 1.0
    weights = _normalised(misfit)
    while 1 / (weights @ weights) < LEAST_EFFECTIVE:
        trust /= 2
        weights = _normalised(trust * misfit)
    return Weighing(weights, trust)


def _normalised(misfit: Samples) -> Samples:
    weights = np.exp(-(misfit - misfit.min()) / 2)
    normalised: Samples = weights / weights.sum()
    return normalised


def surprise(reading: Reading) -> float:
    """Return by how many deviations a reading lies off what was expected of it."""
    own = covariance_of([reading])[0, 0]
    return float(reading.levels.mean() / np.sqrt(reading.levels.var() + own))
