"""Octane numbers of fuels and blends.

Nothing here says that an engine will not knock: no boost, timing or fuel is offered as safe.
"""

from __future__ import annotations

from hoistbook.engineering.formula import formula
from hoistbook.engineering.maths import Value


@formula(
    reference="astm-d4814",
    where="definition; also 16 CFR 306",
    assumes=("A fuel of RON 98 has an index of about 93: the two numbers are never compared.",),
)
def anti_knock_index(*, research_octane_number: Value, motor_octane_number: Value) -> Value:
    """Return the anti-knock index of a fuel, as pumps in the United States print it.

    Parameters
    ----------
    research_octane_number
        Research octane number [-].
    motor_octane_number
        Motor octane number [-].

    Returns
    -------
    Value
        Anti-knock index of the fuel, as on pumps in the United States [-].

    Notes
    -----
    AKI = (RON + MON) / 2

    Examples
    --------
    >>> anti_knock_index(research_octane_number=95.0, motor_octane_number=85.0)
    90.0
    """
    return (research_octane_number + motor_octane_number) / 2


@formula(
    reference="anderson-2020",
    where="octane numbers blend by mole",
    valid={"volume_fraction_second": (0, 1)},
    assumes=("Volumes add: the excess volume is below 0.3 %.",),
)
def mole_fraction_second(
    *,
    volume_fraction_second: Value,
    fuel_density_second: Value,
    molar_mass_second: Value,
    fuel_density_first: Value,
    molar_mass_first: Value,
) -> Value:
    """Return the share by mole of the second fuel of a blend.

    Parameters
    ----------
    volume_fraction_second
        Share of the second fuel of a blend, by volume [-].
    fuel_density_second
        Density of the second fuel of a blend [kg/m3].
    molar_mass_second
        Molar mass of the second fuel of a blend [kg/mol].
    fuel_density_first
        Density of the first fuel of a blend [kg/m3].
    molar_mass_first
        Molar mass of the first fuel of a blend [kg/mol].

    Returns
    -------
    Value
        Share of the second fuel of a blend, by mole [-].

    Notes
    -----
    x_2 = v_2 ρ_2 / M_2 / (v_2 ρ_2 / M_2 + (1 - v_2) ρ_1 / M_1)

    Examples
    --------
    >>> mole_fraction_second(
    ...     volume_fraction_second=0.1, fuel_density_second=789.0,
    ...     molar_mass_second=0.046068, fuel_density_first=745.0, molar_mass_first=0.1,
    ... )
    0.20346
    """
    second = volume_fraction_second * fuel_density_second / molar_mass_second
    first = (1 - volume_fraction_second) * fuel_density_first / molar_mass_first
    return second / (second + first)


@formula(
    reference="anderson-2020",
    where="linear by mole, with one term of interaction",
    result="octane_number",
    assumes=(
        "Within 2 numbers at best: the base fuel decides the interaction, of either sign.",
        "Says nothing of knock: that is found with knock detection, by someone competent.",
    ),
)
def blend_octane_number(
    *,
    mole_fraction_second: Value,
    octane_number_first: Value,
    octane_number_second: Value,
    octane_interaction: Value,
) -> Value:
    """Return the octane number of a blend.

    Parameters
    ----------
    mole_fraction_second
        Share of the second fuel of a blend, by mole [-].
    octane_number_first
        Octane number of the first fuel of a blend [-].
    octane_number_second
        Octane number of the second fuel of a blend [-].
    octane_interaction
        Interaction of the octane numbers of a blend, of either sign [-].

    Returns
    -------
    Value
        Octane number of the blend, research or motor [-].

    Notes
    -----
    ON = (1 - x_2) ON_1 + x_2 ON_2 + Z x_2 (1 - x_2)

    Examples
    --------
    >>> blend_octane_number(
    ...     mole_fraction_second=0.20346, octane_number_first=91.0,
    ...     octane_number_second=108.0, octane_interaction=0.0,
    ... )
    94.459
    """
    return (
        (1 - mole_fraction_second) * octane_number_first
        + mole_fraction_second * octane_number_second
        + octane_interaction * mole_fraction_second * (1 - mole_fraction_second)
    )
