"""A base input: one number that the whole chain of figures starts from, with its band and past."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from hoistbook.figures.defaults import NORMAL
from hoistbook.figures.draws import Samples, draw
from hoistbook.problems import Place
from hoistbook.values.evidence import Evidence

CALIBRATED = "calibrated"
"""Condition of an engine whose own runs have been learnt from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """What is left of an input's samples after runs have weighed them."""

    kept: bytes = field(repr=False)
    """Which sample stands in the place of each, as 16-bit whole numbers; the same of all inputs
    of one state."""
    half_width: float
    """Half the band that the samples were drawn from."""
    shift: float
    """By how much the central value has moved; SI."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Base:
    """One number that was given, measured or assumed; SI."""

    name: str
    """Glossary key."""
    value: float | tuple[float, ...]
    """Central value; for an input over engine speed one value for each speed of the grid."""
    half_width: float
    """Half the 95 % band; of a rectangular distribution half its whole range."""
    evidence: Evidence
    origin: str
    """Where it came from, in words."""
    episode: int = 0
    """Episode that set it; 0 for the car as bought and for what was never said."""
    place: Place | None = None
    shape: str = NORMAL
    floor: float = 0.0
    ceiling: float = math.inf
    """Physical bounds, beyond which no sample lies."""
    subject: str = "engine"
    of_day: str = ""
    """Whose number it is, where it is of one day only: its samples are drawn apart from those of
    the same input on another day."""
    learnt: Learnt | None = None
    """Where runs have weighed the samples: what is left of them."""

    @property
    def key(self) -> str:
        """Return the name that stands for it in the chain's environment."""
        return keyed(self.name, self.subject)

    def deviations(self) -> Samples:
        """Return by how much each sample lies off the central value."""
        name = self.key + self.of_day
        if self.learnt is None:
            return draw(name, 0.0, self.half_width, self.shape)
        drawn = draw(name, 0.0, self.learnt.half_width, self.shape)
        return drawn[np.frombuffer(self.learnt.kept, dtype=np.uint16)] - self.learnt.shift

    def column(self) -> Samples:
        """Return the central value followed by the samples, speeds by samples.

        A band over engine speed moves as a whole: a gauge that reads high does so everywhere.
        """
        centre = self.centre()
        samples = np.clip(centre + self.deviations(), self.floor, self.ceiling)
        return np.concatenate([centre, samples], axis=1)

    def centre(self) -> Samples:
        """Return the central value alone, speeds by one."""
        return np.atleast_1d(np.asarray(self.value, dtype=float))[:, np.newaxis]


def keyed(name: str, subject: str = "engine") -> str:
    """Return the one name of a quantity of a subject."""
    return name if subject == "engine" else f"{name} of {subject}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """One of several that the same rows of the table are gone through for: a pipe, a gear."""

    kind: str
    """Which rows: `pipe`, `gear` ..."""
    name: str
    """Id of the part, or a name of the figures' own."""
    binds: tuple[tuple[str, str], ...] = ()
    """Parameter -> name in the environment, for what is neither its own nor the engine's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """All that the chain of one state starts from; equal inputs give equal figures."""

    speeds: tuple[float, ...]
    """Engine speeds that figures are drawn over, 1/min; empty where none can be told."""
    bases: tuple[Base, ...]
    conditions: frozenset[str]
    """How the engine is made up: `boosted`, `cooled`, `blend`, `fixed fuel pressure` ..."""
    subjects: tuple[Subject, ...] = ()
    missing: tuple[tuple[str, str], ...] = ()
    """Names of inputs that nobody gave, and what to write."""
    notes: tuple[tuple[str, str], ...] = ()
    """Quantity -> a sentence on what was taken for granted."""
