"""Where an engine is reckoned to take more air than the narrowest throat on its way passes."""

from __future__ import annotations

import numpy as np

from hoistbook.figures.chain import Worked
from hoistbook.figures.stretches import between

OUT_OF_REACH = (
    "Out of reach {at}: that takes more air than passes the {bore}, which chokes before. How much "
    "less the engine makes with it is not worked out here."
)


def out_of_reach(worked: Worked) -> list[str]:
    """Return a sentence for each throat that chokes at less than the engine's air.

    Parameters
    ----------
    worked
        The environment after its last row: a throat chokes by the central values of both flows.
    """
    flow = worked.values.get("engine_air_flow")
    notes = []
    for name, step in worked.steps.items():
        if step.row.quantity != "choked_flow" or flow is None:
            continue
        beyond = np.flatnonzero(flow[:, 0] > worked.values[name][:, 0])
        if len(beyond):
            at = between(beyond, worked.inputs.speeds)
            bore = worked.bases[step.sources["throat_diameter"]].origin
            notes.append(OUT_OF_REACH.format(at=at, bore=bore))
    return notes
