"""Formulas against independent libraries, at random points of their valid range.

CoolProp (IAPWS-95 water, real-gas moist air and air), Cantera (molecules of nasa_gas.yaml), ht
(heat exchangers) and fluids (pipe flow, atmosphere). Each tolerance is what the ideal form is
known to miss, and is said beside it.
"""

from __future__ import annotations

import cantera
import fluids
import ht
import numpy as np
import pytest
from CoolProp.CoolProp import HAPropsSI, PropsSI

from hoistbook.engineering import FORMULAS, FUELS
from hoistbook.engineering.maths import Value
from hoistbook.units import from_unit, to_unit

POINTS = 40


def sample(**ranges: tuple[float, float]) -> dict[str, np.ndarray]:
    """Draw the same random points on every run, each quantity from its own range."""
    random = np.random.default_rng(1976)
    return {key: random.uniform(low, high, POINTS) for key, (low, high) in ranges.items()}


def work_out(values: dict[str, np.ndarray], *names: str) -> dict[str, Value]:
    """Call formulas one after the other on what is known so far."""
    known: dict[str, Value] = dict(values)
    for name in names:
        formula = FORMULAS[name]
        known[formula.result] = formula(
            **{key: known[key] for key in formula.parameters if key in known}
        )
    return known


def test_saturation_pressure_is_that_of_real_water() -> None:
    air = sample(air_temperature=(273.16, 323.15))

    ours = work_out(air, "saturation_pressure")["saturation_pressure"]

    # The formula lies within 0.05 % of IAPWS-95 between 0 and 50 degrees.
    theirs = PropsSI("P", "T", air["air_temperature"], "Q", 0, "Water")
    assert ours == pytest.approx(theirs, rel=5e-4)


def test_the_density_of_moist_air_is_that_of_the_real_gas() -> None:
    air = sample(
        air_pressure=(60e3, 110e3), air_temperature=(253.15, 323.15), relative_humidity=(0, 1)
    )

    ours = work_out(air, "saturation_pressure", "vapour_pressure", "air_density")["air_density"]

    volume_and_ratio = [
        (HAPropsSI("Vha", *state), HAPropsSI("W", *state))
        for state in (
            ("P", p, "T", t, "R", r) for p, t, r in zip(*(air[key] for key in air), strict=True)
        )
    ]
    theirs = [1 / volume for volume, _ in volume_and_ratio]
    # The ideal gas is 0.03 to 0.1 % low.
    assert ours == pytest.approx(np.array(theirs), rel=1.1e-3)


def test_the_humidity_ratio_is_that_of_the_real_gas() -> None:
    air = sample(
        air_pressure=(60e3, 110e3), air_temperature=(273.16, 323.15), relative_humidity=(0.1, 1)
    )

    ours = work_out(air, "saturation_pressure", "vapour_pressure", "humidity_ratio")

    theirs = [
        HAPropsSI("W", "P", p, "T", t, "R", r)
        for p, t, r in zip(*(air[key] for key in air), strict=True)
    ]
    # Without the enhancement factor the ratio is 0.4 to 0.6 % low.
    assert ours["humidity_ratio"] == pytest.approx(np.array(theirs), rel=0.0065)


def test_water_vapour_weighs_against_air_what_their_molecules_do() -> None:
    # CoolProp 8.0.0: 18.01527 over 28.9655 g/mol; 1e-4 for the air that each source means.
    vapour, air = 1.0, 100e3

    ours = FORMULAS["humidity_ratio"](vapour_pressure=vapour, air_pressure=air)

    assert ours * (air - vapour) / vapour == pytest.approx(
        PropsSI("M", "Water") / PropsSI("M", "Air"), rel=1e-4
    )


@pytest.mark.parametrize(("height", "density"), [(1000.0, 1.111659), (2000.0, 1.006553)])
def test_the_standard_atmosphere_has_the_density_of_the_table(
    height: float, density: float
) -> None:
    # fluids 1.3.1 (ATMOSPHERE_1976) at geometric heights, 0.05 %: admits either kind of height.
    state = work_out({"altitude": np.array([height])}, "standard_temperature", "standard_pressure")

    ours = FORMULAS["pipe_density"](
        pipe_pressure=state["standard_pressure"], pipe_temperature=state["standard_temperature"]
    )

    assert fluids.ATMOSPHERE_1976(height).rho == pytest.approx(density, rel=1e-6)
    assert ours == pytest.approx([density], rel=5e-4)


def test_the_standard_atmosphere_agrees_with_a_library_up_to_3_km() -> None:
    state = sample(altitude=(0.0, 3000.0))

    ours = work_out(state, "standard_pressure")["standard_pressure"]

    # The library takes geometric height, 0.05 % of the height less at 3 km.
    theirs = [fluids.ATMOSPHERE_1976(height).P for height in state["altitude"].tolist()]
    assert ours == pytest.approx(np.array(theirs), rel=5e-4)


def test_pressure_altitude_undoes_the_standard_pressure() -> None:
    state = work_out(sample(altitude=(0.0, 5000.0)), "standard_pressure")

    heights = FORMULAS["pressure_altitude"](air_pressure=state["standard_pressure"])

    assert heights == pytest.approx(state["altitude"], abs=1e-6)


def test_the_compressor_heats_the_air_as_it_heats_real_air() -> None:
    compressor = sample(
        compressor_inlet_temperature=(253.15, 333.15),
        pressure_ratio=(1.02, 3.2),
        compressor_efficiency=(0.4, 0.85),
    )

    worked = work_out(
        compressor | {"engine_air_flow": np.ones(POINTS)},
        "compressor_outlet_temperature",
        "compressor_power",
    )

    inlet, ratio, efficiency = (compressor[key] for key in compressor)
    pressure = 98e3
    enthalpy = PropsSI("H", "P", pressure, "T", inlet, "Air")
    entropy = PropsSI("S", "P", pressure, "T", inlet, "Air")
    rise = (PropsSI("H", "P", ratio * pressure, "S", entropy, "Air") - enthalpy) / efficiency
    outlet = PropsSI("T", "P", ratio * pressure, "H", enthalpy + rise, "Air")
    # Constant specific heats are up to 2.5 % of the rise high; power within 1 %.
    high = (worked["compressor_outlet_temperature"] - outlet) / (outlet - inlet)
    assert (high > -0.01).all()
    assert (high < 0.025).all()
    common = (efficiency > 0.65) & (np.abs(inlet - 298) < 20)
    assert np.abs(worked["compressor_outlet_temperature"] - outlet)[common].max() < 2.5
    assert worked["compressor_power"] == pytest.approx(rise, rel=0.01)


def test_the_efficiency_worked_back_is_the_one_put_in() -> None:
    compressor = sample(
        compressor_inlet_temperature=(278.15, 318.15),
        pressure_ratio=(1.2, 3.2),
        compressor_efficiency=(0.6, 0.8),
    )

    worked = work_out(compressor, "compressor_outlet_temperature", "isentropic_efficiency")

    assert worked["compressor_efficiency"] == pytest.approx(compressor["compressor_efficiency"])


def test_the_effectiveness_of_cross_flow_is_near_the_exact_integral() -> None:
    cooler = sample(transfer_units=(0.1, 5.0), capacity_rate_ratio=(0.05, 1.0))

    ours = work_out(cooler, "cooler_effectiveness")["cooler_effectiveness"]

    pairs = zip(*(each.tolist() for each in cooler.values()), strict=True)
    both = [
        [
            ht.effectiveness_from_NTU(NTU=units, Cr=ratio, subtype=subtype)
            for subtype in ("crossflow", "crossflow approximate")
        ]
        for units, ratio in pairs
    ]
    exact, approximate = np.array(both).T
    assert ours == pytest.approx(exact, rel=0, abs=0.012)
    assert ours == pytest.approx(approximate, rel=0, abs=1e-5)


# Formula of the fuel, its name in Cantera's nasa_gas.yaml.
MOLECULES = {
    "iso-octane": ((8, 18, 0), "C8H18,isooctane"),
    "n-heptane": ((7, 16, 0), "C7H16,n-heptane"),
    "toluene": ((7, 8, 0), "C7H8"),
    "ethanol": ((2, 6, 1), "C2H5OH"),
    "methanol": ((1, 4, 1), "CH3OH"),
}


@pytest.mark.parametrize("fuel", MOLECULES)
def test_the_stoichiometric_air_fuel_ratio_burns_all_the_oxygen(fuel: str) -> None:
    (carbon, hydrogen, oxygen), species = MOLECULES[fuel]
    names = [species, "O2", "N2", "Ar", "CO2", "H2O"]
    known = {each.name: each for each in cantera.Species.list_from_file("nasa_gas.yaml")}
    gas = cantera.Solution(thermo="ideal-gas", species=[known[name] for name in names])
    air = "O2:0.20946, N2:0.78084, Ar:0.00934"

    mass = FORMULAS["fuel_molar_mass"](
        carbon_atoms=carbon, hydrogen_atoms=hydrogen, oxygen_atoms=oxygen
    )
    ours = FORMULAS["stoichiometric_air_fuel_ratio"](
        carbon_atoms=carbon, hydrogen_atoms=hydrogen, oxygen_atoms=oxygen, fuel_molar_mass=mass
    )

    # Cantera's air has no carbon dioxide: 0.1 %.
    assert ours == pytest.approx(gas.stoich_air_fuel_ratio(species, air), rel=1e-3)


def test_pure_ethanol_and_methanol_of_the_table_are_those_of_their_formulas() -> None:
    for name in ("ethanol", "methanol"):
        (carbon, hydrogen, oxygen), _ = MOLECULES[name]
        atoms = {"carbon_atoms": carbon, "hydrogen_atoms": hydrogen, "oxygen_atoms": oxygen}
        mass = FORMULAS["fuel_molar_mass"](**atoms)
        ratio = FORMULAS["stoichiometric_air_fuel_ratio"](**atoms, fuel_molar_mass=mass)
        assert FUELS[name].stoichiometric_air_fuel_ratio.value == pytest.approx(ratio, rel=0.005)


def test_the_density_of_ethanol_is_that_of_a_library() -> None:
    # CoolProp 8.0.0 gives 789.42 kg/m3 at 20 degrees; 0.4 %.
    theirs = PropsSI("D", "T", 293.15, "P", 101325.0, "Ethanol")

    assert FUELS["ethanol"].density.value == pytest.approx(theirs, rel=0.004)


def test_the_rule_of_thumb_for_pounds_an_hour_is_not_that_of_n_heptane() -> None:
    # CoolProp 8.0.0 gives 683.82 kg/m3 at 20 degrees: 11.06 cc/min to 1 lb/h, where the trade
    # says 10.5 and so means 720 kg/m3.
    density = PropsSI("D", "T", 293.15, "P", 101325.0, "n-Heptane")

    flow = FORMULAS["injector_mass_flow"](
        injector_static_flow=from_unit(1.0, "cc/min"), fuel_density=density
    )

    assert density == pytest.approx(683.8153, rel=0.004)
    assert 1 / to_unit(flow, "lb/h") == pytest.approx(11.06, abs=0.005)


def test_velocity_and_mach_number_are_those_of_real_air() -> None:
    pipe = sample(
        mass_flow=(0.02, 0.4),
        pipe_temperature=(280.0, 420.0),
        pipe_pressure=(90e3, 300e3),
        pipe_bore=(0.04, 0.09),
    )

    worked = work_out(pipe, "pipe_velocity", "mach_number")

    state = ("P", pipe["pipe_pressure"], "T", pipe["pipe_temperature"], "Air")
    velocity = pipe["mass_flow"] / (PropsSI("D", *state) * np.pi * pipe["pipe_bore"] ** 2 / 4)
    # Air is an ideal gas within 0.2 % here, and its ratio of specific heats falls to 1.395.
    assert worked["pipe_velocity"] == pytest.approx(velocity, rel=2e-3)
    assert worked["mach_number"] == pytest.approx(velocity / PropsSI("A", *state), rel=3e-3)


def test_the_viscosity_is_that_of_real_air() -> None:
    pipe = sample(pipe_temperature=(250.0, 500.0))

    ours = work_out(pipe, "dynamic_viscosity")["dynamic_viscosity"]

    theirs = PropsSI("V", "P", 101325.0, "T", pipe["pipe_temperature"], "Air")
    assert ours == pytest.approx(theirs, rel=0.015)


def test_the_friction_factor_is_that_of_the_paper_and_near_colebrook() -> None:
    # Evenly over the powers of ten of the whole range, to a twentieth of the bore.
    powers = sample(reynolds_number=(np.log10(4e3), 8.0), roughness=(-7.0, np.log10(0.003)))
    pipe = {key: 10**each for key, each in powers.items()}
    bore = 0.06

    ours = work_out(pipe | {"pipe_bore": bore}, "friction_factor")["friction_factor"]

    pairs = list(zip(*(each.tolist() for each in pipe.values()), strict=True))
    haaland = [fluids.friction.Haaland(re, roughness / bore) for re, roughness in pairs]
    colebrook = [fluids.Colebrook(re, roughness / bore) for re, roughness in pairs]
    assert ours == pytest.approx(np.array(haaland), rel=5e-4)
    # The paper states 2 % between the two.
    assert ours == pytest.approx(np.array(colebrook), rel=0.02)


def test_the_loss_of_a_bend_is_that_of_a_library() -> None:
    bend = sample(
        bend_radius_ratio=(1.0, 20.0), bend_angle=(0.05, np.pi), friction_factor=(0.008, 0.03)
    )

    ours = work_out(bend, "bend_loss_coefficient")["bend_loss_coefficient"]

    theirs = [
        fluids.fittings.bend_rounded(
            Di=0.06, angle=float(np.degrees(angle)), bend_diameters=ratio, fd=friction, Re=2e5
        )
        for ratio, angle, friction in zip(*(each.tolist() for each in bend.values()), strict=True)
    ]
    # The library has the same equation.
    assert ours == pytest.approx(np.array(theirs), rel=1e-9)


def test_the_throat_chokes_at_the_pressure_that_a_library_gives() -> None:
    gas = sample(heat_capacity_ratio=(1.28, 1.4))

    ours = work_out(gas, "critical_pressure_ratio")["critical_pressure_ratio"]

    theirs = [fluids.P_critical_flow(1.0, k) for k in gas["heat_capacity_ratio"].tolist()]
    assert ours == pytest.approx(np.array(theirs), rel=1e-9)


def test_the_choked_flow_is_that_at_the_critical_state() -> None:
    throat = sample(stagnation_pressure=(90e3, 250e3), stagnation_temperature=(280.0, 330.0))

    ours = FORMULAS["choked_flow"](discharge_coefficient=1.0, throat_diameter=0.032, **throat)

    # Density times speed of sound at the critical state, from the library's isentropic relations.
    pressure, temperature = throat.values()
    critical_temperature = np.array(
        [fluids.T_critical_flow(each, 1.4) for each in temperature.tolist()]
    )
    critical_pressure = np.array([fluids.P_critical_flow(each, 1.4) for each in pressure.tolist()])
    density = critical_pressure / (287.05 * critical_temperature)
    flux = density * np.sqrt(1.4 * 287.05 * critical_temperature)
    assert ours == pytest.approx(flux * np.pi * 0.032**2 / 4, rel=1e-9)


def test_the_flow_through_a_throat_is_that_of_real_air() -> None:
    throat = sample(
        stagnation_pressure=(90e3, 250e3),
        stagnation_temperature=(280.0, 330.0),
        critical_pressure_ratio=(0.5283, 0.5284),
    )
    share = sample(share=(0.6, 0.98))["share"]
    throat["throat_pressure"] = throat["stagnation_pressure"] * share

    ours = FORMULAS["throat_flow"](discharge_coefficient=1.0, throat_diameter=0.032, **throat)

    # From rest to the throat without loss of heat or friction, with the library's real air.
    rest = ("P", throat["stagnation_pressure"], "T", throat["stagnation_temperature"], "Air")
    behind = ("P", throat["throat_pressure"], "S", PropsSI("S", *rest), "Air")
    velocity = np.sqrt(2 * (PropsSI("H", *rest) - PropsSI("H", *behind)))
    theirs = PropsSI("D", *behind) * velocity * np.pi * 0.032**2 / 4
    assert ours == pytest.approx(theirs, rel=3e-3)
