"""The points of a compressor map as they were given, printed with this car's line among them."""

from __future__ import annotations

from hoistbook.authored.map_points import CompressorMap
from hoistbook.figures.figure import Curve, Figure
from hoistbook.figures.map_inputs import LINE, charger_of
from hoistbook.pages.desk import Desk
from hoistbook.pages.drawing import Line, LineDrawing
from hoistbook.pages.plot import Plot, axis

ACROSS, UP = LINE
MARKED = 2_000.0
"""Engine speeds of which multiples are written beside the line, 1/min."""
NO_RISE = 1.0
"""Pressure ratio from which the upper axis counts."""


def map_plot(desk: Desk, number: int) -> Plot | None:
    """Return the map of the fitted charger as at an episode, None where there is none to show."""
    charger = charger_of(desk.states[number])
    curves = line_on_map(desk, number)
    if charger is None or charger.part.compressor_map is None or curves is None:
        return None
    known, (flow, ratio) = charger.part.compressor_map, curves
    title = desk.words("map.title", name=charger.part.name)
    return Plot(
        name=f"compressor-map-episode-{number}",
        caption=f"{title}. {air_of(desk, known)}",
        text=f"{title}. {_said(desk, known, flow, ratio)}",
        drawing=LineDrawing(
            across=axis(desk, ACROSS, desk.words("map.flow")),
            up=desk.words("map.ratio"),
            lines=(_points(desk, known), _line(desk, flow, ratio)),
            print_number=desk.formats.plain,
            base=NO_RISE,
        ),
    )


def line_on_map(desk: Desk, number: int) -> tuple[Curve, Curve] | None:
    """Return corrected flow and pressure ratio over engine speed, None where one is not known."""
    flow, ratio = (desk.figures[number].get(quantity) for quantity in LINE)
    if not isinstance(flow, Figure) or not isinstance(ratio, Figure):
        return None
    return (flow.curve, ratio.curve) if flow.curve and ratio.curve else None


def air_of(desk: Desk, known: CompressorMap) -> str:
    """Return in words for which air a map holds."""
    return desk.words(
        "map.air",
        pressure=desk.formats.given(known.reference_pressure),
        temperature=desk.formats.given(known.reference_temperature),
    )


def _points(desk: Desk, known: CompressorMap) -> Line:
    rows = sorted(zip(known.flow, known.pressure_ratio, known.efficiency, strict=True))
    return Line(
        name=desk.words("map.points"),
        across=tuple(desk.formats.in_unit(flow, ACROSS) for flow, _, _ in rows),
        up=tuple(ratio for _, ratio, _ in rows),
        labels=tuple(f"{100 * efficiency:.0f}" for _, _, efficiency in rows),
        points=True,
        joined=False,
    )


def _line(desk: Desk, flow: Curve, ratio: Curve) -> Line:
    return Line(
        name=desk.words("map.line"),
        across=tuple(desk.formats.in_unit(each, ACROSS) for each in flow.values),
        up=ratio.values,
        labels=tuple(
            desk.formats.plain(speed) if speed % MARKED == 0 else "" for speed in flow.speeds
        ),
    )


def _said(desk: Desk, known: CompressorMap, flow: Curve, ratio: Curve) -> str:
    first, last = (
        desk.words(
            "map.at",
            speed=desk.formats.quantity(flow.speeds[at], "engine_speed"),
            flow=desk.formats.quantity(flow.values[at], ACROSS),
            ratio=desk.formats.quantity(ratio.values[at], UP),
        )
        for at in (0, -1)
    )
    return desk.words(
        "map.text",
        count=len(known.flow),
        lowest=f"{100 * min(known.efficiency):.0f}",
        highest=f"{100 * max(known.efficiency):.0f}",
        first=first,
        last=last,
    )
