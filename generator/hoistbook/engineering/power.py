"""Power, torque, mean effective pressure and consumption: what each says of the others."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, pi


@formula(reference="heywood-1988", where="eq. 2.19", result="brake_mean_effective_pressure")
def brake_mean_effective_pressure_of_power(
    *, revolutions_per_cycle: Value, power: Value, displacement: Value, engine_speed: Value
) -> Value:
    """Return the brake mean effective pressure that belongs to a power.

    Parameters
    ----------
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].
    power
        Power at the crank [W].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Brake mean effective pressure [Pa].

    Notes
    -----
    p_me = n_R P / (V_d N / 60)

    Examples
    --------
    >>> brake_mean_effective_pressure_of_power(
    ...     revolutions_per_cycle=2, power=100e3, displacement=0.002, engine_speed=6000.0,
    ... )
    1.0000e+06
    """
    return revolutions_per_cycle * power / (displacement * engine_speed / 60)


@formula(reference="heywood-1988", where="eq. 2.20", result="brake_mean_effective_pressure")
def brake_mean_effective_pressure_of_torque(
    *, revolutions_per_cycle: Value, torque: Value, displacement: Value
) -> Value:
    """Return the brake mean effective pressure that belongs to a torque.

    Parameters
    ----------
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].
    torque
        Torque at the crank [N m].
    displacement
        Displacement [m3].

    Returns
    -------
    Value
        Brake mean effective pressure [Pa].

    Notes
    -----
    p_me = 2 π n_R M / V_d

    Examples
    --------
    >>> brake_mean_effective_pressure_of_torque(
    ...     revolutions_per_cycle=2, torque=200.0, displacement=0.002,
    ... )
    1.2566e+06
    """
    return 2 * pi * revolutions_per_cycle * torque / displacement


@formula(reference="heywood-1988", where="eq. 2.19")
def power(
    *,
    brake_mean_effective_pressure: Value,
    displacement: Value,
    engine_speed: Value,
    revolutions_per_cycle: Value,
) -> Value:
    """Return the power at the crank.

    Parameters
    ----------
    brake_mean_effective_pressure
        Brake mean effective pressure [Pa].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].

    Returns
    -------
    Value
        Power at the crank [W].

    Notes
    -----
    P = p_me V_d N / (60 n_R)

    Examples
    --------
    >>> power(
    ...     brake_mean_effective_pressure=1e6, displacement=0.002, engine_speed=6000.0,
    ...     revolutions_per_cycle=2,
    ... )
    1.0000e+05
    """
    return (
        brake_mean_effective_pressure * displacement * engine_speed / (60 * revolutions_per_cycle)
    )


@formula(reference="heywood-1988", where="eq. 2.13", result="power")
def power_of_torque(*, engine_speed: Value, torque: Value) -> Value:
    """Return the power of a torque at a speed.

    Parameters
    ----------
    engine_speed
        Engine speed [1/min].
    torque
        Torque at the crank [N m].

    Returns
    -------
    Value
        Power at the crank [W].

    Notes
    -----
    P = 2 π N / 60 M

    Examples
    --------
    >>> power_of_torque(engine_speed=6000.0, torque=300.0)
    1.8850e+05
    """
    return 2 * pi * engine_speed / 60 * torque


@formula(reference="heywood-1988", where="eq. 2.13")
def torque(*, power: Value, engine_speed: Value) -> Value:
    """Return the torque at the crank.

    Parameters
    ----------
    power
        Power at the crank [W].
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Torque at the crank [N m].

    Notes
    -----
    M = P / (2 π N / 60)

    Examples
    --------
    >>> torque(power=188495.6, engine_speed=6000.0)
    300.0
    """
    return power / (2 * pi * engine_speed / 60)


@formula(
    reference="heywood-1988",
    where="eq. 2.23",
    result="power",
    assumes=(
        "The efficiency is that on all the fuel supplied; it falls when the mixture is rich.",
    ),
)
def power_of_brake_efficiency(
    *, fuel_flow: Value, heating_value: Value, brake_efficiency: Value
) -> Value:
    """Return the power of a fuel flow at a brake efficiency.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    heating_value
        Lower heating value of the fuel [J/kg].
    brake_efficiency
        Brake thermal efficiency, on all the fuel supplied [-].

    Returns
    -------
    Value
        Power at the crank [W].

    Notes
    -----
    P = ṁ_f H_u η_b

    Examples
    --------
    >>> power_of_brake_efficiency(
    ...     fuel_flow=0.020145, heating_value=43e6, brake_efficiency=0.27,
    ... )
    2.3388e+05
    """
    return fuel_flow * heating_value * brake_efficiency


@formula(reference="heywood-1988", where="eq. 2.21", result="power")
def power_of_fuel_flow(*, fuel_flow: Value, brake_specific_fuel_consumption: Value) -> Value:
    """Return the power of a fuel flow at a specific consumption.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    brake_specific_fuel_consumption
        Brake specific fuel consumption [kg/J].

    Returns
    -------
    Value
        Power at the crank [W].

    Notes
    -----
    P = ṁ_f / b_e

    Examples
    --------
    >>> power_of_fuel_flow(fuel_flow=0.02, brake_specific_fuel_consumption=9.1667e-08)
    2.1818e+05
    """
    return fuel_flow / brake_specific_fuel_consumption


@formula(reference="heywood-1988", where="eq. 2.21", result="fuel_flow")
def fuel_flow_of_power(*, power: Value, brake_specific_fuel_consumption: Value) -> Value:
    """Return the fuel flow of a power at a specific consumption.

    Parameters
    ----------
    power
        Power at the crank [W].
    brake_specific_fuel_consumption
        Brake specific fuel consumption [kg/J].

    Returns
    -------
    Value
        Mass flow of fuel [kg/s].

    Notes
    -----
    ṁ_f = P b_e

    Examples
    --------
    >>> fuel_flow_of_power(power=200e3, brake_specific_fuel_consumption=9.1667e-08)
    0.018333
    """
    return power * brake_specific_fuel_consumption


@formula(reference="heywood-1988", where="eq. 2.24")
def brake_specific_fuel_consumption(*, brake_efficiency: Value, heating_value: Value) -> Value:
    """Return the specific consumption that belongs to a brake efficiency.

    Parameters
    ----------
    brake_efficiency
        Brake thermal efficiency, on all the fuel supplied [-].
    heating_value
        Lower heating value of the fuel [J/kg].

    Returns
    -------
    Value
        Brake specific fuel consumption [kg/J].

    Notes
    -----
    b_e = 1 / (η_b H_u)

    Examples
    --------
    >>> brake_specific_fuel_consumption(brake_efficiency=0.27, heating_value=43e6)
    8.6133e-08
    """
    return 1 / (brake_efficiency * heating_value)


@formula(reference="heywood-1988", where="eq. 2.9")
def mean_piston_speed(*, stroke: Value, engine_speed: Value) -> Value:
    """Return the mean piston speed.

    Parameters
    ----------
    stroke
        Stroke [m].
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Mean piston speed [m/s].

    Notes
    -----
    c_m = 2 S N / 60

    Examples
    --------
    >>> mean_piston_speed(stroke=0.086, engine_speed=7000.0)
    20.067
    """
    return 2 * stroke * engine_speed / 60


@formula(reference="common-practice", where="definition")
def power_to_mass(*, power: Value, vehicle_mass: Value) -> Value:
    """Return the power to mass.

    Parameters
    ----------
    power
        Power at the crank [W].
    vehicle_mass
        Mass of the car as driven [kg].

    Returns
    -------
    Value
        Power to mass [W/kg].

    Notes
    -----
    P/m = P / m

    Examples
    --------
    >>> power_to_mass(power=120e3, vehicle_mass=900.0)
    133.33
    """
    return power / vehicle_mass
