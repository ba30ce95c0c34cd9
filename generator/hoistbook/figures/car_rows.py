"""The part of the table beside the chain to power: pipes, throats, heat, road, geometry, bench.

Most of it is worked out at the engine speed of highest power alone, where it matters.
"""

from __future__ import annotations

from collections.abc import Iterator

from hoistbook.engineering.power_standards import STANDARDS
from hoistbook.figures.row import Row, row

NO_KNOCK = (
    "Geometry alone. It says nothing of knock: no boost, timing or fuel is safe because of it; "
    "that is found with knock detection, by someone competent."
)
NO_THRESHOLD = (
    "Nothing follows from this on when boost comes: that is up to the speed of the compressor, "
    "which a turbine has to gain first, and only a log of boost over engine speed shows it."
)
LEAST_TIME = (
    "A floor and no forecast: only what the compressor gives beyond what the engine takes fills "
    "the volume, and nobody has measured that. With a tenth of the engine's air it takes ten "
    "times as long."
)
RULES = (
    "Between the rules of Hale (1986), Huntington (1958) and Fox (1973), none of which is better "
    "than the others: 8 % apart in time and 4 % in speed. For a closed course and full traction, "
    "with the driver in the car; on a road it means nothing."
)
MAKERS = "The figure of the maker of the bolt or of the car beats this one."
FROTH = (
    "Clear oil under its own weight. Oil leaves a bearing as froth, of which a drain carries far "
    "less: the bearing maker's document gives the bore."
)
FEED = "The bore is that of the bearing maker's document, never one worked out here."
OIL_AND_SURFACES = (
    "Published balances do not tell the two apart; an oil cooler sees the greater part. At full "
    "power, for as long as full power lasts: the track is the case to size for."
)
FULL_POWER = "At full power, for as long as full power lasts: the track is the case to size for."


def _standards() -> Iterator[Row]:
    """Yield the rows of a power run that a log or the journal refers to reference air."""
    yield row("dry_air_pressure", only="power run")
    for name, formula in STANDARDS.items():
        yield row("stated_correction_factor", formula=formula, only=f"stated by {name}")
        yield row("power_correction_factor", formula=formula, only=f"referred to {name}")
    yield row("observed_power", only="power run, stated")
    yield row("observed_torque", formula="torque", only="power run", power="observed_power")
    yield row("corrected_power", only="power run, referred")
    yield row(
        "corrected_torque", formula="torque", only="power run, referred", power="corrected_power"
    )


ROAD_ROWS: tuple[Row, ...] = (
    row("tyre_diameter"),
    row("rolling_circumference"),
    row(
        "road_speed",
        "Road speed at the rev limit",
        per="gear",
        engine_speed="rev_limit",
        also_called=("road speed", "top speed"),
    ),
    row("mean_piston_speed", "Mean piston speed at the rev limit", engine_speed="rev_limit"),
    row("driven_mass"),
    row(
        "quarter_mile_time",
        "Quarter-mile time, by three published rules",
        at_power=True,
        vehicle_mass="driven_mass",
        also_called=("quarter-mile time", "quarter mile"),
        note=RULES,
    ),
    row(
        "trap_speed",
        "Quarter-mile end speed, by three published rules",
        at_power=True,
        vehicle_mass="driven_mass",
        also_called=("quarter-mile speed",),
        note=RULES,
    ),
)

CYLINDER_ROWS: tuple[Row, ...] = (
    row("displacement_of_cylinders", "Displacement from bore and stroke"),
    row("compression_ratio_of_volumes", "Compression ratio from dimensions", note=NO_KNOCK),
    row("trapped_compression_ratio", "Trapped compression ratio", note=NO_KNOCK),
)

CAR_ROWS: tuple[Row, ...] = (
    # What a pipe loses, and the volume that boost has to fill.
    row("pipe_density", per="pipe", at_power=True),
    row("dynamic_viscosity", per="pipe", at_power=True),
    row("reynolds_number", per="pipe", at_power=True, mass_flow="engine_air_flow"),
    row("friction_factor", per="pipe", at_power=True),
    row("bend_loss_coefficient", per="pipe", at_power=True),
    row("loss_coefficients", formula="pipe_loss_coefficients", per="pipe", at_power=True),
    row(
        "pipe_pressure_loss",
        "Pressure lost in the pipe",
        per="pipe",
        at_power=True,
        also_called=("pressure loss", "loss in the pipe"),
    ),
    row(
        "charge_volume",
        "Volume between compressor and valves",
        only="boosted",
        pipe_volume="charge_pipe_volume",
        note=NO_THRESHOLD,
    ),
    row(
        "fill_time",
        "Least time to fill it, were it to get all of the engine's air",
        only="boosted",
        at_power=True,
        volume="charge_volume",
        pressure_rise="boost",
        pipe_temperature="charge_temperature",
        net_mass_flow="engine_air_flow",
        also_called=("filling time",),
        note=f"{LEAST_TIME} {NO_THRESHOLD}",
    ),
    # Throats.
    row("choked_flow", "Air flow at which it chokes", per="throat", at_power=True),
    row(
        "throat_share",
        "Share of the choking flow",
        per="throat",
        at_power=True,
        mass_flow="engine_air_flow",
    ),
    # Heat and oil.
    row("brake_efficiency", at_power=True),
    row(
        "brake_specific_fuel_consumption",
        "Brake specific fuel consumption",
        at_power=True,
        also_called=("specific consumption", "bsfc"),
    ),
    row("coolant_heat", "Heat to the coolant", at_power=True, note=FULL_POWER),
    row("coolant_flow", "Coolant flow for that heat", at_power=True, note=FULL_POWER),
    row(
        "oil_and_surface_heat",
        "Heat to the engine's oil and from its surfaces",
        at_power=True,
        also_called=("heat to the oil",),
        note=OIL_AND_SURFACES,
    ),
    row("oil_feed_flow", "Oil flow through the feed", per="oil feed", note=FEED),
    row("oil_heat", "Heat taken by the oil of the feed", per="oil feed", note=FEED),
    row("drain_flow_limit", "Clear oil that the drain carries", per="oil drain", note=FROTH),
    *ROAD_ROWS,
    *CYLINDER_ROWS,
    # The bench.
    row("stress_area", per="bolt"),
    row("assembly_preload", formula="preload_of_proof_stress", per="bolt"),
    row(
        "tightening_torque",
        "Tightening torque by table",
        formula="torque_of_nut_factor",
        per="bolt",
        note=MAKERS,
        also_called=("tightening torque",),
    ),
    row("voltage_drop", "Voltage lost in its wire", per="load", also_called=("voltage drop",)),
    row("voltage_drop_share", "Share of the voltage lost in its wire", per="load"),
    # Power runs.
    *_standards(),
)
"""In the order in which one rests on the other; all of them come after the chain to power."""
