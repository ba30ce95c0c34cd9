"""What a car lacks for a figure that the table has and the car does not."""

from __future__ import annotations

from collections.abc import Mapping

from hoistbook.figures.catalogue import CATALOGUE

SUBJECTS: Mapping[str, str] = {
    "pipe": "each fitted part of the kind `pipe`, `hose` or `intake pipe` that says what it "
    "carries, as in `facts: {bore: 54 mm, length: 0.9 m, carries: charge air, after the cooler}`",
    "throat": "each fitted part of the kind `throttle body` or `restrictor`",
    "gear": "each of the car's gears, as in `car: {gearing: {gears: [3.5, 1.95, 1.3]}}`",
    "bolt": "bolts that are fitted, and of which thread and property class are known",
    "load": "each fitted part with a `current`",
    "oil feed": "each fitted part of the kind `oil feed`",
    "oil drain": "each fitted part of the kind `oil drain`",
}
"""The kind of subjects that a figure is worked out for in turn -> what has to be on the car."""

CONDITIONS: Mapping[str, str] = {
    "boosted": "an engine with boost",
    "unboosted": "an engine without boost",
    "blend": "a fuel that is a blend",
    "power run": "a power run with its log",
}
"""A condition of the engine that a figure needs -> in words; the others stand behind these."""


def lacks(quantity: str) -> str:
    """Return what a figure of the table is worked out of, empty for a name that is none."""
    for row in CATALOGUE:
        if row.quantity != quantity:
            continue
        if row.per:
            return SUBJECTS[row.per]
        needed = [words for name, words in CONDITIONS.items() if name in row.only]
        return " and ".join(needed) or "what this car does not say"
    return ""
