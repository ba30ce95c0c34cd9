"""Rules R1 to R4: two threads, and the seals of two ends whose threads agree."""

from __future__ import annotations

import re

from hoistbook.fit.tables import table
from hoistbook.fit.threads import Thread, thread_of
from hoistbook.fit.verdict import Fit, Verdict
from hoistbook.values.end import SEATED, End, EndKind, Gender, Seat

BRITISH = {EndKind.BSPT, EndKind.RP, EndKind.G}
NATIONAL = {EndKind.NPT, EndKind.NPTF}
WINDOWS = ((0.70, 0.17), (0.31, 0.55))
"""Differences of diameter and pitch within which a wrong thread starts all the same [mm]; a
judgement over the pairs that people confuse, no source."""
PASTE = "thread paste made for the fluid, not on the first thread"
WASHER = "a bonded or crush washer, new"

SEALS: dict[EndKind, str] = {
    EndKind.RP: "its thread",
    EndKind.JIC37: "a 37 degree cone",
    EndKind.AERO37: "a 37 degree cone",
    EndKind.SAE45: "a 45 degree cone",
    EndKind.ORB: "an O-ring in a chamfer",
    EndKind.ISO6149: "an O-ring in a chamfer",
    EndKind.BUBBLE: "a bubble flare",
    EndKind.INVERTED: "an inverted flare",
}
SEATS: dict[Seat, str] = {
    Seat.FACE_WASHER: "a washer under its face",
    Seat.FLAT_PORT: "a washer on its flat face",
    Seat.CONE: "a 60 degree cone",
    Seat.NONE: "nothing",
}
APART = {
    frozenset({"a 37 degree cone", "a 45 degree cone"}): (
        "the cones touch on a line only",
        "a seat gauge",
        "it leaks, and the flare cracks when it is tightened until it does not",
    ),
    frozenset({"a 37 degree cone", "an O-ring in a chamfer"}): (
        "the nose has no O-ring and the port has no cone",
        "look at the nose: an O-ring or a cone",
        "it runs home and seals nowhere",
    ),
    frozenset({"a washer under its face", "an O-ring in a chamfer"}): (
        "the chamfer of the port removes the face that the washer needs",
        "look at the port: a chamfer and a ridge, or a flat face",
        "the washer is cut by the chamfer and leaks",
    ),
    frozenset({"a bubble flare", "an inverted flare"}): (
        "the nut is the same and the flared tubes are not",
        "look at the end of the tube and at the bottom of the port",
        "a brake that leaks under pressure",
    ),
}
"""What to say of two seals on one thread: why, how to tell, what goes wrong."""


def threads_fit(one: End, other: End) -> Fit:
    """Return the verdict on two threaded ends, whichever stands first."""
    if one.gender == other.gender:
        joined = "female" if one.gender is Gender.MALE else "male"
        return Fit(
            verdict=Verdict.NEEDS_ADAPTER,
            rule="R1",
            why=f"both are {one.gender}",
            adapter=f"a union that is {joined} at both ends",
        )
    male, female = (one, other) if one.gender is Gender.MALE else (other, one)
    outside, inside = thread_of(male), thread_of(female)
    if outside is None or inside is None:
        missing = male if outside is None else female
        return Fit(
            verdict=Verdict.UNKNOWN,
            rule="R0",
            why=f"the thread of {missing.full} stands in no table here",
            measure="a thread gauge for the pitch and a caliper for the diameter",
        )
    if _one_nominal_size(male, female):
        return _alike(outside, inside, rule="R2")
    if not outside.same_as(inside):
        return _different(outside, inside, male, female)
    return _seals_fit(male, female, outside.taper, inside.taper)


def _one_nominal_size(male: End, female: End) -> bool:
    families = {male.kind, female.kind}
    return male.size == female.size and bool(families & BRITISH) and bool(families & NATIONAL)


def _different(male: Thread, female: Thread, one: End, other: End) -> Fit:
    major, pitch = abs(male.major - female.major), abs(male.pitch - female.pitch)
    if any(major <= widest and pitch <= steepest for widest, steepest in WINDOWS):
        return _alike(male, female, rule="R3")
    return Fit(
        verdict=Verdict.NEEDS_ADAPTER,
        rule="R3",
        why=f"{male.said} does not go into {female.said}",
        adapter=f"an adapter from {_opposite(one)} to {_opposite(other)}",
    )


def _opposite(end: End) -> str:
    gender = Gender.FEMALE if end.gender is Gender.MALE else Gender.MALE
    return f"{end.full.split(', ')[0]}, {gender}"


def _alike(male: Thread, female: Thread, *, rule: str) -> Fit:
    """Return the verdict on two threads that start in each other."""
    row = LOOK_ALIKES.get(frozenset({family_name(male.name), family_name(female.name)}))
    ten = abs(male.pitch - female.pitch) * 10
    tell = row["tell_apart_by"] if row else f"a thread gauge over ten threads: {ten:.2f} mm apart"
    feels = row["how_it_feels"] if row else "it starts and then binds"
    return Fit(
        verdict=Verdict.LOOKS_RIGHT,
        rule=rule,
        why=f"{male.said} in {female.said}: {feels}",
        tell_apart=tell,
        goes_wrong=row["what_goes_wrong"] if row else "a stripped or crossed thread, and a leak",
    )


def family_name(name: str) -> str:
    """Return a thread's name with R, Rc, Rp and G as one family, and NPT and NPTF as one.

    Examples
    --------
    >>> family_name("Rc-1/8"), family_name("NPTF-1/8"), family_name("UN-3/8-24")
    ('BSP-1/8', 'NPT-1/8', 'UN-3/8-24')
    """
    return re.sub(r"^(?:R|Rc|Rp|G)-", "BSP-", name).replace("NPTF", "NPT")


LOOK_ALIKES = {
    frozenset(map(family_name, row["pair"].split(" / "))): row
    for row in reversed(table("lookalikes"))
    if " / " in row["pair"]
}
"""Rows of the look-alikes by the two threads; of two rows on one pair the first stands."""


def _seals_fit(male: End, female: End, taper: bool, tapped_taper: bool) -> Fit:
    """Return the verdict on two ends with one thread."""
    if taper and tapped_taper:
        dryseal = EndKind.NPTF in (male.kind, female.kind)
        why = "one taper thread in another" + (
            "; a dryseal thread wants sealant all the same" if dryseal else ""
        )
        return _sealed(f"{why}; the paste fills the spiral path", PASTE)
    if taper and female.kind is EndKind.RP:
        return _sealed("R in Rp is a jointing thread of ISO 7-1", PASTE)
    if taper:
        return _taper_in_parallel(female)
    if tapped_taper:
        return Fit(
            verdict=Verdict.LOOKS_RIGHT,
            rule="R4",
            why="a parallel thread jams on the first threads of a taper; its face never lands",
            tell_apart="a caliper over the first and the last thread: a taper loses 1 mm in 16",
            goes_wrong="neither face nor wedge seals: it leaks",
        )
    seats = seal_of(male), seal_of(female)
    if seats[0] is None or seats[1] is None:
        return _seat_missing(male if seats[0] is None else female)
    return _on_seats(male, female, seats[0], seats[1])


def _sealed(why: str, sealant: str, *notes: str) -> Fit:
    return Fit(verdict=Verdict.WITH_SEALANT, rule="R4", why=why, sealant=sealant, notes=notes)


def _taper_in_parallel(female: End) -> Fit:
    if female.seat is None:
        return _seat_missing(female)
    if female.seat is Seat.FLAT_PORT:
        note = "for low pressure only: a G port is not made for a taper"
        return _sealed("R in a fixed G port seals on the thread", PASTE, note)
    return Fit(
        verdict=Verdict.LOOKS_RIGHT,
        rule="R4",
        why="a taper male cannot reach the cone of a swivel female",
        tell_apart="look into the female: a cone and a nut that turns",
        goes_wrong="it tightens on the thread and leaks past the cone",
    )


def _seat_missing(end: End) -> Fit:
    return Fit(
        verdict=Verdict.UNKNOWN,
        rule="R0",
        why=f"how {end.full} seals is not said",
        measure="no gauge: look; say face washer, flat port, 60 degree cone, O-ring or no seal",
    )


def seal_of(end: End) -> str | None:
    """Return by what a threaded end seals, in words; None where that is not said."""
    if end.kind in SEATED:
        return SEATS[end.seat] if end.seat else None
    return SEALS.get(end.kind) if end.kind else None


def _on_seats(male: End, female: End, one: str, other: str) -> Fit:
    if male.seat is Seat.FACE_WASHER and female.seat is Seat.FLAT_PORT:
        return _sealed("one parallel thread, sealed on the face", WASHER)
    if one == other:
        notes: tuple[str, ...] = ()
        if {male.kind, female.kind} == {EndKind.JIC37, EndKind.AERO37}:
            notes = ("good for a car, never for an aircraft: thread class and root differ",)
        why = (
            "one thread, and nothing to seal"
            if one == "nothing"
            else f"one thread, and {one} in both"
        )
        return Fit(verdict=Verdict.MATES, rule="R4", why=why, notes=notes)
    why, tell, wrong = APART.get(
        frozenset({one, other}),
        ("the two do not meet", "look at both ends: where does each seal?", "it leaks"),
    )
    return Fit(
        verdict=Verdict.LOOKS_RIGHT,
        rule="R4",
        why=f"the thread runs, but the male seals by {one} and the female by {other}: {why}",
        tell_apart=tell,
        goes_wrong=wrong,
    )
