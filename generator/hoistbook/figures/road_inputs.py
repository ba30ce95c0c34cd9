"""Base inputs of road and cylinders: tyres, gears, driver; bore, stroke, chamber."""

from __future__ import annotations

import re
from dataclasses import replace

from hoistbook.authored.records import Given
from hoistbook.figures.base import Subject
from hoistbook.figures.finding import GIVE, Finder
from hoistbook.history.state import Dated
from hoistbook.units import from_unit
from hoistbook.values.quantity import Quantity

MARKING = re.compile(r"(?P<width>\d{3})\s*/\s*(?P<ratio>\d{2})\s*Z?R?\s*(?P<rim>\d{2})\b")
"""Marking of a tyre: section width in mm, height in per cent of it, rim in inches (ISO 4000-1)."""

CYLINDER = (
    # Quantity, key of the car, kind and fact of a part that knows better.
    ("cylinder_bore", "engine bore", "pistons", "bore"),
    ("stroke", "engine stroke", "crankshaft", "stroke"),
    ("connecting_rod_length", "engine rod length", "connecting rods", "length"),
    ("chamber_volume", "engine chamber volume", "cylinder head", "chamber volume"),
    ("gasket_thickness", "engine gasket thickness", "head gasket", "thickness"),
    ("gasket_bore", "engine gasket bore", "head gasket", "bore"),
    ("dish_volume", "engine dish volume", "pistons", "dish volume"),
    ("inlet_closing_angle", "engine inlet closes", "camshaft", "inlet closes"),
    ("cylinder_count", "engine cylinders", "", ""),
    ("deck_clearance", "engine deck clearance", "", ""),
)
OF_THE_RATIO = (
    "cylinder_bore",
    "stroke",
    "chamber_volume",
    "gasket_thickness",
    "gasket_bore",
    "dish_volume",
    "deck_clearance",
)
"""What the compression ratio follows from."""


def put_down_cylinders(finder: Finder) -> None:
    """Put down the dimensions of the cylinders; a fitted part that knows one beats the car."""
    for quantity, key, kind, fact in CYLINDER:
        holder = finder.one(kind) if kind else None
        if not finder.from_part(quantity, holder, fact) and not finder.from_car(quantity, key):
            finder.lacks(quantity, GIVE[quantity])


def ratio_by_dimensions(finder: Finder) -> bool:
    """Return whether the compression ratio can be worked out, for want of a stated one."""
    return all(name in finder.bases for name in OF_THE_RATIO)


def put_down_road(finder: Finder) -> list[Subject]:
    """Put down tyres, gears and driver; return the gears."""
    if not finder.from_settings("rev_limit", "rev limit"):
        finder.lacks("rev_limit", GIVE["engine_speed"])
    if not finder.from_car("driver_mass", "driver mass"):
        finder.assume("driver_mass")
    finder.assume("quarter_mile_time_constant")
    finder.assume("trap_speed_constant")
    sized = _tyres(finder)
    final = finder.from_part("final_drive_ratio", finder.one("final drive"), "ratio")
    final = final or finder.from_car("final_drive_ratio", "gearing final drive")
    if not final:
        finder.lacks("final_drive_ratio", GIVE["final_drive_ratio"])
    gears = _gears(finder)
    if sized and final and gears:
        return gears
    if not gears:
        finder.lacks("gear_ratio", GIVE["gear_ratio"])
    # One figure that lacks something stands for those of all gears.
    return [Subject(kind="gear", name="engine")]


def _tyres(finder: Finder) -> bool:
    """Put down the size of the tyres, of a fitted set before the car's; return whether known."""
    tyres = finder.one("tyres")
    size = tyres.part.facts.get("size") if tyres else None
    dated, origin = finder.state.car.get("tyres"), "car: tyres"
    if tyres is not None and size is not None:
        dated = Dated(value=size, episode=tyres.fitted_in or tyres.known_in)
        origin = f"size of {tyres.part.name}"
    found = MARKING.search(str(dated.value.value)) if dated else None
    if dated is None or found is None:
        finder.lacks("rim_diameter", GIVE["tyres"])
        return False
    for quantity, text, unit in (
        ("section_width", found["width"], "mm"),
        ("section_height_ratio", found["ratio"], "%"),
        ("rim_diameter", found["rim"], "in"),
    ):
        _taken(finder, quantity, dated, float(text), unit, origin)
    return True


def _gears(finder: Finder) -> list[Subject]:
    dated = finder.state.car.get("gearing gears")
    ratios = str(dated.value.value).split(" / ") if dated else []
    gears = []
    for number, text in enumerate(ratios, start=1):
        name = f"gear-{number}"
        ratio = float(text.removesuffix(":1").replace(",", "."))
        if dated is not None:
            _taken(finder, "gear_ratio", dated, ratio, "-", "car: gearing gears", subject=name)
            gears.append(Subject(kind="gear", name=name))
    return gears


def _taken(
    finder: Finder,
    quantity: str,
    dated: Dated[Given],
    number: float,
    unit: str,
    origin: str,
    subject: str = "engine",
) -> None:
    """Put down a number that stood in words of the author."""
    stated = Quantity(value=float(from_unit(number, unit)), unit=unit, text=str(number))
    given = replace(dated.value, value=stated)
    finder.take(quantity, Dated(value=given, episode=dated.episode), origin, subject)
