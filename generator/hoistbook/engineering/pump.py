"""The fuel pump and its wiring."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(reference="common-practice", where="pressures gauge")
def pump_pressure(*, base_fuel_pressure: Value, boost: Value, fuel_line_loss: Value) -> Value:
    """Return the pressure at the pump outlet, with a regulator that follows the manifold.

    Parameters
    ----------
    base_fuel_pressure
        Fuel pressure set at the regulator with no boost, gauge [Pa].
    boost
        Boost, gauge [Pa].
    fuel_line_loss
        Pressure lost in fuel line and filter [Pa].

    Returns
    -------
    Value
        Pressure at the pump outlet, gauge [Pa].

    Notes
    -----
    p_p = p_f0 + p_b + Δp_l

    Examples
    --------
    >>> pump_pressure(base_fuel_pressure=300e3, boost=150e3, fuel_line_loss=20e3)
    4.7000e+05
    """
    return base_fuel_pressure + boost + fuel_line_loss


@formula(
    reference="common-practice",
    where="a reserve of 15 to 25 % is in use",
    assumes=("At rail pressure and at the voltage at the pump, not free flow.",),
)
def pump_flow_needed(*, fuel_flow: Value, fuel_density: Value, pump_reserve: Value) -> Value:
    """Return the flow that the pump must give at rail pressure.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    fuel_density
        Density of the fuel [kg/m3].
    pump_reserve
        Reserve that the pump shall keep [-].

    Returns
    -------
    Value
        Flow that the pump must give [m3/s].

    Notes
    -----
    Q_pn = ṁ_f / ρ_f (1 + s_r)

    Examples
    --------
    >>> pump_flow_needed(fuel_flow=0.0229167, fuel_density=745.0, pump_reserve=0.2)
    3.6913e-05
    """
    return fuel_flow / fuel_density * (1 + pump_reserve)


@formula(
    reference="common-practice",
    where="a reserve of 15 to 25 % is in use",
    assumes=(
        "The flow of the pump is that at rail pressure and at the voltage at the pump; free "
        "flow is 30 to 50 % higher.",
    ),
)
def pump_margin(*, pump_flow: Value, fuel_flow: Value, fuel_density: Value) -> Value:
    """Return what the pump gives beyond what the engine burns, as a share of the latter.

    Parameters
    ----------
    pump_flow
        Flow of the pump at the rail pressure and voltage in question [m3/s].
    fuel_flow
        Mass flow of fuel [kg/s].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        What the pump gives beyond what the engine burns, as a share of the latter [-].

    Notes
    -----
    s_p = Q_p / (ṁ_f / ρ_f) - 1

    Examples
    --------
    >>> pump_margin(pump_flow=5e-05, fuel_flow=0.0229167, fuel_density=745.0)
    0.62545
    """
    return pump_flow / (fuel_flow / fuel_density) - 1


@formula(reference="white-2011", where="section 11.2")
def pump_power(*, pump_flow: Value, pump_pressure: Value) -> Value:
    """Return the hydraulic power of the pump.

    Parameters
    ----------
    pump_flow
        Flow of the pump at the rail pressure and voltage in question [m3/s].
    pump_pressure
        Pressure at the pump outlet, gauge [Pa].

    Returns
    -------
    Value
        Hydraulic power of the pump [W].

    Notes
    -----
    P_h = Q_p p_p

    Examples
    --------
    >>> pump_power(pump_flow=7.08333e-05, pump_pressure=450e3)
    31.875
    """
    return pump_flow * pump_pressure


@formula(reference="common-practice", where="efficiencies of 15 to 40 % are in use")
def pump_current(*, pump_power: Value, pump_efficiency: Value, pump_voltage: Value) -> Value:
    """Return the current that the pump draws.

    Parameters
    ----------
    pump_power
        Hydraulic power of the pump [W].
    pump_efficiency
        Efficiency of pump and motor together [-].
    pump_voltage
        Voltage at the pump [V].

    Returns
    -------
    Value
        Current that the pump draws [A].

    Notes
    -----
    I_p = P_h / (η_p U_p)

    Examples
    --------
    >>> pump_current(pump_power=31.875, pump_efficiency=0.3, pump_voltage=13.5)
    7.8704
    """
    return pump_power / (pump_efficiency * pump_voltage)


@formula(
    reference="common-practice",
    where="Ohm's law with copper at 20 °C",
    assumes=(
        "Copper at 20 °C: a stranded cable may have a sixth more resistance, and 10 K add 4 %.",
    ),
)
def voltage_drop(
    *, wire_current: Value, copper_resistivity: Value, cable_length: Value, cable_area: Value
) -> Value:
    """Return the voltage lost in the cable, out and back.

    Parameters
    ----------
    wire_current
        Current in the cable [A].
    copper_resistivity
        Resistivity of copper at 20 °C [ohm m].
    cable_length
        Length of cable, one way [m].
    cable_area
        Cross-section of the conductor [m2].

    Returns
    -------
    Value
        Voltage lost in the cable, out and back [V].

    Notes
    -----
    ΔU = I ρ_Cu 2 L_w / A_w

    Examples
    --------
    >>> voltage_drop(
    ...     wire_current=15.0, copper_resistivity=1.72e-08, cable_length=5.0, cable_area=2.5e-06,
    ... )
    1.032
    """
    return wire_current * copper_resistivity * (2 * cable_length / cable_area)


@formula(
    reference="common-practice",
    where="definition",
)
def voltage_drop_share(*, voltage_drop: Value, supply_voltage: Value) -> Value:
    """Return the share of the voltage that is lost in the cable.

    Parameters
    ----------
    voltage_drop
        Voltage lost in the cable, out and back [V].
    supply_voltage
        Voltage where the cable begins [V].

    Returns
    -------
    Value
        Share of the voltage that is lost in the cable [-].

    Notes
    -----
    q_U = ΔU / U_0

    Examples
    --------
    >>> voltage_drop_share(voltage_drop=0.4, supply_voltage=13.8)
    0.028986
    """
    return voltage_drop / supply_voltage


@formula(
    reference="common-practice",
    where="Kirchhoff's voltage law",
)
def pump_voltage(*, supply_voltage: Value, voltage_drop: Value) -> Value:
    """Return the voltage at the pump.

    Parameters
    ----------
    supply_voltage
        Voltage where the cable begins [V].
    voltage_drop
        Voltage lost in the cable, out and back [V].

    Returns
    -------
    Value
        Voltage at the pump [V].

    Notes
    -----
    U_p = U_0 - ΔU

    Examples
    --------
    >>> pump_voltage(supply_voltage=13.8, voltage_drop=0.4)
    13.4
    """
    return supply_voltage - voltage_drop


@formula(
    reference="common-practice",
    where="Ohm's law with copper at 20 °C; a drop of 3 % is in use",
    result="cable_area",
    assumes=(
        "Copper at 20 °C: a stranded cable may have a sixth more resistance, and 10 K add 4 %.",
        "The cable must also carry the rating of its fuse.",
    ),
)
def cable_area_needed(
    *, wire_current: Value, copper_resistivity: Value, cable_length: Value, voltage_drop: Value
) -> Value:
    """Return the cross-section that keeps the voltage drop to a given size.

    Parameters
    ----------
    wire_current
        Current in the cable [A].
    copper_resistivity
        Resistivity of copper at 20 °C [ohm m].
    cable_length
        Length of cable, one way [m].
    voltage_drop
        Voltage lost in the cable, out and back [V].

    Returns
    -------
    Value
        Cross-section of the conductor [m2].

    Notes
    -----
    A_w = I ρ_Cu 2 L_w / ΔU

    Examples
    --------
    >>> cable_area_needed(
    ...     wire_current=15.0, copper_resistivity=1.72e-08, cable_length=5.0,
    ...     voltage_drop=0.4,
    ... )
    6.4500e-06
    """
    return wire_current * copper_resistivity * 2 * cable_length / voltage_drop
