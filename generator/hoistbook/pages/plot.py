"""A chart before it is drawn, with its words for who cannot see it."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.pages.desk import Desk
from hoistbook.pages.drawing import BarDrawing, LineDrawing


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
    """Return the name of an axis, with the unit of its quantity."""
    return desk.words("charts.axis", title=title, unit=desk.formats.unit_words(quantity))
