"""Throats and volumes: where the flow chokes, how long a volume takes to fill."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, maximum, pi, sqrt


@formula(
    reference="white-2011",
    where="eq. 9.32",
    assumes=("Isentropic flow of an ideal gas.",),
)
def critical_pressure_ratio(*, heat_capacity_ratio: Value) -> Value:
    """Return the pressure in a choked throat over that at rest.

    Parameters
    ----------
    heat_capacity_ratio
        Ratio of the specific heats of air [-].

    Returns
    -------
    Value
        Pressure in the choked throat over that at rest [-].

    Notes
    -----
    p*/p_0 = (2 / (γ + 1))^(γ / (γ - 1))

    Examples
    --------
    >>> critical_pressure_ratio(heat_capacity_ratio=1.4)
    0.52828
    """
    return (2 / (heat_capacity_ratio + 1)) ** (heat_capacity_ratio / (heat_capacity_ratio - 1))


@formula(
    reference="white-2011",
    where="eq. 9.46",
    assumes=("Isentropic flow of an ideal gas.",),
)
def choked_flow(
    *,
    discharge_coefficient: Value,
    throat_diameter: Value,
    stagnation_pressure: Value,
    stagnation_temperature: Value,
    heat_capacity_ratio: Value,
    air_gas_constant: Value,
) -> Value:
    """Return the mass flow at which a throat chokes.

    Parameters
    ----------
    discharge_coefficient
        Discharge coefficient [-].
    throat_diameter
        Diameter of the throat [m].
    stagnation_pressure
        Absolute pressure at rest ahead of the throat [Pa].
    stagnation_temperature
        Temperature at rest ahead of the throat [K].
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].

    Returns
    -------
    Value
        Mass flow at which the throat chokes [kg/s].

    Notes
    -----
    ṁ* = C_d π D_t² / 4 p_0 / √T_0 √(γ / R) (2 / (γ + 1))^((γ + 1) / (2 (γ - 1)))

    Examples
    --------
    >>> choked_flow(
    ...     discharge_coefficient=1.0, throat_diameter=0.032, stagnation_pressure=101.3e3,
    ...     stagnation_temperature=298.15, heat_capacity_ratio=1.4, air_gas_constant=287.05,
    ... )
    0.19069
    """
    return (
        discharge_coefficient
        * (pi * throat_diameter**2 / 4)
        * stagnation_pressure
        / sqrt(stagnation_temperature)
        * sqrt(heat_capacity_ratio / air_gas_constant)
        * (2 / (heat_capacity_ratio + 1))
        ** ((heat_capacity_ratio + 1) / (2 * (heat_capacity_ratio - 1)))
    )


@formula(
    reference="white-2011",
    where="ideal gas law, section 1.8",
    assumes=(
        "Isothermal; the flow stays constant.",
        "Waiting for boost is mostly the compressor gaining speed, not the volume.",
    ),
)
def fill_time(
    *,
    volume: Value,
    pressure_rise: Value,
    air_gas_constant: Value,
    pipe_temperature: Value,
    net_mass_flow: Value,
) -> Value:
    """Return the time to raise the pressure in a volume.

    Parameters
    ----------
    volume
        Volume that is filled [m3].
    pressure_rise
        Rise of pressure in the volume [Pa].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    pipe_temperature
        Temperature in the pipe [K].
    net_mass_flow
        Mass flow in less mass flow out [kg/s].

    Returns
    -------
    Value
        Time to raise the pressure in a volume [s].

    Notes
    -----
    t_f = V Δp_V / (R T Δṁ)

    Examples
    --------
    >>> fill_time(
    ...     volume=0.015, pressure_rise=100e3, air_gas_constant=287.05, pipe_temperature=323.15,
    ...     net_mass_flow=0.1,
    ... )
    0.16171
    """
    return volume * pressure_rise / (air_gas_constant * pipe_temperature * net_mass_flow)


@formula(
    reference="white-2011",
    where="eq. 9.47 and 9.46",
    result="mass_flow",
    assumes=(
        "Isentropic flow of an ideal gas.",
        "Below the critical pressure ratio the throat chokes, and the pressure behind it no "
        "longer matters.",
    ),
)
def throat_flow(
    *,
    discharge_coefficient: Value,
    throat_diameter: Value,
    stagnation_pressure: Value,
    stagnation_temperature: Value,
    throat_pressure: Value,
    critical_pressure_ratio: Value,
    heat_capacity_ratio: Value,
    air_gas_constant: Value,
) -> Value:
    """Return the mass flow through a throat, choked or not.

    Parameters
    ----------
    discharge_coefficient
        Discharge coefficient [-].
    throat_diameter
        Diameter of the throat [m].
    stagnation_pressure
        Absolute pressure at rest ahead of the throat [Pa].
    stagnation_temperature
        Temperature at rest ahead of the throat [K].
    throat_pressure
        Absolute pressure behind the throat [Pa].
    critical_pressure_ratio
        Pressure in the choked throat over that at rest [-].
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].

    Returns
    -------
    Value
        Mass flow in the pipe [kg/s].

    Notes
    -----
    ṁ = C_d π D_t² / 4 p_0 √(2 γ / ((γ - 1) R T_0) (r^(2 / γ) - r^((γ + 1) / γ)))
    with r the greater of p_t / p_0 and p*/p_0

    Examples
    --------
    >>> throat_flow(
    ...     discharge_coefficient=1.0, throat_diameter=0.032, stagnation_pressure=101300.0,
    ...     stagnation_temperature=298.15, throat_pressure=90000.0,
    ...     critical_pressure_ratio=0.52828, heat_capacity_ratio=1.4,
    ...     air_gas_constant=287.05,
    ... )
    0.12343
    """
    ratio = maximum(throat_pressure / stagnation_pressure, critical_pressure_ratio)
    return (
        discharge_coefficient
        * (pi * throat_diameter**2 / 4)
        * stagnation_pressure
        * sqrt(
            2
            * heat_capacity_ratio
            / ((heat_capacity_ratio - 1) * air_gas_constant * stagnation_temperature)
            * (
                ratio ** (2 / heat_capacity_ratio)
                - ratio ** ((heat_capacity_ratio + 1) / heat_capacity_ratio)
            )
        )
    )


@formula(
    reference="common-practice",
    where="volume of a cylinder",
)
def pipe_volume(*, pipe_bore: Value, pipe_length: Value) -> Value:
    """Return the volume inside a pipe.

    Parameters
    ----------
    pipe_bore
        Bore of the pipe: inside diameter [m].
    pipe_length
        Length of the pipe [m].

    Returns
    -------
    Value
        Volume inside the pipe [m3].

    Notes
    -----
    V_p = π D_i² / 4 L

    Examples
    --------
    >>> pipe_volume(pipe_bore=0.06, pipe_length=2.0)
    0.0056549
    """
    return pi * pipe_bore**2 / 4 * pipe_length


@formula(
    reference="common-practice",
    where="sum of the volumes",
    result="volume",
    assumes=(
        "Says nothing of when boost comes: that is mostly the compressor gaining speed, and only "
        "a log shows it.",
    ),
)
def charge_volume(*, pipe_volume: Value, cooler_volume: Value, plenum_volume: Value) -> Value:
    """Return the volume between compressor and inlet valves that boost has to fill.

    Parameters
    ----------
    pipe_volume
        Volume inside the pipe [m3].
    cooler_volume
        Volume inside the charge cooler [m3].
    plenum_volume
        Volume inside the manifold [m3].

    Returns
    -------
    Value
        Volume that is filled [m3].

    Notes
    -----
    V = V_p + V_k + V_pl

    Examples
    --------
    >>> charge_volume(pipe_volume=0.00565, cooler_volume=0.006, plenum_volume=0.003)
    0.01465
    """
    return pipe_volume + cooler_volume + plenum_volume


@formula(
    reference="white-2011",
    where="section 9.4, choking",
    assumes=("At 1 the throat chokes: no more passes, whatever is done behind it.",),
)
def throat_share(*, mass_flow: Value, choked_flow: Value) -> Value:
    """Return the share of the choking flow that passes a throat.

    Parameters
    ----------
    mass_flow
        Mass flow in the pipe [kg/s].
    choked_flow
        Mass flow at which the throat chokes [kg/s].

    Returns
    -------
    Value
        Mass flow through a throat over that at which it chokes [-].

    Notes
    -----
    q_t = ṁ / ṁ*

    Examples
    --------
    >>> throat_share(mass_flow=0.1, choked_flow=0.19069)
    0.52441
    """
    return mass_flow / choked_flow
