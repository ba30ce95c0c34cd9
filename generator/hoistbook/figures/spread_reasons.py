"""Why a number without a band of its own is taken to be known so well and no better.

Each is common practice without a source; the bands themselves stand in `defaults.SPREADS`.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

_BY_REASON: Mapping[str, tuple[str, ...]] = {
    "an uncalibrated barometer; a forecast": ("air_pressure",),
    "an uncalibrated thermometer, or one that the engine warms; a forecast": (
        "air_temperature",
        "charge_temperature",
    ),
    "a household hygrometer; a forecast": ("relative_humidity",),
    "a logged sensor; a boost gauge or the spring of the wastegate": ("boost",),
    "a rule along a core, whose tanks and rows hide its edge": (
        "core_width",
        "core_height",
        "core_depth",
    ),
    "dimensions as a catalogue or manual has them; tolerances of castings and gaskets": (
        "displacement",
        "compression_ratio",
    ),
    "a public weighbridge; a data sheet without driver and fuel": ("vehicle_mass",),
    "temperatures on both sides of it; a printed map, and another compressor of its make": (
        "compressor_efficiency",
    ),
    "it counts as exact beside the number that it belongs to": (
        "map_reference_pressure",
        "map_reference_temperature",
        "rated_conductance_flow",
        "rated_pressure_difference",
        "rated_pump_pressure",
        "rated_pump_voltage",
        "rated_cooler_flow",
    ),
    "a broadband lambda gauge; what a tuner says was aimed at": ("lambda_ratio",),
    "a sensor or a water-shake test; a label": ("volume_fraction_second",),
    "a flow bench; a maker's or seller's label": ("rated_static_flow", "rated_pump_flow"),
    "a meter at the pump's own plug, under load; what somebody says of it": ("pump_voltage",),
    "a gauge on a running engine; what somebody read off one": ("oil_pressure_difference",),
    "a calliper in the end of a pipe; what it is sold as": ("pipe_bore",),
    "a tape measure along a bent pipe": ("pipe_length",),
    "counted": ("bend_count", "cylinder_count"),
    "a calliper or a burette; what a workshop manual says": (
        "throat_diameter",
        "cylinder_bore",
        "stroke",
        "connecting_rod_length",
        "chamber_volume",
        "gasket_thickness",
        "gasket_bore",
        "deck_clearance",
        "dish_volume",
    ),
    "a degree wheel; a manual, which may count from some lift": ("inlet_closing_angle",),
    "the marking on the tyre, which its make and pressure follow loosely": (
        "section_width",
        "section_height_ratio",
        "rim_diameter",
    ),
    "counted teeth; a list rounded to two decimals": ("gear_ratio", "final_drive_ratio"),
    "set in the control unit": ("rev_limit",),
    "a pin gauge; a number stamped on it": ("oil_orifice_diameter",),
    "worked back from an air meter; what is said of such engines": ("volumetric_efficiency",),
    "two gauges on a pulsating gas; what is said of such turbines": ("exhaust_pressure_ratio",),
    "rollers against each other: tyres, straps and inertia move them": ("wheel_power",),
    "one engine brake against another": ("crank_power",),
    "a hot-film air meter in its housing": ("engine_air_flow",),
    "the time that an engine control unit commands": ("injector_duty",),
}

SPREAD_REASONS: Mapping[str, str] = MappingProxyType(
    {name: reason for reason, names in _BY_REASON.items() for name in names}
)
"""By glossary key, of every line of `SPREADS`; the measured number's reason first."""
