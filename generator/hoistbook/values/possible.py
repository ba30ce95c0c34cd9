"""What can be at all.

Beyond lies a slip of the pen, a dead sensor, or what a logger writes where it has read nothing.
"""

from __future__ import annotations

from collections.abc import Mapping

POSSIBLE: Mapping[str, tuple[float, float, str]] = {
    "boost": (-1e5, 4.5e5, "a boost between -1 and 4.5 bar gauge"),
    "highest_boost": (5e3, 4.5e5, "a boost between 0.05 and 4.5 bar gauge, or none,"),
    "manifold_absolute_pressure": (0.0, 5.6e5, "a pressure between 0 and 5.6 bar absolute"),
    "lambda_ratio": (0.5, 1.6, "a lambda between 0.5 and 1.6"),
    "displacement": (20e-6, 20e-3, "a displacement between 20 cc and 20 L"),
    "charge_temperature": (223.0, 523.0, "a charge temperature between -50 and 250 degC"),
    "compression_ratio": (4.0, 25.0, "a compression ratio between 4 and 25"),
    "air_pressure": (40e3, 115e3, "an air pressure between 400 and 1150 hPa"),
    "air_temperature": (213.0, 333.0, "an air temperature between -60 and 60 degC"),
    "engine_speed": (300.0, 25e3, "an engine speed between 300 and 25,000 rpm"),
    "rev_limit": (1e3, 25e3, "a rev limit between 1,000 and 25,000 rpm"),
    "torque": (-10e3, 10e3, "a torque between -10,000 and 10,000 N m"),
    "power": (-2e6, 2e6, "a power between -2,000 and 2,000 kW"),
    "air_mass_flow": (0.0, 5.0, "an air flow between 0 and 5 kg/s"),
    "injector_duty": (0.0, 1.2, "a duty between 0 and 120 %"),
    "injector_time": (0.0, 0.5, "an open time between 0 and 500 ms"),
}
"""Lowest and highest by what it is, in SI and in words (common practice, no source). No number is
worked out from what lies beyond."""
