"""What flows through each end of each part: said, known from the part, or passed on by a join."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType

from hoistbook.authored.records import JoinEnd, Part
from hoistbook.history.state import State, Status
from hoistbook.units import to_unit
from hoistbook.values.end import End, EndKind, Medium
from hoistbook.values.end_reading import parse_end
from hoistbook.values.quantity import Quantity

PASCAL_PER_BAR = 1e5


class Flow(StrEnum):
    """What flows; the words are those that pages print."""

    INTAKE_AIR = "intake air"
    CHARGE_AIR = "charge air"
    EXHAUST = "exhaust gas"
    BOOST_SIGNAL = "boost signal"
    OIL = "oil"
    COOLANT = "coolant"
    FUEL = "fuel"
    BRAKE_FLUID = "brake fluid"


MEDIA: Mapping[Flow, Medium] = MappingProxyType(
    {
        Flow.INTAKE_AIR: Medium.AIR,
        Flow.CHARGE_AIR: Medium.AIR,
        Flow.BOOST_SIGNAL: Medium.AIR,
        Flow.EXHAUST: Medium.EXHAUST,
        Flow.OIL: Medium.OIL,
        Flow.COOLANT: Medium.COOLANT,
        Flow.FUEL: Medium.PETROL,
        Flow.BRAKE_FLUID: Medium.BRAKE_FLUID,
    }
)
"""The medium of each flow; what fuel is, the settings say."""
SAID = {
    Medium.EXHAUST: Flow.EXHAUST,
    Medium.OIL: Flow.OIL,
    Medium.COOLANT: Flow.COOLANT,
    Medium.PETROL: Flow.FUEL,
    Medium.ETHANOL: Flow.FUEL,
    Medium.BRAKE_FLUID: Flow.BRAKE_FLUID,
}
NAMES = (
    (Flow.OIL, r"\boil\b"),
    (Flow.COOLANT, r"\b(?:water|coolant|heater)\b"),
    (Flow.FUEL, r"\b(?:fuel|petrol)\b"),
    (Flow.BOOST_SIGNAL, r"\b(?:boost|signal|vacuum|reference|actuator)\b"),
    (Flow.BRAKE_FLUID, r"\bbrake\b"),
    (Flow.EXHAUST, r"\b(?:turbine|exhaust|downpipe)\b"),
)
"""Names of ends that say what flows, whatever the part."""
CHARGED_ENDS = (
    (Flow.INTAKE_AIR, r"\b(?:inlet|intake|suction|in)\b"),
    (Flow.CHARGE_AIR, r"\b(?:outlet|delivery|out)\b"),
)
"""Names of ends of a turbocharger or supercharger."""
KINDS = {
    **dict.fromkeys(("air filter", "airbox", "intake pipe"), Flow.INTAKE_AIR),
    **dict.fromkeys(
        ("charge cooler", "relief valve", "throttle body", "intake manifold"), Flow.CHARGE_AIR
    ),
    **dict.fromkeys(
        ("exhaust manifold", "exhaust pipe", "downpipe", "silencer", "catalyst", "wastegate"),
        Flow.EXHAUST,
    ),
    **dict.fromkeys(("wastegate actuator", "boost control"), Flow.BOOST_SIGNAL),
    **dict.fromkeys(
        ("oil pump", "oil cooler", "oil filter", "oil feed", "oil drain", "sump"), Flow.OIL
    ),
    **dict.fromkeys(("radiator", "coolant pump", "thermostat", "coolant hose"), Flow.COOLANT),
    **dict.fromkeys(
        (
            "fuel pump",
            "fuel pressure regulator",
            "fuel filter",
            "fuel rail",
            "fuel hose",
            "fuel tank",
            "carburettor",
            "injectors",
        ),
        Flow.FUEL,
    ),
    **dict.fromkeys(("brake hose", "brake caliper"), Flow.BRAKE_FLUID),
}
"""What flows through parts that carry one thing only."""
PASSING = {"hose": Flow.CHARGE_AIR, "pipe": Flow.CHARGE_AIR}
"""Parts that pass on whatever they are joined to; alone they are taken for charge air."""
SYSTEMS = {
    "induction": Flow.INTAKE_AIR,
    "charge air": Flow.CHARGE_AIR,
    "exhaust": Flow.EXHAUST,
    "lubrication": Flow.OIL,
    "cooling": Flow.COOLANT,
    "fuel": Flow.FUEL,
    "brakes": Flow.BRAKE_FLUID,
}
CARRIES = {
    "charge air, before the cooler": Flow.CHARGE_AIR,
    "charge air, after the cooler": Flow.CHARGE_AIR,
    "fuel vapour": Flow.FUEL,
    "vacuum": Flow.BOOST_SIGNAL,
    "crankcase gas": Flow.INTAKE_AIR,
    **{flow.value: flow for flow in Flow},
}

TypedEnds = Mapping[JoinEnd, End]


def typed_ends(parts: Iterable[Part]) -> dict[JoinEnd, End]:
    """Return every end of some parts, typed, with what the facts of its part add."""
    return {
        JoinEnd(part=part.id, end=end.name): _with_facts(parse_end(end.text), part)
        for part in parts
        for end in part.ends.values()
    }


def _with_facts(end: End, part: Part) -> End:
    added: dict[str, object] = {}
    pressure, heat = _quantity(part, "highest pressure"), _quantity(part, "highest temperature")
    if pressure is not None and end.highest_pressure is None:
        added["highest_pressure"] = pressure / PASCAL_PER_BAR
    if heat is not None and end.highest_temperature is None:
        added["highest_temperature"] = to_unit(heat, "degC")
    material = part.facts.get("material")
    if material is not None and end.material is None and isinstance(material.value, str):
        added["material"] = material.value
    return replace(end, **added) if added else end  # type: ignore[arg-type] # fields by name


def _quantity(part: Part, fact: str) -> float | None:
    given = part.facts.get(fact)
    return given.value.value if given and isinstance(given.value, Quantity) else None


def flows_of(state: State, ends: TypedEnds) -> dict[JoinEnd, Flow]:
    """Return what flows through each end that something is known of.

    Parameters
    ----------
    state : State
        The build as at one episode.
    ends : mapping
        The ends to tell, typed.
    """
    known = {
        key: flow
        for key, end in ends.items()
        if (flow := _certain(state.parts[key.part].part, key.end, end))
    }
    _pass_on(state, ends, known)
    for key in ends:
        part = state.parts[key.part].part
        likely = PASSING.get(part.kind or "") or SYSTEMS.get(part.system or "")
        if key not in known and likely:
            known[key] = likely
    if not _charged(state):
        known = {
            key: Flow.INTAKE_AIR if flow is Flow.CHARGE_AIR else flow
            for key, flow in known.items()
        }
    return known


def _charged(state: State) -> bool:
    return any(
        each.part.kind in ("turbocharger", "supercharger") and each.status is Status.FITTED
        for each in state.parts.values()
    )


def _certain(part: Part, name: str, end: End) -> Flow | None:
    """Return what certainly flows through an end, or None where a neighbour must tell."""
    if end.medium in SAID:
        return SAID[end.medium]
    if end.kind in (EndKind.TURBINE,):
        return Flow.EXHAUST
    words = name.casefold()
    named = next((flow for flow, pattern in NAMES if re.search(pattern, words)), None)
    if named:
        return named
    if part.kind in ("turbocharger", "supercharger"):
        return next((flow for flow, pattern in CHARGED_ENDS if re.search(pattern, words)), None)
    carries = part.facts.get("carries")
    if carries is not None and isinstance(carries.value, str):
        return CARRIES.get(carries.value)
    return KINDS.get(part.kind or "")


def _pass_on(state: State, ends: TypedEnds, known: dict[JoinEnd, Flow]) -> None:
    """Pass flows on through joins, and through parts of which one flow is known."""
    beside: dict[JoinEnd, list[JoinEnd]] = {key: [] for key in ends}
    for dated in state.joins:
        a, b = dated.value.a, dated.value.b
        beside.setdefault(a, []).append(b)
        beside.setdefault(b, []).append(a)
    of_part: dict[str, list[JoinEnd]] = {}
    for key in ends:
        of_part.setdefault(key.part, []).append(key)
    waiting = list(known)
    while waiting:
        key = waiting.pop()
        flow = known[key]
        through = of_part.get(key.part, []) if _passes(state, key.part) else []
        for other in (*beside.get(key, ()), *through):
            if other not in known:
                known[other] = flow
                waiting.append(other)


def _passes(state: State, part: str) -> bool:
    """Tell whether what flows into a part flows out of all its ends."""
    kind = state.parts[part].part.kind
    return kind is None or kind in PASSING
