"""Thresholds of figures, and how a figure stands to its own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.engineering import FORMULAS
from hoistbook.figures.figure import Limit, LimitState
from hoistbook.fit.wiring import OTHERS, PARTICULAR

AT_MOST = "at most"
AT_LEAST = "at least"


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """Where the limit of a quantity lies, and from where it is near."""

    side: str
    at: float
    """SI."""
    near: float
    """SI; from here to the threshold a figure is near its limit."""
    reason: str


STEADY = FORMULAS["pipe_pressure_loss"].valid["mach_number"][1]
"""Mach number up to which the pressure loss of a pipe holds as it is reckoned."""

THRESHOLDS: Mapping[str, Threshold] = MappingProxyType(
    {
        "injector_duty": Threshold(
            side=AT_MOST,
            at=0.85,
            near=0.80,
            reason="an injector open longer no longer closes fully between its pulses, and "
            "nothing is left for a cold day: 80 to 85 % (common practice, no source)",
        ),
        "pump_margin": Threshold(
            side=AT_LEAST,
            at=0.15,
            near=0.25,
            reason="15 to 25 % kept for a falling voltage, a dirty filter and a worn pump "
            "(common practice, no source)",
        ),
        "mach_number": Threshold(
            side=AT_MOST,
            at=STEADY,
            near=0.25,
            reason=f"beyond {STEADY:g} the pressure losses of a pipe climb steeply and are no "
            "longer those of an incompressible flow (common practice, no source)",
        ),
        "throat_share": Threshold(
            side=AT_MOST,
            at=1.0,
            near=0.90,
            reason="at the whole of it the air moves at the speed of sound in the throat, and no "
            "more passes, whatever is done behind it (White, Fluid Mechanics, section 9.4)",
        ),
        "voltage_drop_share": Threshold(
            side=AT_MOST,
            at=OTHERS,
            near=PARTICULAR,
            reason=f"pumps and control units mind {100 * PARTICULAR:g} %, other loads "
            f"{100 * OTHERS:g} %, over the two-way run (common practice, no source)",
        ),
    }
)
"""By quantity."""


def limit_of(quantity: str, value: float, low: float, high: float) -> Limit | None:
    """Return how a value with its 95 % band stands to the limit of its quantity, None without one.

    Over: the central value is beyond the threshold. Near: the central value is not, but it is past
    the nearer mark or its band reaches beyond the threshold. Within: neither.
    """
    rule = THRESHOLDS.get(quantity)
    if rule is None:
        return None
    sign = 1 if rule.side == AT_MOST else -1
    worst = high if rule.side == AT_MOST else low
    if sign * value > sign * rule.at:
        state = LimitState.OVER
    elif sign * value > sign * rule.near or sign * worst > sign * rule.at:
        state = LimitState.NEAR
    else:
        state = LimitState.WITHIN
    return Limit(state=state, threshold=rule.at, side=rule.side, reason=rule.reason)
