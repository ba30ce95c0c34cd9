"""Pipes: velocity, Mach number, friction and losses."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, log, pi, sqrt


@formula(
    reference="white-2011",
    where="eq. 3.22, continuity",
    assumes=(
        "Density at the pressure and temperature in this pipe.",
        "The bore is the inside diameter.",
    ),
)
def pipe_velocity(
    *,
    mass_flow: Value,
    air_gas_constant: Value,
    pipe_temperature: Value,
    pipe_pressure: Value,
    pipe_bore: Value,
) -> Value:
    """Return the mean velocity in the pipe.

    Parameters
    ----------
    mass_flow
        Mass flow in the pipe [kg/s].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    pipe_temperature
        Temperature in the pipe [K].
    pipe_pressure
        Absolute pressure in the pipe [Pa].
    pipe_bore
        Bore of the pipe: inside diameter [m].

    Returns
    -------
    Value
        Mean velocity in the pipe [m/s].

    Notes
    -----
    v = ṁ R T / (p π D_i² / 4)

    Examples
    --------
    >>> pipe_velocity(
    ...     mass_flow=0.25, air_gas_constant=287.05, pipe_temperature=333.15,
    ...     pipe_pressure=200e3, pipe_bore=0.06,
    ... )
    42.278
    """
    return (
        mass_flow * air_gas_constant * pipe_temperature / (pipe_pressure * (pi * pipe_bore**2 / 4))
    )


@formula(reference="white-2011", where="eq. 9.16")
def speed_of_sound(
    *, heat_capacity_ratio: Value, air_gas_constant: Value, pipe_temperature: Value
) -> Value:
    """Return the speed of sound.

    Parameters
    ----------
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    pipe_temperature
        Temperature in the pipe [K].

    Returns
    -------
    Value
        Speed of sound [m/s].

    Notes
    -----
    a = √(γ R T)

    Examples
    --------
    >>> speed_of_sound(
    ...     heat_capacity_ratio=1.4, air_gas_constant=287.05, pipe_temperature=333.15,
    ... )
    365.9
    """
    return sqrt(heat_capacity_ratio * air_gas_constant * pipe_temperature)


@formula(
    reference="white-2011",
    where="eq. 9.16",
    valid={"mach_number": (0, 1)},
)
def mach_number(
    *,
    pipe_velocity: Value,
    heat_capacity_ratio: Value,
    air_gas_constant: Value,
    pipe_temperature: Value,
) -> Value:
    """Return the Mach number in the pipe.

    Parameters
    ----------
    pipe_velocity
        Mean velocity in the pipe [m/s].
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    pipe_temperature
        Temperature in the pipe [K].

    Returns
    -------
    Value
        Mach number in the pipe [-].

    Notes
    -----
    M = v / √(γ R T)

    Examples
    --------
    >>> mach_number(
    ...     pipe_velocity=42.278, heat_capacity_ratio=1.4, air_gas_constant=287.05,
    ...     pipe_temperature=333.15,
    ... )
    0.11555
    """
    return pipe_velocity / sqrt(heat_capacity_ratio * air_gas_constant * pipe_temperature)


@formula(
    reference="white-2011",
    where="ideal gas law, section 1.8",
    assumes=("Dry air.",),
)
def pipe_density(
    *, pipe_pressure: Value, air_gas_constant: Value, pipe_temperature: Value
) -> Value:
    """Return the density of the air in the pipe.

    Parameters
    ----------
    pipe_pressure
        Absolute pressure in the pipe [Pa].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    pipe_temperature
        Temperature in the pipe [K].

    Returns
    -------
    Value
        Density of the gas in the pipe [kg/m3].

    Notes
    -----
    ρ = p / (R T)

    Examples
    --------
    >>> pipe_density(pipe_pressure=200e3, air_gas_constant=287.05, pipe_temperature=333.15)
    2.0914
    """
    return pipe_pressure / (air_gas_constant * pipe_temperature)


@formula(
    reference="us-standard-atmosphere-1976",
    where="eq. 51, Sutherland's law, from memory",
    valid={"pipe_temperature": (250, 500)},
    assumes=("Up to 1.5 % low against real air.",),
)
def dynamic_viscosity(*, pipe_temperature: Value) -> Value:
    """Return the dynamic viscosity of air.

    Parameters
    ----------
    pipe_temperature
        Temperature in the pipe [K].

    Returns
    -------
    Value
        Dynamic viscosity of air [Pa s].

    Notes
    -----
    μ = 1.458·10⁻⁶ T^1.5 / (T + 110.4)

    Examples
    --------
    >>> dynamic_viscosity(pipe_temperature=298.15)
    1.8372e-05
    """
    return 1.458e-6 * pipe_temperature**1.5 / (pipe_temperature + 110.4)


@formula(reference="white-2011", where="section 6.2")
def reynolds_number(*, mass_flow: Value, pipe_bore: Value, dynamic_viscosity: Value) -> Value:
    """Return the Reynolds number.

    Parameters
    ----------
    mass_flow
        Mass flow in the pipe [kg/s].
    pipe_bore
        Bore of the pipe: inside diameter [m].
    dynamic_viscosity
        Dynamic viscosity of air [Pa s].

    Returns
    -------
    Value
        Reynolds number [-].

    Notes
    -----
    Re = 4 ṁ / (π D_i μ)

    Examples
    --------
    >>> reynolds_number(mass_flow=0.25, pipe_bore=0.06, dynamic_viscosity=2.01e-05)
    2.6394e+05
    """
    return 4 * mass_flow / (pi * pipe_bore * dynamic_viscosity)


@formula(
    reference="haaland-1983",
    where="whole paper",
    valid={"reynolds_number": (4000.0, 100e6)},
    assumes=("Within about 2 % of the implicit equation of Colebrook.",),
)
def friction_factor(*, roughness: Value, pipe_bore: Value, reynolds_number: Value) -> Value:
    """Return the friction factor (Darcy) of turbulent flow.

    Parameters
    ----------
    roughness
        Roughness of the pipe wall [m].
    pipe_bore
        Bore of the pipe: inside diameter [m].
    reynolds_number
        Reynolds number [-].

    Returns
    -------
    Value
        Friction factor (Darcy) [-].

    Notes
    -----
    f = (-1.8 lg((k_s / D_i / 3.7)^1.11 + 6.9 / Re))⁻²

    Examples
    --------
    >>> friction_factor(roughness=1.5e-06, pipe_bore=0.06, reynolds_number=100e3)
    0.017922
    """
    inverse_root = (
        -1.8 / log(10) * log((roughness / pipe_bore / 3.7) ** 1.11 + 6.9 / reynolds_number)
    )
    return inverse_root**-2


@formula(
    reference="white-2011",
    where="eq. 6.79",
    valid={"mach_number": (0, 0.3)},
    assumes=("Incompressible: to Mach 0.3 and a loss of 5 % of the pressure.",),
)
def pipe_pressure_loss(
    *,
    friction_factor: Value,
    pipe_length: Value,
    pipe_bore: Value,
    loss_coefficients: Value,
    pipe_density: Value,
    pipe_velocity: Value,
) -> Value:
    """Return the pressure lost in the pipe with its bends and ends.

    Parameters
    ----------
    friction_factor
        Friction factor (Darcy) [-].
    pipe_length
        Length of the pipe [m].
    pipe_bore
        Bore of the pipe: inside diameter [m].
    loss_coefficients
        Sum of the loss coefficients of bends, steps and ends [-].
    pipe_density
        Density of the gas in the pipe [kg/m3].
    pipe_velocity
        Mean velocity in the pipe [m/s].

    Returns
    -------
    Value
        Pressure lost in the pipe [Pa].

    Notes
    -----
    Δp = (f L / D_i + ΣK) ρ v² / 2

    Examples
    --------
    >>> pipe_pressure_loss(
    ...     friction_factor=0.0147, pipe_length=2.0, pipe_bore=0.06, loss_coefficients=1.2,
    ...     pipe_density=2.0914, pipe_velocity=42.278,
    ... )
    3.1588e+03
    """
    return (friction_factor * pipe_length / pipe_bore + loss_coefficients) * (
        pipe_density * pipe_velocity**2 / 2
    )
