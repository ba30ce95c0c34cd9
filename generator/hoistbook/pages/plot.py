"""A chart before it is drawn, with its words for who cannot see it."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.figures.figure import Curve
from hoistbook.pages.desk import Desk
from hoistbook.pages.drawing import BarDrawing, Line, LineDrawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """One chart before it is drawn."""

    name: str
    """"power-episode-4": names its files."""
    caption: str
    text: str
    """What it shows, for a reader who cannot see it."""
    drawing: LineDrawing | BarDrawing


def axis(desk: Desk, quantity: str, title: str) -> str:
    """Return the name of an axis, with the unit of its quantity where it has one."""
    unit = desk.formats.unit_words(quantity)
    return desk.words("charts.axis", title=title, unit=unit) if unit else title


def state_words(desk: Desk, number: int) -> str:
    """Return of which state a chart is: "as at episode 3", "the car as bought"."""
    if number not in desk.episodes:
        return desk.words("charts.as_bought")
    return desk.words("charts.as_at", number=number)


def curve_line(
    desk: Desk, quantity: str, name: str, curve: Curve, *, points: bool = False
) -> Line:
    """Return a curve as a line of a chart, with its band where it has one."""

    def in_unit(values: tuple[float, ...]) -> tuple[float, ...]:
        return tuple(desk.formats.in_unit(each, quantity) for each in values)

    banded = curve.low != curve.high
    return Line(
        name=name,
        across=curve.speeds,
        up=in_unit(curve.values),
        low=in_unit(curve.low) if banded else (),
        high=in_unit(curve.high) if banded else (),
        points=points,
    )


def said_of_curve(desk: Desk, quantity: str, name: str, curve: Curve) -> str:
    """Return one line of a chart as a sentence: where it is highest, with its band there."""
    top = max(range(len(curve.values)), key=curve.values.__getitem__)
    value, band = desk.formats.banded(curve.values[top], curve.low[top], curve.high[top], quantity)
    return desk.words(
        "charts.highest_in_band" if band else "charts.highest",
        name=name.replace("\n", " "),
        value=value,
        band=band,
        speed=desk.formats.quantity(curve.speeds[top], "engine_speed"),
    )
