"""Heat to coolant and oil, and the oil that feeds and leaves a bearing."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, pi, sqrt


@formula(
    reference="heywood-1988",
    where="eq. 2.23",
    assumes=("On all the fuel supplied: a rich mixture lowers it, for oxygen limits the heat.",),
)
def brake_efficiency(*, power: Value, fuel_flow: Value, heating_value: Value) -> Value:
    """Return the brake thermal efficiency.

    Parameters
    ----------
    power
        Power at the crank [W].
    fuel_flow
        Mass flow of fuel [kg/s].
    heating_value
        Lower heating value of the fuel [J/kg].

    Returns
    -------
    Value
        Brake thermal efficiency, on all the fuel supplied [-].

    Notes
    -----
    η_b = P / (ṁ_f H_u)

    Examples
    --------
    >>> brake_efficiency(power=100e3, fuel_flow=0.0086, heating_value=43e6)
    0.27042
    """
    return power / (fuel_flow * heating_value)


@formula(
    reference="heywood-1988",
    where="Table 12.1: 17 to 26 % at full power",
    valid={"coolant_share": (0.17, 0.26)},
    assumes=(
        "At full power, for as long as full power lasts: the track is the case to size for.",
    ),
)
def coolant_heat(*, power: Value, brake_efficiency: Value, coolant_share: Value) -> Value:
    """Return the heat that the coolant has to carry away.

    Parameters
    ----------
    power
        Power at the crank [W].
    brake_efficiency
        Brake thermal efficiency, on all the fuel supplied [-].
    coolant_share
        Share of the fuel's energy that goes to the coolant [-].

    Returns
    -------
    Value
        Heat that the coolant carries away [W].

    Notes
    -----
    Q̇_k = P / η_b q_k

    Examples
    --------
    >>> coolant_heat(power=200000.0, brake_efficiency=0.27, coolant_share=0.22)
    1.6296e+05
    """
    return power / brake_efficiency * coolant_share


@formula(
    reference="heywood-1988",
    where="Table 12.1: 3 to 10 % at full power",
    valid={"oil_and_surface_share": (0.03, 0.10)},
    assumes=(
        "Published balances do not tell the oil apart from what the engine gives to the air about "
        "it: an oil cooler carries away the greater part of it, but not all.",
        "At full power, for as long as full power lasts: the track is the case to size for.",
    ),
)
def oil_and_surface_heat(
    *, power: Value, brake_efficiency: Value, oil_and_surface_share: Value
) -> Value:
    """Return the heat that goes to the engine's oil and from its surfaces.

    Parameters
    ----------
    power
        Power at the crank [W].
    brake_efficiency
        Brake thermal efficiency, on all the fuel supplied [-].
    oil_and_surface_share
        Share of the fuel's energy that goes to the oil and from the engine's surfaces [-].

    Returns
    -------
    Value
        Heat that goes to the oil and from the engine's surfaces [W].

    Notes
    -----
    Q̇_os = P / η_b q_os

    Examples
    --------
    >>> oil_and_surface_heat(power=200000.0, brake_efficiency=0.27, oil_and_surface_share=0.065)
    48148.148
    """
    return power / brake_efficiency * oil_and_surface_share


@formula(
    reference="incropera-2007",
    where="section 1.3, energy balance of a steady flow",
)
def coolant_flow(
    *,
    coolant_heat: Value,
    coolant_density: Value,
    coolant_heat_capacity: Value,
    coolant_temperature_rise: Value,
) -> Value:
    """Return the volume flow of coolant that carries a heat away.

    Parameters
    ----------
    coolant_heat
        Heat that the coolant carries away [W].
    coolant_density
        Density of the coolant [kg/m3].
    coolant_heat_capacity
        Specific heat of the coolant [J/(kg K)].
    coolant_temperature_rise
        Rise of the coolant's temperature through the engine [K].

    Returns
    -------
    Value
        Volume flow of the coolant [m3/s].

    Notes
    -----
    V̇_k = Q̇_k / (ρ_k c_k ΔT_k)

    Examples
    --------
    >>> coolant_flow(
    ...     coolant_heat=80000.0, coolant_density=1019.0, coolant_heat_capacity=3616.0,
    ...     coolant_temperature_rise=8.0,
    ... )
    0.0027139
    """
    return coolant_heat / (coolant_density * coolant_heat_capacity * coolant_temperature_rise)


@formula(
    reference="white-2011",
    where="section 6.12, orifice",
    assumes=(
        "A sharp orifice and hot, thin oil; cold oil flows less.",
        "The bore is that of the bearing maker's document, never one worked out here.",
    ),
)
def oil_feed_flow(
    *,
    discharge_coefficient: Value,
    oil_orifice_diameter: Value,
    oil_pressure_difference: Value,
    oil_density: Value,
) -> Value:
    """Return the flow of oil through the feed orifice of a bearing.

    Parameters
    ----------
    discharge_coefficient
        Discharge coefficient [-].
    oil_orifice_diameter
        Diameter of the oil feed orifice [m].
    oil_pressure_difference
        Pressure difference across the oil feed orifice [Pa].
    oil_density
        Density of the oil [kg/m3].

    Returns
    -------
    Value
        Flow of oil through the feed orifice [m3/s].

    Notes
    -----
    V̇_o = C_d π d_o² / 4 √(2 Δp_o / ρ_o)

    Examples
    --------
    >>> oil_feed_flow(
    ...     discharge_coefficient=0.65, oil_orifice_diameter=0.001,
    ...     oil_pressure_difference=350000.0, oil_density=830.0,
    ... )
    1.4826e-05
    """
    return (
        discharge_coefficient
        * (pi * oil_orifice_diameter**2 / 4)
        * sqrt(2 * oil_pressure_difference / oil_density)
    )


@formula(
    reference="incropera-2007",
    where="section 1.3, energy balance of a steady flow",
)
def oil_heat(
    *,
    oil_feed_flow: Value,
    oil_density: Value,
    oil_heat_capacity: Value,
    oil_temperature_rise: Value,
) -> Value:
    """Return the heat that the oil carries away.

    Parameters
    ----------
    oil_feed_flow
        Flow of oil through the feed orifice [m3/s].
    oil_density
        Density of the oil [kg/m3].
    oil_heat_capacity
        Specific heat of the oil [J/(kg K)].
    oil_temperature_rise
        Rise of the oil's temperature on its way [K].

    Returns
    -------
    Value
        Heat that the oil carries away [W].

    Notes
    -----
    Q̇_o = V̇_o ρ_o c_o ΔT_o

    Examples
    --------
    >>> oil_heat(
    ...     oil_feed_flow=1.48e-05, oil_density=830.0, oil_heat_capacity=2200.0,
    ...     oil_temperature_rise=30.0,
    ... )
    810.74
    """
    return oil_feed_flow * oil_density * oil_heat_capacity * oil_temperature_rise


@formula(
    reference="white-2011",
    where="eq. 6.79 with the fall of the drain as the head",
    assumes=(
        "The drain falls all the way and ends above the oil; both ends at one pressure.",
        "Oil leaves a bearing as froth, of which a drain carries far less: the bearing "
        "maker's document gives the bore.",
    ),
)
def drain_flow_limit(
    *,
    drain_bore: Value,
    gravity: Value,
    drain_drop: Value,
    friction_factor: Value,
    drain_length: Value,
    loss_coefficients: Value,
) -> Value:
    """Return the flow of clear oil that a drain carries under its own weight with its bore full.

    Parameters
    ----------
    drain_bore
        Bore of the oil drain: inside diameter [m].
    gravity
        Standard acceleration of free fall [m/s2].
    drain_drop
        Height by which the oil drain falls [m].
    friction_factor
        Friction factor (Darcy) [-].
    drain_length
        Length of the oil drain [m].
    loss_coefficients
        Sum of the loss coefficients of bends, steps and ends [-].

    Returns
    -------
    Value
        Flow of clear oil that a full drain carries [m3/s].

    Notes
    -----
    V̇_d = π D_d² / 4 √(2 g z_d / (f L_d / D_d + ΣK))

    Examples
    --------
    >>> drain_flow_limit(
    ...     drain_bore=0.015, gravity=9.80665, drain_drop=0.3, friction_factor=0.04,
    ...     drain_length=0.35, loss_coefficients=1.5,
    ... )
    2.7479e-04
    """
    return (pi * drain_bore**2 / 4) * sqrt(
        2
        * gravity
        * drain_drop
        / (friction_factor * drain_length / drain_bore + loss_coefficients)
    )
