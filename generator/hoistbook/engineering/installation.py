"""What depends on how the engine stands in this car: warm air, friction, pump, wheels."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(
    reference="common-practice",
    where="air drawn from under the bonnet is warmer than the weather",
)
def intake_temperature(*, air_temperature: Value, intake_heating: Value) -> Value:
    """Return the temperature of the air that reaches the engine or its compressor.

    Parameters
    ----------
    air_temperature
        Temperature of the surrounding air [K].
    intake_heating
        Warming of the air on its way to the engine, under the bonnet [K].

    Returns
    -------
    Value
        Temperature of the air that reaches the engine or its compressor [K].

    Notes
    -----
    T_i = T_a + ΔT_i

    Examples
    --------
    >>> intake_temperature(air_temperature=293.15, intake_heating=10.0)
    303.15
    """
    return air_temperature + intake_heating


@formula(
    reference="common-practice",
    where="engines after the 1970s have 20 to 30 % less friction than the reference engines",
    result="friction_mean_effective_pressure",
)
def scaled_friction_mean_effective_pressure(
    *, friction_scale: Value, reference_friction: Value
) -> Value:
    """Return the friction mean effective pressure of this engine.

    Parameters
    ----------
    friction_scale
        Friction of this engine over that of the reference engines [-].
    reference_friction
        Friction mean effective pressure of the reference engines [Pa].

    Returns
    -------
    Value
        Friction mean effective pressure [Pa].

    Notes
    -----
    p_mf = s_mf p_mf0

    Examples
    --------
    >>> scaled_friction_mean_effective_pressure(friction_scale=0.85, reference_friction=367e3)
    3.1195e+05
    """
    return friction_scale * reference_friction


@formula(
    reference="heywood-1988",
    where="eq. 2.19 solved for the mean effective pressure, and section 6.8 on mechanical "
    "supercharging, from memory",
    valid={"drive_efficiency": (0.8, 1)},
    assumes=("All air that the engine takes is compressed, and none is blown off.",),
)
def driven_friction_mean_effective_pressure(
    *,
    friction_mean_effective_pressure: Value,
    compressor_power: Value,
    drive_efficiency: Value,
    revolutions_per_cycle: Value,
    displacement: Value,
    engine_speed: Value,
) -> Value:
    """Return what friction and a compressor on the crank take together, per displaced volume.

    Parameters
    ----------
    friction_mean_effective_pressure
        Friction mean effective pressure of the engine [Pa].
    compressor_power
        Power that the compressor takes [W].
    drive_efficiency
        Power that reaches the compressor over what its drive takes from the crank [-].
    revolutions_per_cycle
        Revolutions for each working cycle [-].
    displacement
        Displacement [m3].
    engine_speed
        Engine speed [1/min].

    Returns
    -------
    Value
        Friction mean effective pressure, the driven compressor included [Pa].

    Notes
    -----
    p_mfc = p_mf + 60 n_R P_c / (η_dr V_d N)

    Examples
    --------
    >>> driven_friction_mean_effective_pressure(
    ...     friction_mean_effective_pressure=275e3, compressor_power=19e3, drive_efficiency=0.95,
    ...     revolutions_per_cycle=2.0, displacement=1.6e-3, engine_speed=6000.0,
    ... )
    5.2500e+05
    """
    return friction_mean_effective_pressure + (
        60
        * revolutions_per_cycle
        * compressor_power
        / (drive_efficiency * displacement * engine_speed)
    )


@formula(
    reference="common-practice",
    where="free flow is 30 to 50 % above the flow at 4.5 bar",
    valid={"pump_pressure": (200e3, 700e3)},
    assumes=(
        "The flow falls along a straight line as the pressure rises.",
        "With the voltage it changes somewhat more than in proportion.",
    ),
)
def pump_flow(
    *,
    rated_pump_flow: Value,
    pump_pressure: Value,
    rated_pump_pressure: Value,
    pump_fade_pressure: Value,
    pump_voltage: Value,
    rated_pump_voltage: Value,
    pump_voltage_exponent: Value,
) -> Value:
    """Return the flow of the pump at the rail pressure and voltage in question.

    Parameters
    ----------
    rated_pump_flow
        Flow of the pump as stated [m3/s].
    pump_pressure
        Pressure at the pump outlet, gauge [Pa].
    rated_pump_pressure
        Pressure at which the pump flow was stated, gauge [Pa].
    pump_fade_pressure
        Pressure beyond the stated one at which the pump would give nothing [Pa].
    pump_voltage
        Voltage at the pump [V].
    rated_pump_voltage
        Voltage at which the pump flow was stated [V].
    pump_voltage_exponent
        Power of the voltage that the pump's flow goes with [-].

    Returns
    -------
    Value
        Flow of the pump at the rail pressure and voltage in question [m3/s].

    Notes
    -----
    Q_p = Q_p0 (1 - (p_p - p_p0) / Δp_z) (U_p / U_p0)^n_U

    Examples
    --------
    >>> pump_flow(
    ...     rated_pump_flow=5e-05, pump_pressure=400e3, rated_pump_pressure=300e3,
    ...     pump_fade_pressure=1.1e6, pump_voltage=12.0, rated_pump_voltage=13.5,
    ...     pump_voltage_exponent=1.4,
    ... )
    3.8545e-05
    """
    return (
        rated_pump_flow
        * (1 - (pump_pressure - rated_pump_pressure) / pump_fade_pressure)
        * (pump_voltage / rated_pump_voltage) ** pump_voltage_exponent
    )


@formula(
    reference="common-practice",
    where="a loss of 10 to 20 %, as a range and never as one number",
    assumes=(
        "The loss is a share of the power; drag that depends on speed alone is not modelled.",
    ),
)
def wheel_power(*, power: Value, drivetrain_loss: Value) -> Value:
    """Return the power at the wheels.

    Parameters
    ----------
    power
        Power at the crank [W].
    drivetrain_loss
        Share of the crank's power that gearbox, final drive and tyres take [-].

    Returns
    -------
    Value
        Power at the wheels [W].

    Notes
    -----
    P_w = P (1 - f_d)

    Back from the wheels it is P = P_w / (1 - f_d), not P_w (1 + f_d).

    Examples
    --------
    >>> wheel_power(power=100e3, drivetrain_loss=0.15)
    8.5000e+04
    """
    return power * (1 - drivetrain_loss)


@formula(
    reference="common-practice",
    where="a loss of 10 to 20 %, as a range and never as one number",
    assumes=("The loss is a share of the torque; drag that depends on speed is not modelled.",),
)
def wheel_torque(*, torque: Value, drivetrain_loss: Value) -> Value:
    """Return the torque at the wheels, over the gearing: as if at the crank.

    Parameters
    ----------
    torque
        Torque at the crank [N m].
    drivetrain_loss
        Share of the crank's power that gearbox, final drive and tyres take [-].

    Returns
    -------
    Value
        Torque at the wheels, over the gearing: as if at the crank [N m].

    Notes
    -----
    M_w = M (1 - f_d)

    Examples
    --------
    >>> wheel_torque(torque=150.0, drivetrain_loss=0.15)
    127.5
    """
    return torque * (1 - drivetrain_loss)


@formula(
    reference="common-practice",
    where="a loss of 10 to 20 %, as a range and never as one number",
    result="power",
    assumes=(
        "The loss is a share of the power; drag that depends on speed alone is not modelled.",
    ),
)
def power_of_wheel_power(*, wheel_power: Value, drivetrain_loss: Value) -> Value:
    """Return the power at the crank that a power at the wheels stands for.

    Parameters
    ----------
    wheel_power
        Power at the wheels [W].
    drivetrain_loss
        Share of the crank's power that gearbox, final drive and tyres take [-].

    Returns
    -------
    Value
        Power at the crank [W].

    Notes
    -----
    P = P_w / (1 - f_d)

    Examples
    --------
    >>> power_of_wheel_power(wheel_power=85e3, drivetrain_loss=0.15)
    1.0000e+05
    """
    return wheel_power / (1 - drivetrain_loss)
