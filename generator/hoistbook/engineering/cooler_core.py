"""The core of the charge cooler: its heat conductance by size and flow, and the air through it."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(
    reference="common-practice",
    where="conductance in proportion to the volume of the core",
    assumes=(
        "Rows and fins as usual: cores of one size differ by half, and a maker's own number at a "
        "flow beats this one.",
    ),
)
def rated_conductance(
    *, core_conductance: Value, core_width: Value, core_height: Value, core_depth: Value
) -> Value:
    """Return the heat conductance of a charge cooler from the size of its core.

    Parameters
    ----------
    core_conductance
        Heat conductance of a core for each volume of it, at its usual flow [W/(m3 K)].
    core_width
        Width of the charge cooler's core [m].
    core_height
        Height of the charge cooler's core [m].
    core_depth
        Depth of the charge cooler's core [m].

    Returns
    -------
    Value
        Heat conductance of the charge cooler at the flow for which it holds [W/K].

    Notes
    -----
    UA_r = u_V w_c h_c d_c

    Examples
    --------
    >>> rated_conductance(
    ...     core_conductance=28e3, core_width=0.55, core_height=0.18, core_depth=0.065,
    ... )
    180.18
    """
    return core_conductance * core_width * core_height * core_depth


@formula(
    reference="incropera-2007",
    where="eq. 8.60: heat transfer in a turbulent channel goes with flow to the power of 0.8",
    assumes=("Half of what hinders the heat lies on the charge's side: hence half the power.",),
)
def heat_conductance(
    *, rated_conductance: Value, engine_air_flow: Value, rated_conductance_flow: Value
) -> Value:
    """Return the heat conductance of the charge cooler at another flow.

    Parameters
    ----------
    rated_conductance
        Heat conductance of the charge cooler at the flow for which it holds [W/K].
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    rated_conductance_flow
        Mass flow at which the conductance of the charge cooler holds [kg/s].

    Returns
    -------
    Value
        Overall heat conductance of the charge cooler [W/K].

    Notes
    -----
    UA = UA_r (ṁ_a / ṁ_UA)^0.4

    Examples
    --------
    >>> heat_conductance(
    ...     rated_conductance=180.0, engine_air_flow=0.06, rated_conductance_flow=0.12,
    ... )
    136.41
    """
    return rated_conductance * (engine_air_flow / rated_conductance_flow) ** 0.4


@formula(
    reference="common-practice",
    where="cooling air as a multiple of the charge at one flow",
    assumes=("The car's speed, and with it the cooling air, stays the same at every flow.",),
)
def cooling_capacity_rate(
    *, cooling_ratio: Value, rated_conductance_flow: Value, air_heat_capacity: Value
) -> Value:
    """Return the heat capacity rate of the air that cools the charge cooler.

    Parameters
    ----------
    cooling_ratio
        Heat capacity rate of the cooling air over that of the charge, at the flow for which the
        conductance holds [-].
    rated_conductance_flow
        Mass flow at which the conductance of the charge cooler holds [kg/s].
    air_heat_capacity
        Specific heat of air at constant pressure [J/(kg K)].

    Returns
    -------
    Value
        Heat capacity rate of the cooling air [W/K].

    Notes
    -----
    C_k = r_k ṁ_UA c_p

    Examples
    --------
    >>> cooling_capacity_rate(
    ...     cooling_ratio=4.5, rated_conductance_flow=0.12, air_heat_capacity=1005.0,
    ... )
    542.7
    """
    return cooling_ratio * rated_conductance_flow * air_heat_capacity
