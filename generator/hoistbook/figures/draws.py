"""The draw: 4,000 samples of every uncertain input, the same ones on every machine.

One column per input, keyed by its name: the range of probabilities is cut into as many equal
strata as there are samples, each stratum is drawn once, and a hash of the name decides the order.
A new input therefore moves no other number, and every input taken alone is sampled without noise.
A lattice or digital net whose generators are hashed from the name fills pairs of inputs more
evenly, but now and then two names resonate and come out correlated by half and more; in this draw
the greatest correlation among 200 names is 0.07.

References
----------
JCGM 101:2008, *Propagation of distributions using a Monte Carlo method*.
McKay, Beckman and Conover, *Technometrics* 21 (1979) 239: one sample in each stratum.
Appleby, finaliser of MurmurHash3 (public domain), for the order; from memory.
"""

from __future__ import annotations

import zlib
from collections.abc import Mapping
from functools import cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

Samples = NDArray[np.float64]

SAMPLES = 4_000
COVERAGE = 0.95
LOW_POINT = round(SAMPLES * (1 - COVERAGE) / 2)
"""How many of the sorted samples lie below the 95 % band, and as many above."""
WIDTHS_PER_DEVIATION = NormalDist().inv_cdf((1 + COVERAGE) / 2)
"""Half the 95 % band of a normal distribution, in standard deviations: 1.96."""

_STRATA = (np.arange(SAMPLES) + 0.5) / SAMPLES


@cache
def order(name: str) -> NDArray[np.intp]:
    """Return which stratum each sample of the named input comes from.

    Sample numbers are scattered by a 32-bit hash that starts from the name's checksum; ranking the
    hashes gives a permutation. Everything is 32-bit whole numbers, so a browser does the same.
    """
    mixed = np.arange(1, SAMPLES + 1, dtype=np.uint32) * np.uint32(0x9E3779B1)
    mixed ^= np.uint32(zlib.crc32(name.encode()))
    for shift, factor in ((16, 0x85EBCA6B), (13, 0xC2B2AE35)):
        mixed = (mixed ^ (mixed >> np.uint32(shift))) * np.uint32(factor)
    return np.argsort(np.argsort(mixed ^ (mixed >> np.uint32(16))))


def _normal() -> Samples:
    """Return the strata of the standard normal distribution, scaled to unit half width."""
    inverse = NormalDist().inv_cdf
    return np.array([inverse(each) for each in _STRATA]) / WIDTHS_PER_DEVIATION


SHAPES: Mapping[str, Samples] = {
    "normal": _normal(),
    "rectangular": 2 * _STRATA - 1,
}
"""By the name of a distribution its strata, for a centre of 0 and a half width of 1.

The half width of a normal distribution is half its 95 % band, that of a rectangular one half of
its whole width.
"""


def draw(
    name: str,
    centre: float,
    half_width: float,
    shape: str = "normal",
    floor: float = -np.inf,
    ceiling: float = np.inf,
) -> Samples:
    """Return the samples of one input.

    Parameters
    ----------
    name
        The input's name; the same name always gives the same order.
    centre
        Central value, any unit.
    half_width
        Half the 95 % band (normal) or half the whole range (rectangular), the unit of `centre`.
    shape
        A key of `SHAPES`.
    floor, ceiling
        Physical bounds, as 0 for a length; samples beyond them stand on the bound.

    Returns
    -------
    Samples
        Array of `SAMPLES` values, the unit of `centre`.
    """
    samples = centre + half_width * SHAPES[shape][order(name)]
    return np.clip(samples, floor, ceiling)


def band(samples: Samples) -> tuple[Samples, Samples]:
    """Return the 2.5 % and 97.5 % points of samples that stand along the last axis.

    The two points are order statistics (JCGM 101, 7.7.1: the probabilistically symmetric
    interval), not interpolated, so the last digit does not depend on a library's rule.
    """
    high = SAMPLES - 1 - LOW_POINT
    parted = np.partition(samples, (LOW_POINT, high), axis=-1)
    return parted[..., LOW_POINT], parted[..., high]


def share_of_variance(cause: Samples, effect: Samples) -> float:
    """Return the share of the effect's variance that goes along with a cause: r squared."""
    return told(float(standardised(cause) @ standardised(effect)) ** 2)


def told(share: float) -> float:
    """Return a share of variance, zero below what the samples can tell from nothing: 0.1 %."""
    return share if share > 4 / SAMPLES else 0.0


def standardised(samples: Samples) -> Samples:
    """Return samples with mean 0 and sum of squares 1; those of a constant are all 0."""
    deviations: Samples = samples - samples.mean()
    length = float(np.sqrt(deviations @ deviations))
    constant = length <= 1e-12 * float(np.abs(samples).max())
    return np.zeros_like(deviations) if constant else deviations / length
