"""The table of fuels and the model's plausibility against published values."""

from __future__ import annotations

import pytest

from hoistbook.engineering import FORMULAS, FUELS, Fuel, Property
from hoistbook.references import REFERENCES

PROPERTIES = ("density", "stoichiometric_air_fuel_ratio", "heating_value", "latent_heat")


def properties(fuel: Fuel) -> list[Property]:
    return [getattr(fuel, name) for name in PROPERTIES]


@pytest.mark.parametrize("fuel", FUELS.values(), ids=lambda fuel: fuel.name)
def test_each_property_lies_in_its_range_and_has_a_source(fuel: Fuel) -> None:
    assert [each for each in properties(fuel) if not each.low <= each.value <= each.high] == []
    assert {each.reference for each in properties(fuel)} <= REFERENCES.keys()


@pytest.mark.parametrize(
    ("fuel", "name", "expected", "relative"),
    [
        # US DOE Alternative Fuels Data Center, property table (seen): 11,500 Btu/lb.
        ("ethanol", "heating_value", 26.75e6, 0.01),
        # The same table: about 150 Btu/lb; Heywood (1988) has 305 kJ/kg (from memory).
        ("petrol", "latent_heat", 350e3, 0.15),
        # The same table: 396 Btu/lb.
        ("ethanol", "latent_heat", 921e3, 0.005),
        # Computed with chemicals 1.5.2 and thermo 0.6.1 from enthalpies of formation.
        ("ethanol", "heating_value", 26.8181e6, 0.006),
        ("methanol", "heating_value", 19.94e6, 0.006),
        # Computed with CoolProp 8.0.0, 20 degrees.
        ("ethanol", "density", 789.4215, 0.004),
        # Computed with Cantera 3.2.0 (nasa_gas.yaml).
        ("ethanol", "stoichiometric_air_fuel_ratio", 9.000326, 0.006),
        # Heywood (1988), table D.4, from memory.
        ("methanol", "stoichiometric_air_fuel_ratio", 6.47, 0.006),
    ],
)
def test_a_property_agrees_with_its_source(
    fuel: str, name: str, expected: float, relative: float
) -> None:
    assert getattr(FUELS[fuel], name).value == pytest.approx(expected, rel=relative)


def test_an_engine_without_boost_has_the_mean_pressure_that_such_engines_have() -> None:
    known: dict[str, float] = {
        "manifold_absolute_pressure": 98e3,
        "air_pressure": 100e3,
        "charge_temperature": 308.0,
        "humidity_ratio": 0.006,
        "volumetric_efficiency": 0.93,
        "displacement": 1.6e-3,
        "engine_speed": 4000.0,
        "revolutions_per_cycle": 2.0,
        "lambda_ratio": 0.9,
        "ignition_retard": 0.0,
        "compression_ratio": 9.5,
        "reference_indicated_efficiency": 0.38,
        "exhaust_pressure_ratio": 1.1,
        "stoichiometric_air_fuel_ratio": FUELS["petrol"].stoichiometric_air_fuel_ratio.value,
        "heating_value": FUELS["petrol"].heating_value.value,
    }
    for name in (
        "charge_density",
        "engine_air_flow",
        "dry_air_flow",
        "fuel_energy_per_volume",
        "gross_indicated_efficiency",
        "mixture_factor",
        "ignition_factor",
        "friction_mean_effective_pressure",
        "exhaust_manifold_pressure",
        "pumping_mean_effective_pressure",
        "brake_mean_effective_pressure",
    ):
        one = FORMULAS[name]
        known[one.result] = one(**{key: known[key] for key in one.parameters if key in known})

    # Heywood (1988), section 2.7, from memory: 8.5 to 10.5 bar at maximum torque.
    assert 8.5e5 <= known["brake_mean_effective_pressure"] <= 10.5e5
