"""THE TABLE: every figure there is, in the order in which one rests on the other.

A row names the quantity, the formula that gives it, where the formula's parameters come from when
their names differ, and how its curve is summed up. Everything else about a figure follows from the
formula and the glossary. Rows of one quantity exclude one another by their conditions.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Headline(StrEnum):
    """Which point of a curve over engine speed stands for the whole, as pages print it."""

    HIGHEST = "highest"
    LOWEST = "lowest"
    AT_POWER = "where power is highest"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of the table."""

    quantity: str
    """Glossary key."""
    formula: str
    """Name of the formula, where it is not the quantity's own."""
    title: str = ""
    """As pages and claims name it; a row without one is a step and is not listed on its own."""
    binds: Mapping[str, str] = field(default_factory=dict)
    """Parameter of the formula -> name in the environment, where the two differ."""
    only: frozenset[str] = frozenset()
    """Conditions of the engine that must all hold for the row to apply."""
    per: str = ""
    """The kind of subjects that it is worked out for in turn; the engine where it is empty."""
    at_power: bool = False
    """Whether it is worked out at the engine speed of highest power alone, and is no curve."""
    headline: Headline = Headline.AT_POWER
    also_called: tuple[str, ...] = ()
    """Other words by which a claim may name it."""
    note: str = ""
    """What has to be said wherever the figure stands."""

    @property
    def step(self) -> bool:
        """Whether it is an intermediate result."""
        return not self.title


def _row(
    quantity: str,
    title: str = "",
    formula: str = "",
    only: str = "",
    headline: Headline = Headline.AT_POWER,
    also_called: tuple[str, ...] = (),
    per: str = "",
    at_power: bool = False,
    note: str = "",
    **binds: str,
) -> Row:
    return Row(
        quantity=quantity,
        formula=formula or quantity,
        title=title,
        binds=binds,
        only=frozenset(filter(None, only.split(", "))),
        per=per,
        at_power=at_power,
        headline=headline,
        also_called=also_called,
        note=note,
    )


HIGHEST, LOWEST = Headline.HIGHEST, Headline.LOWEST
ESTIMATE = (
    "An estimate, not a measurement. The chain as a whole was never compared with a boosted "
    "engine, only its links were."
)

CATALOGUE: tuple[Row, ...] = (
    # The air of the day.
    _row("saturation_pressure"),
    _row("vapour_pressure"),
    _row("humidity_ratio"),
    _row("air_density", "Air density"),
    _row("intake_temperature"),
    # To the manifold.
    _row(
        "manifold_absolute_pressure",
        "Manifold absolute pressure",
        headline=HIGHEST,
        also_called=("manifold pressure",),
    ),
    _row("compressor_inlet_pressure", only="boosted"),
    # The loop: the pressure lost on the way depends on the flow, and the flow on what is lost.
    _row("compressor_outlet_pressure", only="boosted, loss stated at no flow"),
    _row(
        "compressor_outlet_pressure",
        only="boosted, loss stated at a flow",
        charge_path_loss="cooler_pressure_loss",
    ),
    _row("pressure_ratio", "Pressure ratio", only="boosted", headline=HIGHEST),
    _row(
        "compressor_outlet_temperature",
        "Compressor outlet temperature",
        only="boosted",
        headline=HIGHEST,
        compressor_inlet_temperature="intake_temperature",
    ),
    _row(
        "charge_temperature",
        "Charge temperature",
        only="boosted",
        headline=HIGHEST,
        cooling_air_temperature="air_temperature",
        also_called=("intake air temperature",),
    ),
    _row("charge_temperature", "Charge temperature", "intake_temperature", only="unboosted"),
    _row("charge_density"),
    _row(
        "engine_air_flow",
        "Engine air flow",
        headline=HIGHEST,
        also_called=("air flow", "air mass flow"),
    ),
    _row("cooler_pressure_loss", only="boosted, loss stated at a flow"),
    # From air to work.
    _row("fuel_density", formula="blend_density", only="blend"),
    _row("mass_fraction_second", only="blend"),
    _row("stoichiometric_air_fuel_ratio", formula="blend_air_fuel_ratio", only="blend"),
    _row("heating_value", formula="blend_heating_value", only="blend"),
    _row("dry_air_flow"),
    _row("fuel_energy_per_volume"),
    _row("gross_indicated_efficiency"),
    _row("mixture_factor"),
    _row("ignition_factor"),
    _row("reference_friction", formula="friction_mean_effective_pressure"),
    _row("friction_mean_effective_pressure", formula="scaled_friction_mean_effective_pressure"),
    _row("exhaust_manifold_pressure"),
    _row("pumping_mean_effective_pressure"),
    _row(
        "brake_mean_effective_pressure",
        "Brake mean effective pressure",
        headline=HIGHEST,
        note=ESTIMATE,
        also_called=("mean effective pressure", "bmep"),
    ),
    _row(
        "power",
        "Power at the crank",
        headline=HIGHEST,
        note=ESTIMATE,
        also_called=("power", "crank power", "engine power"),
    ),
    _row(
        "torque",
        "Torque at the crank",
        headline=HIGHEST,
        note=ESTIMATE,
        also_called=("torque", "crank torque", "engine torque"),
    ),
    _row(
        "wheel_power",
        "Power at the wheels",
        headline=HIGHEST,
        note=ESTIMATE,
        also_called=("wheel power", "power at wheels"),
    ),
    _row(
        "wheel_torque",
        "Torque at the wheels",
        headline=HIGHEST,
        note=ESTIMATE,
        also_called=("wheel torque", "torque at wheels"),
    ),
    _row("power_to_mass", "Power to mass", headline=HIGHEST, also_called=("power to weight",)),
    # Fuel.
    _row("fuel_flow", "Fuel flow", headline=HIGHEST),
    _row("fuel_pressure", only="regulator follows"),
    _row("fuel_pressure", only="regulator fixed", boost="boost of regulator"),
    _row("injector_pressure_difference"),
    _row("injector_static_flow", formula="injector_static_flow_of_fuel"),
    _row("injector_cycle_time"),
    _row("injector_duty", "Injector duty", headline=HIGHEST, also_called=("duty", "duty cycle")),
    _row("pump_pressure", only="regulator follows"),
    _row("pump_pressure", only="regulator fixed", boost="boost of regulator"),
    _row("pump_flow"),
    _row("pump_margin", "Fuel pump margin", headline=LOWEST, also_called=("pump margin",)),
    # Pipes.
    _row(
        "pipe_velocity",
        "Velocity in the pipe",
        headline=HIGHEST,
        per="pipe",
        mass_flow="engine_air_flow",
        also_called=("velocity", "pipe velocity", "air speed"),
    ),
    _row(
        "mach_number",
        "Mach number in the pipe",
        headline=HIGHEST,
        per="pipe",
        also_called=("mach number", "mach"),
    ),
)

LOOP = ("compressor_outlet_pressure", "cooler_pressure_loss")
"""First and last quantity of the rows that are gone through several times."""
LOOP_START = ("cooler_pressure_loss", "rated_cooler_pressure_loss")
"""What the loop needs before it has worked it out, and what it starts from in its stead."""

MEASURED = {
    "wheel_power": "Power at the wheels",
    "wheel_torque": "Torque at the wheels",
    "crank_power": "Power measured at the crank",
    "crank_torque": "Torque measured at the crank",
}
"""Quantities of a power run and their titles."""

QUANTITIES: Mapping[str, str] = {
    row.quantity: row.title for row in CATALOGUE if row.title
} | MEASURED
"""Every quantity that lists and claims may name, with its title, in the order of the table."""
