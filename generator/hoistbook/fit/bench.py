"""What the bench wants beside the joins: torque of each bolt, wire and fuse of each load."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.authored.records import Part
from hoistbook.fit.fasteners import Bolting, bolting_in, fastener_in
from hoistbook.fit.joint_torques import by_table
from hoistbook.fit.verdict import MakeUp
from hoistbook.fit.wiring import (
    LENGTH,
    OTHERS,
    PARTICULAR,
    SUPPLY,
    Known,
    Wire,
    fuse_for,
    wire_for,
    wire_of,
)
from hoistbook.history.state import PartState, State, Status
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

SCREWED_IN = ("spark plugs", "lambda sensor")
"""Kinds that a table gives the torque of, by their thread."""
LOADS = ("fuel pump", "coolant pump", "fan", "boost control")
"""Kinds that draw current; a coolant pump on a belt does not say any, nor a pump on a cam."""
BY_A_BELT = ("coolant pump",)
SOURCES = ("alternator", "relay", "fuse", "battery", "wire", "cut-off switch")
"""Kinds whose current is not that of a load."""
CAREFUL = ("fuel pump", "boost control")
"""Loads that mind a low voltage."""
PER_MM2 = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Bolt:
    """A part that is a bolt or stud with a metric thread."""

    part: str
    bolting: Bolting
    said: float | None
    """Torque that its owner or maker states [N m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewedIn:
    """A spark plug or sensor, which no join names, with its torque by table."""

    part: str
    thread: str
    made: MakeUp
    said: float | None
    """Torque that its owner or maker states [N m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """An electrical load with the wire and fuse that it wants."""

    part: str
    current: Known | None
    """[A]; None where nobody says it."""
    length: Known
    """One way [m]."""
    supply: Known
    """[V]"""
    limit: float
    """Largest share of the supply that may be lost."""
    wanted: Wire | None
    """The thinnest that serves over the whole bands; None where no wire of the table does."""
    laid: Wire | None
    """What the author says that he laid."""

    @property
    def fuse(self) -> float | None:
        """Rating of the fuse [A] that protects the wire that is laid, or else the one wanted."""
        wire = self.laid or self.wanted
        return fuse_for(self.current.high, wire.largest_fuse) if wire and self.current else None

    def lost(self, wire: Wire) -> Known:
        """Return the voltage that a wire loses [V]."""
        current = self.current or Known(0.0, 0.0, 0.0)
        return Known(
            wire.lost(current.value, self.length.value),
            wire.lost(current.low, self.length.low),
            wire.lost(current.high, self.length.high),
            assumed=self.length.assumed,
        )

    def serves(self, wire: Wire) -> bool:
        """Tell whether a wire carries the load within its loss, over the whole bands."""
        assert self.current is not None
        return (
            wire.carries >= self.current.high
            and self.lost(wire).high <= self.limit * self.supply.low
        )


def bolts_of(state: State) -> tuple[Bolt, ...]:
    """Return the bolts and studs at hand or on the car whose thread is known."""
    return tuple(
        Bolt(part=each.part.id, bolting=found, said=_value(each.part, "torque"))
        for each in state.parts.values()
        if each.status in (Status.FITTED, Status.ON_HAND)
        and each.part.kind == "bolts"
        and (found := bolting_in(bolt_words(each.part)))
    )


def screwed_in(state: State) -> tuple[ScrewedIn, ...]:
    """Return the plugs and sensors that serve or wait to, whose thread a table has."""
    parts = (each.part for each in state.parts.values() if _serves(each))
    return tuple(found for part in parts if (found := _screwed_in(part)))


def _screwed_in(part: Part) -> ScrewedIn | None:
    named = fastener_in(bolt_words(part))
    if part.kind not in SCREWED_IN or named is None:
        return None
    thread = named[0].name
    made = by_table(part.kind, thread, ())
    said = _value(part, "torque")
    return ScrewedIn(part=part.id, thread=thread, made=made, said=said) if made else None


def bolt_words(part: Part) -> str:
    """Return what a bolt says of its thread, class and lubrication, the facts first."""
    facts = (part.facts.get(name) for name in ("thread", "property class", "lubrication"))
    said = [str(given.value) for given in facts if given]
    bore = _value(part, "bore")
    drilled = (f"{bore * 1000:g} mm bore",) if bore else ()
    return ", ".join((*said, *drilled, part.name, part.note or ""))


def loads_of(state: State) -> tuple[Load, ...]:
    """Return the electrical loads at hand or on the car, those of unknown current too."""
    return tuple(
        _load(each.part) for each in state.parts.values() if _serves(each) and _draws(each.part)
    )


def _serves(state: PartState) -> bool:
    waits = state.status is Status.ON_HAND and not state.broken and state.replaced_by is None
    return waits or state.status is Status.FITTED


def _draws(part: Part) -> bool:
    known = "current" in part.facts and part.kind not in SOURCES
    return known or (part.kind in LOADS and part.kind not in BY_A_BELT)


def _load(part: Part) -> Load:
    current = _known(part, "current")
    length = _known(part, "wire length") or LENGTH
    supply = _known(part, "voltage") or SUPPLY
    limit = PARTICULAR if part.kind in CAREFUL else OTHERS
    area = _value(part, "wire")
    return Load(
        part=part.id,
        current=current,
        length=length,
        supply=supply,
        limit=limit,
        wanted=wire_for(current.high, length.high, supply.low, limit=limit) if current else None,
        laid=wire_of(area / PER_MM2) if area else None,
    )


def _known(part: Part, fact: str) -> Known | None:
    given = part.facts.get(fact)
    if given is None or not isinstance(given.value, Quantity):
        return None
    value, half = given.value.value, given.value.half_width or 0.0
    if value <= 0:
        # A slip of the pen, which reading has told of.
        return None
    low, high = max(value - half, 0.0), value + half
    return Known(value, low, high, given.evidence is Evidence.ASSUMED)


def _value(part: Part, fact: str) -> float | None:
    known = _known(part, fact)
    return known.value if known else None
