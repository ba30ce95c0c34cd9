"""Figures: numbers with a past, for every state of the build.

`figures_of` works them out, `QUANTITIES` names them. The table that says what there is and how it
hangs together is `hoistbook.figures.catalogue`.
"""

from hoistbook.figures.catalogue import QUANTITIES
from hoistbook.figures.stage import figures_of

__all__ = ["QUANTITIES", "figures_of"]
