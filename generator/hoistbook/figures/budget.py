"""Budgets: which of all base inputs brings how much of a figure's variance."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

import numpy as np

from hoistbook.figures.base import Base
from hoistbook.figures.draws import Samples, standardised, told


class Budget:
    """The samples of all base inputs of one state, standardised once for all its figures.

    Of causes that vary on their own it is the squared correlation: exact where the effect is
    linear in the cause, which a chain of products and sums with bands of some per cent nearly is.
    Causes that are tied to one another share what they bring together in the ratio of correlation
    times regression coefficient (Pratt's measure), so that the shares still add up.

    Parameters
    ----------
    columns
        Samples of each base input, by its name.
    bases
        The base inputs; those that runs have weighed are tied to one another.

    References
    ----------
    Pratt, *Proc. 2nd Tampere Conference in Statistics* (1987) 245; from memory.
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
        shares = (correlations * coefficients).tolist()
        return {name: told(share) for name, share in zip(names, shares, strict=True)}
