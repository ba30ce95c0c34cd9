"""The charge cooler: temperature and density after it, effectiveness, pressure loss."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, exp, maximum, minimum


@formula(
    reference="incropera-2007",
    where="section 11.4",
    valid={"cooler_effectiveness": (0, 1)},
    assumes=(
        "The charge has the lesser heat capacity rate: the car moves and cooling air is plenty.",
    ),
)
def charge_temperature(
    *,
    compressor_outlet_temperature: Value,
    cooler_effectiveness: Value,
    cooling_air_temperature: Value,
) -> Value:
    """Return the temperature of the charge after the cooler.

    Parameters
    ----------
    compressor_outlet_temperature
        Temperature at the compressor outlet [K].
    cooler_effectiveness
        Effectiveness of the charge cooler [-].
    cooling_air_temperature
        Temperature of the air that cools the charge cooler [K].

    Returns
    -------
    Value
        Temperature of the charge [K].

    Notes
    -----
    T_3 = T_2 - ε (T_2 - T_k)

    Examples
    --------
    >>> charge_temperature(
    ...     compressor_outlet_temperature=383.15, cooler_effectiveness=0.7,
    ...     cooling_air_temperature=303.15,
    ... )
    327.15
    """
    return compressor_outlet_temperature - cooler_effectiveness * (
        compressor_outlet_temperature - cooling_air_temperature
    )


@formula(reference="incropera-2007", where="eq. 11.10")
def charge_capacity_rate(*, engine_air_flow: Value, air_heat_capacity: Value) -> Value:
    """Return the heat capacity rate of the charge.

    Parameters
    ----------
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    air_heat_capacity
        Specific heat of air at constant pressure [J/(kg K)].

    Returns
    -------
    Value
        Heat capacity rate of the charge [W/K].

    Notes
    -----
    C_h = ṁ_a c_p

    Examples
    --------
    >>> charge_capacity_rate(engine_air_flow=0.25, air_heat_capacity=1005.0)
    251.25
    """
    return engine_air_flow * air_heat_capacity


@formula(reference="incropera-2007", where="section 11.4.1")
def lesser_capacity_rate(*, charge_capacity_rate: Value, cooling_capacity_rate: Value) -> Value:
    """Return the lesser of the two heat capacity rates.

    Parameters
    ----------
    charge_capacity_rate
        Heat capacity rate of the charge [W/K].
    cooling_capacity_rate
        Heat capacity rate of the cooling air [W/K].

    Returns
    -------
    Value
        Lesser of the two heat capacity rates [W/K].

    Notes
    -----
    C_min = min(C_h, C_k)

    Examples
    --------
    >>> lesser_capacity_rate(charge_capacity_rate=301.5, cooling_capacity_rate=201.0)
    201.0
    """
    return minimum(charge_capacity_rate, cooling_capacity_rate)


@formula(reference="incropera-2007", where="section 11.4.1")
def capacity_rate_ratio(*, charge_capacity_rate: Value, cooling_capacity_rate: Value) -> Value:
    """Return the lesser heat capacity rate over the greater.

    Parameters
    ----------
    charge_capacity_rate
        Heat capacity rate of the charge [W/K].
    cooling_capacity_rate
        Heat capacity rate of the cooling air [W/K].

    Returns
    -------
    Value
        Lesser heat capacity rate over the greater [-].

    Notes
    -----
    C_r = min(C_h, C_k) / max(C_h, C_k)

    Examples
    --------
    >>> capacity_rate_ratio(charge_capacity_rate=301.5, cooling_capacity_rate=201.0)
    0.66667
    """
    return minimum(charge_capacity_rate, cooling_capacity_rate) / maximum(
        charge_capacity_rate, cooling_capacity_rate
    )


@formula(reference="incropera-2007", where="eq. 11.24")
def transfer_units(*, heat_conductance: Value, lesser_capacity_rate: Value) -> Value:
    """Return the number of transfer units.

    Parameters
    ----------
    heat_conductance
        Overall heat conductance of the charge cooler [W/K].
    lesser_capacity_rate
        Lesser of the two heat capacity rates [W/K].

    Returns
    -------
    Value
        Number of transfer units [-].

    Notes
    -----
    NTU = UA / C_min

    Examples
    --------
    >>> transfer_units(heat_conductance=350.0, lesser_capacity_rate=201.0)
    1.7413
    """
    return heat_conductance / lesser_capacity_rate


@formula(
    reference="incropera-2007",
    where="eq. 11.32",
    valid={"transfer_units": (0.1, 5), "capacity_rate_ratio": (0.05, 1)},
    assumes=("Approximation: up to 0.011 from the exact solution.",),
)
def cooler_effectiveness(*, transfer_units: Value, capacity_rate_ratio: Value) -> Value:
    """Return the effectiveness of a cross-flow cooler, both fluids unmixed.

    Parameters
    ----------
    transfer_units
        Number of transfer units [-].
    capacity_rate_ratio
        Lesser heat capacity rate over the greater [-].

    Returns
    -------
    Value
        Effectiveness of the charge cooler [-].

    Notes
    -----
    ε = 1 - exp(NTU^0.22 / C_r (exp(-C_r NTU^0.78) - 1))

    Examples
    --------
    >>> cooler_effectiveness(transfer_units=1.5, capacity_rate_ratio=0.5)
    0.66225
    """
    exponent = (
        transfer_units**0.22
        / capacity_rate_ratio
        * (exp(-capacity_rate_ratio * transfer_units**0.78) - 1)
    )
    return 1 - exp(exponent)


@formula(reference="incropera-2007", where="eq. 11.19 and 11.22", result="charge_temperature")
def charge_temperature_of_both_flows(
    *,
    compressor_outlet_temperature: Value,
    cooler_effectiveness: Value,
    lesser_capacity_rate: Value,
    charge_capacity_rate: Value,
    cooling_air_temperature: Value,
) -> Value:
    """Return the temperature of the charge after the cooler, whichever flow is the lesser.

    Parameters
    ----------
    compressor_outlet_temperature
        Temperature at the compressor outlet [K].
    cooler_effectiveness
        Effectiveness of the charge cooler [-].
    lesser_capacity_rate
        Lesser of the two heat capacity rates [W/K].
    charge_capacity_rate
        Heat capacity rate of the charge [W/K].
    cooling_air_temperature
        Temperature of the air that cools the charge cooler [K].

    Returns
    -------
    Value
        Temperature of the charge [K].

    Notes
    -----
    T_3 = T_2 - ε C_min / C_h (T_2 - T_k)

    Examples
    --------
    >>> charge_temperature_of_both_flows(
    ...     compressor_outlet_temperature=403.15, cooler_effectiveness=0.6617,
    ...     lesser_capacity_rate=201.0, charge_capacity_rate=301.5,
    ...     cooling_air_temperature=308.15,
    ... )
    361.24
    """
    return compressor_outlet_temperature - cooler_effectiveness * lesser_capacity_rate / (
        charge_capacity_rate
    ) * (compressor_outlet_temperature - cooling_air_temperature)


@formula(
    reference="heywood-1988",
    where="section 6.3",
    assumes=("Ideal gas.",),
)
def density_ratio(
    *,
    manifold_absolute_pressure: Value,
    charge_temperature: Value,
    compressor_inlet_pressure: Value,
    compressor_inlet_temperature: Value,
) -> Value:
    """Return the density in the manifold over that at the compressor inlet.

    Parameters
    ----------
    manifold_absolute_pressure
        Manifold absolute pressure [Pa].
    charge_temperature
        Temperature of the charge [K].
    compressor_inlet_pressure
        Absolute pressure at the compressor inlet [Pa].
    compressor_inlet_temperature
        Temperature at the compressor inlet [K].

    Returns
    -------
    Value
        Density in the manifold over density at the compressor inlet [-].

    Notes
    -----
    ρ_3/ρ_1 = (p_m / T_3) / (p_1 / T_1)

    Examples
    --------
    >>> density_ratio(
    ...     manifold_absolute_pressure=195e3, charge_temperature=328.15,
    ...     compressor_inlet_pressure=99e3, compressor_inlet_temperature=298.15,
    ... )
    1.7896
    """
    return (manifold_absolute_pressure / charge_temperature) / (
        compressor_inlet_pressure / compressor_inlet_temperature
    )


@formula(
    reference="common-practice",
    where="exponents of 1.75 to 2.0 are in use; 1.8 is that of smooth turbulent channels",
)
def cooler_pressure_loss(
    *,
    rated_cooler_pressure_loss: Value,
    engine_air_flow: Value,
    rated_cooler_flow: Value,
    rated_charge_density: Value,
    charge_density: Value,
) -> Value:
    """Return the pressure lost in the charge cooler at another flow and density.

    Parameters
    ----------
    rated_cooler_pressure_loss
        Pressure loss that was stated for the cooler [Pa].
    engine_air_flow
        Mass flow of air into the engine [kg/s].
    rated_cooler_flow
        Mass flow at which the cooler's pressure loss was stated [kg/s].
    rated_charge_density
        Density at which the cooler's pressure loss was stated [kg/m3].
    charge_density
        Density of the charge in the manifold [kg/m3].

    Returns
    -------
    Value
        Pressure lost in the charge cooler [Pa].

    Notes
    -----
    Δp_k = Δp_r (ṁ_a / ṁ_r)^1.8 ρ_r / ρ_m

    Examples
    --------
    >>> cooler_pressure_loss(
    ...     rated_cooler_pressure_loss=8000.0, engine_air_flow=0.3, rated_cooler_flow=0.2,
    ...     rated_charge_density=1.8, charge_density=2.0,
    ... )
    1.4938e+04
    """
    return (
        rated_cooler_pressure_loss
        * (engine_air_flow / rated_cooler_flow) ** 1.8
        * (rated_charge_density / charge_density)
    )
