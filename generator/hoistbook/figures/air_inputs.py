"""Base inputs of the air of the day; a weather report's pressure is brought down to the spot."""

from __future__ import annotations

import math

from hoistbook.engineering.air import standard_pressure, station_pressure
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Base
from hoistbook.figures.finding import GIVE, Finder, evidence_of, impossible, number
from hoistbook.figures.spreads import spread

REPORTED, HEIGHT = "sea level pressure", "altitude"
"""Settings that together stand for the pressure on the spot."""
REDUCTION = 1e-5
"""Half the band of a report's reduction with another temperature than the standard's, as a share
for each metre of height: 0.5 % at 500 m (common practice, no source)."""
LOWEST_PLACE, HIGHEST_PLACE = -500.0, 9_000.0
"""Heights that a car stands at, m: from the Dead Sea to beyond the highest road."""
CONSTANTS = ("sea_level_pressure", "sea_level_temperature", "lapse_rate")


def put_down_air(finder: Finder) -> None:
    """Put down pressure, temperature and humidity of the air."""
    if not _from_report(finder) and not finder.from_settings("air_pressure", "air pressure"):
        finder.assume("air_pressure")
    for name, key in (
        ("air_temperature", "air temperature"),
        ("relative_humidity", "air humidity"),
    ):
        if not finder.from_settings(name, key):
            finder.assume(name)


def _from_report(finder: Finder) -> bool:
    """Put down the pressure that a weather report amounts to at a height; return whether so."""
    report, height, own = (finder.setting(key) for key in (REPORTED, HEIGHT, "air pressure"))
    if report is None or (own is not None and own.episode >= report.episode):
        return False
    pressure, metres = number(report.value), number(height.value) if height else None
    if pressure is None or height is None or metres is None:
        finder.lacks("air_pressure", GIVE["altitude"])
        return True
    wanted = impossible("air_pressure", pressure)
    if wanted or not LOWEST_PLACE <= metres <= HIGHEST_PLACE:
        give = f"{wanted} for settings: {REPORTED}" if wanted else GIVE["altitude"]
        finder.lacks("air_pressure", give)
        return True
    constants = {name: GLOSSARY[name].default or 0.0 for name in CONSTANTS}
    known = {"altitude": metres} | constants
    there = float(standard_pressure(**known))
    value = float(
        station_pressure(
            reported_pressure=pressure,
            standard_pressure=there,
            sea_level_pressure=constants["sea_level_pressure"],
        )
    )
    shares = (spread("air_pressure", evidence_of(report.value), pressure) / pressure,)
    finder.keep(
        Base(
            name="air_pressure",
            value=value,
            half_width=value * math.hypot(*shares, REDUCTION * abs(metres)),
            evidence=evidence_of(report.value),
            origin=f"settings: {REPORTED}, brought down to {metres:,.0f} m by the standard "
            "atmosphere",
            episode=max(report.episode, height.episode),
            place=report.value.place,
        )
    )
    return True
