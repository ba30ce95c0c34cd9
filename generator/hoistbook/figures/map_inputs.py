"""The compressor map in the figures: the air it holds for, the efficiency between its points.

The efficiency depends on the flow, and the flow a little on the efficiency: both are worked out
by turns, with the central values alone. The result is an input of the chain like any other.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from hoistbook.authored.compressor_maps import CHARGERS
from hoistbook.authored.map_points import CompressorMap
from hoistbook.authored.records import Given
from hoistbook.engineering.map_reading import WITHIN, efficiency_of_points, place_among_points
from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.finding import Finder, pieces
from hoistbook.figures.spreads import spread
from hoistbook.history.state import Dated, PartState, State, Status
from hoistbook.values.evidence import Evidence

TURNS = 3
"""How often flow and efficiency are worked out in turn; a test shows that more change nothing."""
EFFICIENCY = "compressor_efficiency"
LINE = ("corrected_flow", "pressure_ratio")
"""Where the engine runs its compressor, across and up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnMap:
    """Where the compressor runs at one engine speed."""

    speed: float
    """Engine speed [1/min]."""
    flow: float
    """Corrected mass flow [kg/s]."""
    ratio: float
    """Pressure ratio [-]."""
    place: str
    """`within` the points, or `left`, `right`, `above` or `below` of the outermost ones."""


SEVERAL = (
    "{count} compressors are on the car. A map is of one: how they share the air or the pressure "
    "is not known here, and so no map is read."
)


def charger_of(state: State) -> PartState | None:
    """Return the fitted charger that has a map; None where there is none, or more than one."""
    fitted = _fitted(state)
    if len(fitted) != 1 or pieces(fitted[0]) != 1:
        return None
    return fitted[0] if fitted[0].part.compressor_map is not None else None


def _fitted(state: State) -> list[PartState]:
    """Return the chargers that are on the car and whole."""
    return [
        each
        for each in state.parts.values()
        if each.part.kind in CHARGERS and each.status is Status.FITTED and not each.broken
    ]


def put_down_map_air(finder: Finder) -> None:
    """Put down the pressure and temperature that the map of the fitted charger holds for.

    Two compressors beside or behind one another do not each get the engine's flow and ratio: of
    them it is said that no map is read.
    """
    charger, fitted = charger_of(finder.state), _fitted(finder.state)
    known = charger.part.compressor_map if charger else None
    if charger is None or known is None:
        if any(each.part.compressor_map for each in fitted):
            text = SEVERAL.format(count=sum(map(pieces, fitted)))
            finder.notes.append(("compressor_outlet_temperature", text))
        return
    finder.conditions.add("map")
    for name, quantity in (
        ("map_reference_pressure", known.reference_pressure),
        ("map_reference_temperature", known.reference_temperature),
    ):
        given = Given(value=quantity, place=known.place)
        dated = Dated(value=given, episode=charger.fitted_in or charger.known_in)
        finder.take(name, dated, f"compressor map of {charger.part.name}")


def with_map(inputs: Inputs, state: State) -> Inputs:
    """Return inputs whose compressor has the efficiency of its map, wherever that has points.

    Parameters
    ----------
    inputs
        What the figures of the state start from.
    state
        The build as at one episode.
    """
    charger = charger_of(state)
    given = next((base for base in inputs.bases if base.key == EFFICIENCY), None)
    if charger is None or charger.part.compressor_map is None or given is None:
        return inputs
    known = charger.part.compressor_map
    found, line = inputs, on_map(inputs, known)
    for _ in range(TURNS):
        if not any(each.place == WITHIN for each in line):
            break
        base = _read(given, line, known, charger)
        others = (each for each in inputs.bases if each.key != EFFICIENCY)
        found = replace(inputs, bases=(*others, base))
        line = on_map(found, known)
    notes = ((LINE[0], text) for text in _notes(line))
    return replace(found, notes=(*inputs.notes, *notes))


def on_map(inputs: Inputs, known: CompressorMap) -> tuple[OnMap, ...]:
    """Return where the compressor runs at each engine speed; nothing where that is not known."""
    worked = work_out(inputs, sampled=False, only=LINE)
    if not inputs.speeds or any(name not in worked.values for name in LINE):
        return ()
    flows, ratios = (
        np.broadcast_to(worked.values[name][:, 0], len(inputs.speeds)).tolist() for name in LINE
    )
    return tuple(
        OnMap(
            speed=speed,
            flow=flow,
            ratio=ratio,
            place=place_among_points(known.flow, known.pressure_ratio, flow, ratio),
        )
        for speed, flow, ratio in zip(inputs.speeds, flows, ratios, strict=True)
    )


def _read(given: Base, line: tuple[OnMap, ...], known: CompressorMap, charger: PartState) -> Base:
    """Return the efficiency of the map; beyond its points what was given or assumed stays."""
    read = efficiency_of_points(
        known.flow,
        known.pressure_ratio,
        known.efficiency,
        [each.flow for each in line],
        [each.ratio for each in line],
    )
    values = np.where(np.isnan(read), given.value, read)
    width = spread(EFFICIENCY, Evidence.STATED, float(values.max()))
    origin = f"compressor map of {charger.part.name}, between its points"
    if np.isnan(read).any():
        width = max(width, given.half_width)
        origin += f"; outside of them, {given.origin}"
    return replace(
        given,
        value=tuple(values.tolist()),
        half_width=width,
        evidence=Evidence.STATED,
        origin=origin,
        episode=max(given.episode, charger.fitted_in or charger.known_in),
        place=known.place,
        learnt=None,
    )


SAID = {
    "left": "left of the outermost points given",
    "right": "right of the outermost points given",
    "above": "above the outermost points given",
    "below": "below the outermost points given",
}
"""By where a point of operation lies outside of a map's points, how it is said."""


def _notes(line: tuple[OnMap, ...]) -> list[str]:
    """Return a sentence for each stretch of engine speeds that lies in one place."""
    stretches: list[list[OnMap]] = []
    for each in line:
        if stretches and stretches[-1][0].place == each.place:
            stretches[-1].append(each)
        else:
            stretches.append([each])
    return [
        f"{_speeds(stretch)} the line of this car lies within the map's points, and the "
        "efficiency is read between them."
        if stretch[0].place == WITHIN
        else f"{_speeds(stretch)} it lies {SAID[stretch[0].place]}: outside the map's points, "
        "and nothing is read there."
        for stretch in stretches
    ]


def _speeds(stretch: list[OnMap]) -> str:
    first, last = stretch[0].speed, stretch[-1].speed
    return f"At {first:,.0f} rpm" if first == last else f"From {first:,.0f} to {last:,.0f} rpm"
