"""THE TABLE: every figure there is, in the order in which one rests on the other.

A row names the quantity, the formula that gives it, where the formula's parameters come from when
their names differ, and how its curve is summed up. Everything else about a figure follows from the
formula and the glossary. Rows of one quantity exclude one another by their conditions.
"""

from __future__ import annotations

from collections.abc import Mapping

from hoistbook.figures.car_rows import CAR_ROWS, CYLINDER_ROWS, ROAD_ROWS
from hoistbook.figures.row import Headline, Row, row

HIGHEST, LOWEST = Headline.HIGHEST, Headline.LOWEST
ESTIMATE = (
    "An estimate, not a measurement. The chain as a whole was never compared with a boosted "
    "engine, only its links were."
)
MOVING = (
    "With the car in motion. On rollers or in a queue hardly any air comes through the core: it "
    "soaks up heat and gives little away."
)
PUMP_SHEET = (
    "From the work that the pump does and a common efficiency. The current on the pump's own "
    "sheet beats it, and wire and fuse go by that."
)

CATALOGUE: tuple[Row, ...] = (
    # The cylinders, where their compression ratio is known by its dimensions alone.
    row("swept_volume"),
    row("gasket_volume"),
    row("deck_volume"),
    row("clearance_volume"),
    row("compression_ratio", formula="compression_ratio_of_volumes", only="ratio by dimensions"),
    # The air of the day.
    row("saturation_pressure"),
    row("vapour_pressure"),
    row("humidity_ratio"),
    row("air_density", "Air density"),
    row("altitude", "Pressure altitude of the air", "pressure_altitude"),
    row("intake_temperature"),
    # To the manifold.
    row(
        "manifold_absolute_pressure",
        "Manifold absolute pressure",
        headline=HIGHEST,
        also_called=("manifold pressure",),
    ),
    row("compressor_inlet_pressure", only="boosted"),
    # The loop: the pressure lost on the way depends on the flow, and the flow on what is lost.
    row("compressor_outlet_pressure", only="boosted, loss stated at no flow"),
    row(
        "compressor_outlet_pressure",
        only="boosted, loss stated at a flow",
        charge_path_loss="cooler_pressure_loss",
    ),
    row("pressure_ratio", "Pressure ratio", only="boosted", headline=HIGHEST, drawn=True),
    row(
        "compressor_outlet_temperature",
        "Compressor outlet temperature",
        only="boosted",
        headline=HIGHEST,
        compressor_inlet_temperature="intake_temperature",
    ),
    row(
        "charge_temperature",
        "Charge temperature",
        only="boosted, effectiveness given",
        headline=HIGHEST,
        cooling_air_temperature="air_temperature",
        also_called=("intake air temperature",),
    ),
    row("rated_conductance", only="boosted, core size known"),
    row("heat_conductance", only="boosted, conductance known"),
    row("charge_capacity_rate", only="boosted, conductance known"),
    row("cooling_capacity_rate", only="boosted, conductance known"),
    row("lesser_capacity_rate", only="boosted, conductance known"),
    row("capacity_rate_ratio", only="boosted, conductance known"),
    row("transfer_units", only="boosted, conductance known"),
    row(
        "cooler_effectiveness",
        "Effectiveness of the charge cooler",
        only="boosted, conductance known",
        headline=LOWEST,
        also_called=("cooler effectiveness", "effectiveness"),
        note=MOVING,
    ),
    row(
        "charge_temperature",
        "Charge temperature",
        "charge_temperature_of_both_flows",
        only="boosted, conductance known",
        headline=HIGHEST,
        cooling_air_temperature="air_temperature",
        also_called=("intake air temperature",),
    ),
    row("charge_temperature", "Charge temperature", "intake_temperature", only="unboosted"),
    row("charge_density"),
    row(
        "engine_air_flow",
        "Engine air flow",
        drawn=True,
        headline=HIGHEST,
        also_called=("air flow", "air mass flow"),
    ),
    row("cooler_pressure_loss", only="boosted, loss stated at a flow"),
    # What the compressor does, and where its map has it.
    row(
        "density_ratio",
        "Density gained on the way from the compressor's inlet to the manifold",
        only="boosted",
        headline=HIGHEST,
        compressor_inlet_temperature="intake_temperature",
        also_called=("density gained",),
    ),
    row(
        "compressor_power",
        "Power that the compressor takes",
        only="boosted",
        headline=HIGHEST,
        compressor_inlet_temperature="intake_temperature",
        also_called=("compressor power", "shaft power of the compressor"),
    ),
    row(
        "corrected_flow",
        "Corrected flow, as on the compressor map",
        drawn=True,
        only="boosted, map",
        headline=HIGHEST,
        compressor_inlet_temperature="intake_temperature",
        also_called=("corrected flow",),
    ),
    # From air to work.
    row("fuel_density", formula="blend_density", only="blend"),
    row("mass_fraction_second", only="blend"),
    row("stoichiometric_air_fuel_ratio", formula="blend_air_fuel_ratio", only="blend"),
    row("heating_value", formula="blend_heating_value", only="blend"),
    row("dry_air_flow"),
    row("fuel_energy_per_volume"),
    row("gross_indicated_efficiency"),
    row("mixture_factor"),
    row("ignition_factor"),
    row("reference_friction", formula="friction_mean_effective_pressure"),
    row("friction_mean_effective_pressure", formula="scaled_friction_mean_effective_pressure"),
    row("driven_friction_mean_effective_pressure", only="driven"),
    row("exhaust_manifold_pressure", only="undriven"),
    row("exhaust_manifold_pressure", only="driven", manifold_absolute_pressure="air_pressure"),
    row("pumping_mean_effective_pressure"),
    row(
        "brake_mean_effective_pressure",
        "Brake mean effective pressure",
        only="undriven",
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("mean effective pressure", "bmep"),
    ),
    row(
        "brake_mean_effective_pressure",
        "Brake mean effective pressure",
        only="driven",
        friction_mean_effective_pressure="driven_friction_mean_effective_pressure",
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("mean effective pressure", "bmep"),
    ),
    row(
        "power",
        "Power at the crank",
        drawn=True,
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("power", "crank power", "engine power"),
    ),
    row(
        "torque",
        "Torque at the crank",
        drawn=True,
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("torque", "crank torque", "engine torque"),
    ),
    row(
        "wheel_power",
        "Power at the wheels",
        drawn=True,
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("wheel power", "power at wheels"),
    ),
    row(
        "wheel_torque",
        "Torque at the wheels",
        drawn=True,
        headline=HIGHEST,
        until_a_run=ESTIMATE,
        also_called=("wheel torque", "torque at wheels"),
    ),
    row(
        "power_to_mass",
        "Power to mass, at the crank",
        headline=HIGHEST,
        also_called=("power to weight",),
    ),
    # Fuel.
    row("fuel_flow", "Fuel flow", headline=HIGHEST),
    row("fuel_pressure", only="regulator follows"),
    row("fuel_pressure", only="regulator fixed", boost="boost of regulator"),
    row("injector_pressure_difference"),
    row("injector_static_flow", formula="injector_static_flow_of_fuel"),
    row("injector_cycle_time"),
    row(
        "injector_duty",
        "Injector duty",
        drawn=True,
        headline=HIGHEST,
        also_called=("duty", "duty cycle"),
    ),
    row("pump_pressure", only="regulator follows"),
    row("pump_pressure", only="regulator fixed", boost="boost of regulator"),
    row("pump_flow"),
    row("pump_margin", "Fuel pump margin", headline=LOWEST, also_called=("pump margin",)),
    row("pump_power", headline=HIGHEST),
    row(
        "pump_current",
        "Current that the fuel pump draws",
        headline=HIGHEST,
        also_called=("pump current", "current of the pump"),
        note=PUMP_SHEET,
    ),
    # Pipes.
    row(
        "pipe_velocity",
        "Velocity in the pipe",
        headline=HIGHEST,
        per="pipe",
        mass_flow="engine_air_flow",
        also_called=("velocity", "pipe velocity", "air speed"),
    ),
    row(
        "mach_number",
        "Mach number in the pipe",
        headline=HIGHEST,
        per="pipe",
        also_called=("mach number", "mach"),
    ),
    *CAR_ROWS,
)

LOOP_FIRST = "compressor_outlet_pressure"
LOOP_LAST = ("cooler_pressure_loss", "engine_air_flow")
"""First and last quantity of the rows that are gone through several times; the last is the first
of these that an engine has."""
LOOP_START: Mapping[str, str] = {
    "cooler_pressure_loss": "rated_cooler_pressure_loss",
    "engine_air_flow": "rated_conductance_flow",
}
"""What the loop needs before it has worked it out -> what it starts from in its stead; without
any of these there is no loop."""

BESIDE = frozenset(each.quantity for each in CAR_ROWS if each.title)
"""Quantities that stand beside the way to power: in the lists of the whole car, and in no list of
what one episode moved."""
OF_THE_CAR = BESIDE & {each.quantity for each in (*ROAD_ROWS, *CYLINDER_ROWS)}
"""Those of them that belong on a specification."""

MEASURED = {
    "wheel_power": "Power at the wheels",
    "wheel_torque": "Torque at the wheels",
    "crank_power": "Power measured at the crank",
    "crank_torque": "Torque measured at the crank",
}
"""Quantities of a power run and their titles."""

QUANTITIES: Mapping[str, str] = {
    each.quantity: each.title for each in CATALOGUE if each.title
} | MEASURED
"""Every quantity that lists and claims may name, with its title, in the order of the table."""
