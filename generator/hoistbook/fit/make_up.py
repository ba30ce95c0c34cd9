"""How a join is tightened: torque or turns of a thread, bolts of a flange, and which clamp."""

from __future__ import annotations

from collections.abc import Collection

from hoistbook.fit.clamps import clamp_make_up
from hoistbook.fit.fasteners import bolting_in, held_to
from hoistbook.fit.joint_torques import thread_make_up
from hoistbook.fit.tables import sourced
from hoistbook.fit.verdict import CLOSING, NOTHING_SAID, Fit, MakeUp, Service
from hoistbook.values.end import HOSES, THREADED, End, EndKind

STEPS = "crosswise and in steps"
OTHERS = {
    EndKind.COMPRESSION: (
        "the maker's figure in turns past finger tight: a torque does not say how far the olive "
        "has bitten"
    ),
    EndKind.VBAND: (
        "the maker's figure, on the clamp or in its sheet; tightened again after the first heat "
        "(common practice)"
    ),
}
FLANGES = {EndKind.TURBINE, EndKind.FLANGE}


def make_up(
    one: End,
    other: End,
    found: Fit,
    service: Service = NOTHING_SAID,
    bolts: str = "",
    kinds: Collection[str] = (),
) -> MakeUp:
    """Return how two ends are tightened; nothing for ends that must not be joined.

    Parameters
    ----------
    one, other : End
        The ends, in any order.
    found : Fit
        The verdict on them.
    service : Service
        What flows and at what pressure, where known.
    bolts : str
        What is said of the bolts that hold the join.
    kinds : collection of str
        The kinds of the two parts.
    """
    if found.verdict not in CLOSING:
        return MakeUp()
    if one.kind in THREADED:
        return thread_make_up(one, other, found, bolts, kinds)
    hose, pipe = (one, other) if one.kind in HOSES else (other, one)
    if hose.kind in HOSES:
        return clamp_make_up(pipe, hose, service)
    if one.kind in FLANGES:
        return _bolted(bolts)
    kind = next(kind for kind in OTHERS if kind in (one.kind, other.kind))
    return MakeUp(OTHERS[kind])


def _bolted(words: str) -> MakeUp:
    bolting = bolting_in(words)
    if bolting is None:
        return MakeUp(f"its bolts {STEPS}, to the maker's torque")
    made = bolting.solid
    if made is None:
        return MakeUp(
            f"its {bolting.thread} bolts {STEPS}, to the maker's torque; the table has one by "
            "property class (8.8, 10.9) only, and none is said"
        )
    return MakeUp(f"its bolts {held_to(made)}; {STEPS}", sourced(made.source))
