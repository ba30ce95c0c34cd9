"""Air that the engine takes: pressure and density in the manifold, mass and volume flow."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(reference="common-practice", where="a boost gauge reads against the surrounding air")
def manifold_absolute_pressure(*, air_pressure: Value, boost: Value) -> Value:
    """Return the manifold absolute pressure.

    Parameters
    ----------
    air_pressure
        Pressure of the surrounding air, as a barometer on the spot reads it [Pa].
    boost
        Boost, gauge [Pa].

    Returns
    -------
    Value
        Manifold absolute pressure [Pa].

    Notes
    -----
    p_m = p_a + p_b

    Examples
    --------
    >>> manifold_absolute_pressure(air_pressure=99e3, boost=80e3)
    1.7900e+05
    """
    return air_pressure + boost


@formula(
    reference="white-2011",
    where="ideal gas law, section 1.8",
    valid={"manifold_absolute_pressure": (20e3, 400e3), "charge_temperature": (250, 450)},
    assumes=(
        "Ideal gases.",
        "No fuel vapour in the charge.",
        "No water has condensed in the charge cooler.",
    ),
)
def charge_density(
    *,
    manifold_absolute_pressure: Value,
    charge_temperature: Value,
    humidity_ratio: Value,
    air_gas_constant: Value,
    vapour_gas_constant: Value,
) -> Value:
    """Return the density of the moist charge in the manifold.

    Parameters
    ----------
    manifold_absolute_pressure
        Manifold absolute pressure [Pa].
    charge_temperature
        Temperature of the charge [K].
    humidity_ratio
        Mass of water vapour per mass of dry air [-].
    air_gas_constant
        Specific gas constant of dry air [J/(kg K)].
    vapour_gas_constant
        Specific gas constant of water vapour [J/(kg K)].

    Returns
    -------
    Value
        Density of the charge in the manifold [kg/m3].

    Notes
    -----
    ρ_m = (p_m / T_3) (1 + W) / (R + W R_v)

    Examples
    --------
    >>> charge_density(
    ...     manifold_absolute_pressure=200e3, charge_temperature=323.15, humidity_ratio=0.0,
    ...     air_gas_constant=287.05, vapour_gas_constant=461.5,
    ... )
    2.1561
    """
    return (manifold_absolute_pressure / charge_temperature) * (
        (1 + humidity_ratio) / (air_gas_constant + humidity_ratio * vapour_gas_constant)
    )


@formula(
    reference="heywood-1988",
    where="eq. 2.27, section 2.10",
    valid={"volumetric_efficiency": (0.5, 1.15)},
    assumes=(
        "Steady full load.",
        "Volumetric efficiency is referred to the density in the manifold, so boost counts once.",
        "Air that blows through at valve overlap is not in it.",
    ),
)
def engine_air_flow(
    *,
    volumetric_efficiency: Value,
    charge_density: Value,
    displacement: Value,
    engine_speed: Value,
    revolutions_per_cycle: Value,
) -> Value:
    """Return the mass flow of air into the engine.

    Parameters
    ----------
    volumetric_efficiency
        Volumetric efficiency, referred to the density in the manifold [-].
    charge_density
        Density of the charge in the manifold [kg/m3].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].

    Returns
    -------
    Value
        Mass flow of air into the engine [kg/s].

    Notes
    -----
    ṁ_a = η_v ρ_m V_d N / (60 n_R)

    Examples
    --------
    >>> engine_air_flow(
    ...     volumetric_efficiency=0.95, charge_density=2.156, displacement=0.002,
    ...     engine_speed=6500.0, revolutions_per_cycle=2,
    ... )
    0.22189
    """
    return (
        volumetric_efficiency
        * charge_density
        * displacement
        * (engine_speed / (60 * revolutions_per_cycle))
    )


@formula(reference="heywood-1988", where="section 3.2, humid air")
def dry_air_flow(*, engine_air_flow: Value, humidity_ratio: Value) -> Value:
    """Return the mass flow of dry air, which carries the oxygen.

    Parameters
    ----------
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    humidity_ratio
        Mass of water vapour per mass of dry air [-].

    Returns
    -------
    Value
        Mass flow of dry air into the engine [kg/s].

    Notes
    -----
    ṁ_d = ṁ_a / (1 + W)

    Examples
    --------
    >>> dry_air_flow(engine_air_flow=0.2, humidity_ratio=0.01)
    0.19802
    """
    return engine_air_flow / (1 + humidity_ratio)


@formula(
    reference="heywood-1988",
    where="eq. 2.27, section 2.10",
    result="air_volume_flow",
    assumes=("The volume is that at the density in the manifold, not at standard conditions.",),
)
def displacement_flow(
    *,
    volumetric_efficiency: Value,
    displacement: Value,
    engine_speed: Value,
    revolutions_per_cycle: Value,
) -> Value:
    """Return the volume flow into the engine at the density in the manifold.

    Parameters
    ----------
    volumetric_efficiency
        Volumetric efficiency, referred to the density in the manifold [-].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].

    Returns
    -------
    Value
        Volume flow of air, at a stated density [m3/s].

    Notes
    -----
    V̇ = η_v V_d N / (60 n_R)

    Examples
    --------
    >>> displacement_flow(
    ...     volumetric_efficiency=0.9, displacement=0.005735472, engine_speed=6000.0,
    ...     revolutions_per_cycle=2,
    ... )
    0.2581
    """
    return volumetric_efficiency * displacement * engine_speed / (60 * revolutions_per_cycle)


@formula(
    reference="white-2011",
    where="definition of density",
    assumes=("A volume flow without its density says nothing.",),
)
def air_volume_flow(*, engine_air_flow: Value, air_density: Value) -> Value:
    """Return the volume flow of an air flow at a stated density.

    Parameters
    ----------
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    air_density
        Density of the surrounding air [kg/m3].

    Returns
    -------
    Value
        Volume flow of air, at a stated density [m3/s].

    Notes
    -----
    V̇ = ṁ_a / ρ_a

    Examples
    --------
    >>> air_volume_flow(engine_air_flow=0.3, air_density=1.225)
    0.2449
    """
    return engine_air_flow / air_density
