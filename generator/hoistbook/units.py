"""Units of measurement: the spellings we read and print, and their size in SI base units.

The table below is closed on purpose: an author's slip ("psl", "amps/h") must be a message, not a
unit that a clever parser made up. The sizes themselves come from pint, whose only home this is.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, TypeVar, cast

Numbers = TypeVar("Numbers", float, Any)
"""A float, or a NumPy array of floats."""


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit that authors write and pages print."""

    name: str
    """The canonical spelling, as printed."""
    dimension: str
    expression: str
    """The unit in pint's language; a plain number where pint's own base is not ours."""
    aliases: tuple[str, ...] = ()


# dimension -> units, the likeliest first: canonical spelling | pint expression | other spellings.
_TABLE = {
    "pressure": """
        bar      | bar          |
        psi      | psi          | lb/in2, lbf/in2, lbs/in2
        kPa      | kPa          |
        Pa       | Pa           |
        hPa      | hPa          |
        mbar     | mbar         |
        MPa      | MPa          | N/mm2
        kgf/cm2  | kgf/cm**2    | kg/cm2
        inHg     | inHg         | in Hg
        mmHg     | mmHg         | mm Hg
        inH2O    | inH2O        | in H2O, inWG
        mmH2O    | mm_H2O       | mm H2O
    """,
    "temperature": """
        degC     | degC         | °C, deg C, C, celsius, degrees C, degrees Celsius, º C, ° C
        degF     | degF         | °F, deg F, F, fahrenheit, degrees F, degrees Fahrenheit, ° F
        K        | K            | kelvin
    """,
    "length": """
        mm       | mm           | millimetre, millimetres
        m        | m            | metre, metres
        in       | in           | ", ″, inch, inches
        cm       | cm           |
        ft       | ft           | foot, feet
        km       | km           |
        um       | um           | µm, μm, micron, microns
    """,
    "area": """
        mm2      | mm**2        | mm², sq mm
        m2       | m**2         | m², sq m
        cm2      | cm**2        | cm², sq cm
        in2      | in**2        | sq in
        ft2      | ft**2        | sq ft
    """,
    "volume": """
        cc       | cm**3        |
        L        | L            | l, litre, litres, ltr
        cm3      | cm**3        | cm³
        mL       | mL           | ml
        m3       | m**3         | m³
        in3      | in**3        | cu in, in³, ci
        US gal   | gallon       |
    """,
    "mass": """
        kg       | kg           | kilo, kilos, kgs
        g        | g            | gram, grams
        lb       | lb           | lbs, pound, pounds
        t        | t            | tonne, tonnes
        oz       | oz           |
        mg       | mg           |
    """,
    "time": """
        ms       | ms           |
        s        | s            | sec, second, seconds
        min      | min          | minute, minutes
        h        | h            | hour, hours, hr, hrs
        us       | us           | µs, μs
        day      | day          | days
        month    | month        | months
        year     | year         | years
    """,
    "volume flow": """
        cc/min   | cm**3/min    | cm3/min, ccm, ccm/min, mL/min, ml/min, cc per minute
        L/h      | L/h          | l/h, L/hr, l/hr, lph, litres per hour
        L/min    | L/min        | l/min, lpm, litres per minute
        m3/s     | m**3/s       | m³/s
        m3/h     | m**3/h       | m³/h
        m3/min   | m**3/min     | m³/min
        L/s      | L/s          | l/s
        ft3/min  | ft**3/min    | cfm, CFM, cu ft/min
        US gal/h | gallon/h     | US gph
    """,
    "mass flow": """
        g/s      | g/s          |
        kg/s     | kg/s         |
        lb/min   | lb/min       | lbs/min
        lb/h     | lb/h         | lb/hr, lbs/hr, lbs/h
        kg/h     | kg/h         | kg/hr
        kg/min   | kg/min       |
        g/min    | g/min        |
    """,
    "speed of rotation": """
        rpm      | 1            | r/min, rev/min, revs, r.p.m., RPM
        1/min    | 1            | min-1, min^-1, /min
        1/s      | 60           |
    """,
    "speed": """
        m/s      | m/s          |
        km/h     | km/h         | kph, kmh
        mph      | mph          | mi/h
        ft/s     | ft/s         |
        ft/min   | ft/min       |
    """,
    "power": """
        kW       | kW           |
        hp       | hp           | bhp, HP
        PS       | metric_horsepower |
        W        | W            | watt, watts
    """,
    "torque": """
        N m      | N*m          | Nm, N·m, N.m, N-m, newton metres
        lb ft    | lbf*ft       | lbf ft, ft lb, ft-lb, lb-ft, lbft, ftlb, lb·ft
        lb in    | lbf*in       | lbf in, in lb, in-lb, lb-in
        kgf m    | kgf*m        | kg m, kgm
    """,
    "energy": """
        J        | J            |
        kJ       | kJ           |
        MJ       | MJ           |
        kWh      | kWh          | kW h
        Wh       | Wh           | W h
    """,
    "force": """
        N        | N            |
        kN       | kN           |
        lbf      | lbf          |
        kgf      | kgf          |
    """,
    "spring rate": """
        N/mm     | N/mm         |
        N/m      | N/m          |
        lbf/in   | lbf/in       | lb/in, lbs/in
    """,
    "angle": """
        deg      | degree       | °, degree, degrees
        rad      | rad          |
    """,
    "voltage": """
        V        | V            | volt, volts
        mV       | mV           |
        kV       | kV           |
    """,
    "current": """
        A        | A            | amp, amps, ampere, amperes
        mA       | mA           |
    """,
    "resistance": """
        ohm      | ohm          | Ω, Ω, ohms
        kohm     | kohm         | kΩ
    """,
    "charge": """
        Ah       | A*h          | A h
    """,
    "density": """
        kg/m3    | kg/m**3      | kg/m³
        kg/L     | kg/L         | kg/l
        g/cm3    | g/cm**3      | g/cm³, g/cc
        lb/ft3   | lb/ft**3     |
    """,
    "ratio": """
        %        | 0.01         | percent, per cent, pct
        :1       | 1            | to 1, : 1
        lambda   | 1            | λ
        -        | 1            | 1
    """,
    "specific fuel consumption": """
        g/kWh    | g/(kW*h)     | g/(kW h), g/kW h
        kg/J     | kg/J         |
        lb/(hp h) | lb/(hp*h)   | lb/hp h, lb/hph, lb/hp/h
    """,
    "power to mass": """
        W/kg     | W/kg         |
        kW/t     | kW/t         |
        hp/lb    | hp/lb        |
        hp/t     | hp/t         |
    """,
    "mass to power": """
        kg/kW    | kg/kW        |
        lb/hp    | lb/hp        |
    """,
    "specific energy": """
        MJ/kg    | MJ/kg        |
        kJ/kg    | kJ/kg        |
        J/kg     | J/kg         |
    """,
    "energy density": """
        MJ/L     | MJ/L         |
        J/m3     | J/m**3       |
    """,
    "molar energy": """
        kJ/mol   | kJ/mol       |
        J/mol    | J/mol        |
    """,
    "resistivity": """
        ohm m    | ohm*m        |
    """,
    "temperature gradient": """
        K/m      | K/m          |
    """,
    "specific heat": """
        J/(kg K) | J/(kg*K)     | J/kg K, J/kgK
        kJ/(kg K) | kJ/(kg*K)   | kJ/kg K, kJ/kgK
    """,
    "thermal conductance": """
        W/K      | W/K          |
    """,
    "thermal conductance by volume": """
        W/(m3 K) | W/(m**3*K)   |
    """,
    "dynamic viscosity": """
        Pa s     | Pa*s         |
        mPa s    | mPa*s        | cP
    """,
    "kinematic viscosity": """
        mm2/s    | mm**2/s      | cSt
        m2/s     | m**2/s       |
    """,
    "molar mass": """
        g/mol    | g/mol        |
        kg/mol   | kg/mol       |
    """,
    "acceleration": """
        m/s2     | m/s**2       | m/s²
    """,
}


def _rows() -> Iterator[Unit]:
    for dimension_name, rows in _TABLE.items():
        for row in rows.strip().splitlines():
            name, expression, aliases = (piece.strip() for piece in row.split("|"))
            spellings = tuple(alias.strip() for alias in aliases.split(",") if alias.strip())
            yield Unit(name, dimension_name, expression, spellings)


UNITS: Mapping[str, Unit] = MappingProxyType({unit.name: unit for unit in _rows()})
"""Every unit by its canonical spelling, the likeliest of each dimension first."""

_SPELLINGS: Mapping[str, str] = MappingProxyType(
    {alias: unit.name for unit in UNITS.values() for alias in unit.aliases}
    | {name: name for name in UNITS}
)


@cache
def canonical(spelling: str) -> str | None:
    """Return the canonical spelling of a unit as an author may write it, or None.

    Examples
    --------
    >>> canonical("Nm"), canonical("°C"), canonical("CC/Min"), canonical("furlong")
    ('N m', 'degC', 'cc/min', None)
    """
    tidy = re.sub(r"\s+", " ", spelling.strip())
    if tidy in _SPELLINGS:
        return _SPELLINGS[tidy]
    # Letter case carries meaning in few places (mW, MW), so another case is taken where it fits
    # one unit only.
    folded = {name for known, name in _SPELLINGS.items() if known.casefold() == tidy.casefold()}
    return folded.pop() if len(folded) == 1 else None


def units_of(dimension_name: str) -> tuple[str, ...]:
    """Return the canonical spellings of a dimension, the likeliest first."""
    return tuple(unit.name for unit in UNITS.values() if unit.dimension == dimension_name)


def spellings() -> tuple[str, ...]:
    """Return every spelling that `canonical` knows, sorted."""
    return tuple(sorted(_SPELLINGS))


@cache
def dimension(unit: str) -> str:
    """Return the name of a unit's dimension: "pressure" of "bar", "volume flow" of "L/h".

    Raises
    ------
    UnknownUnitError
        For a spelling that is not in the table.
    """
    return _known(unit).dimension


class UnknownUnitError(ValueError):
    """A unit of our own code that the table does not hold; authors' slips never get here."""


def _known(unit: str) -> Unit:
    name = canonical(unit)
    if name is None:
        raise UnknownUnitError(f"unit {unit!r} is not in the table of hoistbook.units")
    return UNITS[name]


@cache
def _registry() -> Any:
    import pint  # Here because it costs 0.2 s and the command line has work without units.

    return pint.UnitRegistry()


@cache
def scale(unit: str) -> float:
    """Return the size in SI base units of a difference of one of this unit (1 K for degC).

    It is the whole conversion of all but temperatures; half of any band is a difference too.
    """
    expression = _known(unit).expression
    if expression[0].isdigit():
        return float(expression)
    step = f"delta_{expression}" if expression.startswith("deg") and len(expression) == 4 else ""
    return cast(float, _registry().Quantity(1.0, step or expression).to_base_units().magnitude)


@cache
def _zero(unit: str) -> float:
    name = _known(unit).name
    if name not in ("degC", "degF"):
        return 0.0
    return cast(float, _registry().Quantity(0.0, name).to_base_units().magnitude)


def printed_unit(unit: str) -> str:
    """Return a unit as it is set in print; empty for a plain number.

    Examples
    --------
    >>> printed_unit("m3/h"), printed_unit("degC"), printed_unit("-")
    ('m³/h', '°C', '')
    """
    if unit in ("-", "lambda"):
        return ""
    raised = re.sub(r"(?<=[a-z])[23](?![a-zA-Z0-9])", lambda m: "²³"[int(m[0]) - 2], unit)
    return re.sub(r"^deg(?=[CF]$)|^deg$", "°", raised)


def from_unit(value: Numbers, unit: str) -> Numbers:
    """Return a value given in a unit, in SI base units.

    Parameters
    ----------
    value
        A float or an array [unit].
    unit
        Any spelling that `canonical` knows.

    Returns
    -------
    float or array
        SI base units; speed of rotation in 1/min; temperature in K; torque in N m.

    Raises
    ------
    UnknownUnitError
        For a spelling that is not in the table.

    Examples
    --------
    >>> from_unit(12.0, "psi")
    82737.0875
    >>> from_unit(20.0, "degC"), from_unit(6800.0, "rpm"), from_unit(85.0, "%")
    (293.15, 6800.0, 0.85)
    """
    return value * scale(unit) + _zero(unit)


def to_unit(value_si: Numbers, unit: str) -> Numbers:
    """Return an SI value in a unit; the inverse of `from_unit`.

    Examples
    --------
    >>> to_unit(9.1667e-6, "cc/min"), to_unit(373.15, "degF")
    (550.002, 212.0)
    """
    return (value_si - _zero(unit)) / scale(unit)
