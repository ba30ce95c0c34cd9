"""Tyres, gearing and road speed; quarter-mile rules, of which no single one is offered."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, pi


@formula(
    reference="iso-4000-1",
    where="marking: section width, height ratio, rim diameter",
    assumes=("Nominal; a new tyre lies within about 1 %.",),
)
def tyre_diameter(
    *, rim_diameter: Value, section_width: Value, section_height_ratio: Value
) -> Value:
    """Return the outside diameter of a tyre from its marking.

    Parameters
    ----------
    rim_diameter
        Diameter of the wheel rim [m].
    section_width
        Width of the tyre's section [m].
    section_height_ratio
        Height of the tyre's section over its width [-].

    Returns
    -------
    Value
        Outside diameter of the tyre [m].

    Notes
    -----
    D_y = D_r + 2 b h/b

    Examples
    --------
    >>> tyre_diameter(rim_diameter=0.4064, section_width=0.205, section_height_ratio=0.5)
    0.6114
    """
    return rim_diameter + 2 * section_width * section_height_ratio


@formula(
    reference="etrto",
    where="convention for radial tyres",
)
def rolling_circumference(*, tyre_diameter: Value) -> Value:
    """Return the rolling circumference of a loaded radial tyre.

    Parameters
    ----------
    tyre_diameter
        Outside diameter of the tyre [m].

    Returns
    -------
    Value
        Rolling circumference of the tyre [m].

    Notes
    -----
    U = 3.05 D_y

    Examples
    --------
    >>> rolling_circumference(tyre_diameter=0.6314)
    1.9258
    """
    return 3.05 * tyre_diameter


@formula(
    reference="common-practice",
    where="circumference of a circle",
    result="rolling_circumference",
    assumes=("About 3 % more than the loaded tyre rolls.",),
)
def nominal_circumference(*, tyre_diameter: Value) -> Value:
    """Return the circumference of a tyre that neither slips nor flattens.

    Parameters
    ----------
    tyre_diameter
        Outside diameter of the tyre [m].

    Returns
    -------
    Value
        Rolling circumference of the tyre [m].

    Notes
    -----
    U = π D_y

    Examples
    --------
    >>> nominal_circumference(tyre_diameter=0.6314)
    1.9836
    """
    return pi * tyre_diameter


@formula(
    reference="common-practice",
    where="kinematics",
    assumes=("No slip of clutch, converter or tyre.",),
)
def road_speed(
    *,
    rolling_circumference: Value,
    engine_speed: Value,
    gear_ratio: Value,
    final_drive_ratio: Value,
) -> Value:
    """Return the road speed in a gear.

    Parameters
    ----------
    rolling_circumference
        Rolling circumference of the tyre [m].
    engine_speed
        Engine speed [1/min].
    gear_ratio
        Ratio of the gear [-].
    final_drive_ratio
        Ratio of the final drive [-].

    Returns
    -------
    Value
        Road speed [m/s].

    Notes
    -----
    v_x = U N / (60 i_g i_f)

    Examples
    --------
    >>> road_speed(
    ...     rolling_circumference=1.92577, engine_speed=7000.0, gear_ratio=1.0,
    ...     final_drive_ratio=4.1,
    ... )
    54.798
    """
    return rolling_circumference * engine_speed / (60 * gear_ratio * final_drive_ratio)


@formula(
    reference="common-practice",
    where="sum of the masses",
)
def driven_mass(*, vehicle_mass: Value, driver_mass: Value) -> Value:
    """Return the mass of the car with its driver.

    Parameters
    ----------
    vehicle_mass
        Mass of the car as driven [kg].
    driver_mass
        Mass of the driver, dressed to drive [kg].

    Returns
    -------
    Value
        Mass of the car with its driver [kg].

    Notes
    -----
    m_d = m + m_f

    Examples
    --------
    >>> driven_mass(vehicle_mass=911.0, driver_mass=80.0)
    991.0
    """
    return vehicle_mass + driver_mass


@formula(
    reference="fox-1973",
    where="cube-root law; each author has a factor of his own",
    assumes=(
        "Power is net power at the crank, and the mass includes the driver.",
        "A closed course and full traction: on a road the result means nothing.",
        "Published factors lie 8 % apart: only their range is shown.",
    ),
)
def quarter_mile_time(
    *, quarter_mile_time_constant: Value, vehicle_mass: Value, power: Value
) -> Value:
    """Return the time over a quarter mile by one published rule.

    Parameters
    ----------
    quarter_mile_time_constant
        Quarter-mile time of a car of one pound for each horsepower [s].
    vehicle_mass
        Mass of the car as driven [kg].
    power
        Power at the crank [W].

    Returns
    -------
    Value
        Time over a quarter mile from rest [s].

    Notes
    -----
    t_q = c_t ((m / 0.45359237 kg) / (P / 745.69987 W))^(1/3)

    Examples
    --------
    >>> quarter_mile_time(quarter_mile_time_constant=5.825, vehicle_mass=1451.5, power=372850.0)
    10.815
    """
    return quarter_mile_time_constant * ((vehicle_mass / 0.45359237) / (power / 745.69987)) ** (
        1 / 3
    )


@formula(
    reference="fox-1973",
    where="cube-root law; each author has a factor of his own",
    assumes=(
        "Power is net power at the crank, and the mass includes the driver.",
        "A closed course and full traction: on a road the result means nothing.",
        "Published factors lie 4 % apart: only their range is shown.",
    ),
)
def trap_speed(*, trap_speed_constant: Value, power: Value, vehicle_mass: Value) -> Value:
    """Return the speed at the end of a quarter mile by one published rule.

    Parameters
    ----------
    trap_speed_constant
        Quarter-mile end speed of a car of one horsepower for each pound [m/s].
    power
        Power at the crank [W].
    vehicle_mass
        Mass of the car as driven [kg].

    Returns
    -------
    Value
        Speed at the end of a quarter mile [m/s].

    Notes
    -----
    v_q = c_v ((P / 745.69987 W) / (m / 0.45359237 kg))^(1/3)

    Examples
    --------
    >>> trap_speed(trap_speed_constant=104.607, power=372850.0, vehicle_mass=1451.5)
    56.342
    """
    return trap_speed_constant * ((power / 745.69987) / (vehicle_mass / 0.45359237)) ** (1 / 3)
