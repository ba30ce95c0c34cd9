"""Brake mean effective pressure from what the air can burn, less friction and pumping."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, exp, maximum, pi, where


@formula(
    reference="cycle-simulation",
    where="work over compression ratio",
    valid={"compression_ratio": (8, 11)},
    assumes=("Ignition at best torque, lambda 1.",),
)
def gross_indicated_efficiency(
    *, reference_indicated_efficiency: Value, compression_ratio: Value
) -> Value:
    """Return the gross indicated efficiency at a compression ratio.

    Parameters
    ----------
    reference_indicated_efficiency
        Gross indicated efficiency brought to lambda 1 and to the reference compression ratio, 9.5
        [-].
    compression_ratio
        Compression ratio [-].

    Returns
    -------
    Value
        Gross indicated efficiency [-].

    Notes
    -----
    η_i = η_i0 exp(0.025 (CR - 9.5))

    The simulation gives η_i0 = 0.40; real engines lose more by blow-by, scatter between cycles and
    heat, so 0.38 ± 0.02 stands for one that was not calibrated (common practice, no source).

    Examples
    --------
    >>> gross_indicated_efficiency(reference_indicated_efficiency=0.38, compression_ratio=9.0)
    0.37528
    """
    return reference_indicated_efficiency * exp(0.025 * (compression_ratio - 9.5))


@formula(
    reference="cycle-simulation",
    where="work over lambda",
    valid={"lambda_ratio": (0.78, 1.05)},
    assumes=(
        "Burning is as fast and as even when rich; real engines may gain 2 to 4 % at lambda "
        "0.85 to 0.90.",
    ),
)
def mixture_factor(*, lambda_ratio: Value) -> Value:
    """Return the work per mass of air, against that at lambda 1.

    Parameters
    ----------
    lambda_ratio
        Lambda: air-fuel ratio over the stoichiometric one [-].

    Returns
    -------
    Value
        Work per mass of air, against that at lambda 1 [-].

    Notes
    -----
    k_λ = 1.0065 - 0.78 (0.95 - λ)² to λ 0.97, 1.0062 - 0.2 (λ - 0.97) to 1, 1 - 0.66 (λ - 1) above

    Known to ± 0.03. Oxygen limits the heat of a rich mixture, so work goes with the air and never
    with 1 / λ.

    Examples
    --------
    >>> mixture_factor(lambda_ratio=0.85)
    0.9987
    """
    return where(
        lambda_ratio < 0.97,
        1.0065 - 0.78 * (0.95 - lambda_ratio) ** 2,
        where(
            lambda_ratio < 1.0,
            1.0062 - 0.2 * (lambda_ratio - 0.97),
            1 - 0.66 * (lambda_ratio - 1),
        ),
    )


@formula(
    reference="cycle-simulation",
    where="later ignition",
    valid={"ignition_retard": (0, 0.3491)},
    assumes=("Says nothing about how much retard keeps an engine from knocking.",),
)
def ignition_factor(*, ignition_retard: Value) -> Value:
    """Return the work against that at the ignition of best torque.

    Parameters
    ----------
    ignition_retard
        Crank angle by which ignition is later than that of best torque [rad].

    Returns
    -------
    Value
        Work against that at the ignition of best torque [-].

    Notes
    -----
    g_r = 1 - 0.00025 (r · 180 / π)²

    Examples
    --------
    >>> ignition_factor(ignition_retard=0.17453)
    0.975
    """
    return 1 - 0.00025 * (ignition_retard * 180 / pi) ** 2


@formula(reference="heywood-1988", where="section 2.14")
def fuel_energy_per_volume(
    *,
    dry_air_flow: Value,
    stoichiometric_air_fuel_ratio: Value,
    heating_value: Value,
    displacement: Value,
    engine_speed: Value,
    revolutions_per_cycle: Value,
) -> Value:
    """Return the energy of the fuel that the air can burn, per displaced volume.

    Parameters
    ----------
    dry_air_flow
        Mass flow of dry air into the engine [kg/s].
    stoichiometric_air_fuel_ratio
        Stoichiometric air-fuel ratio by mass [-].
    heating_value
        Lower heating value of the fuel [J/kg].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].
    revolutions_per_cycle
        Revolutions for each working cycle: 2 for a four-stroke, 1 for a two-stroke [-].

    Returns
    -------
    Value
        Energy of the fuel that the air can burn, per displaced volume [Pa].

    Notes
    -----
    e = ṁ_d / AFR_st H_u / (V_d N / (60 n_R))

    Examples
    --------
    >>> fuel_energy_per_volume(
    ...     dry_air_flow=0.2, stoichiometric_air_fuel_ratio=14.6, heating_value=43e6,
    ...     displacement=0.002, engine_speed=6500.0, revolutions_per_cycle=2,
    ... )
    5.4373e+06
    """
    return (
        dry_air_flow
        / stoichiometric_air_fuel_ratio
        * heating_value
        / (displacement * engine_speed / (60 * revolutions_per_cycle))
    )


@formula(
    reference="heywood-1988",
    where="chapter 13, after Barnes-Moss",
    valid={"engine_speed": (1000, 6000)},
    assumes=(
        "Motored engines of 845 to 2,000 cm³ of the 1970s, throttle open; it contains their "
        "pumping.",
        "Newer engines have some 20 to 30 % less.",
    ),
)
def friction_mean_effective_pressure(*, engine_speed: Value) -> Value:
    """Return the friction mean effective pressure.

    Parameters
    ----------
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Friction mean effective pressure [Pa].

    Notes
    -----
    p_mf = 10⁵ (0.97 + 0.15 (N / 1000) + 0.05 (N / 1000)²)

    Examples
    --------
    >>> friction_mean_effective_pressure(engine_speed=6000.0)
    3.6700e+05
    """
    krpm = engine_speed / 1000
    return 1e5 * (0.97 + 0.15 * krpm + 0.05 * krpm**2)


@formula(
    reference="common-practice",
    where="1.0 to 1.5 times the manifold pressure where it is not measured",
    valid={"exhaust_pressure_ratio": (1, 1.6)},
)
def exhaust_manifold_pressure(
    *, exhaust_pressure_ratio: Value, manifold_absolute_pressure: Value, air_pressure: Value
) -> Value:
    """Return the absolute pressure ahead of the turbine.

    Parameters
    ----------
    exhaust_pressure_ratio
        Pressure ahead of the turbine over that in the inlet manifold [-].
    manifold_absolute_pressure
        Manifold absolute pressure [Pa].
    air_pressure
        Pressure of the surrounding air, as a barometer on the spot reads it [Pa].

    Returns
    -------
    Value
        Absolute pressure ahead of the turbine [Pa].

    Notes
    -----
    p_exh = r_exh max(p_m, p_a)

    Examples
    --------
    >>> exhaust_manifold_pressure(
    ...     exhaust_pressure_ratio=1.25, manifold_absolute_pressure=200e3, air_pressure=99e3,
    ... )
    2.5000e+05
    """
    return exhaust_pressure_ratio * maximum(manifold_absolute_pressure, air_pressure)


@formula(
    reference="heywood-1988",
    where="section 13.2",
    assumes=("Loss in the valves is in the friction already.",),
)
def pumping_mean_effective_pressure(
    *, exhaust_manifold_pressure: Value, manifold_absolute_pressure: Value
) -> Value:
    """Return the pumping mean effective pressure.

    Parameters
    ----------
    exhaust_manifold_pressure
        Absolute pressure ahead of the turbine [Pa].
    manifold_absolute_pressure
        Manifold absolute pressure [Pa].

    Returns
    -------
    Value
        Pumping mean effective pressure [Pa].

    Notes
    -----
    p_mp = p_exh - p_m

    Examples
    --------
    >>> pumping_mean_effective_pressure(
    ...     exhaust_manifold_pressure=250e3, manifold_absolute_pressure=200e3,
    ... )
    5.0000e+04
    """
    return exhaust_manifold_pressure - manifold_absolute_pressure


@formula(
    reference="cycle-simulation",
    where="work over boost",
    valid={"brake_mean_effective_pressure": (300e3, 2.5e6)},
    assumes=(
        "Friction does not grow with boost.",
        "Never compared with boosted engines; its links are, the whole is not.",
        "Says nothing about knock.",
    ),
)
def brake_mean_effective_pressure(
    *,
    gross_indicated_efficiency: Value,
    mixture_factor: Value,
    ignition_factor: Value,
    fuel_energy_per_volume: Value,
    friction_mean_effective_pressure: Value,
    pumping_mean_effective_pressure: Value,
) -> Value:
    """Return the brake mean effective pressure.

    Parameters
    ----------
    gross_indicated_efficiency
        Gross indicated efficiency [-].
    mixture_factor
        Work per mass of air, against that at lambda 1 [-].
    ignition_factor
        Work against that at the ignition of best torque [-].
    fuel_energy_per_volume
        Energy of the fuel that the air can burn, per displaced volume [Pa].
    friction_mean_effective_pressure
        Friction mean effective pressure [Pa].
    pumping_mean_effective_pressure
        Pumping mean effective pressure [Pa].

    Returns
    -------
    Value
        Brake mean effective pressure [Pa].

    Notes
    -----
    p_me = η_i k_λ g_r e - p_mf - p_mp

    Examples
    --------
    >>> brake_mean_effective_pressure(
    ...     gross_indicated_efficiency=0.38, mixture_factor=1.0, ignition_factor=0.975,
    ...     fuel_energy_per_volume=5.4e6, friction_mean_effective_pressure=367e3,
    ...     pumping_mean_effective_pressure=50e3,
    ... )
    1.5837e+06
    """
    return (
        gross_indicated_efficiency * mixture_factor * ignition_factor * fuel_energy_per_volume
        - friction_mean_effective_pressure
        - pumping_mean_effective_pressure
    )
