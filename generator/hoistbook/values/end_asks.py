"""What an unclear end leaves open, and what to measure with which gauge."""

from __future__ import annotations

from enum import Enum


class Ask(Enum):
    """One thing that words about an end may leave open: what is missing, what to measure."""

    KIND = (
        "the words name no thread, flare, hose or flange",
        "a thread gauge for the pitch and a caliper for the diameter; or say hose, spigot, "
        "flange and its size",
    )
    THREAD = (
        "a diameter alone names no thread",
        "a thread gauge for the pitch, and a caliper over the first and the last thread: alike is "
        "parallel, smaller at the front is taper",
    )
    PITCH = (
        "the pitch is not said",
        "a metric thread gauge for the pitch, and write it as M10x1",
    )
    PIPE_FAMILY = (
        "the pipe thread may be NPT, BSPT or G",
        "a thread gauge over ten threads (1/8: 27 or 28 to the inch; 1/2 and 3/4 are alike: a 55 "
        "and a 60 degree profile gauge), and a caliper over the first and the last thread",
    )
    TAPER = (
        "BSP may be taper (R) or parallel (G)",
        "a caliper over the first and the last thread: alike is G, smaller at the front is R",
    )
    TURNS = (
        "the threads per inch are not those of that size and family",
        "a thread gauge over ten threads",
    )
    UNIFIED = (
        "the threads per inch are not said",
        "an inch thread gauge, and write it as 3/8-24",
    )
    GENDER = (
        "male or female is not said",
        "no gauge: thread on the outside is male, on the inside female",
    )
    BOTH = (
        "this says two ends in one",
        "no gauge: give each end a line of its own",
    )
    FLARE = (
        "a dash size may be a 37 degree flare, a 45 degree flare or an O-ring boss",
        "a seat gauge for the angle of the cone; an O-ring and no cone is a boss",
    )
    SEAT_ANGLE = (
        "the angle of the flare is not said",
        "a seat gauge: 37 or 45 degrees, inverted or bubble",
    )
    DASH = (
        "the dash size or thread of the flare is not said",
        "a caliper over the thread and an inch thread gauge, and write it as -6 or 9/16-18",
    )
    HOSE_BORE = (
        "the dash size of a hose is not its bore",
        "a caliper inside the hose; or write the end of its fitting, as -6 JIC female",
    )
    INSIDE = (
        "of a hose the outside is said and the inside is not",
        "a caliper inside the hose",
    )
    OUTSIDE = (
        "of a pipe the inside is said and the outside, which a hose goes over, is not",
        "a caliper over the pipe",
    )
    QUICK = (
        "quick connectors and push-in fittings differ from maker to maker",
        "a caliper over the tube, and from its end to its bead; compare with the maker's sheet",
    )
    METRIC_TAPER = (
        "a metric taper thread stands in no table here, and a parallel one is no match for it",
        "a caliper over the first and the last thread: alike is parallel, smaller at the front is "
        "taper",
    )
    LINE = (
        "a line may be a hose or a hard line",
        "no gauge: say hose or tube, and of a hose the print on it, as 30R9",
    )
    ROUGH = (
        "a rough size decides nothing: a millimetre is the difference between a seal and a leak",
        "a caliper, and write what it reads",
    )
    SPACING = (
        "the number may be the pipe or the spacing of the holes",
        "a caliper from hole to hole; write 63 mm centres",
    )
    DIAMETER = (
        "the diameter is not said",
        "a caliper: outside of a pipe, inside of a hose",
    )
    UNIT = (
        "millimetres or inches is not said",
        "a caliper, and write mm or in after the number",
    )
    BOLTS = (
        "the bolts of the flange are not said",
        "no gauge: count the holes, and measure their spacing with a caliper",
    )
    FAMILY = (
        "the family of the turbine flange is not said",
        "trace the gasket and measure the spacing of the holes with a caliper",
    )
    LEFT_OVER = (
        "a number in it has no meaning here",
        "no gauge: write the size once, with its unit",
    )

    @property
    def missing(self) -> str:
        """What is left open, one sentence without its full stop."""
        return self.value[0]

    @property
    def measure(self) -> str:
        """What to measure and with which gauge."""
        return self.value[1]
