"""The compressor: pressure ratio, outlet temperature, power, and flow as maps give it."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, sqrt


@formula(reference="heywood-1988", where="section 6.3")
def compressor_inlet_pressure(*, air_pressure: Value, inlet_loss: Value) -> Value:
    """Return the absolute pressure at the compressor inlet.

    Parameters
    ----------
    air_pressure
        Pressure of the surrounding air, as a barometer on the spot reads it [Pa].
    inlet_loss
        Pressure lost in filter and inlet pipe [Pa].

    Returns
    -------
    Value
        Absolute pressure at the compressor inlet [Pa].

    Notes
    -----
    p_1 = p_a - Δp_i

    Examples
    --------
    >>> compressor_inlet_pressure(air_pressure=101.3e3, inlet_loss=3000.0)
    9.8300e+04
    """
    return air_pressure - inlet_loss


@formula(reference="heywood-1988", where="section 6.3")
def compressor_outlet_pressure(
    *, manifold_absolute_pressure: Value, charge_path_loss: Value
) -> Value:
    """Return the absolute pressure at the compressor outlet.

    Parameters
    ----------
    manifold_absolute_pressure
        Manifold absolute pressure [Pa].
    charge_path_loss
        Pressure lost between compressor and manifold [Pa].

    Returns
    -------
    Value
        Absolute pressure at the compressor outlet [Pa].

    Notes
    -----
    p_2 = p_m + Δp_c

    Examples
    --------
    >>> compressor_outlet_pressure(manifold_absolute_pressure=201.3e3, charge_path_loss=10e3)
    2.1130e+05
    """
    return manifold_absolute_pressure + charge_path_loss


@formula(
    reference="heywood-1988",
    where="section 6.3",
    valid={"pressure_ratio": (1, 4)},
    assumes=(
        "Total to total, absolute.",
        "Leaving out filter and cooler losses understates it by 0.1 to 0.4.",
    ),
)
def pressure_ratio(
    *, compressor_outlet_pressure: Value, compressor_inlet_pressure: Value
) -> Value:
    """Return the pressure ratio of the compressor.

    Parameters
    ----------
    compressor_outlet_pressure
        Absolute pressure at the compressor outlet [Pa].
    compressor_inlet_pressure
        Absolute pressure at the compressor inlet [Pa].

    Returns
    -------
    Value
        Pressure ratio of the compressor [-].

    Notes
    -----
    Π = p_2 / p_1

    Examples
    --------
    >>> pressure_ratio(compressor_outlet_pressure=211.3e3, compressor_inlet_pressure=98.3e3)
    2.1495
    """
    return compressor_outlet_pressure / compressor_inlet_pressure


@formula(
    reference="heywood-1988",
    where="section 6.3",
    valid={"pressure_ratio": (1, 3.2), "compressor_efficiency": (0.4, 0.85)},
    assumes=(
        "Ideal gas with constant specific heats: high against real air by up to 2.5 % of the "
        "rise, some 2 K at common efficiencies.",
        "No heat reaches the compressor from the turbine.",
    ),
)
def compressor_outlet_temperature(
    *,
    compressor_inlet_temperature: Value,
    pressure_ratio: Value,
    heat_capacity_ratio: Value,
    compressor_efficiency: Value,
) -> Value:
    """Return the temperature at the compressor outlet.

    Parameters
    ----------
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].
    pressure_ratio
        Pressure ratio of the compressor [-].
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    compressor_efficiency
        Isentropic efficiency of the compressor [-].

    Returns
    -------
    Value
        Temperature at the compressor outlet [K].

    Notes
    -----
    T_2 = T_1 (1 + (Π^((γ - 1) / γ) - 1) / η_is)

    Examples
    --------
    >>> compressor_outlet_temperature(
    ...     compressor_inlet_temperature=298.15, pressure_ratio=1.8, heat_capacity_ratio=1.4,
    ...     compressor_efficiency=0.72,
    ... )
    373.87
    """
    return compressor_inlet_temperature * (
        1
        + (pressure_ratio ** ((heat_capacity_ratio - 1) / heat_capacity_ratio) - 1)
        / compressor_efficiency
    )


@formula(
    reference="heywood-1988",
    where="section 6.3",
    result="compressor_efficiency",
    valid={"pressure_ratio": (1, 3.2)},
    assumes=("No heat reaches the compressor from the turbine; a hot housing makes it look low.",),
)
def isentropic_efficiency(
    *,
    compressor_inlet_temperature: Value,
    pressure_ratio: Value,
    heat_capacity_ratio: Value,
    compressor_outlet_temperature: Value,
) -> Value:
    """Return the isentropic efficiency of a compressor from measured temperatures.

    Parameters
    ----------
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].
    pressure_ratio
        Pressure ratio of the compressor [-].
    heat_capacity_ratio
        Ratio of the specific heats of air [-].
    compressor_outlet_temperature
        Temperature at the compressor outlet [K].

    Returns
    -------
    Value
        Isentropic efficiency of the compressor [-].

    Notes
    -----
    η_is = T_1 (Π^((γ - 1) / γ) - 1) / (T_2 - T_1)

    Examples
    --------
    >>> isentropic_efficiency(
    ...     compressor_inlet_temperature=298.15, pressure_ratio=1.8, heat_capacity_ratio=1.4,
    ...     compressor_outlet_temperature=383.15,
    ... )
    0.64142
    """
    return (
        compressor_inlet_temperature
        * (pressure_ratio ** ((heat_capacity_ratio - 1) / heat_capacity_ratio) - 1)
        / (compressor_outlet_temperature - compressor_inlet_temperature)
    )


@formula(
    reference="heywood-1988",
    where="section 6.3",
    assumes=("Constant specific heat: within 1 % of real air to a pressure ratio of 3.",),
)
def compressor_power(
    *,
    engine_air_flow: Value,
    air_heat_capacity: Value,
    compressor_outlet_temperature: Value,
    compressor_inlet_temperature: Value,
) -> Value:
    """Return the power that the compressor takes.

    Parameters
    ----------
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    air_heat_capacity
        Specific heat of air at constant pressure [J/(kg K)].
    compressor_outlet_temperature
        Temperature at the compressor outlet [K].
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].

    Returns
    -------
    Value
        Power that the compressor takes [W].

    Notes
    -----
    P_c = ṁ_a c_p (T_2 - T_1)

    Examples
    --------
    >>> compressor_power(
    ...     engine_air_flow=0.25, air_heat_capacity=1005.0, compressor_outlet_temperature=373.87,
    ...     compressor_inlet_temperature=298.15,
    ... )
    1.9025e+04
    """
    return (
        engine_air_flow
        * air_heat_capacity
        * (compressor_outlet_temperature - compressor_inlet_temperature)
    )


@formula(
    reference="sae-j1826",
    where="corrected flow",
    assumes=("The reference state is that printed on the map; maps differ by 5 to 8 %.",),
)
def corrected_flow(
    *,
    engine_air_flow: Value,
    compressor_inlet_temperature: Value,
    map_reference_temperature: Value,
    compressor_inlet_pressure: Value,
    map_reference_pressure: Value,
) -> Value:
    """Return the corrected mass flow, as on the compressor map.

    Parameters
    ----------
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].
    map_reference_temperature
        Temperature that the compressor map refers to [K].
    compressor_inlet_pressure
        Absolute pressure at the compressor inlet [Pa].
    map_reference_pressure
        Pressure that the compressor map refers to [Pa].

    Returns
    -------
    Value
        Corrected mass flow, as on the compressor map [kg/s].

    Notes
    -----
    ṁ_c = ṁ_a √(T_1 / T_ref) / (p_1 / p_ref)

    Examples
    --------
    >>> corrected_flow(
    ...     engine_air_flow=0.3, compressor_inlet_temperature=308.15,
    ...     map_reference_temperature=298.0, compressor_inlet_pressure=95e3,
    ...     map_reference_pressure=100e3,
    ... )
    0.32112
    """
    return (
        engine_air_flow
        * sqrt(compressor_inlet_temperature / map_reference_temperature)
        / (compressor_inlet_pressure / map_reference_pressure)
    )


@formula(reference="sae-j1826", where="corrected speed")
def corrected_speed(
    *,
    compressor_speed: Value,
    map_reference_temperature: Value,
    compressor_inlet_temperature: Value,
) -> Value:
    """Return the corrected speed, as on the compressor map.

    Parameters
    ----------
    compressor_speed
        Speed of the compressor shaft [1/min].
    map_reference_temperature
        Temperature that the compressor map refers to [K].
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].

    Returns
    -------
    Value
        Corrected speed, as on the compressor map [1/min].

    Notes
    -----
    N_cor = N_c √(T_ref / T_1)

    Examples
    --------
    >>> corrected_speed(
    ...     compressor_speed=120e3, map_reference_temperature=302.78,
    ...     compressor_inlet_temperature=308.15,
    ... )
    1.1895e+05
    """
    return compressor_speed * sqrt(map_reference_temperature / compressor_inlet_temperature)
