"""Which clamp: chosen by the hose as it measures on the pipe."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.fit.tables import table

USUAL_WALL = 5.0
"""Wall of a silicone hose of three or four layers [mm]; common practice, no source."""


@dataclass(frozen=True, slots=True)
class ClampChoice:
    """The clamp whose range a hose lies nearest the middle of."""

    name: str
    """Its range as sold: `60-80`."""
    outside: float
    """Outside diameter of the hose on the pipe [mm]."""


def hose_on_pipe(pipe: float, wall: float = USUAL_WALL) -> float:
    """Return the outside diameter of a hose on its pipe [mm]: pipe plus twice the wall.

    Examples
    --------
    >>> hose_on_pipe(63.5)
    73.5
    """
    return pipe + 2 * wall


def clamp_for(
    pipe: float, sort: str = "worm_drive", wall: float = USUAL_WALL
) -> ClampChoice | None:
    """Return the clamp for a hose on a pipe, or None where no range holds it.

    Parameters
    ----------
    pipe : float
        Outside diameter of the pipe [mm].
    sort : str
        `worm_drive` or `t_bolt`.
    wall : float
        Wall of the hose [mm].
    """
    outside = hose_on_pipe(pipe, wall)
    holding = [
        (abs((float(row["min_mm"]) + float(row["max_mm"])) / 2 - outside), row["name"])
        for row in table("clamps_flanges")
        if row["kind"] == sort and float(row["min_mm"]) <= outside <= float(row["max_mm"])
    ]
    return ClampChoice(min(holding)[1], outside) if holding else None
