"""An end of a part, as a thing with a kind, a size and a seal, and how the trade writes it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class EndKind(StrEnum):
    """How an end connects; the words stand in its full form."""

    NPT = "NPT"
    """Taper, 60 degrees, 1 in 16; ASME B1.20.1."""
    NPTF = "NPTF"
    """Dryseal taper; ASME B1.20.3."""
    BSPT = "BSPT"
    """Taper, 55 degrees: R outside, Rc inside; ISO 7-1."""
    RP = "Rp"
    """Parallel inside thread for an R outside thread; ISO 7-1."""
    G = "G"
    """Parallel, 55 degrees, seals elsewhere; ISO 228-1."""
    METRIC = "metric"
    UN = "UN"
    ISO6149 = "metric O-ring port"
    JIC37 = "37 degree flare"
    """Industrial; SAE J514, ISO 8434-2."""
    AERO37 = "37 degree aerospace flare"
    SAE45 = "45 degree flare"
    """SAE J512."""
    ORB = "O-ring boss"
    """SAE J1926, ISO 11926."""
    BUBBLE = "bubble flare"
    INVERTED = "inverted flare"
    BARB = "barb"
    SPIGOT = "spigot"
    """A round pipe end that a hose goes over."""
    HOSE = "hose"
    SILICONE = "silicone hose"
    TUBE = "tube"
    """A hard line that goes into a compression fitting."""
    COMPRESSION = "compression fitting"
    VBAND = "V-band flange"
    TURBINE = "turbine flange"
    FLANGE = "bolted flange"


class Gender(StrEnum):
    """Which half of a pair an end is; None where the two halves are alike."""

    MALE = "male"
    FEMALE = "female"


class Seat(StrEnum):
    """Where a parallel thread seals."""

    FACE_WASHER = "face washer"
    FLAT_PORT = "flat port"
    CONE = "60 degree cone"
    """On the male the cone it carries, on the female the cone of a swivel nut or port."""
    NONE = "no seal"
    """A bolt, a stud, a nut: it holds and seals nothing."""


class Medium(StrEnum):
    """What flows through an end."""

    AIR = "air"
    PETROL = "petrol"
    ETHANOL = "ethanol"
    OIL = "oil"
    COOLANT = "coolant"
    BRAKE_FLUID = "brake fluid"
    EXHAUST = "exhaust gas"


THREADED = frozenset(
    {
        EndKind.NPT,
        EndKind.NPTF,
        EndKind.BSPT,
        EndKind.RP,
        EndKind.G,
        EndKind.METRIC,
        EndKind.UN,
        EndKind.ISO6149,
        EndKind.JIC37,
        EndKind.AERO37,
        EndKind.SAE45,
        EndKind.ORB,
        EndKind.BUBBLE,
        EndKind.INVERTED,
    }
)
PIPE_THREADS = frozenset({EndKind.NPT, EndKind.NPTF, EndKind.BSPT, EndKind.RP, EndKind.G})
DASH_SIZED = frozenset({EndKind.JIC37, EndKind.AERO37, EndKind.SAE45, EndKind.ORB})
HOSES = frozenset({EndKind.HOSE, EndKind.SILICONE})
ROUND = frozenset({EndKind.BARB, EndKind.SPIGOT, EndKind.TUBE, EndKind.COMPRESSION, *HOSES})
SEATED = frozenset({EndKind.METRIC, EndKind.UN, EndKind.G})
"""Threads that seal on a seat which their size does not tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end, typed; what nobody said is None.

    Examples
    --------
    >>> End(kind=EndKind.NPT, size="1/8", gender=Gender.MALE).full
    '1/8 NPT, male'
    """

    kind: EndKind | None = None
    size: str = ""
    """`1/8`, `M10x1`, `3/8-24`, `-6`, `T3`, `2 bolts`; empty for ends sized by a diameter."""
    diameter: float | None = None
    """Outside of a spigot, barb, tube, V-band pipe; inside of a hose or fitting; spacing of
    the holes of a bolted flange [mm]."""
    spoken: str = ""
    """The diameter as its owner says it, "2.5 in"; empty where that is the millimetres."""
    gender: Gender | None = None
    seat: Seat | None = None
    bead: bool | None = None
    spec: str | None = None
    """Class of a hose: 30R9, 20R3, J1401, PTFE."""
    medium: Medium | None = None
    material: str | None = None
    pressure: float | None = None
    """Gauge pressure that it sees, as said with the end [bar]."""
    temperature: float | None = None
    """Temperature that it sees, as said with the end [degC]."""
    highest_pressure: float | None = None
    """Gauge pressure that its maker or seller allows [bar]."""
    highest_temperature: float | None = None
    """Temperature that its maker or seller allows [degC]."""
    submerged: bool = False
    profile: str | None = None
    """Maker's number or drawing of a V-band flange; name of the gasket of a bolted one."""
    divided: bool | None = None
    unclear: str = ""
    """What the words leave open, so that nothing can be said of the end; empty if nothing."""
    measure: str = ""
    """What to measure, and with which gauge, where something is unclear."""

    @property
    def full(self) -> str:
        """The end in the trade's full form; reading it again gives the same end."""
        return full_form(self)


PREFIXES = {
    (EndKind.BSPT, Gender.MALE): "R",
    (EndKind.BSPT, Gender.FEMALE): "Rc",
    (EndKind.RP, Gender.FEMALE): "Rp",
}
"""Designations of ISO 7-1."""

SHORT = {EndKind.JIC37: "JIC ", EndKind.SAE45: "SAE ", EndKind.ORB: "ORB "}


def full_form(end: End) -> str:
    """Return an end as the trade writes it in full; of an unclear one, what is known."""
    if end.kind is None:
        return "unknown end"
    pieces = [_designation(end)]
    if end.gender and end.kind in THREADED:
        pieces.append(end.gender)
    if end.seat:
        pieces.append(end.seat)
    pieces += _details(end)
    if end.unclear:
        pieces.append("unclear")
    return ", ".join(pieces)


def _designation(end: End) -> str:
    kind, size = end.kind, end.size
    assert kind is not None
    if (kind, end.gender) in PREFIXES:
        prefix = PREFIXES[kind, end.gender]  # type: ignore[index] # the pair is a key
        return f"{prefix} {size} taper" if kind is EndKind.BSPT else f"{prefix} {size} parallel"
    if kind is EndKind.G:
        return f"G {size} parallel"
    if kind in (EndKind.METRIC, EndKind.UN):
        return size or kind
    if kind is EndKind.TURBINE:
        return f"{size} turbine flange"
    if kind is EndKind.FLANGE:
        spacing = f", {number(end.diameter)} mm between holes" if end.diameter else ""
        return f"bolted flange, {size}{spacing}"
    if kind in DASH_SIZED:
        return f"{size} {SHORT.get(kind, '')}{kind}"
    if kind in ROUND or kind is EndKind.VBAND:
        said = f"{end.spoken} ({number(end.diameter)} mm)" if end.spoken else ""
        return f"{said or f'{number(end.diameter)} mm'} {kind}" if end.diameter else str(kind)
    return f"{size} {kind}".strip()


def _details(end: End) -> list[str]:
    found = []
    if end.bead is not None:
        found.append("beaded" if end.bead else "no bead")
    if end.divided is not None:
        found.append("divided" if end.divided else "undivided")
    if end.profile:
        word = "pattern" if end.kind is EndKind.FLANGE else "profile"
        found.append(f"{word} {end.profile}")
    if end.spec:
        found.append(end.spec)
    if end.submerged:
        found.append("in the tank")
    if end.material:
        found.append(end.material)
    if end.medium:
        found.append(f"for {end.medium}")
    found += [
        f"{words} {number(value)} {unit}"
        for words, value, unit in (
            ("at", end.pressure, "bar"),
            ("at", end.temperature, "degC"),
            ("up to", end.highest_pressure, "bar"),
            ("up to", end.highest_temperature, "degC"),
        )
        if value is not None
    ]
    return found


def number(value: float | None) -> str:
    """Return a size without needless zeros: 63.5, 8, 60.325."""
    return "" if value is None else f"{value:.3f}".rstrip("0").rstrip(".")
