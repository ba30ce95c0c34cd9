"""Circuits: the parts that air, oil, coolant, fuel or a boost signal flows through, in order."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.flows import Flow
from hoistbook.fit.joins import JoinVerdict
from hoistbook.fit.piping import piping_of
from hoistbook.history.state import State, Status


class CircuitName(StrEnum):
    """The circuits, in the order in which pages show them."""

    AIR = "air"
    OIL = "oil"
    COOLANT = "coolant"
    FUEL = "fuel"
    BOOST_SIGNAL = "boost signal"
    EXHAUST = "exhaust"
    BRAKES = "brakes"


FLOWS: dict[Flow, CircuitName] = {
    Flow.INTAKE_AIR: CircuitName.AIR,
    Flow.CHARGE_AIR: CircuitName.AIR,
    Flow.OIL: CircuitName.OIL,
    Flow.COOLANT: CircuitName.COOLANT,
    Flow.FUEL: CircuitName.FUEL,
    Flow.BOOST_SIGNAL: CircuitName.BOOST_SIGNAL,
    Flow.EXHAUST: CircuitName.EXHAUST,
    Flow.BRAKE_FLUID: CircuitName.BRAKES,
}
FIRST = {
    CircuitName.AIR: ("air filter", "airbox", "intake pipe", "turbocharger", "supercharger"),
    CircuitName.OIL: ("oil pump", "engine", "oil filter", "oil cooler"),
    CircuitName.COOLANT: ("coolant pump", "engine", "radiator"),
    CircuitName.FUEL: ("fuel tank", "fuel pump", "fuel filter"),
    CircuitName.BOOST_SIGNAL: ("turbocharger", "intake manifold", "boost control"),
    CircuitName.EXHAUST: ("exhaust manifold", "turbocharger", "downpipe"),
    CircuitName.BRAKES: ("brake caliper",),
}
"""Where each circuit begins, the first that is there; common practice."""
UPSTREAM = re.compile(r"\b(?:outlet|out|delivery)\b", re.IGNORECASE)
DOWNSTREAM = re.compile(r"\b(?:inlet|in|suction)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Circuit:
    """One circuit as at one episode."""

    name: CircuitName
    parts: tuple[str, ...]
    """Ids of its parts in the order of the flow."""
    joins: tuple[JoinVerdict, ...]
    """Each from upstream to downstream as far as known: see `ends_in_order`."""
    open: tuple[JoinEnd, ...]
    """Ends that nothing is joined to."""


def circuits_of(state: State, verdicts: Sequence[JoinVerdict]) -> tuple[Circuit, ...]:
    """Return the circuits that have a join or an open end, in their order.

    Parameters
    ----------
    state : State
        The build as at one episode.
    verdicts : sequence
        Its joins, judged.
    """
    piping = piping_of(state)
    ends, flows = piping.ends, piping.flows
    joined = {key for each in verdicts for key in (each.join.a, each.join.b)}
    found = []
    for name in CircuitName:
        joins = [each for each in verdicts if each.flow and FLOWS[each.flow] is name]
        loose = tuple(
            key
            for key in ends
            if key not in joined
            and state.parts[key.part].status is Status.FITTED
            and (flow := flows.get(key))
            and FLOWS[flow] is name
        )
        if joins or loose:
            order = _in_order(name, joins, loose, state)
            place = {part: index for index, part in enumerate(order)}
            joins.sort(key=lambda each: sorted(place[end.part] for end in ends_in_order(each)))
            found.append(Circuit(name=name, parts=order, joins=tuple(joins), open=loose))
    return tuple(found)


def ends_in_order(verdict: JoinVerdict) -> tuple[JoinEnd, JoinEnd]:
    """Return the ends of a join from upstream to downstream, as far as their names say."""
    a, b = verdict.join.a, verdict.join.b
    backwards = DOWNSTREAM.search(a.end) or UPSTREAM.search(b.end)
    forwards = UPSTREAM.search(a.end) or DOWNSTREAM.search(b.end)
    return (b, a) if backwards and not forwards else (a, b)


def feeds(end: JoinEnd) -> bool:
    """Tell whether what flows comes in by an end, as far as its name says."""
    return bool(DOWNSTREAM.search(end.end)) and not UPSTREAM.search(end.end)


def _in_order(
    name: CircuitName, joins: Sequence[JoinVerdict], loose: Sequence[JoinEnd], state: State
) -> tuple[str, ...]:
    """Return the parts of a circuit, each after a part that it is joined to."""
    beside: dict[str, list[str]] = {}
    for each in joins:
        one, other = (end.part for end in ends_in_order(each))
        beside.setdefault(one, []).append(other)
        beside.setdefault(other, []).append(one)
    for key in loose:
        beside.setdefault(key.part, [])
    order: dict[str, None] = {}
    for first in sorted(beside, key=lambda part: _rank(name, part, state)):
        waiting = [first]
        for part in waiting:
            if part not in order:
                order[part] = None
                waiting += beside[part]
    return tuple(order)


def _rank(name: CircuitName, part: str, state: State) -> int:
    kind, kinds = state.parts[part].part.kind or "", FIRST[name]
    return kinds.index(kind) if kind in kinds else len(kinds)
