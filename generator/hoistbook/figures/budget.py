"""Budgets: which of all base inputs brings how much of a figure's variance."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

import numpy as np

from hoistbook.figures.base import Base
from hoistbook.figures.draws import Samples, standardised, told

NEARLY_ALL = 0.9
"""Share of the variance that straight lines tell of a figure that is nearly linear."""
SLICES = 40
"""Slices of a cause, each with as many samples."""


class Budget:
    """The samples of all base inputs of one state, standardised once for all its figures.

    Of causes that vary on their own it is the squared correlation: exact where the effect is
    linear in the cause, which a chain of products and sums with bands of some per cent nearly is.
    Where that leaves a tenth and more untold, as near the best of a mixture, it is how much of the
    variance is left in the means of the effect over slices of the cause (the correlation ratio).
    Causes that are tied to one another share what they bring together in the ratio of correlation
    times regression coefficient (Pratt's measure); where one that takes width away makes the
    others more than all, they are shares of their own sum.

    Parameters
    ----------
    columns
        Samples of each base input, by its name.
    bases
        The base inputs; those that runs have weighed are tied to one another.

    References
    ----------
    Pratt, *Proc. 2nd Tampere Conference in Statistics* (1987) 245; from memory.
    Saltelli et al., *Global Sensitivity Analysis: The Primer* (Wiley 2008), section 1.2: the
    correlation ratio as the first-order index; from memory.
    """

    def __init__(self, columns: Mapping[str, Samples], bases: Mapping[str, Base]) -> None:
        self._lines = {name: line for line, name in enumerate(columns)}
        self._causes = np.array([standardised(each) for each in columns.values()])
        tied = [line for line, name in enumerate(columns) if bases[name].learnt]
        self._tied = np.full(len(self._lines), -1)
        self._tied[tied] = range(len(tied))
        self._of_tied = self._causes[tied]

    @cached_property
    def _among(self) -> Samples:
        """The correlations of the tied inputs with one another."""
        among: Samples = self._of_tied @ self._of_tied.T
        return among

    def shares(self, names: Sequence[str], effect: Samples) -> dict[str, float]:
        """Return the share of an effect's variance by the name of each input that it rests on."""
        if not names:
            return {}
        lines = np.array([self._lines[name] for name in names])
        correlations = self._causes[lines] @ standardised(effect)
        coefficients = correlations.copy()
        places = self._tied[lines]
        tied = places >= 0
        if tied.any():
            among = self._among[np.ix_(places[tied], places[tied])]
            coefficients[tied] = np.linalg.lstsq(among, correlations[tied], rcond=None)[0]
        shares = [told(each) for each in (correlations * coefficients).tolist()]
        total = sum(shares)
        if total < NEARLY_ALL and not tied.any():
            # What rests on one cause alone rests on it wholly, however bent.
            vary = self._causes[lines].any(axis=1)
            if vary.sum() == 1:
                return dict(zip(names, vary.astype(float).tolist(), strict=True))
            shares = [told(self._ratio(line, effect)) for line in lines.tolist()]
        elif total > 1:
            shares = [each / total for each in shares]
        return dict(zip(names, shares, strict=True))

    def _ratio(self, line: int, effect: Samples) -> float:
        """Return the correlation ratio of an effect to a cause, less what chance makes of it."""
        cause = self._causes[line]
        if not cause.any() or not effect.var():
            return 0.0
        means = effect[np.argsort(cause, kind="stable")].reshape(SLICES, -1).mean(axis=1)
        by_chance = (SLICES - 1) / (len(effect) - 1)
        return (float(means.var() / effect.var()) - by_chance) / (1 - by_chance)
