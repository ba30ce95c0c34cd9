"""Base inputs of the fuel side: what is burnt, what the injectors pass, what the pump gives."""

from __future__ import annotations

import math
from dataclasses import replace

from hoistbook.engineering import FUELS, Property
from hoistbook.figures.base import Base
from hoistbook.figures.defaults import DEFAULTS, RECTANGULAR
from hoistbook.figures.finding import GIVE, Finder, condition_of, pieces
from hoistbook.history.state import Dated, PartState
from hoistbook.units import dimension
from hoistbook.values.evidence import Evidence
from hoistbook.values.fuel import BLENDS, Fuel, parse_fuel
from hoistbook.values.quantity import Quantity


def put_down_fuel(finder: Finder) -> None:
    """Put down the fuel's properties; a blend's are worked out from those of its two fuels."""
    fuel = fuel_in(finder.words("fuel").casefold())
    if fuel is None:
        _lacks_fuel(finder, GIVE["fuel"])
    elif fuel.name in BLENDS:
        _blend(finder, fuel)
    else:
        finder.conditions.add("one fuel")
        _properties(finder, fuel.name, "")
    if not finder.from_settings("lambda_ratio", "mixture"):
        finder.assume("lambda_ratio", finder.charging)


def fuel_in(words: str) -> Fuel | None:
    """Return the fuel that a setting names, None where it names none.

    A share is below a hundred per cent, so a comma in it stands before decimals in any journal.
    """
    for numbers in ("point", "comma"):
        found = parse_fuel(words, numbers)
        if isinstance(found, Fuel):
            return found
    return None


def _lacks_fuel(finder: Finder, give: str) -> None:
    for name in ("fuel_density", "stoichiometric_air_fuel_ratio", "heating_value"):
        finder.lacks(name, give)


def _blend(finder: Finder, fuel: Fuel) -> None:
    """Put down a blend; without its share that of pumps by season and place, where it is known."""
    second = fuel.name.removesuffix(" blend")
    given = finder.setting("fuel")
    if fuel.share is None and second != "ethanol":
        _lacks_fuel(finder, GIVE["share"].format(blend=fuel.name))
        return
    finder.conditions.add("blend")
    _properties(finder, "petrol", "first")
    _properties(finder, second, "second")
    if fuel.share is None or given is None:
        finder.assume("volume_fraction_second")
        return
    dated = Dated(value=replace(given.value, value=fuel.share), episode=given.episode)
    finder.take("volume_fraction_second", dated, "settings: fuel")


def _properties(finder: Finder, fuel: str, which: str) -> None:
    """Put down density, air-fuel ratio and heating value of one fuel, alone or of a blend."""
    record = FUELS[fuel]
    names = (
        ("fuel_density", record.density),
        (
            "air_fuel_ratio" if which else "stoichiometric_air_fuel_ratio",
            record.stoichiometric_air_fuel_ratio,
        ),
        ("heating_value", record.heating_value),
    )
    given = finder.setting("fuel")
    for name, value in names:
        finder.keep(
            Base(
                name=f"{name}_{which}" if which else name,
                value=value.value,
                half_width=_half_range(value),
                evidence=Evidence.ASSUMED,
                origin=f"{fuel}: what such fuel is made to",
                episode=given.episode if given else 0,
                place=given.value.place if given else None,
                shape=RECTANGULAR,
            )
        )


def _half_range(value: Property) -> float:
    return (value.high - value.low) / 2


def _regulator(finder: Finder) -> None:
    """Put down whether the fuel pressure rises with boost, as it does unless said otherwise."""
    if "fix" not in finder.words("regulator").casefold():
        finder.conditions.add("regulator follows")
        return
    finder.conditions.add("regulator fixed")
    dated = finder.setting("regulator")
    finder.keep(
        Base(
            name="boost",
            subject="regulator",
            value=0.0,
            half_width=0.0,
            evidence=Evidence.STATED,
            origin="settings: regulator, which does not follow the manifold",
            episode=dated.episode if dated else 0,
            place=dated.value.place if dated else None,
        )
    )


def put_down_injectors(finder: Finder) -> None:
    """Put down regulator, static flow, dead time and number of the fitted injectors."""
    injectors = finder.one("injectors")
    _regulator(finder)
    if not finder.from_settings("base_fuel_pressure", "fuel pressure"):
        finder.assume("base_fuel_pressure")
    if not finder.from_part("rated_static_flow", injectors, "static flow") or injectors is None:
        finder.lacks("rated_static_flow", GIVE["rated_static_flow"])
        return
    if not finder.from_condition("rated_pressure_difference", injectors, "static flow"):
        finder.assume("rated_pressure_difference")
    if not finder.from_part("dead_time", injectors, "dead time"):
        finder.assume("dead_time")
    finder.assume("rated_fluid_density")
    _injectors_by_volume(finder, injectors)
    finder.keep(
        Base(
            name="injector_count",
            value=float(pieces(injectors)),
            half_width=0.0,
            evidence=Evidence.STATED,
            origin=f"count of {injectors.part.name}",
            episode=injectors.fitted_in or 0,
            place=injectors.part.place,
        )
    )


def _by_mass(holder: PartState, fact: str) -> bool:
    """Return whether a flow was stated as a mass in a time, as in lb/h."""
    given = holder.part.facts[fact].value
    return isinstance(given, Quantity) and dimension(given.unit) == "mass flow"


def _by_volume(finder: Finder, name: str, doubt: float) -> None:
    """Put down as a volume a flow that was stated by mass.

    Parameters
    ----------
    finder
        Has the flow, as a mass, and nothing where that cannot be.
    name
        Of the flow.
    doubt
        Share of it that is open beside what the flow itself leaves open.
    """
    stated, density = finder.bases.get(name), DEFAULTS["rated_fluid_density"].value
    if stated is None or isinstance(stated.value, tuple):
        return
    volume = stated.value / density
    finder.keep(
        replace(
            stated,
            value=volume,
            half_width=volume * math.hypot(stated.half_width / stated.value, doubt),
            origin=f"{stated.origin}, by mass, of a fluid of {density:g} kg/m3",
        )
    )


def _injectors_by_volume(finder: Finder, injectors: PartState) -> None:
    """Put down as a volume a static flow that was stated by mass.

    Its flow with another fuel goes with one over the root of the density that it was rated with,
    and not with the root of it: half of what is open of that density is open of the flow, and the
    density itself then stands fixed beside it.
    """
    if not _by_mass(injectors, "static flow"):
        return
    density = finder.bases["rated_fluid_density"]
    _by_volume(finder, "rated_static_flow", DENSITY_DOUBT / 2)
    origin = f"{density.origin}; its band is in the flow, which was stated by mass"
    finder.keep(replace(density, half_width=0.0, origin=origin))


DENSITY_DOUBT = DEFAULTS["rated_fluid_density"].half_width / DEFAULTS["rated_fluid_density"].value
"""Half the band of the density of what a part was rated with, as a share of it."""

SIDE_BY_SIDE = (
    "{count} pumps side by side: at one pressure their flows add, and so do their currents; each "
    "has a wire and a fuse of its own. When one of them stops, {left} of the flow is left at "
    "best: only where each has a valve of its own against flowing back."
)

ONE_OF_SEVERAL = (
    "{others} on the car too: what stands here is what {name} gives alone, for nothing says how "
    "they share the work. Equal pumps side by side are one part with its `count`; one that only "
    "lifts the fuel to another adds nothing."
)


def put_down_pump(finder: Finder) -> None:
    """Put down the flow of the fitted pump, the pressure it was stated at and its own current.

    A current that the pump's sheet states stands in for the estimate, which is then not printed:
    wire and fuse go by the sheet, and two currents of one pump would be one too many.
    """
    pump = finder.one("fuel pump")
    finder.from_part("pump_current", pump, "current")
    if not finder.from_part("rated_pump_flow", pump, "flow") or pump is None:
        finder.lacks("rated_pump_flow", GIVE["rated_pump_flow"])
        return
    if _by_mass(pump, "flow"):
        _by_volume(finder, "rated_pump_flow", DENSITY_DOUBT)
    _side_by_side(finder, pieces(pump))
    _beside(finder, pump)
    condition = condition_of(pump.part.facts["flow"])
    at_voltage = condition is not None and dimension(condition.unit) == "voltage"
    stated_at = "rated_pump_voltage" if at_voltage else "rated_pump_pressure"
    for name in ("rated_pump_pressure", "rated_pump_voltage"):
        if name != stated_at or not finder.from_condition(name, pump, "flow"):
            finder.assume(name)
    if not finder.from_settings("pump_voltage", "pump voltage"):
        finder.assume("pump_voltage")
    for name in (
        "fuel_line_loss",
        "pump_fade_pressure",
        "pump_voltage_exponent",
        "pump_efficiency",
    ):
        finder.assume(name)


def _side_by_side(finder: Finder, count: int) -> None:
    """Take several pumps of one line as one of their flow and their current."""
    if count == 1:
        return
    for name in ("rated_pump_flow", "pump_current"):
        one = finder.bases.get(name)
        if one is not None and not isinstance(one.value, tuple):
            finder.keep(
                replace(
                    one,
                    value=count * one.value,
                    half_width=count * one.half_width,
                    origin=f"{one.origin}, {count} of them side by side",
                )
            )
    left = "half" if count == 2 else f"{count - 1} of {count} parts"
    finder.notes.append(("pump_margin", SIDE_BY_SIDE.format(count=count, left=left)))


def _beside(finder: Finder, pump: PartState) -> None:
    """Say which fitted pumps are left aside: of two in a row one alone gives the flow."""
    names = [each.part.name for each in finder.fitted("fuel pump") if each is not pump]
    if names:
        others = f"{' and '.join(names)} {'is' if len(names) == 1 else 'are'}"
        text = ONE_OF_SEVERAL.format(others=others, name=pump.part.name)
        finder.notes.append(("pump_margin", text))
