"""A figure is a number with a past: what it is of, how it is known, and how it came about."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from hoistbook.figures.base import Inputs
from hoistbook.problems import Place
from hoistbook.values.evidence import Evidence


@dataclass(frozen=True, slots=True, order=True)
class Key:
    """Names a figure: a quantity of a subject (`pipe_velocity` of `pipe-2`)."""

    quantity: str
    subject: str = "engine"

    @property
    def anchor(self) -> str:
        """Return the id that stands for it in a page's address."""
        return self.subject


AS_RUN = "none"
"""The power standard of a power that is not referred to any reference air."""
POWERS = frozenset(
    ("power", "torque", "wheel_power", "wheel_torque", "crank_power", "crank_torque")
)
"""Quantities that always name their power standard."""


class LimitState(StrEnum):
    """How a figure stands to its limit; the words that pages print."""

    WITHIN = "within"
    NEAR = "near its limit"
    OVER = "over its limit"


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """A threshold of a figure and how the figure stands to it."""

    state: LimitState
    threshold: float
    """SI."""
    side: str
    """`at most` or `at least`."""
    reason: str
    """Why there, with its source or "common practice, no source"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One number that went into a figure."""

    name: str
    """Glossary key, the formula's parameter."""
    value: float
    low: float
    high: float
    """Central value and 95 % band, SI."""
    evidence: Evidence
    origin: str
    """Where it came from, in words: "fact of injectors, stated", "default: full load, petrol"."""
    figure: Key | None = None
    """The figure it is, when it is one itself."""
    place: Place | None = None
    """The author's line, when it is one."""
    share: float | None = None
    """Share of the figure's variance that comes from it, 0 to 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """A figure over engine speed, with its band; all SI but the speeds (1/min)."""

    speeds: tuple[float, ...]
    values: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One number of a subject as at one episode."""

    key: Key
    value: float
    low: float
    high: float
    """Value and the two ends of its 95 % band, SI."""
    evidence: Evidence
    inputs: tuple[Input, ...]
    formula: str
    """Name of the formula in `hoistbook.engineering`; empty for a plain measurement."""
    episode: int
    """The episode since which it has been as it is; of an estimate of inputs alone, the last that
    set any of them."""
    at_speed: float | None = None
    """For a curve: the engine speed of the headline, 1/min."""
    headline: str = ""
    """"highest", "at 6,000 rpm"; empty for a figure that is not a curve."""
    curve: Curve | None = None
    limit: Limit | None = None
    notes: tuple[str, ...] = ()
    """Sentences on validity: what lies outside the formula's range, what is not modelled."""
    place: Place | None = None
    """For a measurement: the author's line."""
    budget: tuple[Input, ...] = ()
    """What the whole chain up to here rests on, by its share of the variance, greatest first."""
    own: Inputs | None = None
    """What it alone starts from, where that is not what its state does: the numbers of a run."""
    worked_as: str = ""
    """Its name in that chain, where it is not its own."""
    standard: str = ""
    """The power standard that a measured power is referred to; empty for one as it was run."""
    step: bool = False
    """An intermediate result: it has workings, but no list of figures shows it on its own."""

    @property
    def power_standard(self) -> str:
        """Return the standard that a power names, `none` for none; empty for what is no power.

        An estimate is made for the air that its author gives, and referred to none.
        """
        return (self.standard or AS_RUN) if self.key.quantity in POWERS else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """A figure that cannot be worked out yet, and what to give."""

    key: Key
    give: tuple[str, ...]
    """In words: "static flow of injectors, as in `facts: {static flow: 550 cc/min at 3 bar}`"."""
    episode: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """All figures of one state, in the order of the catalogue."""

    episode: int
    figures: tuple[Figure | Missing, ...]
    inputs: Inputs | None = None
    """What the estimates among them start from: the browser works them out anew from it."""

    def get(self, quantity: str, subject: str = "engine") -> Figure | Missing | None:
        """Return the figure of that name, None where the catalogue has none for this car."""
        key = Key(quantity, subject)
        return next((each for each in self.figures if each.key == key), None)
