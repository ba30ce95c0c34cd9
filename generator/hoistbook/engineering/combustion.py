"""Stoichiometry of a fuel, and the fuel that goes with an air flow."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value, sqrt


@formula(reference="heywood-1988", where="section 3.3")
def fuel_molar_mass(
    *,
    carbon_atoms: Value,
    hydrogen_atoms: Value,
    oxygen_atoms: Value,
    carbon_molar_mass: Value,
    hydrogen_molar_mass: Value,
    oxygen_molar_mass: Value,
) -> Value:
    """Return the molar mass of a fuel from its formula.

    Parameters
    ----------
    carbon_atoms
        Carbon atoms in a molecule of the fuel [-].
    hydrogen_atoms
        Hydrogen atoms in a molecule of the fuel [-].
    oxygen_atoms
        Oxygen atoms in a molecule of the fuel [-].
    carbon_molar_mass
        Molar mass of carbon [kg/mol].
    hydrogen_molar_mass
        Molar mass of hydrogen [kg/mol].
    oxygen_molar_mass
        Molar mass of oxygen [kg/mol].

    Returns
    -------
    Value
        Molar mass of the fuel [kg/mol].

    Notes
    -----
    M_f = c M_C + h M_H + o M_O

    Examples
    --------
    >>> fuel_molar_mass(
    ...     carbon_atoms=2, hydrogen_atoms=6, oxygen_atoms=1, carbon_molar_mass=0.012011,
    ...     hydrogen_molar_mass=0.001008, oxygen_molar_mass=0.015999,
    ... )
    0.046069
    """
    return (
        carbon_atoms * carbon_molar_mass
        + hydrogen_atoms * hydrogen_molar_mass
        + oxygen_atoms * oxygen_molar_mass
    )


@formula(
    reference="heywood-1988",
    where="section 3.4",
    assumes=("Dry air with its argon; with 21 % oxygen the answer is 0.4 % lower.",),
)
def stoichiometric_air_fuel_ratio(
    *,
    carbon_atoms: Value,
    hydrogen_atoms: Value,
    oxygen_atoms: Value,
    oxygen_fraction: Value,
    air_molar_mass: Value,
    fuel_molar_mass: Value,
) -> Value:
    """Return the stoichiometric air-fuel ratio of a fuel from its formula.

    Parameters
    ----------
    carbon_atoms
        Carbon atoms in a molecule of the fuel [-].
    hydrogen_atoms
        Hydrogen atoms in a molecule of the fuel [-].
    oxygen_atoms
        Oxygen atoms in a molecule of the fuel [-].
    oxygen_fraction
        Oxygen in dry air, by volume [-].
    air_molar_mass
        Molar mass of dry air [kg/mol].
    fuel_molar_mass
        Molar mass of the fuel [kg/mol].

    Returns
    -------
    Value
        Stoichiometric air-fuel ratio by mass [-].

    Notes
    -----
    AFR_st = (c + h / 4 - o / 2) / x_O2 · M_a / M_f

    Examples
    --------
    >>> stoichiometric_air_fuel_ratio(
    ...     carbon_atoms=2, hydrogen_atoms=6, oxygen_atoms=1, oxygen_fraction=0.20946,
    ...     air_molar_mass=0.0289655, fuel_molar_mass=0.046069,
    ... )
    9.0052
    """
    return (
        (carbon_atoms + hydrogen_atoms / 4 - oxygen_atoms / 2)
        / oxygen_fraction
        * air_molar_mass
        / fuel_molar_mass
    )


@formula(
    reference="heywood-1988",
    where="section 3.5",
    assumes=("Water leaves as vapour, 25 °C.",),
)
def heating_value(
    *,
    formation_enthalpy: Value,
    carbon_atoms: Value,
    carbon_dioxide_enthalpy: Value,
    hydrogen_atoms: Value,
    water_vapour_enthalpy: Value,
    fuel_molar_mass: Value,
) -> Value:
    """Return the lower heating value of a liquid fuel from its enthalpy of formation.

    Parameters
    ----------
    formation_enthalpy
        Enthalpy of formation of the liquid fuel at 25 °C [J/mol].
    carbon_atoms
        Carbon atoms in a molecule of the fuel [-].
    carbon_dioxide_enthalpy
        Enthalpy of formation of carbon dioxide at 25 °C [J/mol].
    hydrogen_atoms
        Hydrogen atoms in a molecule of the fuel [-].
    water_vapour_enthalpy
        Enthalpy of formation of water vapour at 25 °C [J/mol].
    fuel_molar_mass
        Molar mass of the fuel [kg/mol].

    Returns
    -------
    Value
        Lower heating value of the fuel [J/kg].

    Notes
    -----
    H_u = (h_f - c h_CO2 - h / 2 h_H2O) / M_f

    Examples
    --------
    >>> heating_value(
    ...     formation_enthalpy=-277600.0, carbon_atoms=2, carbon_dioxide_enthalpy=-393510.0,
    ...     hydrogen_atoms=6, water_vapour_enthalpy=-241830.0, fuel_molar_mass=0.046069,
    ... )
    2.6806e+07
    """
    return (
        formation_enthalpy
        - carbon_atoms * carbon_dioxide_enthalpy
        - hydrogen_atoms / 2 * water_vapour_enthalpy
    ) / fuel_molar_mass


@formula(
    reference="heywood-1988",
    where="section 3.4",
    assumes=(
        "A wideband gauge measures lambda; the air-fuel ratio it shows is lambda times a "
        "constant of petrol, whatever the fuel.",
    ),
)
def air_fuel_ratio(*, lambda_ratio: Value, stoichiometric_air_fuel_ratio: Value) -> Value:
    """Return the air-fuel ratio at a lambda.

    Parameters
    ----------
    lambda_ratio
        Lambda: air-fuel ratio over the stoichiometric one [-].
    stoichiometric_air_fuel_ratio
        Stoichiometric air-fuel ratio by mass [-].

    Returns
    -------
    Value
        Air-fuel ratio by mass [-].

    Notes
    -----
    AFR = λ AFR_st

    Examples
    --------
    >>> air_fuel_ratio(lambda_ratio=0.82, stoichiometric_air_fuel_ratio=14.6)
    11.972
    """
    return lambda_ratio * stoichiometric_air_fuel_ratio


@formula(
    reference="heywood-1988",
    where="section 2.9",
    valid={"lambda_ratio": (0.65, 1.5)},
)
def fuel_flow(
    *, dry_air_flow: Value, lambda_ratio: Value, stoichiometric_air_fuel_ratio: Value
) -> Value:
    """Return the mass flow of fuel that goes with an air flow.

    Parameters
    ----------
    dry_air_flow
        Mass flow of dry air into the engine [kg/s].
    lambda_ratio
        Lambda: air-fuel ratio over the stoichiometric one [-].
    stoichiometric_air_fuel_ratio
        Stoichiometric air-fuel ratio by mass [-].

    Returns
    -------
    Value
        Mass flow of fuel [kg/s].

    Notes
    -----
    ṁ_f = ṁ_d / (λ AFR_st)

    Examples
    --------
    >>> fuel_flow(dry_air_flow=0.2, lambda_ratio=0.82, stoichiometric_air_fuel_ratio=14.6)
    0.016706
    """
    return dry_air_flow / (lambda_ratio * stoichiometric_air_fuel_ratio)


@formula(reference="white-2011", where="definition of density")
def fuel_volume_flow(*, fuel_flow: Value, fuel_density: Value) -> Value:
    """Return the volume flow of fuel.

    Parameters
    ----------
    fuel_flow
        Mass flow of fuel [kg/s].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Volume flow of fuel [m3/s].

    Notes
    -----
    V̇_f = ṁ_f / ρ_f

    Examples
    --------
    >>> fuel_volume_flow(fuel_flow=0.0167, fuel_density=745.0)
    2.2416e-05
    """
    return fuel_flow / fuel_density


@formula(
    reference="heywood-1988",
    where="section 6.2",
    assumes=(
        "An upper bound that is never reached: the vapour saturates and the walls supply heat.",
    ),
)
def evaporative_cooling(
    *,
    latent_heat: Value,
    lambda_ratio: Value,
    stoichiometric_air_fuel_ratio: Value,
    air_heat_capacity: Value,
) -> Value:
    """Return the cooling of the charge if all the fuel evaporated by heat of the air alone.

    Parameters
    ----------
    latent_heat
        Latent heat of vaporisation of the fuel [J/kg].
    lambda_ratio
        Lambda: air-fuel ratio over the stoichiometric one [-].
    stoichiometric_air_fuel_ratio
        Stoichiometric air-fuel ratio by mass [-].
    air_heat_capacity
        Specific heat of air at constant pressure [J/(kg K)].

    Returns
    -------
    Value
        Cooling of the charge if all the fuel evaporates by heat of the air alone [K].

    Notes
    -----
    ΔT_v = h_v / (λ AFR_st c_p)

    Examples
    --------
    >>> evaporative_cooling(
    ...     latent_heat=350e3, lambda_ratio=0.85, stoichiometric_air_fuel_ratio=14.6,
    ...     air_heat_capacity=1005.0,
    ... )
    28.063
    """
    return latent_heat / (lambda_ratio * stoichiometric_air_fuel_ratio * air_heat_capacity)


@formula(
    reference="heywood-1988",
    where="section 4.9.1, rich mixtures with water gas frozen at 1740 K",
    valid={"lambda_ratio": (0.7, 1.0)},
    assumes=(
        "What is left is carbon monoxide and hydrogen; soot and unburnt fuel are left out.",
        "Heat for each mass of air hardly changes: never 1 / λ.",
    ),
)
def combustion_efficiency(
    *,
    lambda_ratio: Value,
    carbon_atoms: Value,
    hydrogen_atoms: Value,
    oxygen_atoms: Value,
    water_gas_constant: Value,
    carbon_monoxide_enthalpy: Value,
    carbon_dioxide_enthalpy: Value,
    water_vapour_enthalpy: Value,
    heating_value: Value,
    fuel_molar_mass: Value,
) -> Value:
    """Return the share of the heating value that a mixture short of air sets free.

    Parameters
    ----------
    lambda_ratio
        Lambda: air-fuel ratio over the stoichiometric one [-].
    carbon_atoms
        Carbon atoms in a molecule of the fuel [-].
    hydrogen_atoms
        Hydrogen atoms in a molecule of the fuel [-].
    oxygen_atoms
        Oxygen atoms in a molecule of the fuel [-].
    water_gas_constant
        Equilibrium of water gas at 1740 K, where the products freeze [-].
    carbon_monoxide_enthalpy
        Enthalpy of formation of carbon monoxide at 25 °C [J/mol].
    carbon_dioxide_enthalpy
        Enthalpy of formation of carbon dioxide at 25 °C [J/mol].
    water_vapour_enthalpy
        Enthalpy of formation of water vapour at 25 °C [J/mol].
    heating_value
        Lower heating value of the fuel [J/kg].
    fuel_molar_mass
        Molar mass of the fuel [kg/mol].

    Returns
    -------
    Value
        Share of the fuel's heating value that a rich mixture sets free [-].

    Notes
    -----
    η_c = 1 - (x (h_CO - h_CO2) - (m - x) h_H2O) / (H_u M_f)
    with m = 2 (1 - λ) (c + h / 4 - o / 2), b = h / 2 - m + K_w (c + m) and
    x = (√(b² - 4 (K_w - 1) K_w c m) - b) / (2 (1 - K_w))

    m is the oxygen atoms that are short, x the carbon monoxide of them, b a step between.

    Examples
    --------
    >>> combustion_efficiency(
    ...     lambda_ratio=0.85, carbon_atoms=8, hydrogen_atoms=18, oxygen_atoms=0,
    ...     water_gas_constant=3.5, carbon_monoxide_enthalpy=-110530.0,
    ...     carbon_dioxide_enthalpy=-393510.0, water_vapour_enthalpy=-241830.0,
    ...     heating_value=44350000.0, fuel_molar_mass=0.11423,
    ... )
    0.79955
    """
    missing = 2 * (1 - lambda_ratio) * (carbon_atoms + hydrogen_atoms / 4 - oxygen_atoms / 2)
    middle = hydrogen_atoms / 2 - missing + water_gas_constant * (carbon_atoms + missing)
    root = sqrt(
        middle**2 - 4 * (water_gas_constant - 1) * water_gas_constant * carbon_atoms * missing
    )
    monoxide = (root - middle) / (2 * (1 - water_gas_constant))
    left = (
        monoxide * (carbon_monoxide_enthalpy - carbon_dioxide_enthalpy)
        - (missing - monoxide) * water_vapour_enthalpy
    )
    return 1 - left / (heating_value * fuel_molar_mass)
