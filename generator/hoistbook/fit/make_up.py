"""How a join is tightened: turns, clamp torque, or the maker's figure; and which clamp."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.fit.clamps import clamp_for
from hoistbook.fit.fasteners import bolting_in
from hoistbook.fit.hose_rules import FUELS
from hoistbook.fit.tables import keyed, sourced
from hoistbook.fit.thread_rules import PASTE
from hoistbook.fit.verdict import CLOSING, Fit
from hoistbook.values.end import HOSES, PIPE_THREADS, THREADED, End, EndKind, Medium

BY_THE_MAKER = "the maker's figure, by thread and material"
SMALL_HOSE = 30.0
"""Below this a hose takes a small clamp with a thin wall [mm]; common practice, no source."""
THIN_WALL = 3.0
FASTENED = {EndKind.TURBINE, EndKind.FLANGE}


@dataclass(frozen=True, slots=True)
class MakeUp:
    """How a join is tightened, and where that is written."""

    how: str = ""
    """Empty where nothing is to be said."""
    source: str = ""


def make_up(
    one: End, other: End, found: Fit, medium: Medium | None = None, bolts: str = ""
) -> MakeUp:
    """Return how two ends are tightened; nothing for ends that must not be joined.

    Parameters
    ----------
    one, other : End
        The ends, in any order.
    found : Fit
        The verdict on them.
    medium : Medium
        What flows, where known.
    bolts : str
        What is said of the bolts that hold two flanges.
    """
    if found.verdict not in CLOSING:
        return MakeUp()
    if found.sealant == PASTE:
        return _turns(one if one.kind in PIPE_THREADS else other)
    if one.kind in THREADED:
        return MakeUp(BY_THE_MAKER)
    hose = next((end for end in (one, other) if end.kind in HOSES), None)
    if hose is not None:
        return _clamp(other if hose is one else one, medium)
    if one.kind in FASTENED:
        return _bolted(bolts)
    return MakeUp(BY_THE_MAKER)


def _bolted(words: str) -> MakeUp:
    bolting = bolting_in(words)
    if bolting is None:
        return MakeUp("its bolts crosswise and in steps, to the maker's torque")
    made = bolting.tightening
    if made is None:
        return MakeUp(
            f"its {bolting.thread} bolts crosswise and in steps, to the maker's torque: without "
            "a property class (8.8, 10.9) there is none here"
        )
    low, high = made.spread
    return MakeUp(
        f"its bolts {made.thread}, {made.property_class}, {made.lubrication}: {made.torque:.2g} "
        f"N m, crosswise and in steps; that gives {low:.0%} to {high:.0%} of the preload aimed "
        "at. The maker's own figure beats this one",
        sourced(made.source),
    )


def _turns(end: End) -> MakeUp:
    row = keyed("npt_makeup", "size").get(end.size)
    if row is None:
        return MakeUp("turns past finger tight, not torque")
    return MakeUp(
        f"{row['tfft_low']} to {row['tfft_high']} turns past finger tight, not torque; in "
        "aluminium the fewer, and never turned back",
        sourced(row["provenance"]),
    )


def _clamp(pipe: End, medium: Medium | None) -> MakeUp:
    if medium in FUELS:
        return MakeUp(
            "fuel-injection clamp with a full band, by the hose measured on the pipe; a worm "
            "drive cuts fuel hose",
            "common practice, no source",
        )
    outside = pipe.diameter or 0.0
    small = outside < SMALL_HOSE
    choice = clamp_for(outside, wall=THIN_WALL) if small else clamp_for(outside)
    bolt = None if small else clamp_for(outside, "t_bolt")
    band = keyed("clamps_flanges", "name")["12 mm band"]
    said = f"worm-drive clamp {choice.name} mm" if choice else "a clamp"
    said += f" or T-bolt {bolt.name} mm" if bolt else ""
    return MakeUp(
        f"{said}, by the hose measured on the pipe; worm drive with 12 mm band, new hose: "
        f"{band['torque_nm'].split(' new')[0].replace('+/-', '± ')} N m",
        sourced(band["provenance"]),
    )
