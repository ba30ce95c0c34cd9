"""What is taken where the author says nothing: the only table of its kind.

It holds an input's value and band where neither the car, its settings nor its parts give one. Each
line carries its reason. All are SI.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.fit.fasteners import SHARE_OF_PROOF

NORMAL = "normal"
RECTANGULAR = "rectangular"
PRACTICE = "common practice, no source"
DEGREE = math.pi / 180
MILE_PER_HOUR = 0.44704


@dataclass(frozen=True, slots=True)
class Default:
    """An input that nobody gave: its value, half its 95 % band (or half its range), and why."""

    value: float
    half_width: float
    reason: str
    shape: str = NORMAL


DEFAULTS: Mapping[str, Default] = MappingProxyType(
    {
        # The air that an estimate is made for.
        "air_pressure": Default(
            100e3, 3e3, f"from sea level to some 300 m, in common weather ({PRACTICE})"
        ),
        "air_temperature": Default(293.15, 10.0, f"a day from cool to warm ({PRACTICE})"),
        "relative_humidity": Default(0.5, 0.3, f"neither dry nor muggy air ({PRACTICE})"),
        # Breathing.
        "volumetric_efficiency": Default(
            1.03,
            0.133,
            "full load at the speed of best filling, referred to the density in the manifold; 6 "
            f"to 7 % one standard deviation without a run or an air meter ({PRACTICE}). With it "
            "the middle of 92 catalogue engines is met, and the band holds 19 of 20 of them (data "
            "set Cars93 of R's package MASS)",
        ),
        "inlet_loss": Default(3e3, 2.5e3, f"filter and inlet pipe at full flow ({PRACTICE})"),
        "intake_heating, unboosted": Default(
            10.0, 8.0, f"air warmed under the bonnet and by the manifold ({PRACTICE})"
        ),
        "intake_heating, boosted": Default(
            10.0, 12.0, f"air warmed under the bonnet, where a turbine is hot too ({PRACTICE})"
        ),
        "boost, unboosted": Default(
            -3e3, 2.5e3, f"what filter, inlet pipe and throttle take at full load ({PRACTICE})"
        ),
        "charge_path_loss": Default(
            8e3, 6e3, f"charge cooler and pipes at full flow ({PRACTICE})"
        ),
        "compressor_efficiency": Default(
            0.70, 0.08, f"0.65 to 0.78 stands on compressor maps, less at their edge ({PRACTICE})"
        ),
        "compressor_efficiency, driven": Default(
            0.60,
            0.12,
            "0.50 to 0.60 for lobes, 0.60 to 0.75 for screws and wheels that the crank drives "
            f"({PRACTICE})",
        ),
        "drive_efficiency": Default(0.95, 0.03, f"a ribbed belt, 0.92 to 0.98 ({PRACTICE})"),
        "cooler_effectiveness, uncooled": Default(
            0.0, 0.0, "there is no charge cooler on the car"
        ),
        "rated_charge_density": Default(
            1.6, 0.4, f"makers state a loss anywhere between 1 and 2 bar absolute ({PRACTICE})"
        ),
        "cooler_effectiveness": Default(
            0.70,
            0.15,
            "front-mounted, air to air: 0.60 to 0.80 in motion, less where the air stands "
            f"({PRACTICE})",
        ),
        "core_conductance": Default(
            28e3,
            10e3,
            "of rows and fins as usual, at 20 g/s of charge for each litre of core; makes a core "
            f"in front of the car 0.6 to 0.8 effective ({PRACTICE})",
            RECTANGULAR,
        ),
        "cooling_ratio": Default(
            4.5,
            2.5,
            f"a core in front of a moving car has 2 to 7 times the charge's air ({PRACTICE})",
            RECTANGULAR,
        ),
        # From air to work.
        "lambda_ratio, boosted": Default(
            0.85, 0.07, f"full load under boost, petrol or ethanol blend ({PRACTICE})"
        ),
        "lambda_ratio, unboosted": Default(0.90, 0.07, f"full load without boost ({PRACTICE})"),
        "reference_indicated_efficiency": Default(
            0.38,
            0.036,
            "cycle calculations give 0.40; real engines lose some 5 % more, give or take 5 % (one "
            f"standard deviation), to blow-by, uneven cycles and heat ({PRACTICE})",
        ),
        "exhaust_pressure_ratio, boosted": Default(
            1.25,
            0.25,
            f"1.0 to 1.5 times the absolute pressure in the inlet manifold ({PRACTICE})",
            RECTANGULAR,
        ),
        "exhaust_pressure_ratio, unboosted": Default(
            1.07, 0.07, f"back-pressure of an exhaust with silencer ({PRACTICE})", RECTANGULAR
        ),
        "exhaust_pressure_ratio, driven": Default(
            1.15,
            0.10,
            f"an exhaust without a turbine at the flow of an engine under boost ({PRACTICE})",
            RECTANGULAR,
        ),
        "ignition_retard, boosted": Default(
            5 * DEGREE,
            5 * DEGREE,
            f"0 to 10 degrees later than best torque, to stay clear of knock ({PRACTICE}); no "
            "timing can be recommended from it",
            RECTANGULAR,
        ),
        "ignition_retard, unboosted": Default(
            2 * DEGREE, 2 * DEGREE, f"near the timing of best torque ({PRACTICE})", RECTANGULAR
        ),
        "friction_scale": Default(
            0.75,
            0.10,
            "the formula was fitted to engines of the 1970s; later ones have 20 to 30 % less "
            f"({PRACTICE})",
        ),
        "drivetrain_loss": Default(
            0.15,
            0.05,
            "gearbox, final drive and tyres take 10 to 20 % of the crank's power, and not a fixed "
            f"share of it ({PRACTICE})",
            RECTANGULAR,
        ),
        "revolutions_per_cycle": Default(2.0, 0.0, "a four-stroke engine"),
        # Fuel.
        "volume_fraction_second": Default(
            0.67,
            0.16,
            "pump blends hold 51 to 83 % ethanol by season and place (ASTM D5798)",
            RECTANGULAR,
        ),
        "rated_pressure_difference": Default(
            300e3, 30e3, f"most makers state injector flow at 3 bar ({PRACTICE})"
        ),
        "rated_fluid_density": Default(
            715.0, 40.0, f"from n-heptane to petrol; makers seldom say ({PRACTICE})"
        ),
        "base_fuel_pressure": Default(300e3, 15e3, f"a 3 bar regulator ({PRACTICE})"),
        "fuel_line_loss": Default(20e3, 20e3, f"fuel line and filter ({PRACTICE})"),
        "rated_pump_pressure": Default(
            300e3, 50e3, f"flow stated without its pressure: taken to be at 3 bar ({PRACTICE})"
        ),
        "pump_fade_pressure": Default(
            11e5,
            4e5,
            "free flow is 30 to 50 % above that at 4.5 bar, so a pump loses 7 to 14 % of its "
            f"stated flow with each bar ({PRACTICE})",
        ),
        "pump_voltage": Default(
            13.5,
            0.8,
            "the alternator at work, less what relay and wire take; nearer to 12 V where the wire "
            f"is thin or the idle is low ({PRACTICE})",
        ),
        "rated_pump_voltage": Default(
            13.5, 0.5, f"most makers state the flow of a pump at 13.5 V, some at 14 ({PRACTICE})"
        ),
        "pump_voltage_exponent": Default(
            1.4,
            0.4,
            f"a pump at 12 V gives 80 to 89 % of what it gives at 13.5 V ({PRACTICE})",
            RECTANGULAR,
        ),
        "pump_efficiency": Default(
            0.27,
            0.13,
            f"of pump and motor together, 25 to 40 %, small ones down to 15 % ({PRACTICE})",
            RECTANGULAR,
        ),
        "dead_time": Default(
            1.0e-3,
            0.5e-3,
            f"0.5 to 1.5 ms, by voltage and pressure ({PRACTICE})",
            RECTANGULAR,
        ),
        # Pipes and throats.
        "roughness": Default(
            24e-6,
            22e-6,
            "from drawn tube, 0.002 mm, to commercial steel, 0.046 mm (White, Fluid Mechanics, "
            "table 6.1; from memory)",
            RECTANGULAR,
        ),
        "bend_count": Default(
            1.0, 1.0, f"none to two bends, where nobody counts them ({PRACTICE})", RECTANGULAR
        ),
        "bend_angle": Default(90 * DEGREE, 0.0, "bends of 90 degrees, where nobody says"),
        "bend_radius_ratio": Default(
            1.5, 0.5, f"bends as sold, of one to two bores ({PRACTICE})", RECTANGULAR
        ),
        "bend_loss_scale": Default(
            1.0, 0.2, "the published methods for bends scatter by a fifth (computed with fluids)"
        ),
        "end_loss_coefficients": Default(
            0.75,
            0.75,
            "from smooth hoses at both ends to a pipe between two tanks, 0.5 and 1 (White, Fluid "
            "Mechanics, section 6.9; from memory)",
            RECTANGULAR,
        ),
        "discharge_coefficient, throat": Default(
            0.92, 0.07, f"from a throttle plate to a bell mouth ({PRACTICE})", RECTANGULAR
        ),
        # Heat and oil.
        "coolant_share": Default(
            0.215,
            0.045,
            "17 to 26 % of the fuel's energy at full power (Heywood 1988, table 12.1; from "
            "memory)",
            RECTANGULAR,
        ),
        "oil_and_surface_share": Default(
            0.065,
            0.035,
            "3 to 10 % of the fuel's energy at full power, oil and surfaces together (Heywood "
            "1988, table 12.1; from memory)",
            RECTANGULAR,
        ),
        "coolant_density": Default(
            1019.0, 20.0, "half water, half glycol by mass, at 90 °C (computed with CoolProp)"
        ),
        "coolant_heat_capacity": Default(
            3616.0, 200.0, "half water, half glycol by mass, at 90 °C (computed with CoolProp)"
        ),
        "coolant_temperature_rise": Default(
            8.0, 3.0, f"5 to 11 K through an engine at full power ({PRACTICE})", RECTANGULAR
        ),
        "discharge_coefficient, oil": Default(
            0.65, 0.10, f"a sharp orifice and hot, thin oil ({PRACTICE})", RECTANGULAR
        ),
        "oil_pressure_difference": Default(
            350e3, 100e3, f"warm, at full speed, where nobody read it ({PRACTICE})", RECTANGULAR
        ),
        "oil_density": Default(830.0, 25.0, f"engine oil at 90 to 110 °C ({PRACTICE})"),
        "oil_heat_capacity": Default(2200.0, 150.0, f"engine oil at 90 °C ({PRACTICE})"),
        "oil_temperature_rise": Default(
            30.0, 20.0, f"through the bearing of a turbocharger ({PRACTICE})", RECTANGULAR
        ),
        "friction_factor, drain": Default(
            0.06, 0.03, f"slow, hot oil in a bore of 10 to 20 mm ({PRACTICE})", RECTANGULAR
        ),
        "loss_coefficients, drain": Default(
            1.5, 1.0, f"an inlet, an end and at most a bend ({PRACTICE})", RECTANGULAR
        ),
        # Road and bench.
        "driver_mass": Default(80.0, 20.0, f"a driver with helmet and overalls ({PRACTICE})"),
        "quarter_mile_time_constant": Default(
            6.0575,
            0.2325,
            "between the rules of Hale, 5.825 s, and Huntington, 6.290 s; Fox has 6.269 s",
            RECTANGULAR,
        ),
        "trap_speed_constant": Default(
            229 * MILE_PER_HOUR,
            5 * MILE_PER_HOUR,
            "between the rules of Huntington, 224 mile/h, and Hale, 234 mile/h; Fox has 230",
            RECTANGULAR,
        ),
        "proof_share": Default(
            SHARE_OF_PROOF,
            0.0,
            "of the proof stress, for joints that are taken apart (Shigley, eq. 8-31)",
        ),
    }
)
"""By glossary key; where the state of the engine decides, the key is followed by that state."""


FILLING = ((0.15, 0.82), (0.35, 0.94), (0.50, 1.00), (0.75, 1.00), (0.90, 0.96), (1.00, 0.91))
"""Share of the rev limit -> filling against the best, of an engine for the road whose own curve is
not known (common practice, no source). The band of the volumetric efficiency covers other shapes.
"""
