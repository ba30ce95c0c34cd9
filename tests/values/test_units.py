"""Units against the published conversion factors."""

from __future__ import annotations

import numpy as np
import pytest

from hoistbook.units import (
    UNITS,
    UnknownUnitError,
    canonical,
    dimension,
    from_unit,
    scale,
    to_unit,
    units_of,
)

# NIST Special Publication 811 (2008), appendix B.8, factors to SI, printed to seven digits there;
# written down from memory. Speed of rotation is kept in 1/min on purpose.
NIST_SP_811 = {
    "psi": 6.894757e3,
    "bar": 1e5,
    "kgf/cm2": 9.80665e4,
    "inHg": 3.386389e3,
    "mmHg": 1.333224e2,
    "inH2O": 2.490889e2,
    "mmH2O": 9.80665,
    "in": 2.54e-2,
    "ft": 3.048e-1,
    "lb": 4.535924e-1,
    "oz": 2.834952e-2,
    "US gal": 3.785412e-3,
    "in3": 1.638706e-5,
    "L": 1e-3,
    "ft3/min": 4.719474e-4,
    "lb/h": 1.259979e-4,
    "lb/min": 7.559873e-3,
    "mph": 4.4704e-1,
    "hp": 7.456999e2,
    "PS": 7.354988e2,
    "lb ft": 1.355818,
    "lb in": 1.129848e-1,
    "kgf m": 9.80665,
    "lbf": 4.448222,
    "lb/(hp h)": 1.689659e-7,
    "deg": 1.745329e-2,
    "kWh": 3.6e6,
    "Ah": 3.6e3,
}


@pytest.mark.parametrize(("unit", "factor"), NIST_SP_811.items())
def test_the_size_of_a_unit_is_the_published_one(unit: str, factor: float) -> None:
    # Seven digits are printed: half a unit of the last is 5e-7 of a number that begins with 1.
    assert scale(unit) == pytest.approx(factor, rel=5e-7)


@pytest.mark.parametrize(
    ("celsius", "fahrenheit", "kelvin"),
    # The fixed relation of the scales (The International System of Units, 9th edition, 2.3.1).
    [(0.0, 32.0, 273.15), (100.0, 212.0, 373.15), (-40.0, -40.0, 233.15)],
)
def test_temperatures_have_a_zero_of_their_own(
    celsius: float, fahrenheit: float, kelvin: float
) -> None:
    assert from_unit(celsius, "degC") == pytest.approx(kelvin)
    assert from_unit(fahrenheit, "degF") == pytest.approx(kelvin)
    assert to_unit(kelvin, "degF") == pytest.approx(fahrenheit)
    assert scale("degF") == pytest.approx(5 / 9)


@pytest.mark.parametrize("unit", UNITS)
def test_there_and_back_is_where_one_was(unit: str) -> None:
    assert to_unit(from_unit(12.5, unit), unit) == pytest.approx(12.5)
    assert to_unit(from_unit(np.array([1.0, 2.0]), unit), unit) == pytest.approx([1.0, 2.0])


@pytest.mark.parametrize("unit", UNITS)
def test_every_spelling_leads_to_its_unit_and_to_no_other(unit: str) -> None:
    for spelling in (unit, *UNITS[unit].aliases):
        assert canonical(spelling) == unit


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("CC/MIN", "cc/min"),
        ("Kpa", "kPa"),
        ("  N  m ", "N m"),
        ("KW", "kW"),
        ("Deg  C", "degC"),
        ("mW", None),
        ("psl", None),
        ("", None),
    ],
)
def test_letter_case_and_blanks_do_not_matter_and_slips_do(
    written: str, meant: str | None
) -> None:
    assert canonical(written) == meant


def test_speed_of_rotation_stays_in_revolutions_per_minute() -> None:
    assert from_unit(6800.0, "rpm") == 6800.0
    assert to_unit(6800.0, "1/min") == 6800.0
    assert dimension("rpm") == "speed of rotation"


def test_a_dimension_names_its_units_likeliest_first() -> None:
    assert units_of("volume flow")[:3] == ("cc/min", "L/h", "L/min")
    assert units_of("beauty") == ()


def test_a_unit_of_our_own_that_is_not_in_the_table_is_our_mistake() -> None:
    with pytest.raises(UnknownUnitError, match="unit 'furlong' is not in the table"):
        from_unit(1.0, "furlong")
