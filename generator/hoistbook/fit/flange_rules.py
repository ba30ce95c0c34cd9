"""Rules R6 to R9: V-bands, turbine flanges, tubes in compression fittings, bolted flanges."""

from __future__ import annotations

from hoistbook.fit.verdict import Fit, Verdict
from hoistbook.values.end import End, EndKind, number

ONE_SIZE = 0.6
"""Two labels of one pipe differ by no more than this [mm]: 76 and 3 in, 45 and 1.75 in."""
SAME_TUBE = 0.05
"""A compression fitting takes its own tube [mm]; R8, common practice, no source."""
LIKE_TUBE = 1.0
"""Below this the wrong tube goes in [mm]."""
SAME_SPACING = 0.5
"""Two spacings of bolt holes are one within this [mm]; clearance of the holes, no source."""
TRACE = "trace before drilling: family names are trade use, not a standard"
GASKET = "a gasket for that flange, and new nuts"
TRACE_GASKET = (
    "trace the gasket of one flange on the other, and measure from hole to hole with a caliper; "
    "where both take one gasket, give both ends its name, as pattern G12"
)
ROUNDING = 1e-9


def vband_fit(one: End, other: End) -> Fit:
    """Return the verdict on two V-band flanges (R6)."""
    if abs((one.diameter or 0) - (other.diameter or 0)) > ONE_SIZE:
        return Fit(
            verdict=Verdict.NEEDS_ADAPTER,
            rule="R6",
            why="the pipe sizes differ",
            adapter="a reducer between two V-bands",
        )
    if not one.profile or not other.profile:
        return Fit(
            verdict=Verdict.UNKNOWN,
            rule="R6",
            why="pipe size says nothing of the profile of the flange",
            measure="lay the flanges on each other, compare the drawings, and say profile A12",
        )
    if one.profile == other.profile:
        note = "buy both flanges and the clamp as one set"
        return Fit(verdict=Verdict.MATES, rule="R6", why="one size and one profile", notes=(note,))
    return Fit(
        verdict=Verdict.LOOKS_RIGHT,
        rule="R6",
        why=f"the profiles {' and '.join(sorted((one.profile, other.profile)))} differ",
        tell_apart="lay the flanges on each other",
        goes_wrong="the clamp closes and the joint rocks: exhaust leak, broken clamp",
    )


def turbine_fit(one: End, other: End) -> Fit:
    """Return the verdict on two turbine flanges by their family (R7)."""
    if one.size != other.size:
        return Fit(
            verdict=Verdict.NEEDS_ADAPTER,
            rule="R7",
            why=f"{' and '.join(sorted((one.size, other.size)))} have different hole patterns",
            adapter=f"a flange adapter from {one.size} to {other.size}",
            notes=(TRACE,),
        )
    split = {one.divided, other.divided} == {True, False}
    notes = ("one side is divided: it works and loses the separation of the pulses",)
    return Fit(
        verdict=Verdict.WITH_SEALANT,
        rule="R7",
        why=f"both are of the family {one.size}",
        sealant=GASKET,
        notes=(*(notes if split else ()), TRACE),
    )


def tube_fit(tube: End, fitting: End) -> Fit:
    """Return the verdict on a tube in a compression fitting (R8)."""
    gap = abs((tube.diameter or 0) - (fitting.diameter or 0))
    sizes = f"{number(tube.diameter)} mm tube, {number(fitting.diameter)} mm fitting"
    labels = {round(tube.diameter or 0, 2), round(fitting.diameter or 0, 2)}
    notes: tuple[str, ...] = ()
    if labels == {8.0, 7.94}:
        notes = (
            "5/16 in and 8 mm are 0.06 mm apart; quick connectors of both share one tube end",
        )
    if gap < SAME_TUBE - ROUNDING:
        return Fit(verdict=Verdict.MATES, rule="R8", why=sizes)
    if gap < LIKE_TUBE - ROUNDING:
        return Fit(
            verdict=Verdict.LOOKS_RIGHT,
            rule="R8",
            why=f"{sizes}: {gap:.2f} mm apart",
            tell_apart="a caliper over the tube",
            goes_wrong="the olive does not bite, and the tube comes out",
            notes=notes,
        )
    return Fit(
        verdict=Verdict.NEEDS_ADAPTER, rule="R8", why=sizes, adapter="a reducing union for tube"
    )


def bolted_fit(one: End, other: End) -> Fit:
    """Return the verdict on two bolted flanges by their holes (R9)."""
    if EndKind.TURBINE in (one.kind, other.kind):
        return _no_pattern("one is named by its family and the other by its holes")
    if one.size != other.size:
        return _holes_apart(f"{one.size} and {other.size} do not line up")
    if one.profile and one.profile == other.profile:
        return _gasketed(f"{one.size}, pattern {one.profile}, on both")
    if one.diameter is None or other.diameter is None:
        return _no_pattern("the pattern of the holes is not said of both")
    if abs(one.diameter - other.diameter) <= SAME_SPACING + ROUNDING:
        return _gasketed(f"{one.size}, {number(one.diameter)} mm apart, on both")
    return _holes_apart("the bolt holes do not line up")


def _no_pattern(why: str) -> Fit:
    return Fit(verdict=Verdict.UNKNOWN, rule="R9", why=why, measure=TRACE_GASKET)


def _holes_apart(why: str) -> Fit:
    return Fit(verdict=Verdict.NEEDS_ADAPTER, rule="R9", why=why, adapter="a flange adapter")


def _gasketed(why: str) -> Fit:
    return Fit(
        verdict=Verdict.WITH_SEALANT,
        rule="R9",
        why=why,
        sealant=GASKET,
        notes=("trace the gasket: the opening may still differ",),
    )
