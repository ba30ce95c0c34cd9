"""Engine speeds in words, each stretch of them by itself."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray


def between(lines: NDArray[np.intp], speeds: Sequence[float]) -> str:
    """Return at which of a row of engine speeds some lie.

    Parameters
    ----------
    lines
        Places of those in question, ascending; at least one.
    speeds
        The whole row, 1/min, ascending.

    Examples
    --------
    >>> between(np.array([0, 2, 3]), (1000.0, 1100.0, 1200.0, 1300.0))
    'at 1,000 rpm and between 1,200 and 1,300 rpm'
    """
    stretches = np.split(lines, np.flatnonzero(np.diff(lines) > 1) + 1)
    ends = [(speeds[each[0]], speeds[each[-1]]) for each in stretches]
    return " and ".join(
        f"at {first:,.0f} rpm" if first == last else f"between {first:,.0f} and {last:,.0f} rpm"
        for first, last in ends
    )
