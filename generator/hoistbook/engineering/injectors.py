"""Injectors: static flow, dead time and duty."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, sqrt


@formula(reference="common-practice", where="regulator with its reference port on the manifold")
def fuel_pressure(*, base_fuel_pressure: Value, boost: Value) -> Value:
    """Return the fuel pressure in the rail of a regulator that follows the manifold.

    Parameters
    ----------
    base_fuel_pressure
        Fuel pressure set at the regulator with no boost, gauge [Pa].
    boost
        Boost, gauge [Pa].

    Returns
    -------
    Value
        Pressure in the fuel rail, gauge [Pa].

    Notes
    -----
    p_f = p_f0 + p_b

    Examples
    --------
    >>> fuel_pressure(base_fuel_pressure=300e3, boost=80e3)
    3.8000e+05
    """
    return base_fuel_pressure + boost


@formula(
    reference="common-practice",
    where="both pressures gauge",
    assumes=("A fixed regulator loses this difference one for one with boost.",),
)
def injector_pressure_difference(*, fuel_pressure: Value, boost: Value) -> Value:
    """Return the pressure difference across the injector.

    Parameters
    ----------
    fuel_pressure
        Pressure in the fuel rail, gauge [Pa].
    boost
        Boost, gauge [Pa].

    Returns
    -------
    Value
        Pressure difference across the injector [Pa].

    Notes
    -----
    Δp_f = p_f - p_b

    Examples
    --------
    >>> injector_pressure_difference(fuel_pressure=380e3, boost=80e3)
    3.0000e+05
    """
    return fuel_pressure - boost


@formula(
    reference="white-2011",
    where="section 6.12, orifice",
    valid={"injector_pressure_difference": (200e3, 700e3)},
    assumes=("Same fluid as at rating.",),
)
def injector_static_flow(
    *,
    rated_static_flow: Value,
    injector_pressure_difference: Value,
    rated_pressure_difference: Value,
) -> Value:
    """Return the static flow of one injector at another pressure difference.

    Parameters
    ----------
    rated_static_flow
        Static flow of the injector as rated [m3/s].
    injector_pressure_difference
        Pressure difference across the injector [Pa].
    rated_pressure_difference
        Pressure difference at which the injector was rated [Pa].

    Returns
    -------
    Value
        Static flow of one injector [m3/s].

    Notes
    -----
    Q_i = Q_0 √(Δp_f / Δp_0)

    Examples
    --------
    >>> injector_static_flow(
    ...     rated_static_flow=9.16667e-06, injector_pressure_difference=400e3,
    ...     rated_pressure_difference=300e3,
    ... )
    1.0585e-05
    """
    return rated_static_flow * sqrt(injector_pressure_difference / rated_pressure_difference)


@formula(
    reference="white-2011",
    where="section 6.12, orifice",
    result="injector_static_flow",
    valid={"injector_pressure_difference": (200e3, 700e3)},
    assumes=("The discharge coefficient stays the same.",),
)
def injector_static_flow_of_fuel(
    *,
    rated_static_flow: Value,
    injector_pressure_difference: Value,
    rated_pressure_difference: Value,
    rated_fluid_density: Value,
    fuel_density: Value,
) -> Value:
    """Return the static flow of one injector at another pressure difference and with another fuel.

    Parameters
    ----------
    rated_static_flow
        Static flow of the injector as rated [m3/s].
    injector_pressure_difference
        Pressure difference across the injector [Pa].
    rated_pressure_difference
        Pressure difference at which the injector was rated [Pa].
    rated_fluid_density
        Density of the fluid that the injector was rated with [kg/m3].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Static flow of one injector [m3/s].

    Notes
    -----
    Q_i = Q_0 √(Δp_f / Δp_0 · ρ_t / ρ_f)

    Examples
    --------
    >>> injector_static_flow_of_fuel(
    ...     rated_static_flow=9.16667e-06, injector_pressure_difference=300e3,
    ...     rated_pressure_difference=300e3, rated_fluid_density=684.0, fuel_density=782.0,
    ... )
    8.5731e-06
    """
    return rated_static_flow * sqrt(
        injector_pressure_difference
        / rated_pressure_difference
        * rated_fluid_density
        / fuel_density
    )


@formula(
    reference="white-2011",
    where="definition of density",
    assumes=("A flow by mass says nothing without the density of its fluid.",),
)
def injector_mass_flow(*, injector_static_flow: Value, fuel_density: Value) -> Value:
    """Return the static flow of one injector by mass.

    Parameters
    ----------
    injector_static_flow
        Static flow of one injector [m3/s].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Static flow of one injector, by mass [kg/s].

    Notes
    -----
    ṁ_i = Q_i ρ_f

    Examples
    --------
    >>> injector_mass_flow(injector_static_flow=9.16667e-06, fuel_density=720.0)
    6.6000e-03
    """
    return injector_static_flow * fuel_density


@formula(reference="heywood-1988", where="section 2.3")
def injector_cycle_time(*, revolutions_per_cycle: Value, engine_speed: Value) -> Value:
    """Return the time of one working cycle.

    Parameters
    ----------
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Time of one working cycle [s].

    Notes
    -----
    t_c = 60 n_R / N

    Examples
    --------
    >>> injector_cycle_time(revolutions_per_cycle=2, engine_speed=7000.0)
    0.017143
    """
    return 60 * revolutions_per_cycle / engine_speed


@formula(
    reference="common-practice",
    where="one pulse for each working cycle",
    valid={"injector_duty": (0, 1)},
    assumes=("The injector delivers its static flow from the end of the dead time on.",),
)
def injector_duty(
    *,
    fuel_flow: Value,
    injector_count: Value,
    injector_static_flow: Value,
    fuel_density: Value,
    dead_time: Value,
    injector_cycle_time: Value,
) -> Value:
    """Return the injector duty.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    injector_count
        Number of injectors [-].
    injector_static_flow
        Static flow of one injector [m3/s].
    fuel_density
        Density of the fuel [kg/m3].
    dead_time
        Dead time of the injector at the voltage and pressure in question [s].
    injector_cycle_time
        Time of one working cycle [s].

    Returns
    -------
    Value
        Injector duty [-].

    Notes
    -----
    D = ṁ_f / (n_i Q_i ρ_f) + t_0 / t_c

    Examples
    --------
    >>> injector_duty(
    ...     fuel_flow=0.0183333, injector_count=4, injector_static_flow=1.25e-05,
    ...     fuel_density=745.0, dead_time=0.0009, injector_cycle_time=0.0171429,
    ... )
    0.54467
    """
    return (
        fuel_flow / (injector_count * injector_static_flow * fuel_density)
        + dead_time / injector_cycle_time
    )


@formula(reference="common-practice", where="pulse width less dead time")
def fuel_per_pulse(
    *, pulse_width: Value, dead_time: Value, injector_static_flow: Value, fuel_density: Value
) -> Value:
    """Return the fuel delivered by one pulse of one injector.

    Parameters
    ----------
    pulse_width
        Commanded pulse width [s].
    dead_time
        Dead time of the injector at the voltage and pressure in question [s].
    injector_static_flow
        Static flow of one injector [m3/s].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Fuel delivered by one pulse of one injector [kg].

    Notes
    -----
    m_p = (t_p - t_0) Q_i ρ_f

    Examples
    --------
    >>> fuel_per_pulse(
    ...     pulse_width=0.01, dead_time=0.0009, injector_static_flow=9.16667e-06,
    ...     fuel_density=745.0,
    ... )
    6.2145e-05
    """
    return (pulse_width - dead_time) * injector_static_flow * fuel_density


@formula(reference="common-practice", where="duty limits of 80 to 85 % are in use")
def static_flow_needed(
    *,
    fuel_flow: Value,
    injector_count: Value,
    fuel_density: Value,
    duty_limit: Value,
    dead_time: Value,
    injector_cycle_time: Value,
) -> Value:
    """Return the static flow that each injector needs to stay at a duty limit.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    injector_count
        Number of injectors [-].
    fuel_density
        Density of the fuel [kg/m3].
    duty_limit
        Highest injector duty allowed [-].
    dead_time
        Dead time of the injector at the voltage and pressure in question [s].
    injector_cycle_time
        Time of one working cycle [s].

    Returns
    -------
    Value
        Static flow that each injector needs [m3/s].

    Notes
    -----
    Q_n = ṁ_f / (n_i ρ_f (D_max - t_0 / t_c))

    Examples
    --------
    >>> static_flow_needed(
    ...     fuel_flow=0.0201667, injector_count=4, fuel_density=745.0, duty_limit=0.85,
    ...     dead_time=0.0, injector_cycle_time=0.0171429,
    ... )
    7.9616e-06
    """
    return fuel_flow / (
        injector_count * fuel_density * (duty_limit - dead_time / injector_cycle_time)
    )
