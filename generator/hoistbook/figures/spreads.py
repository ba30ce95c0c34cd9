"""How wide a number is that the author gives without a band: the only table of its kind.

By the evidence behind it; the reasons stand in `spread_reasons`. All are SI.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.values.evidence import Evidence


@dataclass(frozen=True, slots=True)
class Spread:
    """Half the 95 % band of a number given without one."""

    half_width: float
    relative: bool = True

    def of(self, value: float) -> float:
        """Return the half width that belongs to a value, in its unit."""
        return self.half_width * abs(value) if self.relative else self.half_width


MEASURED, ESTIMATED, STATED, ASSUMED = (
    Evidence.MEASURED,
    Evidence.ESTIMATED,
    Evidence.STATED,
    Evidence.ASSUMED,
)

GENERAL: Mapping[Evidence, Spread] = MappingProxyType(
    {
        MEASURED: Spread(0.02),
        STATED: Spread(0.05),
        ESTIMATED: Spread(0.10),
        ASSUMED: Spread(0.20),
    }
)
"""Where `SPREADS` has no line of its own (common practice, no source)."""

_TEMPERATURE = {MEASURED: Spread(2.0, False), STATED: Spread(5.0, False)}

SPREADS: Mapping[str, Mapping[Evidence, Spread]] = MappingProxyType(
    {
        # An uncalibrated barometer, thermometer or hygrometer, and a forecast.
        "air_pressure": {MEASURED: Spread(300.0, False), STATED: Spread(1e3, False)},
        "air_temperature": _TEMPERATURE,
        "relative_humidity": {MEASURED: Spread(0.05, False), STATED: Spread(0.15, False)},
        "charge_temperature": _TEMPERATURE,
        # A boost gauge or a spring of the wastegate; a logged sensor.
        "boost": {MEASURED: Spread(5e3, False), STATED: Spread(10e3, False)},
        "rated_conductance_flow": {MEASURED: Spread(0.03), STATED: Spread(0.03)},
        # A rule along a core, whose tanks and rows hide its edge.
        "core_width": {MEASURED: Spread(0.01), STATED: Spread(0.02)},
        "core_height": {MEASURED: Spread(0.01), STATED: Spread(0.02)},
        "core_depth": {MEASURED: Spread(0.02), STATED: Spread(0.03)},
        # Catalogue dimensions; tolerances of castings and gaskets.
        "displacement": {MEASURED: Spread(0.005), STATED: Spread(0.005)},
        "compression_ratio": {MEASURED: Spread(0.02), STATED: Spread(0.03)},
        # A public weighbridge; a data sheet without driver and fuel.
        "vehicle_mass": {MEASURED: Spread(0.015), STATED: Spread(0.05)},
        # Temperatures on both sides of it; a printed map, and another compressor of its make.
        "compressor_efficiency": {MEASURED: Spread(0.03, False), STATED: Spread(0.04, False)},
        "map_reference_pressure": {STATED: Spread(0.0)},
        "map_reference_temperature": {STATED: Spread(0.0)},
        # A broadband lambda gauge; what a tuner says was aimed at.
        "lambda_ratio": {MEASURED: Spread(0.03), STATED: Spread(0.05)},
        # A sensor or a water-shake test; a label.
        "volume_fraction_second": {MEASURED: Spread(0.02, False), STATED: Spread(0.05, False)},
        # A flow bench; a maker's or seller's label.
        "rated_static_flow": {MEASURED: Spread(0.02), STATED: Spread(0.04)},
        "rated_pump_flow": {MEASURED: Spread(0.05), STATED: Spread(0.15)},
        "pipe_bore": {MEASURED: Spread(0.01), STATED: Spread(0.03)},
        # A tape measure along a bent pipe.
        "pipe_length": {MEASURED: Spread(0.03), STATED: Spread(0.05)},
        "bend_count": {MEASURED: Spread(0.0), STATED: Spread(0.0)},
        # A calliper, a burette; what a workshop manual says.
        "throat_diameter": {MEASURED: Spread(0.005), STATED: Spread(0.01)},
        "cylinder_bore": {MEASURED: Spread(0.001), STATED: Spread(0.002)},
        "stroke": {MEASURED: Spread(0.001), STATED: Spread(0.002)},
        "connecting_rod_length": {MEASURED: Spread(0.002), STATED: Spread(0.003)},
        "cylinder_count": {MEASURED: Spread(0.0), STATED: Spread(0.0)},
        "chamber_volume": {MEASURED: Spread(0.01), STATED: Spread(0.03)},
        "gasket_thickness": {MEASURED: Spread(0.05), STATED: Spread(0.08)},
        "gasket_bore": {MEASURED: Spread(0.005), STATED: Spread(0.01)},
        "deck_clearance": {MEASURED: Spread(0.05e-3, False), STATED: Spread(0.2e-3, False)},
        "dish_volume": {MEASURED: Spread(0.3e-6, False), STATED: Spread(1e-6, False)},
        "inlet_closing_angle": {MEASURED: Spread(0.05), STATED: Spread(0.09)},
        # A marking on the tyre, counted teeth, a limit set in the control unit.
        "section_width": {MEASURED: Spread(0.01), STATED: Spread(0.02)},
        "section_height_ratio": {MEASURED: Spread(0.02), STATED: Spread(0.03)},
        "rim_diameter": {MEASURED: Spread(0.002), STATED: Spread(0.002)},
        "gear_ratio": {MEASURED: Spread(0.002), STATED: Spread(0.005)},
        "final_drive_ratio": {MEASURED: Spread(0.002), STATED: Spread(0.005)},
        "rev_limit": {MEASURED: Spread(0.01), STATED: Spread(0.01)},
        "oil_orifice_diameter": {MEASURED: Spread(0.03), STATED: Spread(0.05)},
        # The condition at which a part's number was stated counts as exact beside the number.
        "rated_pressure_difference": {MEASURED: Spread(0.01), STATED: Spread(0.01)},
        "rated_pump_pressure": {MEASURED: Spread(0.01), STATED: Spread(0.01)},
        "rated_pump_voltage": {MEASURED: Spread(0.01), STATED: Spread(0.01)},
        # A meter at the pump's own plug, under load; what somebody says of it.
        "pump_voltage": {MEASURED: Spread(0.2, False), STATED: Spread(0.5, False)},
        # A dashboard's sender and gauge, or a mechanical one, read while the engine turns.
        "oil_pressure_difference": {MEASURED: Spread(40e3, False), STATED: Spread(50e3, False)},
        "rated_cooler_flow": {MEASURED: Spread(0.01), STATED: Spread(0.01)},
        "volumetric_efficiency": {MEASURED: Spread(0.04), STATED: Spread(0.10)},
        "exhaust_pressure_ratio": {MEASURED: Spread(0.05), STATED: Spread(0.15)},
        # Inertia rollers against each other: tyres, straps and inertia move them by several %.
        "wheel_power": {MEASURED: Spread(0.05)},
        "crank_power": {MEASURED: Spread(0.03)},
        # A hot-film air meter in its housing; the time that an engine control unit commands.
        "engine_air_flow": {MEASURED: Spread(0.04)},
        "injector_duty": {MEASURED: Spread(0.02)},
    }
)
"""By glossary key and evidence, each from common practice without a source."""


def spread(name: str, evidence: Evidence, value: float) -> float:
    """Return half the 95 % band of a number that the author gives without one, in its unit."""
    own = SPREADS.get(name)
    if own is None:
        return GENERAL[evidence].of(value)
    if evidence in own:
        return own[evidence].of(value)
    widened = {STATED: 1.0, ESTIMATED: 1.5, ASSUMED: 2.0}
    return widened[evidence] * own.get(STATED, own[MEASURED]).of(value)
