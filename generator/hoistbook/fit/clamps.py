"""Which clamp: chosen by the hose as it measures on the pipe."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.fit.hose_rules import FUELS, UNBEADED
from hoistbook.fit.tables import Row, keyed, sourced, table
from hoistbook.fit.verdict import MakeUp, Service
from hoistbook.values.end import End, EndKind, Medium

USUAL_WALL = 5.0
"""Wall of a silicone hose of three or four layers [mm]; common practice, no source."""
THIN_WALL = 3.0
"""Wall of a hose below `SMALL_HOSE` [mm]; common practice, no source, as are the next two."""
SMALL_HOSE = 30.0
"""Below this a hose takes a narrow band [mm]."""
TINY_HOSE = 10.0
"""Below this a worm drive cuts the hose before it closes evenly [mm]."""
PRACTICE = "common practice, no source"
MEASURED = "by the hose measured on the pipe"
FUEL_CLAMP = f"fuel-injection clamp with a full band, {MEASURED}; a worm drive cuts fuel hose"
TINY_CLAMP = (
    "spring clip or small full-band clamp, {measured} (about {outside:.0f} mm); for air a tie "
    "serves too; a worm drive cuts a hose so small"
)


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


def clamp_make_up(pipe: End, hose: End, service: Service) -> MakeUp:
    """Return which clamp holds a hose on a pipe, and how tight.

    Parameters
    ----------
    pipe, hose : End
        A pipe end and the hose that goes over it.
    service : Service
        What it carries; fuel and boost ask for clamps of their own.
    """
    outside = pipe.diameter or 0.0
    if service.medium in FUELS:
        return MakeUp(FUEL_CLAMP, PRACTICE)
    if outside < TINY_HOSE:
        on_pipe = hose_on_pipe(outside, THIN_WALL)
        return MakeUp(TINY_CLAMP.format(measured=MEASURED, outside=on_pipe), PRACTICE)
    if outside < SMALL_HOSE:
        return _narrow(outside)
    boosted = service.pressure is None or service.pressure > UNBEADED
    silicone = hose.kind is EndKind.SILICONE
    if silicone and service.medium is Medium.AIR and boosted:
        return _boosted(outside)
    return _wide(outside, "lined worm-drive clamp" if silicone else "worm-drive clamp")


def _narrow(outside: float) -> MakeUp:
    narrow, wide = _band("7.5 mm band"), _band("12 mm band")
    worm = clamp_for(outside, wall=THIN_WALL)
    size = f" {worm.name} mm" if worm else ""
    return MakeUp(
        f"spring band, or worm-drive clamp{size} with a narrow band, {MEASURED}; worm drive on "
        f"new hose: {_torque(narrow)} N m with 7.5 mm band, {_torque(wide)} N m with 12 mm",
        sourced(wide["provenance"]),
    )


def _boosted(outside: float) -> MakeUp:
    band, bolt, worm = _band("12 mm band"), clamp_for(outside, "t_bolt"), clamp_for(outside)
    sizes = [f" {each.name} mm" if each else "" for each in (bolt, worm)]
    return MakeUp(
        f"T-bolt (constant-tension) clamp{sizes[0]}, {MEASURED}, to its maker's figure (4 to 10 "
        "N m by the size of its bolt, from memory; a thin aluminium pipe is crushed first, and "
        f"pages differ on how soon); second to it a worm drive{sizes[1]} with a lined 12 mm "
        f"band, new hose: {_torque(band)} N m",
        sourced(f"{band['provenance']}; {_widest('t_bolt')['provenance']}"),
    )


def _wide(outside: float, clamp: str) -> MakeUp:
    band, bolt, worm = _band("12 mm band"), clamp_for(outside, "t_bolt"), clamp_for(outside)
    size = f" {worm.name} mm" if worm else ""
    also = f", or T-bolt {bolt.name} mm" if bolt else ""
    return MakeUp(
        f"{clamp}{size}{also}, {MEASURED}; worm drive with 12 mm band, new hose: "
        f"{_torque(band)} N m",
        sourced(band["provenance"]),
    )


def _band(name: str) -> Row:
    return keyed("clamps_flanges", "name")[name]


def _widest(sort: str) -> Row:
    return [row for row in table("clamps_flanges") if row["kind"] == sort][-1]


def _torque(band: Row) -> str:
    """Return the torque of a worm drive on a new hose: "4.5 ± 0.7"."""
    return band["torque_nm"].split(" new")[0].replace("+/-", "± ")
