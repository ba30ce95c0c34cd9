"""What is said of two ends: one of five verdicts, with its reasons."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from hoistbook.values.end import Medium


class Verdict(StrEnum):
    """The five verdicts; the words are the ones that pages print."""

    MATES = "mates"
    """Geometry and seal agree; nothing but fastening is added."""
    WITH_SEALANT = "mates with sealant"
    """Geometry agrees; a seal that belongs to neither end must be added."""
    LOOKS_RIGHT = "looks right, do not join"
    """Starts, slides on or bolts up, and must not be joined."""
    NEEDS_ADAPTER = "needs adapter"
    """Does not go together; something in between does or can be made."""
    UNKNOWN = "unknown"
    """Something is not said or not standardised."""


CLOSING = (Verdict.MATES, Verdict.WITH_SEALANT)
"""The verdicts on ends that may be joined."""


@dataclass(frozen=True, slots=True)
class Service:
    """What a join must carry, as plain numbers; None where nobody knows."""

    medium: Medium | None = None
    pressure: float | None = None
    """Highest gauge pressure [bar]."""
    temperature: float | None = None
    """Highest temperature [degC]."""


NOTHING_SAID = Service()


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """The verdict on two ends and why."""

    verdict: Verdict
    rule: str
    """The rule that decided: `R0` to `R9`."""
    why: str
    """One sentence without its full stop."""
    sealant: str = ""
    """What must be added, of `mates with sealant`."""
    tell_apart: str = ""
    """How to tell the one from the other with a gauge."""
    goes_wrong: str = ""
    """What happens to those who join them all the same."""
    adapter: str = ""
    """What would go between, of `needs adapter`."""
    measure: str = ""
    """What to measure or to say, of `unknown`."""
    notes: tuple[str, ...] = ()
    """What else to know; no note makes a verdict better."""


@dataclass(frozen=True, slots=True)
class MakeUp:
    """How a join is tightened, and where that is written."""

    how: str = ""
    """Empty where nothing is to be said."""
    source: str = ""
    """Empty where no number is said."""
