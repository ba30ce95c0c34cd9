"""What the bench wants beside the joins: torque of each bolt, wire and fuse of each load."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hoistbook.authored.records import Part
from hoistbook.fit.fasteners import Tightening, fastener_in, lubrication_of, tightening
from hoistbook.fit.wiring import OTHERS, PARTICULAR, WireChoice, wire_for
from hoistbook.history.state import State, Status
from hoistbook.values.quantity import Quantity

LENGTH = 4.0
"""Of a wire from the battery to its load, one way, where nobody says [m]; assumed."""
LOADS = ("fuel pump", "coolant pump", "fan", "boost control")
CAREFUL = ("fuel pump", "boost control")
"""Loads that mind a low voltage."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bolt:
    """A fastener whose thread and class are known."""

    part: str
    tightening: Tightening
    said: float | None
    """Torque that its owner or maker states [N m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """An electrical load with the wire and fuse that it wants."""

    part: str
    current: float
    """[A]"""
    length: float
    """One way [m]."""
    limit: float
    """Largest share of the supply that may be lost."""
    wire: WireChoice | None


def bolts_of(state: State) -> tuple[Bolt, ...]:
    """Return the bolts and studs at hand or on the car of which a torque can be said."""
    return tuple(
        bolt
        for each in state.parts.values()
        if each.status in (Status.FITTED, Status.ON_HAND) and each.part.kind == "bolts"
        for bolt in _bolt(each.part)
    )


def _bolt(part: Part) -> Iterator[Bolt]:
    facts = {name: str(given.value) for name, given in part.facts.items()}
    words = ", ".join((facts.get("thread", ""), facts.get("property class", ""), part.name))
    found = fastener_in(words)
    if found is None:
        return
    thread, property_class = found
    state = lubrication_of(f"{part.name} {part.note or ''}")
    made = tightening(thread, property_class, state) if property_class else None
    if made is not None:
        yield Bolt(part=part.id, tightening=made, said=_number(part, "torque"))


def loads_of(state: State) -> tuple[Load, ...]:
    """Return the loads at hand or on the car whose current is known."""
    found = []
    for each in state.parts.values():
        current = _number(each.part, "current")
        if each.status is Status.GONE or each.part.kind not in LOADS or current is None:
            continue
        limit = PARTICULAR if each.part.kind in CAREFUL else OTHERS
        wire = wire_for(current, LENGTH, limit=limit)
        load = Load(part=each.part.id, current=current, length=LENGTH, limit=limit, wire=wire)
        found.append(load)
    return tuple(found)


def _number(part: Part, fact: str) -> float | None:
    given = part.facts.get(fact)
    return given.value.value if given and isinstance(given.value, Quantity) else None
