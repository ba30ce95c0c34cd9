"""The same engine with one thing changed: a core of another size, a regulator of another kind.

Every variant has the same samples, so that a difference between two of them has its own band,
narrower than either.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.chain import Worked, work_out
from hoistbook.figures.draws import Samples, band
from hoistbook.values.evidence import Evidence

DEEPER_LOSS = -1.8
"""Power of a core's height that its pressure loss goes with at one flow: that of the loss itself,
as the air is shared by more passages of the same length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Banded:
    """A number with its 95 % band; SI."""

    value: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Core:
    """The build with a core so many times as large in front, of the same width and depth."""

    scale: float
    charge_temperature: Banded
    pressure_loss: Banded
    charge_density: Banded
    density_gained: Banded
    """Against the core that is fitted, as a share."""


def cores(inputs: Inputs, speed: float, scales: tuple[float, ...]) -> tuple[Core, ...]:
    """Return what cores of other sizes would make of the charge at one engine speed.

    Parameters
    ----------
    inputs
        What the figures start from; a logged charge temperature is left aside, for it is that of
        the fitted core.
    speed
        One of the inputs' engine speeds [1/min].
    scales
        Areas of the core's face over that of the fitted one.
    """
    own = at_one_speed(inputs, speed)
    own = replace(own, bases=tuple(b for b in own.bases if b.key != "charge_temperature"))
    fitted = work_out(own, only=("charge_density",))
    found = []
    for scale in scales:
        worked = work_out(_with_core(own, scale), only=("charge_density", *_LOSSES))
        loss = next((name for name in _LOSSES if name in worked.values), "")
        if not loss or "charge_density" not in worked.values:
            return ()
        density = worked.values["charge_density"]
        found.append(
            Core(
                scale=scale,
                charge_temperature=banded(worked.values["charge_temperature"]),
                pressure_loss=banded(worked.values[loss]),
                charge_density=banded(density),
                density_gained=banded(density / fitted.values["charge_density"] - 1),
            )
        )
    return tuple(found)


_LOSSES = ("cooler_pressure_loss", "charge_path_loss")
_GROWS: Mapping[str, Callable[[float], float]] = {
    "rated_conductance": lambda scale: scale,
    "core_height": lambda scale: scale,
    "rated_conductance_flow": lambda scale: scale,
    "rated_cooler_flow": lambda scale: scale,
    "charge_path_loss": lambda scale: scale**DEEPER_LOSS,
}
"""How what is known of a core goes with the area of its face."""


def _with_core(inputs: Inputs, scale: float) -> Inputs:
    bases = (
        scaled(base, _GROWS[base.key](scale)) if base.key in _GROWS else base
        for base in inputs.bases
    )
    return replace(inputs, bases=tuple(bases))


def scaled(base: Base, factor: float) -> Base:
    """Return an input so many times as large, its band with it."""
    value = (
        tuple(factor * each for each in base.value)
        if isinstance(base.value, tuple)
        else factor * base.value
    )
    return replace(base, value=value, half_width=factor * base.half_width)


def at_one_speed(inputs: Inputs, speed: float | None) -> Inputs:
    """Return the inputs as they are at one of their engine speeds, or at none."""
    if speed is None:
        return replace(inputs, speeds=())
    line = inputs.speeds.index(speed)
    bases = (
        replace(base, value=base.value[min(line, len(base.value) - 1)])
        if isinstance(base.value, tuple)
        else base
        for base in inputs.bases
    )
    return replace(inputs, speeds=(speed,), bases=tuple(bases))


def banded(values: Samples) -> Banded:
    """Return the only line of an environment's array as a number with its band."""
    low, high = band(values[0, 1:]) if values.shape[1] > 1 else (values[0, 0], values[0, 0])
    return Banded(value=float(values[0, 0]), low=float(low), high=float(high))


def regulators(inputs: Inputs, speed: float) -> dict[str, Worked]:
    """Return the fuel side with either kind of regulator at one engine speed, by its words."""
    own = at_one_speed(inputs, speed)
    fixed = Base(
        name="boost",
        subject="regulator",
        value=0.0,
        half_width=0.0,
        evidence=Evidence.ASSUMED,
        origin="a regulator that does not follow the manifold",
    )
    others = tuple(base for base in own.bases if base.key != fixed.key)
    without = own.conditions - {"regulator follows", "regulator fixed"}
    wanted = ("injector_duty", "injector_pressure_difference", "injector_static_flow")
    return {
        "follows": work_out(
            replace(own, bases=others, conditions=without | {"regulator follows"}), only=wanted
        ),
        "fixed": work_out(
            replace(own, bases=(*others, fixed), conditions=without | {"regulator fixed"}),
            only=wanted,
        ),
    }


def pump_flows(
    inputs: Inputs, speed: float, pressures: tuple[float, ...], voltages: tuple[float, ...]
) -> tuple[tuple[float, tuple[Banded, ...]], ...]:
    """Return the flow of the fitted pump against pressure [Pa, gauge], by voltage [V]."""
    own = at_one_speed(inputs, speed)

    def flow(pressure: float, voltage: float) -> Banded:
        given = {"pump_pressure": pressure, "pump_voltage": voltage}
        others = tuple(base for base in own.bases if base.key not in given)
        exact = tuple(_exactly(name, value) for name, value in given.items())
        worked = work_out(replace(own, bases=(*others, *exact)), only=("pump_flow",))
        return banded(worked.values["pump_flow"])

    return tuple(
        (pressure, tuple(flow(pressure, voltage) for voltage in voltages))
        for pressure in pressures
    )


def _exactly(name: str, value: float) -> Base:
    return Base(
        name=name,
        value=value,
        half_width=0.0,
        evidence=Evidence.ASSUMED,
        origin="as the table asks",
    )
