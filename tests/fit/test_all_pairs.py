"""Every pair of ends that the tables can form has one verdict, whichever end stands first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations_with_replacement, product

from hoistbook.fit.rules import fit
from hoistbook.fit.tables import table
from hoistbook.fit.verdict import Fit, Service, Verdict
from hoistbook.values.end import SEATED, End, EndKind, Gender, Medium, Seat

FAMILIES = {
    "R": (EndKind.BSPT, Gender.MALE),
    "Rc": (EndKind.BSPT, Gender.FEMALE),
    "Rp": (EndKind.RP, Gender.FEMALE),
    "G": (EndKind.G, None),
    "NPT": (EndKind.NPT, None),
    "NPTF": (EndKind.NPTF, None),
    "UN": (EndKind.UN, None),
    "M": (EndKind.METRIC, None),
}
SERVICES = (
    *(Service(medium, 1.0, 90.0) for medium in Medium),
    *(Service(Medium.ETHANOL, 5.0, 120.0), Service(Medium.AIR, 1.0, 190.0), Service()),
)
"""What a hose is asked to carry; threads and flanges do not read it."""
FAR = 3.0
"""Beyond this a hose wants a reducer, whatever it carries [mm]."""
SERVICE = Service(Medium.PETROL, 3.0, 60.0)
SEALS = {Gender.MALE: (None, Seat.FACE_WASHER), Gender.FEMALE: (None, Seat.FLAT_PORT, Seat.CONE)}


def threaded() -> Iterator[End]:
    for row in table("threads"):
        kind, gender = FAMILIES[row["family"]]
        for each in [gender] if gender else list(Gender):
            bare = End(kind=kind, size=row["size"].removesuffix(" UNF"), gender=each)
            yield from (replace(bare, seat=s) for s in SEALS[each]) if kind in SEATED else (bare,)
            if kind is EndKind.METRIC:
                for other in (EndKind.ISO6149, EndKind.BUBBLE, EndKind.INVERTED):
                    yield replace(bare, kind=other)
    for row in table("dash_sizes"):
        for kind in (EndKind.JIC37, EndKind.AERO37, EndKind.SAE45, EndKind.ORB):
            yield from (End(kind=kind, size=row["dash"], gender=each) for each in Gender)


def pushed_on() -> Iterator[End]:
    diameters = sorted({float(row["od_mm"]) for row in table("pipes")})
    specs = sorted({row["item"] for row in table("hoses_media") if "0R" in row["item"]})
    for diameter in diameters:
        yield End(kind=EndKind.SPIGOT, diameter=diameter, bead=True)
        yield End(kind=EndKind.SILICONE, diameter=diameter)
        yield End(kind=EndKind.HOSE, diameter=diameter, spec="30R9")
        if diameter < 30:
            yield End(kind=EndKind.TUBE, diameter=diameter)
            yield End(kind=EndKind.COMPRESSION, diameter=diameter)
    yield from (End(kind=EndKind.HOSE, diameter=8.0, spec=spec) for spec in specs)
    yield from (End(kind=EndKind.SPIGOT, diameter=51.0, bead=bead) for bead in (None, False))
    yield End(kind=EndKind.BARB, diameter=8.0)


def flanged() -> Iterator[End]:
    for row in table("clamps_flanges"):
        if row["kind"] == "turbine_inlet_family":
            yield End(kind=EndKind.TURBINE, size=row["name"])
    yield from (End(kind=EndKind.VBAND, diameter=d, profile=p) for d in (63.5, 76.2) for p in "AB")
    for diameter, pattern in ((38.0, None), (44.0, "A"), (None, "A"), (None, "B"), (None, None)):
        for size in ("2 bolts", "5 bolts"):
            yield End(kind=EndKind.FLANGE, size=size, diameter=diameter, profile=pattern)
    yield End()


SORTS = ([*threaded()], [*pushed_on()], [*flanged()])
ENDS = [end for sort in SORTS for end in sort]
ONE_OF_EACH_KIND = list({end.kind: end for end in ENDS}.values())


def pairs() -> Iterator[tuple[End, End]]:
    """Yield all pairs within a sort, and each end with one end of every kind."""
    for sort in SORTS:
        yield from combinations_with_replacement(sort, 2)
    yield from product(ENDS, ONE_OF_EACH_KIND)


def test_the_tables_form_many_ends() -> None:
    assert len(ENDS) > 500
    assert {end.kind for end in ENDS} == {None, *EndKind}


def test_every_pair_has_one_verdict_and_the_same_from_both_sides() -> None:
    for one, other in pairs():
        check(one, other, SERVICE)


def test_a_hose_has_one_verdict_whatever_it_carries() -> None:
    near = [
        (one, other)
        for one, other in combinations_with_replacement(pushed_on(), 2)
        if abs((one.diameter or 0) - (other.diameter or 0)) < FAR
    ]
    for service in SERVICES:
        for one, other in near:
            check(one, other, service)


def check(one: End, other: End, service: Service) -> None:
    """Hold a verdict to what each of the five must say, from both sides."""
    found = fit.__wrapped__(one, other, service)
    assert isinstance(found, Fit)
    assert found == fit.__wrapped__(other, one, service), (one, other)
    assert found.why, (one, other)
    assert bool(found.measure) == (found.verdict is Verdict.UNKNOWN)
    assert bool(found.sealant) == (found.verdict is Verdict.WITH_SEALANT)
    assert bool(found.adapter) == (found.verdict is Verdict.NEEDS_ADAPTER)
    looks = found.verdict is Verdict.LOOKS_RIGHT
    assert bool(found.tell_apart and found.goes_wrong) == looks, (one, other)
