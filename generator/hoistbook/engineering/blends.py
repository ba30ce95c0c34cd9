"""A blend of two fuels, mixed by volume: density, stoichiometry, heating value."""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(
    reference="common-practice",
    where="ideal mixing by volume",
    result="fuel_density",
    valid={"volume_fraction_second": (0, 1)},
    assumes=("Volumes add: the excess volume is below 0.3 %.",),
)
def blend_density(
    *, volume_fraction_second: Value, fuel_density_first: Value, fuel_density_second: Value
) -> Value:
    """Return the density of a blend of two fuels.

    Parameters
    ----------
    volume_fraction_second
        Share of the second fuel of a blend, by volume [-].
    fuel_density_first
        Density of the first fuel of a blend [kg/m3].
    fuel_density_second
        Density of the second fuel of a blend [kg/m3].

    Returns
    -------
    Value
        Density of the fuel [kg/m3].

    Notes
    -----
    ρ_f = (1 - v_2) ρ_1 + v_2 ρ_2

    Examples
    --------
    >>> blend_density(
    ...     volume_fraction_second=0.51, fuel_density_first=745.0, fuel_density_second=789.0,
    ... )
    767.44
    """
    return (
        1 - volume_fraction_second
    ) * fuel_density_first + volume_fraction_second * fuel_density_second


@formula(
    reference="common-practice",
    where="definition of the mass fraction",
    valid={"volume_fraction_second": (0, 1)},
)
def mass_fraction_second(
    *, volume_fraction_second: Value, fuel_density_second: Value, fuel_density: Value
) -> Value:
    """Return the share by mass of the second fuel of a blend.

    Parameters
    ----------
    volume_fraction_second
        Share of the second fuel of a blend, by volume [-].
    fuel_density_second
        Density of the second fuel of a blend [kg/m3].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Share of the second fuel of a blend, by mass [-].

    Notes
    -----
    w_2 = v_2 ρ_2 / ρ_f

    Examples
    --------
    >>> mass_fraction_second(
    ...     volume_fraction_second=0.51, fuel_density_second=789.0, fuel_density=767.44,
    ... )
    0.52433
    """
    return volume_fraction_second * fuel_density_second / fuel_density


@formula(
    reference="heywood-1988",
    where="section 3.4: air needed adds by mass of fuel",
    result="stoichiometric_air_fuel_ratio",
    valid={"mass_fraction_second": (0, 1)},
)
def blend_air_fuel_ratio(
    *, mass_fraction_second: Value, air_fuel_ratio_first: Value, air_fuel_ratio_second: Value
) -> Value:
    """Return the stoichiometric air-fuel ratio of a blend of two fuels.

    Parameters
    ----------
    mass_fraction_second
        Share of the second fuel of a blend, by mass [-].
    air_fuel_ratio_first
        Stoichiometric air-fuel ratio of the first fuel of a blend [-].
    air_fuel_ratio_second
        Stoichiometric air-fuel ratio of the second fuel of a blend [-].

    Returns
    -------
    Value
        Stoichiometric air-fuel ratio by mass [-].

    Notes
    -----
    AFR_st = (1 - w_2) AFR_1 + w_2 AFR_2

    Examples
    --------
    >>> blend_air_fuel_ratio(
    ...     mass_fraction_second=0.5243276, air_fuel_ratio_first=14.6, air_fuel_ratio_second=9.0,
    ... )
    11.664
    """
    return (
        1 - mass_fraction_second
    ) * air_fuel_ratio_first + mass_fraction_second * air_fuel_ratio_second


@formula(
    reference="heywood-1988",
    where="section 3.5: heat adds by mass of fuel",
    result="heating_value",
    valid={"mass_fraction_second": (0, 1)},
)
def blend_heating_value(
    *, mass_fraction_second: Value, heating_value_first: Value, heating_value_second: Value
) -> Value:
    """Return the lower heating value of a blend of two fuels.

    Parameters
    ----------
    mass_fraction_second
        Share of the second fuel of a blend, by mass [-].
    heating_value_first
        Lower heating value of the first fuel of a blend [J/kg].
    heating_value_second
        Lower heating value of the second fuel of a blend [J/kg].

    Returns
    -------
    Value
        Lower heating value of the fuel [J/kg].

    Notes
    -----
    H_u = (1 - w_2) H_1 + w_2 H_2

    Examples
    --------
    >>> blend_heating_value(
    ...     mass_fraction_second=0.5243276, heating_value_first=43e6,
    ...     heating_value_second=26.8e6,
    ... )
    3.4506e+07
    """
    return (
        1 - mass_fraction_second
    ) * heating_value_first + mass_fraction_second * heating_value_second


@formula(reference="common-practice", where="definition")
def volumetric_heating_value(*, heating_value: Value, fuel_density: Value) -> Value:
    """Return the lower heating value of a fuel by volume.

    Parameters
    ----------
    heating_value
        Lower heating value of the fuel [J/kg].
    fuel_density
        Density of the fuel [kg/m3].

    Returns
    -------
    Value
        Lower heating value of the fuel by volume [J/m3].

    Notes
    -----
    H_V = H_u ρ_f

    Examples
    --------
    >>> volumetric_heating_value(heating_value=34505890.0, fuel_density=767.44)
    2.6481e+10
    """
    return heating_value * fuel_density
