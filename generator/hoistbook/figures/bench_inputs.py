"""Base inputs of the bench: bolts with their threads and lubrication, loads with their wires."""

from __future__ import annotations

from hoistbook.engineering import GLOSSARY
from hoistbook.engineering.fasteners import stress_area
from hoistbook.figures.base import Base, Subject
from hoistbook.figures.finding import Finder
from hoistbook.figures.spreads import spread
from hoistbook.fit.bench import Bolt, Load, bolts_of, loads_of
from hoistbook.fit.fasteners import SHARE_OF_PROOF, Tightening
from hoistbook.fit.wiring import Known
from hoistbook.history.state import PartState, Status
from hoistbook.values.evidence import Evidence


def put_down_bench(finder: Finder) -> list[Subject]:
    """Put down the fitted bolts of which a torque can be said, and the fitted loads."""
    subjects = []
    for bolt in bolts_of(finder.state):
        holder = finder.state.parts[bolt.part]
        if holder.status is Status.FITTED and bolt.bolting.solid is not None:
            _bolt(finder, bolt, bolt.bolting.solid, holder)
            subjects.append(Subject(kind="bolt", name=bolt.part))
    for load in loads_of(finder.state):
        holder = finder.state.parts[load.part]
        if holder.status is Status.FITTED:
            subjects.append(Subject(kind="load", name=load.part))
            _load(finder, load, holder)
    return subjects


def _bolt(finder: Finder, bolt: Bolt, made: Tightening, holder: PartState) -> None:
    """Put down a bolt: its thread and class by their standards, its nut factor by its state."""
    name, words = bolt.part, f"{made.thread}, {made.property_class}"
    diameter, pitch = (float(each) / 1000 for each in made.thread.removeprefix("M").split("x"))
    area = stress_area(thread_diameter=diameter, thread_pitch=pitch)
    standard = f"least of its class (ISO 898-1): {words}"
    finder.exact("thread_diameter", diameter, f"thread of {name}: {words}", name)
    finder.exact("thread_pitch", pitch, f"thread of {name}: {words}", name)
    finder.exact("proof_stress", made.preload / (SHARE_OF_PROOF * area), standard, name)
    finder.assume("proof_share", subject=name)
    factor = made.torque / (made.preload * diameter)
    spread = max(made.highest - made.torque, made.torque - made.lowest) / made.torque
    _keep(
        finder,
        holder,
        "nut_factor",
        Known(factor, factor * (1 - spread), factor * (1 + spread), assumed=True),
        f"threads as they are: {made.lubrication}",
    )


def _load(finder: Finder, load: Load, holder: PartState) -> None:
    """Put down a load and its wire: the one that is laid, or else the thinnest that serves."""
    current = load.current
    if current is None:
        give = f"current of {load.part}, as in `facts: {{current: 9 A}}`"
        finder.lacks(f"wire_current of {load.part}", give)
        return
    wire = load.laid or load.wanted
    whose = "laid" if load.laid else "the thinnest that serves: nobody says what is laid"
    _keep(finder, holder, "wire_current", current, f"current of {holder.part.name}")
    _keep(finder, holder, "cable_length", load.length, "wire from the battery, one way")
    _keep(finder, holder, "supply_voltage", load.supply, f"voltage of {holder.part.name}")
    if wire is None:
        give = f"a wire for {load.part}: none of the table carries its current"
        finder.lacks(f"cable_area of {load.part}", give)
        return
    # The resistance that the standard allows is that of so much ideal copper.
    area = (GLOSSARY["copper_resistivity"].default or 0.0) / wire.resistance
    origin = f"{wire.label}, {whose}; as so much ideal copper (IEC 60228)"
    finder.exact("cable_area", area, origin, load.part)


def _keep(finder: Finder, holder: PartState, name: str, known: Known, origin: str) -> None:
    evidence = Evidence.ASSUMED if known.assumed else Evidence.STATED
    finder.keep(
        Base(
            name=name,
            value=known.value,
            half_width=max(known.high - known.value, known.value - known.low)
            or spread(name, evidence, known.value),
            evidence=evidence,
            origin=origin,
            episode=holder.fitted_in or 0,
            place=holder.part.place,
            subject=holder.part.id,
        )
    )
