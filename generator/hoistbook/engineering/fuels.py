"""Properties of the fuels, with the range in which real ones lie and where that is written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Property:
    """One property of a fuel, in SI."""

    value: float
    low: float
    high: float
    """Ends of the range in which fuels of this name lie."""
    reference: str
    """Key of the list of references."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel:
    """One fuel; a blend is worked out from two of them by the formulas of `combustion`."""

    name: str
    density: Property
    """At 15 to 20 °C [kg/m3]."""
    stoichiometric_air_fuel_ratio: Property
    """By mass [-]."""
    heating_value: Property
    """Lower heating value of the liquid [J/kg]."""
    latent_heat: Property
    """Heat of vaporisation at 25 °C [J/kg]."""


_FUELS = (
    Fuel(
        name="petrol",
        density=Property(745, 720, 775, "en-228"),
        stoichiometric_air_fuel_ratio=Property(14.6, 14.2, 14.7, "heywood-1988"),
        heating_value=Property(43.0e6, 42.5e6, 43.5e6, "common-practice"),
        latent_heat=Property(350e3, 305e3, 400e3, "afdc"),
    ),
    Fuel(
        name="ethanol",
        density=Property(789, 786, 794, "coolprop"),
        stoichiometric_air_fuel_ratio=Property(9.0, 8.97, 9.03, "heywood-1988"),
        heating_value=Property(26.8e6, 26.7e6, 26.95e6, "afdc"),
        latent_heat=Property(921e3, 840e3, 930e3, "afdc"),
    ),
    Fuel(
        name="methanol",
        density=Property(791, 787, 796, "coolprop"),
        stoichiometric_air_fuel_ratio=Property(6.47, 6.43, 6.5, "heywood-1988"),
        heating_value=Property(20.0e6, 19.9e6, 20.1e6, "heywood-1988"),
        latent_heat=Property(1103e3, 1100e3, 1180e3, "heywood-1988"),
    ),
)

FUELS: Mapping[str, Fuel] = MappingProxyType({fuel.name: fuel for fuel in _FUELS})
"""Each pure fuel by its name."""
