"""Base inputs of what air flows through: pipes, throats, and the volume that boost fills."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from hoistbook.figures.base import Base, Subject
from hoistbook.figures.finding import GIVE, Finder, pieces
from hoistbook.history.state import PartState
from hoistbook.values.evidence import Evidence

HOT = ("compressor_outlet_pressure", "compressor_outlet_temperature")
COLD = ("manifold_absolute_pressure", "charge_temperature")
OUTSIDE = ("air_pressure", "intake_temperature")
CARRIED: Mapping[tuple[str, str], tuple[str, str]] = {
    ("intake air", "boosted"): ("compressor_inlet_pressure", "intake_temperature"),
    ("intake air", "unboosted"): COLD,
    ("charge air", "boosted"): HOT,
    ("charge air, before the cooler", "boosted"): HOT,
    ("charge air, after the cooler", "boosted"): COLD,
}
"""What a pipe carries in an engine boosted or not -> absolute pressure and temperature of it.

Where it is not said on which side of the cooler a pipe stands, it is taken to be the hot one, in
which the air is the faster of the two."""

SHAPE = ("bend_count", "bend_angle", "bend_radius_ratio", "roughness", "end_loss_coefficients")
"""What a pipe's loss rests on beside its bore and length; each has a fact of the same words."""
FACTS = {
    "bend_count": "bends",
    "bend_angle": "bend angle",
    "bend_radius_ratio": "bend radius ratio",
    "roughness": "roughness",
    "end_loss_coefficients": "end losses",
}


def put_down_pipes(finder: Finder) -> list[Subject]:
    """Put down every fitted pipe and hose that carries air, and the volume of the charge path."""
    pipes, charge = [], []
    for each in (part for kind in ("intake pipe", "pipe", "hose") for part in finder.fitted(kind)):
        carries = each.part.facts.get("carries")
        words = str(carries.value).casefold() if carries else ""
        gas = CARRIED.get((words, finder.charging))
        if carries is None and each.part.kind == "pipe":
            gas = (f"gas in {each.part.id}",) * 2
            finder.lacks(gas[0], GIVE["carries"].format(part=each.part.id))
        if gas is None:
            continue
        _pipe(finder, each)
        if words.startswith("charge air"):
            charge.append(each)
        binds = (("pipe_pressure", gas[0]), ("pipe_temperature", gas[1]))
        pipes.append(Subject(kind="pipe", name=each.part.id, binds=binds))
    if finder.charging == "boosted":
        _charge_volume(finder, charge)
    return pipes


def _pipe(finder: Finder, pipe: PartState) -> None:
    name = pipe.part.id
    for quantity, fact, example in (
        ("pipe_bore", "bore", "54 mm"),
        ("pipe_length", "length", "0.9 m"),
    ):
        if not finder.from_part(quantity, pipe, fact, subject=name):
            give = f"{fact} of {name}, as in `facts: {{{fact}: {example}}}`"
            finder.lacks(f"{quantity} of {name}", give)
    for quantity in SHAPE:
        if not finder.from_part(quantity, pipe, FACTS[quantity], subject=name):
            finder.assume(quantity, subject=name)
    finder.assume("bend_loss_scale", subject=name)


def _charge_volume(finder: Finder, pipes: Sequence[PartState]) -> None:
    """Put down the three volumes between compressor and valves."""
    known = []
    for each in pipes:
        bore, length = (
            finder.bases.get(f"{name} of {each.part.id}") for name in ("pipe_bore", "pipe_length")
        )
        if bore and length:
            known.append((each, bore, length))
    if known and len(known) == len(pipes):
        finder.keep(_volume_of(known))
    else:
        finder.lacks("charge_pipe_volume", GIVE["charge_pipe_volume"])
    cooler = finder.one("charge cooler")
    if cooler is None:
        finder.exact("cooler_volume", 0.0, "there is no charge cooler on the car")
    elif not finder.from_part("cooler_volume", cooler, "volume"):
        finder.lacks("cooler_volume", GIVE["cooler_volume"].format(part=cooler.part.id))
    if not finder.from_part("plenum_volume", finder.one("intake manifold"), "volume"):
        finder.lacks("plenum_volume", GIVE["plenum_volume"])


def _volume_of(pipes: Sequence[tuple[PartState, Base, Base]]) -> Base:
    """Return the volume of some pipes together, a relation: the sum is not one of the table's."""
    volume, variance = 0.0, 0.0
    for _, bore, length in pipes:
        diameter, along = _number(bore), _number(length)
        own = math.pi * diameter**2 / 4 * along
        share = math.hypot(2 * bore.half_width / diameter, length.half_width / along)
        volume += own
        variance += (own * share) ** 2
    names = ", ".join(each.part.id for each, _, _ in pipes)
    last = max(pipes, key=lambda each: each[1].episode)[1]
    return Base(
        name="charge_pipe_volume",
        value=volume,
        half_width=math.sqrt(variance),
        evidence=Evidence.ESTIMATED,
        origin=f"bore and length of {names}",
        episode=max(each.episode for pair in pipes for each in pair[1:]),
        place=last.place,
    )


def _number(base: Base) -> float:
    return base.value if isinstance(base.value, float) else base.value[0]


def put_down_throats(finder: Finder) -> list[Subject]:
    """Put down what the air has to pass that may choke: throttle bodies and restrictors."""
    throats = []
    for each in (*finder.fitted("throttle body"), *finder.fitted("restrictor")):
        name = each.part.id
        cold = each.part.kind == "throttle body" and finder.charging == "boosted"
        pressure, temperature = COLD if cold else OUTSIDE
        if not finder.from_part("throat_diameter", each, "bore", subject=name):
            give = f"bore of {name}, as in `facts: {{bore: 50 mm}}`"
            finder.lacks(f"throat_diameter of {name}", give)
        _as_one_throat(finder, each)
        finder.assume("discharge_coefficient", "throat", subject=name)
        binds = (("stagnation_pressure", pressure), ("stagnation_temperature", temperature))
        throats.append(Subject(kind="throat", name=name, binds=binds))
    return throats


def _as_one_throat(finder: Finder, part: PartState) -> None:
    """Take several equal throats side by side, one for each cylinder, as one of all their area."""
    one, count = finder.bases.get(f"throat_diameter of {part.part.id}"), pieces(part)
    if one is None or count == 1:
        return
    root = math.sqrt(count)
    origin = f"{one.origin}, {count} of them side by side: as one of so large an area"
    finder.keep(
        replace(one, value=root * _number(one), half_width=root * one.half_width, origin=origin)
    )
