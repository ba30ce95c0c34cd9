"""Money, dates, numbers and bands as pages print them; every expected text is whole."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from hoistbook.engineering.glossary import Term
from hoistbook.figures.figure import Figure, Input, Key, Limit, LimitState
from hoistbook.pages.formats import Formats
from hoistbook.pages.words import load_words
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity


def term(metric: str, imperial: str, digits: int) -> Term:
    return Term(
        key="", symbol="", unit="", words="", metric=metric, imperial=imperial, digits=digits
    )


GLOSSARY = {
    "power": term("kW", "hp", 2),
    "torque": term("N m", "lb ft", 3),
    "injector_duty": term("%", "%", 2),
    "lambda": term("lambda", "lambda", 2),
    "charge_temperature": term("degC", "degF", 3),
    "volume_flow": term("m3/h", "ft3/min", 3),
    "pressure_ratio": term("-", "-", 3),
}
METRIC = Formats(load_words("en"), GLOSSARY)
IMPERIAL = Formats(load_words("en"), GLOSSARY, "imperial")


def plain(text: str) -> str:
    assert "  " not in text
    return text.replace("\N{NO-BREAK SPACE}", "_")


@pytest.mark.parametrize(
    ("amount", "currency", "expected"),
    [
        ("690.80", "EUR", "690.80_EUR"),
        ("1234.5", "GBP", "1,234.50_GBP"),
        ("-4.50", "EUR", "\N{MINUS SIGN}4.50_EUR"),
        ("12000", "JPY", "12,000_JPY"),
    ],
)
def test_money_shows_the_decimals_of_its_currency(
    amount: str, currency: str, expected: str
) -> None:
    assert plain(METRIC.money(Money(Decimal(amount), currency))) == expected


def test_a_date_is_written_in_words() -> None:
    assert METRIC.date(date(2026, 2, 14)) == "14 February 2026"


@pytest.mark.parametrize(
    ("value", "low", "high", "expected"),
    [
        (113.1, 88.2, 139.4, ("113_kW", "88 to 139_kW")),  # half width 25.6: two digits
        (250.0, 190.0, 310.0, ("250_kW", "190 to 310_kW")),  # 60: one digit
        (104.6, 94.7, 114.5, ("105_kW", "95 to 115_kW")),  # 9.9: one digit, as 10
        (99.4, 98.2, 100.6, ("99.4_kW", "98.2 to 100.6_kW")),  # 1.2
        (74.2, 59.0, 91.0, ("74_kW", "59 to 91_kW")),  # 16: two digits
        (104.0, 102.0, 135.0, ("104_kW", "102 to 135_kW")),  # 16.5: lopsided, and inside its band
        (1253.0, 953.0, 1553.0, ("1,250_kW", "950 to 1,550_kW")),  # 300: two digits
        (0.44, 0.01, 0.87, ("0.4_kW", "0.0 to 0.9_kW")),  # never finer than its band
        (97.0, 97.0, 97.0, ("97_kW", "")),
    ],
)
def test_a_number_shows_no_more_digits_than_its_band_carries(
    value: float, low: float, high: float, expected: tuple[str, str]
) -> None:
    value_text, band = METRIC.banded(value * 1e3, low * 1e3, high * 1e3, "power")
    assert (plain(value_text), plain(band)) == expected


@pytest.mark.parametrize(
    ("formats", "value", "quantity", "expected"),
    [
        (METRIC, 150e3, "power", "150_kW"),
        (IMPERIAL, 150e3, "power", "200_hp"),  # 201 at two digits
        (METRIC, 203.4, "torque", "203_N_m"),
        (METRIC, 0.824, "injector_duty", "82_%"),
        (METRIC, 0.824, "lambda", "lambda_0.82"),
        (METRIC, 313.15, "charge_temperature", "40_°C"),
        (METRIC, 268.15, "charge_temperature", "\N{MINUS SIGN}5_°C"),
        (IMPERIAL, 313.15, "charge_temperature", "104_°F"),
        (METRIC, 0.05, "volume_flow", "180_m³/h"),
        (METRIC, 1.8, "pressure_ratio", "1.8"),
    ],
)
def test_a_quantity_stands_in_the_journals_unit(
    formats: Formats, value: float, quantity: str, expected: str
) -> None:
    assert plain(formats.quantity(value, quantity)) == expected


def test_a_figure_in_words_names_value_band_evidence_and_limit() -> None:
    figure = Figure(
        key=Key("injector_duty"),
        value=0.82,
        low=0.71,
        high=0.93,
        evidence=Evidence.ESTIMATED,
        inputs=(),
        formula="injector_duty",
        episode=4,
        headline="highest, at 6,000 rpm",
        limit=Limit(
            state=LimitState.NEAR,
            threshold=0.85,
            side="at most",
            reason="common practice, no source",
        ),
    )
    said = METRIC.figure(figure)
    assert plain(said.sentence) == "82_%, 95 % band 71 to 93_%, estimated"
    assert (said.headline, said.limit) == ("highest, at 6,000 rpm", "near its limit")
    assert plain(said.limit_detail) == "at most 85_%: common practice, no source"


@pytest.mark.parametrize(
    ("quantity", "expected"),
    [
        (Quantity(80e3, "bar", "0.8 bar gauge", "gauge"), "0.8_bar_gauge"),
        (
            Quantity(
                550e-6 / 60, "cc/min", "550 cc/min at 3 bar", at=Quantity(3e5, "bar", "3 bar")
            ),
            "550_cc/min at 3_bar",
        ),
        (Quantity(9.5, ":1", "9.5:1"), "9.5:1"),
        (Quantity(293.15, "degC", "20 degC +- 2", half_width=2.0), "20_°C ±_2_°C"),
        (Quantity(6800.0, "rpm", "6800 rpm"), "6,800_rpm"),
        (Quantity(6800.0, "1/min", "6800 1/min"), "6,800_rpm"),
        (Quantity(911.0, "kg", "911 kg +- 4 kg", half_width=4.0), "911_kg ±_4_kg"),
        (Quantity(0.82, "lambda", "lambda 0.82 +- 0.02", half_width=0.02), "lambda_0.82 ±_0.02"),
        (
            Quantity(80e3, "bar", "0.8 bar +- 0.05 bar gauge", "gauge", half_width=5e3),
            "0.8_bar_gauge ±_0.05_bar",
        ),
    ],
)
def test_what_an_author_stated_stays_in_its_own_unit(quantity: Quantity, expected: str) -> None:
    assert plain(METRIC.given(quantity)) == expected


def bars(*values: float, **more: float) -> list[Quantity]:
    return [Quantity(each * 1e5, "bar", f"{each} bar", **more) for each in values]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("together", "expected"),
    [
        (bars(12.1, 12.3, 12.0, 12.2), "12.1 / 12.3 / 12.0 / 12.2_bar"),
        (bars(4.1), "4.1_bar"),
        (bars(9, 12, half_width=0.5e5), "9_bar ±_0.5_bar / 12_bar ±_0.5_bar"),
        ([*bars(4.1), Quantity(3e5, "kPa", "300 kPa")], "4.1_bar / 300_kPa"),
        ([], ""),
    ],
)
def test_readings_of_one_unit_say_it_once_and_keep_their_decimals(
    together: list[Quantity], expected: str
) -> None:
    assert plain(METRIC.given_together(together)) == expected


@pytest.mark.parametrize(
    ("quantity", "standard", "expected"),
    [
        ("power", "", "97_kW, measured, not referred to any reference air"),
        ("power", "SAE J1349", "97_kW, measured, by SAE J1349"),
        ("pressure_ratio", "", "97,000, measured"),
    ],
)
def test_a_power_names_its_power_standard_and_nothing_else_does(
    quantity: str, standard: str, expected: str
) -> None:
    figure = Figure(
        key=Key(quantity),
        value=97e3,
        low=97e3,
        high=97e3,
        evidence=Evidence.MEASURED,
        inputs=(),
        formula="",
        episode=4,
        standard=standard,
    )
    assert plain(METRIC.figure(figure).sentence) == expected


def test_in_a_formula_temperatures_are_absolute_and_lambda_is_a_number() -> None:
    warm = Input(
        name="charge_temperature",
        value=313.15,
        low=303.15,
        high=323.15,
        evidence=Evidence.MEASURED,
        origin="",
    )
    rich = replace(warm, name="lambda", value=0.82, low=0.79, high=0.85)
    assert [plain(METRIC.put_in(each)) for each in (warm, rich)] == ["313_K", "0.820"]
    assert [tuple(map(plain, METRIC.input(each))) for each in (warm, rich)] == [
        ("40_°C", "30 to 50_°C"),
        ("lambda_0.820", "0.790 to 0.850"),
    ]
