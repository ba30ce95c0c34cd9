"""Quantities as authors write them."""

from __future__ import annotations

import pytest

from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity, parse_quantity, spaced
from hoistbook.values.slip import Slip

PSI, POUND = 6894.757293168, 0.45359237
"""Pa and kg, exact by definition: international yard and pound agreement of 1959 (from memory)."""


def read(text: str, *dimensions: str, numbers: str = "point") -> Quantity:
    found = parse_quantity(text, dimensions, numbers=numbers)
    assert isinstance(found, Quantity), found
    return found


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("1598 cc", 1598e-6, "cc"),
        ("63.5 mm", 0.0635, "mm"),
        ("63.5mm", 0.0635, "mm"),
        ("20 degC", 293.15, "degC"),
        ("20 °C", 293.15, "degC"),
        ("-5 degC", 268.15, "degC"),
        ("\N{MINUS SIGN}5 degC", 268.15, "degC"),
        ("3/8 in", 0.375 * 0.0254, "in"),
        ('3/8"', 0.375 * 0.0254, "in"),
        ("1 1/2 in", 1.5 * 0.0254, "in"),
        ("1-1/2 in", 1.5 * 0.0254, "in"),
        ("9.5:1", 9.5, ":1"),
        ("9.5 : 1", 9.5, ":1"),
        ("85 %", 0.85, "%"),
        ("85%", 0.85, "%"),
        ("lambda 0.82", 0.82, "lambda"),
        ("0.82 lambda", 0.82, "lambda"),
        ("6800 rpm", 6800.0, "rpm"),
        ("6,800 1/min", 6800.0, "1/min"),
        ("1'250 kg", 1250.0, "kg"),
        ("1\N{NARROW NO-BREAK SPACE}250 kg", 1250.0, "kg"),
        ("340 cc/min", 340e-6 / 60, "cc/min"),
        ("190 L/h", 190e-3 / 3600, "L/h"),
        ("24 lb/min", 24 * POUND / 60, "lb/min"),
        ("0.49", 0.49, "-"),
        ("120 Nm", 120.0, "N m"),
    ],
)
def test_a_number_and_its_unit_become_si(text: str, value: float, unit: str) -> None:
    found = read(text)

    assert found.value == pytest.approx(value)
    assert (found.unit, found.text, found.reference) == (unit, spaced(text), None)


@pytest.mark.parametrize(
    ("text", "value", "reference"),
    [
        ("12 psi gauge", 12 * PSI, "gauge"),
        ("12 psig", 12 * PSI, "gauge"),
        ("12 psi g", 12 * PSI, "gauge"),
        ("26.5 psia", 26.5 * PSI, "absolute"),
        ("180 kPa absolute", 180e3, "absolute"),
        ("180 kPa abs", 180e3, "absolute"),
        ("1.8 bar (absolute)", 180e3, "absolute"),
        ("0.8 bar", 80e3, None),
    ],
)
def test_gauge_and_absolute_never_mix(text: str, value: float, reference: str | None) -> None:
    found = read(text, "pressure")

    assert found.value == pytest.approx(value)
    assert found.reference == reference


@pytest.mark.parametrize(
    ("text", "half_width"),
    [
        ("98.6 kPa +- 0.3 kPa", 300.0),
        ("98.6 kPa ± 0.3 kPa", 300.0),
        ("98.6 kPa +/- 0.3 kPa", 300.0),
        ("98.6 +- 0.3 kPa", 300.0),
        ("98.6 kPa +- 0.3", 300.0),
        ("98.6 kPa +- 3 mbar", 300.0),
        ("0.8 bar gauge +- 0.05 bar", 5e3),
        ("0.8 bar +- 0.05 bar gauge", 5e3),
        ("0.8 +- 0.05 bar gauge", 5e3),
        ("550 cc/min +- 3 % at 3 bar", 0.03 * 550e-6 / 60),
        ("17 degC +- 2 K", 2.0),
        ("68 degF +- 9 degF", 5.0),
        ("74 % +- 3 %", 0.03),
    ],
)
def test_half_a_band_is_in_si_and_of_a_percentage_in_points(text: str, half_width: float) -> None:
    assert read(text).half_width == pytest.approx(half_width)


def test_the_condition_a_number_holds_at_is_a_quantity_of_its_own() -> None:
    flow = read("255 L/h +- 5 % at 3 bar, stated", "volume flow", "mass flow")

    assert flow.at is not None
    assert flow.at.value == pytest.approx(300e3)
    assert (flow.at.unit, flow.evidence) == ("bar", Evidence.STATED)
    assert flow.text == "255 L/h +- 5 % at 3 bar"


@pytest.mark.parametrize("word", list(Evidence))
def test_the_last_word_says_how_the_number_is_known(word: Evidence) -> None:
    assert read(f"905 kg, {word}").evidence is word


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("0,8 bar", 80e3),
        ("1,250 kg", 1.25),
        ("1.250,5 kg", 1250.5),
        ("1.250.000 kg", 1.25e6),
        ("9,5:1", 9.5),
        ("905 kg +- 2,5 kg", 905.0),
        ("905,5 kg, measured", 905.5),
    ],
)
def test_a_journal_may_write_a_comma_before_decimals(text: str, value: float) -> None:
    assert read(text, numbers="comma").value == pytest.approx(value)


def test_a_bare_number_does_where_no_unit_is_needed() -> None:
    assert read("0.49", "ratio").value == 0.49
    assert read("4", "number").unit == "-"


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "kg",
        "kg 905",
        "905 905 kg",
        "1e5 Pa",
        "nan kg",
        "inf kg",
        "905 kg +- ",
        "905 kg at ",
        "+- 3 kg",
        "lambda",
        "lambda x",
        "1/2/3 in",
        "٣ kg",
        "9" * 16 + " kg",
        "9" * 200,
    ],
)
def test_what_is_no_quantity_is_a_slip_and_never_an_exception(text: str) -> None:
    assert isinstance(parse_quantity(text), Slip)


def test_a_slip_knows_where_in_the_text_it_stands() -> None:
    text = "550 cc/mn at 3 bar"
    found = parse_quantity(text)

    assert isinstance(found, Slip)
    assert text[found.offset :] == "cc/mn at 3 bar"
