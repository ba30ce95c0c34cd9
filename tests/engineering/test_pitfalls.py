"""Slips that are easily made with these formulas, each held to what it costs.

What each slip costs was computed apart from the program: with CoolProp and Cantera where air and
fuel are real, with plain arithmetic where an identity decides.
"""

from __future__ import annotations

import numpy as np
import pytest

from hoistbook.engineering import FORMULAS, FUELS
from hoistbook.engineering.relations import colebrook_friction_factor
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.units import from_unit, to_unit


def value(name: str, **given: float) -> float:
    return float(FORMULAS[name](**given))


def test_the_pressure_of_a_weather_report_is_not_that_of_the_place() -> None:
    # US Standard Atmosphere 1976: 3.5 % between sea level and 300 m.
    on_the_spot = value("standard_pressure", altitude=300.0)

    assert 101325.0 / on_the_spot - 1 == pytest.approx(0.036, abs=0.001)


def test_muggy_air_has_less_oxygen() -> None:
    # Computed with CoolProp 8.0.0: 4 % of the oxygen at 35 degrees and 70 %, against dry air.
    vapour = value(
        "vapour_pressure",
        relative_humidity=0.7,
        saturation_pressure=value("saturation_pressure", air_temperature=308.15),
    )
    dry = value("dry_air_pressure", air_pressure=100e3, vapour_pressure=vapour)

    assert 1 - dry / 100e3 == pytest.approx(0.04, abs=0.002)


def test_an_inch_of_mercury_is_that_of_mercury_at_the_point_of_ice() -> None:
    # NIST SP 811, appendix B.8: 3386.389 Pa at 0 degrees, 3376.85 Pa at 60 degF.
    assert from_unit(1.0, "inHg") == pytest.approx(3386.389, rel=2e-6)


def test_a_filling_referred_to_the_surrounding_air_holds_the_boost_already() -> None:
    # Identity: 0.95 of the manifold's density at twice the pressure is 1.9 of the ambient density,
    # so putting an ambient filling in beside the boost counts the boost twice.
    given = {"displacement": 2e-3, "engine_speed": 6500.0, "revolutions_per_cycle": 2.0}
    by_manifold = value("engine_air_flow", volumetric_efficiency=0.95, charge_density=2.2, **given)
    by_ambient = value("engine_air_flow", volumetric_efficiency=1.9, charge_density=1.1, **given)
    twice = value("engine_air_flow", volumetric_efficiency=1.9, charge_density=2.2, **given)

    assert by_manifold == pytest.approx(by_ambient)
    assert twice == pytest.approx(2 * by_manifold)


def test_a_log_without_charge_temperature_cannot_fix_the_filling() -> None:
    # 27 windows of a test-bench engine: 10 K move the filling by 0.03.
    density = [
        value(
            "charge_density",
            manifold_absolute_pressure=166e3,
            charge_temperature=each,
            humidity_ratio=0.0,
        )
        for each in (323.15, 333.15)
    ]
    assert 0.95 * (density[0] / density[1] - 1) == pytest.approx(0.03, abs=0.002)


def test_leaving_out_filter_and_cooler_understates_the_pressure_ratio() -> None:
    # Computed: by 0.1 to 0.4 over common losses.
    for air, boost, before, behind in ((101.3e3, 100e3, 3e3, 10e3), (84.5e3, 140e3, 5e3, 15e3)):
        inlet = value("compressor_inlet_pressure", air_pressure=air, inlet_loss=before)
        outlet = value(
            "compressor_outlet_pressure",
            manifold_absolute_pressure=air + boost,
            charge_path_loss=behind,
        )
        whole = value(
            "pressure_ratio", compressor_outlet_pressure=outlet, compressor_inlet_pressure=inlet
        )

        assert 0.1 <= whole - (air + boost) / air <= 0.4


def test_a_constant_efficiency_of_the_compressor_costs_kelvins() -> None:
    # Computed: 0.70 +- 0.05 moves the outlet by about 7 K at a ratio of 2 and 9 K at 2.5.
    for ratio, kelvin in ((2.0, 7.0), (2.5, 9.0)):
        cold, hot = (
            value(
                "compressor_outlet_temperature",
                compressor_inlet_temperature=298.15,
                pressure_ratio=ratio,
                compressor_efficiency=each,
            )
            for each in (0.75, 0.65)
        )
        assert (hot - cold) / 2 == pytest.approx(kelvin, abs=1.0)


def test_the_same_flow_reads_differently_on_maps_of_other_reference_air() -> None:
    # 545 R and 13.95 psia against 288.15 K and 101.325 kPa: 40.9 and 44.1 lb/min.
    read = [
        value(
            "corrected_flow",
            engine_air_flow=from_unit(40.0, "lb/min"),
            compressor_inlet_temperature=308.15,
            compressor_inlet_pressure=95e3,
            map_reference_temperature=temperature,
            map_reference_pressure=pressure,
        )
        for temperature, pressure in ((302.78, 96182.0), (288.15, 101325.0))
    ]

    assert read[1] / read[0] == pytest.approx(1.08, abs=0.002)


def test_pressure_lost_in_a_cooler_counts_against_it() -> None:
    # Definition of the density ratio: 5 % of the pressure is 5 % of the density.
    inlet = {"compressor_inlet_pressure": 99e3, "compressor_inlet_temperature": 298.15}
    kept, lost = (
        value("density_ratio", manifold_absolute_pressure=each, charge_temperature=328.15, **inlet)
        for each in (200e3, 190e3)
    )

    assert lost / kept == pytest.approx(0.95)


def test_air_fuel_ratios_are_averaged_by_mass_and_never_by_volume() -> None:
    # Computed with Cantera 3.2.0: E51 has 11.66, and 11.74 when averaged by volume.
    by_volume = 0.49 * 14.6 + 0.51 * 9.0
    share = value(
        "mass_fraction_second",
        volume_fraction_second=0.51,
        fuel_density_second=789.0,
        fuel_density=767.44,
    )
    by_mass = value(
        "blend_air_fuel_ratio",
        mass_fraction_second=share,
        air_fuel_ratio_first=14.6,
        air_fuel_ratio_second=9.0,
    )

    assert by_mass == pytest.approx(11.66, abs=0.005)
    assert 0.002 < by_volume / by_mass - 1 < 0.0075


def test_pure_ethanol_needs_half_as_much_volume_again() -> None:
    # Computed: 51 to 53 % more, at the same efficiency or the same lambda.
    petrol, ethanol = FUELS["petrol"], FUELS["ethanol"]
    by_heat = petrol.heating_value.value * petrol.density.value
    by_heat /= ethanol.heating_value.value * ethanol.density.value
    by_air = petrol.stoichiometric_air_fuel_ratio.value * petrol.density.value
    by_air /= ethanol.stoichiometric_air_fuel_ratio.value * ethanol.density.value

    assert 1.50 < by_heat < 1.56
    assert 1.50 < by_air < 1.56


def test_ten_horsepower_for_a_pound_of_air_a_minute_is_one_mixture_and_one_consumption() -> None:
    # Identity: 12 to 1 and 0.50 lb/(hp h) give 10; 11.5 and 0.60 give 8.7.
    for ratio, consumption, expected in ((12.0, 0.50, 10.0), (11.5, 0.60, 8.696)):
        power = value(
            "power_of_fuel_flow",
            fuel_flow=from_unit(1.0, "lb/min") / ratio,
            brake_specific_fuel_consumption=from_unit(consumption, "lb/(hp h)"),
        )
        assert to_unit(power, "hp") == pytest.approx(expected, rel=1e-3)


def test_a_rich_mixture_gives_hardly_more_work_for_its_air() -> None:
    # Cycle simulation with Cantera: 1.00 +- 0.03 from lambda 0.78 to 1.00, falling steeply above;
    # a constant efficiency on all the fuel would give 1.25 at 0.80.
    for lambda_ratio in np.linspace(0.78, 1.0, 12).tolist():
        factor = value("mixture_factor", lambda_ratio=lambda_ratio)
        assert factor == pytest.approx(1.0, abs=0.03)
    assert value("mixture_factor", lambda_ratio=1.05) < 0.97


def test_friction_and_back_pressure_are_told_apart() -> None:
    # Computed: 1.5 times a manifold at 2 bar absolute costs 1 bar, and friction holds none of it.
    pumping = value(
        "pumping_mean_effective_pressure",
        exhaust_manifold_pressure=300e3,
        manifold_absolute_pressure=200e3,
    )

    assert pumping == pytest.approx(1e5)
    assert "manifold_absolute_pressure" not in (
        FORMULAS["friction_mean_effective_pressure"].parameters
    )


def test_the_loss_to_the_wheels_is_a_share_of_the_crank_and_not_of_the_wheels() -> None:
    # P_crank = P_wheel / (1 - f): 235.3 kW of 200 kW and 15 %, where adding 15 % gives 230 kW.
    crank = value("power_of_wheel_power", wheel_power=200e3, drivetrain_loss=0.15)

    assert crank == pytest.approx(235.294e3, rel=1e-5)
    assert crank != pytest.approx(230e3, rel=0.01)


def test_litres_an_hour_are_not_litres_a_minute() -> None:
    assert from_unit(255.0, "L/min") / from_unit(255.0, "L/h") == pytest.approx(60.0)


def test_a_fixed_regulator_loses_the_boost_from_its_difference() -> None:
    # Gauge rail less gauge manifold: 3 bar and 1 bar of boost leave 2, so 18 % less flow.
    flows = [
        value(
            "injector_static_flow",
            rated_static_flow=from_unit(550.0, "cc/min"),
            injector_pressure_difference=difference,
            rated_pressure_difference=300e3,
        )
        for difference in (300e3, 200e3)
    ]

    assert flows[1] / flows[0] == pytest.approx(np.sqrt(2 / 3), rel=1e-9)


def test_a_millisecond_of_dead_time_is_seven_per_cent_at_8000() -> None:
    # Identity: a cycle of 15 ms.
    cycle = value("injector_cycle_time", engine_speed=8000.0, revolutions_per_cycle=2.0)

    assert cycle == pytest.approx(0.015)
    assert 1e-3 / cycle == pytest.approx(0.0667, abs=1e-4)


def test_the_fluid_that_injectors_are_rated_with_lies_between_heptane_and_petrol() -> None:
    # CoolProp 8.0.0, n-heptane at 20 degrees: 683.8 kg/m3; EN 228 petrol from 720.
    default = DEFAULTS["rated_fluid_density"]

    assert default.value - default.half_width < 683.8153 < 745 < default.value + default.half_width


def test_the_air_in_a_boosted_pipe_is_not_that_of_the_surroundings() -> None:
    # The velocity with the density of the surroundings is too high by the ratio of the densities.
    given = {"mass_flow": 0.25, "pipe_temperature": 298.15, "pipe_bore": 0.060}
    inside = value("pipe_velocity", pipe_pressure=200e3, **given)
    outside = value("pipe_velocity", pipe_pressure=100e3, **given)

    assert outside / inside == pytest.approx(2.0)


def test_a_wall_counted_into_the_bore_slows_the_air_by_a_tenth() -> None:
    # Identity: 60 mm outside with 1.5 mm of wall have a bore of 57 mm.
    given = {"mass_flow": 0.25, "pipe_temperature": 298.15, "pipe_pressure": 200e3}
    outside, bore = (value("pipe_velocity", pipe_bore=each, **given) for each in (0.060, 0.057))

    assert bore / outside == pytest.approx((60 / 57) ** 2)


def test_the_friction_factor_is_the_one_after_darcy() -> None:
    # White, Fluid Mechanics (from memory): 0.018 at Re 1e5 in a smooth pipe; the one after Fanning
    # is a quarter.
    ours = value("friction_factor", reynolds_number=1e5, roughness=1.5e-6, pipe_bore=0.060)

    assert ours == pytest.approx(float(colebrook_friction_factor(1e5, 1.5e-6, 0.060)), rel=0.02)
    assert ours > 0.017


def test_ten_per_cent_of_power_are_three_of_the_end_speed_of_a_quarter_mile() -> None:
    # Cube root: 3.2 %; read backwards an error of the speed is three times that of the power.
    given = {"vehicle_mass": 1200.0, "trap_speed_constant": 100.0}
    slow, fast = (value("trap_speed", power=each, **given) for each in (200e3, 220e3))

    assert fast / slow - 1 == pytest.approx(0.0323, abs=2e-4)


def test_a_cubic_centimetre_of_the_chamber_moves_the_compression_ratio() -> None:
    # Computed: by about 0.16 in a cylinder of 500 cm3 at 10 to 1.
    ratios = [
        value("compression_ratio_of_volumes", swept_volume=500e-6, clearance_volume=each)
        for each in (500e-6 / 9, 500e-6 / 9 + 1e-6)
    ]

    assert ratios[0] - ratios[1] == pytest.approx(0.16, abs=0.005)
