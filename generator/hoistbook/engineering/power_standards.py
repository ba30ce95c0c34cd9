"""Power standards: what a measured power is referred to, and when none applies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from hoistbook.engineering.formula import FORMULAS, formula
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.engineering.maths import Value, sqrt
from hoistbook.units import to_unit

VALID_FACTORS = (0.93, 1.07)
"""ISO 1585 and UN Regulation 85: a test outside is repeated on another day (from memory)."""


@formula(
    reference="sae-j1349",
    where="factor of June 1990, as quoted in print; the text of the standard was not seen",
    result="power_correction_factor",
    valid={"power_correction_factor": VALID_FACTORS},
    assumes=(
        "Naturally aspirated spark-ignition engines at full throttle.",
        "A mechanical efficiency of 85 % is built in.",
        "The range of the factor is that of ISO 1585, taken over: its own was not seen.",
        "Reference: 25 °C and 99 kPa of dry air.",
    ),
)
def sae_j1349_correction(*, dry_air_pressure: Value, air_temperature: Value) -> Value:
    """Return the factor of SAE J1349.

    Parameters
    ----------
    dry_air_pressure
        Pressure of the air without its water vapour [Pa].
    air_temperature
        Temperature of the surrounding air [K].

    Returns
    -------
    Value
        Factor that a power standard applies to the observed power [-].

    Notes
    -----
    K_p = 1.18 · 99 kPa / p_d √(T_a / 298 K) - 0.18

    Examples
    --------
    >>> sae_j1349_correction(dry_air_pressure=94600.0, air_temperature=305.15)
    1.0696
    """
    return 1.18 * (99e3 / dry_air_pressure) * sqrt(air_temperature / 298) - 0.18


@formula(
    reference="iso-1585",
    where="atmospheric factor of spark-ignition engines",
    result="power_correction_factor",
    valid={
        "power_correction_factor": VALID_FACTORS,
        "air_temperature": (288.15, 308.15),
        "dry_air_pressure": (80000.0, 110000.0),
    },
    assumes=(
        "Naturally aspirated spark-ignition engines at full throttle.",
        "Reference: 25 °C and 99 kPa of dry air.",
    ),
)
def iso_1585_correction(*, dry_air_pressure: Value, air_temperature: Value) -> Value:
    """Return the factor of ISO 1585 and UN Regulation 85.

    Parameters
    ----------
    dry_air_pressure
        Pressure of the air without its water vapour [Pa].
    air_temperature
        Temperature of the surrounding air [K].

    Returns
    -------
    Value
        Factor that a power standard applies to the observed power [-].

    Notes
    -----
    K_p = (99 kPa / p_d)^1.2 (T_a / 298 K)^0.6

    Examples
    --------
    >>> iso_1585_correction(dry_air_pressure=94600.0, air_temperature=305.15)
    1.0712
    """
    return (99e3 / dry_air_pressure) ** 1.2 * (air_temperature / 298) ** 0.6


@formula(
    reference="din-70020",
    where="factor as quoted in print; the text of the standard was not seen",
    result="power_correction_factor",
    assumes=(
        "Naturally aspirated spark-ignition engines at full throttle.",
        "Reference: 20 °C and 101.3 kPa; the humidity of the air is left out.",
        "In what air the standard may be applied was not seen.",
    ),
)
def din_70020_correction(*, air_pressure: Value, air_temperature: Value) -> Value:
    """Return the factor of DIN 70020.

    Parameters
    ----------
    air_pressure
        Pressure of the surrounding air, as a barometer on the spot reads it [Pa].
    air_temperature
        Temperature of the surrounding air [K].

    Returns
    -------
    Value
        Factor that a power standard applies to the observed power [-].

    Notes
    -----
    K_p = 101.3 kPa / p_a √(T_a / 293 K)

    Examples
    --------
    >>> din_70020_correction(air_pressure=97000.0, air_temperature=305.15)
    1.0658
    """
    return 101.3e3 / air_pressure * sqrt(air_temperature / 293)


@formula(
    reference="sae-j607",
    where="factor as quoted in print; the text of the standard was not seen",
    result="power_correction_factor",
    assumes=(
        "Naturally aspirated spark-ignition engines at full throttle.",
        "Reference: 60 °F and 29.92 inHg of dry air, which reads about 3.5 % above SAE J1349.",
        "In what air the standard may be applied was not seen.",
    ),
)
def sae_j607_correction(*, dry_air_pressure: Value, air_temperature: Value) -> Value:
    """Return the factor of SAE J607, the older standard of the United States.

    Parameters
    ----------
    dry_air_pressure
        Pressure of the air without its water vapour [Pa].
    air_temperature
        Temperature of the surrounding air [K].

    Returns
    -------
    Value
        Factor that a power standard applies to the observed power [-].

    Notes
    -----
    K_p = 101.32 kPa / p_d √(T_a / 288.71 K)

    Examples
    --------
    >>> sae_j607_correction(dry_air_pressure=95800.0, air_temperature=305.37)
    1.0877
    """
    return 101.32e3 / dry_air_pressure * sqrt(air_temperature / 288.71)


@formula(
    reference="sae-j1349",
    where="definition of the factor",
    assumes=("A power says nothing without the name of its standard: the four differ by 4 %.",),
)
def corrected_power(*, power_correction_factor: Value, observed_power: Value) -> Value:
    """Return the power referred to a power standard.

    Parameters
    ----------
    power_correction_factor
        Factor that a power standard applies to the observed power [-].
    observed_power
        Power as observed, referred to no standard [W].

    Returns
    -------
    Value
        Power referred to a power standard [W].

    Notes
    -----
    P_K = K_p P_o

    Examples
    --------
    >>> corrected_power(power_correction_factor=1.04, observed_power=150000.0)
    1.5600e+05
    """
    return power_correction_factor * observed_power


@formula(
    reference="sae-j1349",
    where="definition of the factor, turned round",
    assumes=("The rollers' own program used this factor: what it used it seldom prints.",),
)
def observed_power(*, stated_power: Value, stated_correction_factor: Value) -> Value:
    """Return the power as observed, with the factor of a power standard taken out again.

    Parameters
    ----------
    stated_power
        Power as a log states it, referred to a power standard [W].
    stated_correction_factor
        Factor of the power standard that a log was referred to [-].

    Returns
    -------
    Value
        Power as observed, referred to no standard [W].

    Notes
    -----
    P_o = P_s / K_s

    Examples
    --------
    >>> observed_power(stated_power=156000.0, stated_correction_factor=1.04)
    1.5000e+05
    """
    return stated_power / stated_correction_factor


STANDARDS: Mapping[str, str] = MappingProxyType(
    {
        "SAE J1349": "sae_j1349_correction",
        "ISO 1585": "iso_1585_correction",
        "DIN 70020": "din_70020_correction",
        "SAE J607": "sae_j607_correction",
    }
)
"""Formula of a power standard's factor, by the standard's name as printed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PowerCorrection:
    """What a power standard does to one run."""

    standard: str
    factor: float
    """What the observed power is to be multiplied by; 1 where no correction applies."""
    by_the_formula: float
    """What the standard's formula gives, whether it applies or not."""
    applies: bool
    reason: str
    """Why no correction applies; empty where it does."""


_HELD = (
    "no correction: the boost of this engine is held to a pressure of its own, so that thin air "
    "already costs it less than the formula believes, and the factor would count that twice"
)
_OUTSIDE = (
    "no correction: {words} is {value}, and {standard} corrects only between {low} and {high}; "
    "the run has to be repeated on another day"
)


def power_correction(
    standard: str,
    *,
    air_pressure: float,
    air_temperature: float,
    dry_air_pressure: float,
    boost_compensates: bool,
) -> PowerCorrection:
    """Return the factor of a power standard for one run, or 1 and why none applies.

    Parameters
    ----------
    standard
        One of `STANDARDS`.
    air_pressure
        Pressure of the surrounding air [Pa].
    air_temperature
        Temperature of the surrounding air [K].
    dry_air_pressure
        Pressure of the air without its water vapour [Pa].
    boost_compensates
        Whether the engine is boosted and its boost is controlled so that it makes up for the air
        of the day. Not known counts as yes.

    Returns
    -------
    PowerCorrection
        A boosted engine that makes up for the air of the day is never corrected, nor is a run
        outside the standard's own range: the observed power is shown with the air of its day.

    Raises
    ------
    KeyError
        For a standard that is not in `STANDARDS`.

    Notes
    -----
    The standards' factors are for engines without boost, or whose boost follows the air. The
    clause of SAE J1349 on boosted engines was not seen; that a correction on top of a control
    which compensates counts the air twice was brought before a UN working party in 2014 (from a
    summary; the paper was not seen).

    Examples
    --------
    >>> air = {"air_pressure": 97e3, "air_temperature": 298.15, "dry_air_pressure": 95.8e3}
    >>> power_correction("SAE J1349", **air, boost_compensates=False).factor
    1.0397
    >>> power_correction("SAE J1349", **air, boost_compensates=True).factor
    1.0
    """
    formula = FORMULAS[STANDARDS[standard]]
    air = {
        "air_pressure": air_pressure,
        "air_temperature": air_temperature,
        "dry_air_pressure": dry_air_pressure,
    }
    factor = float(formula(**{key: air[key] for key in formula.parameters}))
    reason = _HELD if boost_compensates else _outside(standard, air | {formula.result: factor})
    return PowerCorrection(
        standard=standard,
        factor=1.0 if reason else factor,
        by_the_formula=factor,
        applies=not reason,
        reason=reason,
    )


def _outside(standard: str, values: Mapping[str, float]) -> str:
    """Return why a standard cannot serve on this day, empty where it can."""
    formula = FORMULAS[STANDARDS[standard]]
    for key in formula.outside(values):
        term = GLOSSARY[key]
        value, low, high = (
            f"{to_unit(each, term.metric):.4g} {term.metric}".removesuffix(" -")
            for each in (values[key], *formula.valid[key])
        )
        words = f"the {term.words.partition(',')[0]}"
        return _OUTSIDE.format(words=words, value=value, standard=standard, low=low, high=high)
    return ""
