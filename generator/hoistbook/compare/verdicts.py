"""What comes of holding a claim, or an estimate, against figures and measurements."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from hoistbook.authored.records import Claim, PowerRun
from hoistbook.figures.figure import Curve, Figure, Key
from hoistbook.figures.referred import AS_IT_WAS, Referred
from hoistbook.values.slip import Slip


class Result(StrEnum):
    """The result of a claim; the words that pages print."""

    HOLDS = "holds"
    FAILS = "does not hold"
    UNKNOWN = "cannot tell"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimVerdict:
    """A claim, whether it holds at its conditions, and with what margin."""

    claim: Claim
    episode: int
    result: Result
    figure: Key | None
    margin: float | None
    """Share of the bound to spare (positive) or by which it is missed (negative)."""
    why: str
    """One sentence: what the figure is there, or what is missing to tell."""
    found: Figure | None = None
    """The figure as it is at the claim's conditions, where there is one."""
    spare: str = ""
    """The margin in words, without its sign: "11 points", "9 %"."""
    across: bool = False
    """Whether the figure's band reaches across the bound: the claim may then be either."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Expected and got for one power run: the three numbers of every speed, in the same place."""

    episode: int
    run: PowerRun
    measured: Curve
    """Power [W] as logged; its band is the stated or assumed one of the rollers."""
    said_then: Curve | None
    """The estimate that stood before the run, in the same place (wheels or crank)."""
    same_conditions: Curve | None
    """The same model at the run's own boost, air and mixture."""
    inside: int
    out_of: int
    """So many of the compared speeds have the measured power inside the band of the estimate."""
    compared: tuple[float, ...] = ()
    """The engine speeds that were compared, 1/min: `out_of` of them."""
    referred: Referred = AS_IT_WAS
    """What power standards have to do with it; `measured` is always as observed."""
    why_none: str = ""
    """Why there is nothing to compare, when an estimate is missing."""
    boost_slip: Slip | None = None
    """Why the boost of the log is left out, where it cannot be what its column says."""
    held_back: tuple[str, ...] = ()
    """Where the throttle was not open, in a sentence: nothing is compared there."""
