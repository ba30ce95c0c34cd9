"""Base inputs of heat and oil: what coolant carries away, what feeds and leaves a bearing."""

from __future__ import annotations

from hoistbook.authored.records import Given
from hoistbook.figures.base import Subject
from hoistbook.figures.finding import Finder
from hoistbook.history.state import Dated
from hoistbook.values.evidence import Evidence

OF_THE_COOLANT = (
    "coolant_share",
    "oil_and_surface_share",
    "coolant_density",
    "coolant_heat_capacity",
    "coolant_temperature_rise",
)
OF_THE_OIL = ("oil_density", "oil_heat_capacity", "oil_temperature_rise")


def put_down_oil(finder: Finder) -> list[Subject]:
    """Put down coolant, oil, and every fitted oil feed and drain."""
    for name in OF_THE_COOLANT:
        finder.assume(name)
    feeds, drains = finder.fitted("oil feed"), finder.fitted("oil drain")
    if feeds:
        _pressure(finder)
        for name in OF_THE_OIL:
            finder.assume(name)
    for each in feeds:
        name = each.part.id
        if not finder.from_part("oil_orifice_diameter", each, "restrictor", subject=name):
            give = (
                f"restrictor of {name}, as in `facts: {{restrictor: 1.2 mm}}`; without one "
                "nothing can be said"
            )
            finder.lacks(f"oil_orifice_diameter of {name}", give)
        finder.assume("discharge_coefficient", "oil", subject=name)
    for each in drains:
        name = each.part.id
        for quantity, fact, example in (
            ("drain_bore", "bore", "15 mm"),
            ("drain_length", "length", "0.35 m"),
            ("drain_drop", "drop", "0.3 m"),
        ):
            if not finder.from_part(quantity, each, fact, subject=name):
                give = f"{fact} of {name}, as in `facts: {{{fact}: {example}}}`"
                finder.lacks(f"{quantity} of {name}", give)
        finder.assume("friction_factor", "drain", subject=name)
        finder.assume("loss_coefficients", "drain", subject=name)
    return [
        *(Subject(kind="oil feed", name=each.part.id) for each in feeds),
        *(Subject(kind="oil drain", name=each.part.id) for each in drains),
    ]


def _pressure(finder: Finder) -> None:
    """Put down the oil pressure as it was last read, behind the bearing there being none."""
    read = [each for each in finder.state.readings if each.value.what == "oil pressure"]
    if not read or not read[-1].value.values:
        finder.assume("oil_pressure_difference")
        return
    reading = read[-1].value
    given = Given(value=reading.values[-1], place=reading.place, evidence=Evidence.MEASURED)
    dated = Dated(value=given, episode=read[-1].episode)
    finder.take("oil_pressure_difference", dated, "measured: oil pressure")
