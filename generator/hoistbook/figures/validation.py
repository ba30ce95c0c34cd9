"""What the estimates were held against, and with what result; the tests work it out anew.

Errors are whole hundredths, rounded up.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

VALIDATION: Mapping[str, Mapping[str, float]] = MappingProxyType(
    {
        # 92 piston engines of the data set Cars93 (Lock, Journal of Statistics Education 1993):
        # from displacement and speed alone, the level of each set by the other 91; beside it, with
        # no formula but that of mean effective pressure, what mean and scatter of the 91 foresee.
        "catalogue": {
            "engines": 92,
            "inside": 87,
            "below": 0.24,
            "above": 0.25,
            "alone": 90,
            "scatter": 0.24,
        },
        # From trapped air to brake mean effective pressure above 3 bar, against a two-zone cycle
        # simulation: mean error, standard deviation, largest.
        "cycle": {"cases": 96, "mean": 0.01, "deviation": 0.03, "largest": 0.10},
        # The same engines simulated without boost, learnt from, then boosted; and what one brake
        # efficiency for both would have missed by.
        "boosted": {"cases": 34, "mean": 0.02, "largest": 0.03, "constant": 0.26},
    }
)
"""By what was checked: numbers of cases and shares."""
