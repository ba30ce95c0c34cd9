"""The record of a compressor map: what its points say, and the air that they hold for."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.problems import Place
from hoistbook.values.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class CompressorMap:
    """The map of a compressor as points, referred to air of one pressure and temperature."""

    file: str
    """Path of its CSV file relative to the journal's folder."""
    place: Place
    reference_pressure: Quantity
    reference_temperature: Quantity
    flow: tuple[float, ...]
    """Corrected mass flow of each point [kg/s]."""
    pressure_ratio: tuple[float, ...]
    efficiency: tuple[float, ...]
    """Isentropic, 0 to 1."""
    shaft_speed: tuple[float, ...] = ()
    """Corrected speed of the shaft [1/min]; empty where the file has none."""
