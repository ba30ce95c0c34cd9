"""Ends written as `kind:size:gender;key=value`, the notation of the table of pairs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from hoistbook.fit.joins import NO_SERVICE, JoinKey, JoinVerdict, judged
from hoistbook.fit.piping import piping_of
from hoistbook.fit.rules import fit
from hoistbook.fit.verdict import Fit, Service, Verdict
from hoistbook.history.state import State
from hoistbook.values.end import DASH_SIZED, End, EndKind, Gender, Medium, Seat
from hoistbook.values.end_asks import Ask

KINDS = {
    "npt": EndKind.NPT,
    "nptf": EndKind.NPTF,
    "bspt": EndKind.BSPT,
    "rp": EndKind.RP,
    "g": EndKind.G,
    "metric": EndKind.METRIC,
    "un": EndKind.UN,
    "iso6149": EndKind.ISO6149,
    "jic37": EndKind.JIC37,
    "aero37": EndKind.AERO37,
    "sae45": EndKind.SAE45,
    "orb": EndKind.ORB,
    "isobubble": EndKind.BUBBLE,
    "invflare": EndKind.INVERTED,
    "barb": EndKind.BARB,
    "spigot": EndKind.SPIGOT,
    "hose": EndKind.HOSE,
    "silhose": EndKind.SILICONE,
    "tube": EndKind.TUBE,
    "compfit": EndKind.COMPRESSION,
    "vband": EndKind.VBAND,
    "turbflange": EndKind.TURBINE,
    "flange": EndKind.FLANGE,
}
SEATS = {
    "face_washer": Seat.FACE_WASHER,
    "flat_port": Seat.FLAT_PORT,
    "cone60": Seat.CONE,
    "cone60_swivel": Seat.CONE,
    "none": Seat.NONE,
}
MEDIA = {each.value.split()[0]: each for each in Medium} | {"brake_fluid": Medium.BRAKE_FLUID}
YES = {"yes": True, "no": False}
PITCHLESS = 4
"""A metric size without its pitch, as M10, has no more letters."""


def end(notation: str) -> End:
    """Return the end that a notation stands for."""
    kind, size, gender, *_ = (*notation.partition(";")[0].split(":"), "")
    found = End(
        kind=KINDS[kind],
        gender={"M": Gender.MALE, "F": Gender.FEMALE}.get(gender),
        **({"diameter": float(size[:-2])} if size.endswith("mm") else {"size": size}),
    )
    if found.kind not in DASH_SIZED and found.kind is EndKind.METRIC and "x" not in size:
        found = replace(found, unclear=Ask.PITCH.missing, measure=Ask.PITCH.measure)
    for pair in notation.split(";")[1:]:
        key, _, value = pair.partition("=")
        found = replace(found, **FIELDS[key](value))
    return found


FIELDS = {
    "seat": lambda value: {"seat": SEATS[value]},
    "bead": lambda value: {"bead": YES[value]},
    "div": lambda value: {"divided": YES[value]},
    "spec": lambda value: {"spec": value},
    "medium": lambda value: {"medium": MEDIA[value]},
    "p_bar": lambda value: {"pressure": float(value)},
    "t_c": lambda value: {"temperature": float(value)},
    "submerged": lambda value: {"submerged": YES[value]},
    "profile": lambda value: {"profile": None if value == "unknown" else value},
    "mat": lambda value: {"material": value},
    "max_bar": lambda value: {"highest_pressure": float(value)},
    "max_c": lambda value: {"highest_temperature": float(value)},
}


def service(medium: str | None = None, pressure: float | None = None) -> Service:
    """Return a service by the short name of its medium."""
    return Service(MEDIA[medium] if medium else None, pressure)


VERDICTS = {
    "mates": Verdict.MATES,
    "mates_with_sealant": Verdict.WITH_SEALANT,
    "looks_alike_no": Verdict.LOOKS_RIGHT,
    "needs_adapter": Verdict.NEEDS_ADAPTER,
    "unknown": Verdict.UNKNOWN,
}
NAMES = {verdict: name for name, verdict in VERDICTS.items()}


def of(a: str, b: str, carrying: Service | None = None) -> Fit:
    """Return the verdict on two ends by their notations."""
    return fit(end(a), end(b), carrying or Service())


def decided(a: str, b: str, carrying: Service | None = None) -> tuple[str, str]:
    """Return the rule that decided and the table's name of its verdict."""
    found = of(a, b, carrying)
    return found.rule, NAMES[found.verdict]


def join_verdicts(
    state: State, service: Mapping[JoinKey, Service] = NO_SERVICE
) -> tuple[JoinVerdict, ...]:
    """Return the verdict on every join of a state."""
    return judged(piping_of(state), service)
