"""The heat of rich mixtures against equilibrium with Cantera."""

from __future__ import annotations

import cantera
import numpy as np
import pytest

from hoistbook.engineering import FORMULAS

# Formula of the fuel and its name in Cantera's nasa_gas.yaml; heating values come
# from the same enthalpies of formation.
MOLECULES = {
    "iso-octane": ((8, 18, 0), "C8H18,isooctane"),
    "toluene": ((7, 8, 0), "C7H8"),
    "ethanol": ((2, 6, 1), "C2H5OH"),
    "methanol": ((1, 4, 1), "CH3OH"),
}
ROOM = 298.15
FROZEN = 1740.0  # Heywood (1988), section 4.9, from memory


def solution(species: str) -> cantera.Solution:
    names = [species, "O2", "N2", "CO2", "CO", "H2", "H2O"]
    known = {each.name: each for each in cantera.Species.list_from_file("nasa_gas.yaml")}
    return cantera.Solution(thermo="ideal-gas", species=[known[name] for name in names])


def heat_per_fuel(gas: cantera.Solution, species: str, lambda_ratio: float) -> float:
    """Return the heat that burning sets free at room temperature, per mass of fuel."""
    gas.set_equivalence_ratio(1 / lambda_ratio, species, "O2:0.21, N2:0.79")
    fuel = gas[species].Y[0]
    gas.TP = ROOM, 101325.0
    before = gas.enthalpy_mass
    gas.TP = FROZEN, 101325.0
    gas.equilibrate("TP")
    gas.TP = ROOM, 101325.0
    return float((before - gas.enthalpy_mass) / fuel)


@pytest.mark.parametrize("fuel", MOLECULES)
def test_a_rich_mixture_sets_free_what_equilibrium_gives(fuel: str) -> None:
    (carbon, hydrogen, oxygen), species = MOLECULES[fuel]
    atoms = {"carbon_atoms": carbon, "hydrogen_atoms": hydrogen, "oxygen_atoms": oxygen}
    gas = solution(species)
    heating_value = heat_per_fuel(gas, species, 1.0)
    mass = FORMULAS["fuel_molar_mass"](**atoms)

    for lambda_ratio in np.random.default_rng(1740).uniform(0.75, 0.99, 12).tolist():
        ours = FORMULAS["combustion_efficiency"](
            **atoms,
            lambda_ratio=lambda_ratio,
            heating_value=heating_value,
            fuel_molar_mass=mass,
        )

        # The constant of water gas at 1740 K is printed with two digits: 0.4 % of the heat.
        theirs = heat_per_fuel(gas, species, lambda_ratio) / heating_value
        assert ours == pytest.approx(theirs, abs=0.004)


@pytest.mark.parametrize("fuel", MOLECULES)
def test_with_the_constants_of_the_library_the_heat_is_that_of_the_library(fuel: str) -> None:
    (carbon, hydrogen, oxygen), species = MOLECULES[fuel]
    atoms = {"carbon_atoms": carbon, "hydrogen_atoms": hydrogen, "oxygen_atoms": oxygen}
    gas = solution(species)
    gas.TP = ROOM, 101325.0
    molar = gas.partial_molar_enthalpies / 1e3  # J/mol
    enthalpy = dict(zip(gas.species_names, molar.tolist(), strict=True))
    mass = float(gas.molecular_weights[gas.species_index(species)]) / 1e3
    burnt = carbon * enthalpy["CO2"] + hydrogen / 2 * enthalpy["H2O"]
    heating_value = (enthalpy[species] - burnt) / mass

    for lambda_ratio in np.random.default_rng(1741).uniform(0.70, 0.92, 12).tolist():
        theirs = heat_per_fuel(gas, species, lambda_ratio) / heating_value
        share = dict(zip(gas.species_names, gas.X.tolist(), strict=True))
        ours = FORMULAS["combustion_efficiency"](
            **atoms,
            lambda_ratio=lambda_ratio,
            heating_value=heating_value,
            fuel_molar_mass=mass,
            water_gas_constant=share["CO"] * share["H2O"] / (share["CO2"] * share["H2"]),
            carbon_monoxide_enthalpy=enthalpy["CO"],
            carbon_dioxide_enthalpy=enthalpy["CO2"],
            water_vapour_enthalpy=enthalpy["H2O"],
        )

        # So rich there is no oxygen left at 1740 K: carbon monoxide and hydrogen are all.
        assert ours == pytest.approx(theirs, abs=1e-4)


@pytest.mark.parametrize(("lambda_ratio", "per_air"), [(0.90, 0.9659511), (0.80, 0.9217208)])
def test_the_heat_for_each_mass_of_air_falls_with_lambda(
    lambda_ratio: float, per_air: float
) -> None:
    # Iso-octane, against lambda 1; computed with Cantera 3.2.0, equilibrium of CO and H2 at
    # 1740 K after Heywood section 4.9; tolerance 0.03. A constant efficiency on all the fuel would
    # give 1 / lambda: +25 % at 0.80, the wrong way.
    (carbon, hydrogen, oxygen), _ = MOLECULES["iso-octane"]
    atoms = {"carbon_atoms": carbon, "hydrogen_atoms": hydrogen, "oxygen_atoms": oxygen}
    mass = FORMULAS["fuel_molar_mass"](**atoms)
    share = FORMULAS["combustion_efficiency"](
        **atoms, lambda_ratio=lambda_ratio, heating_value=44.34719e6, fuel_molar_mass=mass
    )
    at_one = FORMULAS["stoichiometric_air_fuel_ratio"](**atoms, fuel_molar_mass=mass)
    air = FORMULAS["air_fuel_ratio"](
        lambda_ratio=lambda_ratio, stoichiometric_air_fuel_ratio=at_one
    )

    assert (share / air) / (1 / at_one) == pytest.approx(per_air, abs=0.03)


def test_the_heat_for_each_mass_of_fuel_at_a_rich_mixture() -> None:
    # Iso-octane at lambda 0.85, as above: 0.8031455, tolerance 0.03.
    (carbon, hydrogen, oxygen), _ = MOLECULES["iso-octane"]
    atoms = {"carbon_atoms": carbon, "hydrogen_atoms": hydrogen, "oxygen_atoms": oxygen}

    share = FORMULAS["combustion_efficiency"](
        **atoms,
        lambda_ratio=0.85,
        heating_value=44.34719e6,
        fuel_molar_mass=FORMULAS["fuel_molar_mass"](**atoms),
    )

    assert share == pytest.approx(0.8031455, abs=0.03)
    # Close to 0.92 to 0.97 of lambda between 0.8 and 0.9.
    assert 0.92 * 0.85 < share < 0.97 * 0.85
