"""What remains uncertain between a power run and an estimate that has learnt from it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoistbook.figures.defaults import PRACTICE, Default

LESSONS: Mapping[str, Default] = MappingProxyType(
    {
        "repeat": Default(
            0.0, 0.03, f"runs of one engine on one day differ by 1 to 3 % ({PRACTICE})"
        ),
        "the same boost": Default(0.0, 0.0, "a run of the very boost that the estimate is for"),
        "another boost": Default(
            0.0,
            0.05,
            "filling and friction move a little with boost: cycle calculations follow within 2 %, "
            f"engines less closely ({PRACTICE})",
        ),
        "with and without boost": Default(
            0.0,
            0.08,
            "an indicated efficiency carried from no boost to boost is right within 5 % in cycle "
            f"calculations; the filling of an engine moves too ({PRACTICE})",
        ),
    }
)
"""What remains between a run and an estimate that it calibrates, as shares of the power."""
