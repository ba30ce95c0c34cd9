"""The oil drain of a turbocharger: its bore, its slope and where it enters the sump."""

from __future__ import annotations

import math
from collections.abc import Iterator

from hoistbook.authored.records import Join, Part
from hoistbook.fit.flows import Flow
from hoistbook.history.state import State
from hoistbook.values.end import DASH_SIZED, HOSES, End
from hoistbook.values.quantity import Quantity

SMALLEST_DASH = 10
"""Of a drain of a small or middling turbocharger, -12 for a large one: two turbocharger makers."""
SMALLEST_BORE = 12.7
"""Of its hose [mm]: the bore of dash ten, from memory of SAE J517."""
RULES = (
    "oil falls out of a turbocharger: within 15 degrees of straight down, falling all the way, "
    "into the sump above its oil level, and never narrower than the hole of the housing (two "
    "turbocharger makers; an article that says below the oil level is wrong)"
)
DRAINING = "oil drain"
LEAST_SLOPE = 15.0
"""Of a drain that does not fall straight, from level [deg]; at least 10 to 15, from memory."""


def drain_notes(
    join: Join, ends: tuple[End, End], flow: Flow | None, state: State
) -> Iterator[str]:
    """Yield what to heed of a join that drains a turbocharger."""
    sides = tuple(zip((join.a, join.b), ends, strict=True))
    parts = [state.parts[key.part].part for key, _ in sides if key.part in state.parts]
    kinds = {part.kind for part in parts}
    names = " ".join(key.end.casefold() for key, _ in sides)
    if flow is not Flow.OIL or not ("drain" in names or DRAINING in kinds):
        return
    if "turbocharger" in kinds:
        yield RULES
    if any(_narrow(end) for end in ends):
        yield "narrow for the drain of a turbocharger: dash ten, or 12.7 mm of bore, is the least"
    slopes = (slope for part in parts if (slope := _slope(part)) is not None)
    if (flattest := min(slopes, default=LEAST_SLOPE)) < LEAST_SLOPE:
        yield (
            f"too flat for the drain of a turbocharger: {flattest:.0f} degrees from level, and 10 "
            "to 15 are the least (from memory): oil stands in the housing and passes its seals"
        )


def _slope(part: Part) -> float | None:
    """Return how steeply a drain falls over its length, from level [deg]."""
    drop, length = (part.facts.get(name) for name in ("drop", "length"))
    if not (drop and length):
        return None
    if not (isinstance(drop.value, Quantity) and isinstance(length.value, Quantity)):
        return None
    return math.degrees(math.asin(min(1.0, drop.value.value / length.value.value)))


def _narrow(end: End) -> bool:
    if end.kind in DASH_SIZED:
        return -int(end.size) < SMALLEST_DASH
    return end.kind in HOSES and (end.diameter or SMALLEST_BORE) < SMALLEST_BORE
