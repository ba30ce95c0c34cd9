"""Money, names and days as authors write them."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from hoistbook.values.dates import parse_date, parse_timecode
from hoistbook.values.evidence import Evidence
from hoistbook.values.fuel import Fuel, parse_fuel
from hoistbook.values.money import Money, currencies, parse_money
from hoistbook.values.name import is_latin, to_id
from hoistbook.values.number import parse_number
from hoistbook.values.slip import Slip


@pytest.mark.parametrize(
    ("text", "amount", "currency"),
    [
        ("690.80 EUR", "690.80", "EUR"),
        ("EUR 690.80", "690.80", "EUR"),
        ("-4.50 EUR", "-4.50", "EUR"),
        ("EUR -4.50", "-4.50", "EUR"),
        ("€ 12", "12", "EUR"),
        ("€12", "12", "EUR"),
        ("12 €", "12", "EUR"),
        ("£6.40", "6.40", "GBP"),
        ("-£6.40", "-6.40", "GBP"),
        ("1,250.00 usd", "1250.00", "USD"),
        ("12000 JPY", "12000", "JPY"),
    ],
)
def test_an_amount_keeps_its_cents_and_its_currency(text: str, amount: str, currency: str) -> None:
    found = parse_money(text)

    assert found == Money(Decimal(amount), currency)
    assert isinstance(found, Money)
    assert str(found.amount) == amount


def test_an_amount_with_a_comma_is_read_by_the_journal() -> None:
    assert parse_money("1.250,40 EUR", "comma") == Money(Decimal("1250.40"), "EUR")
    assert parse_money("6,40 EUR", "comma") == Money(Decimal("6.40"), "EUR")


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("12", "`12` has no currency", "as 12 EUR"),
        ("12 EUT", "`EUT` is not a currency", "write its code, as 12 EUR"),
        (
            "$12",
            "`$` is the sign of several currencies",
            "write the code: USD, CAD, AUD or NZD, as 12 USD",
        ),
        (
            "¥500",
            "`¥` is the sign of several currencies",
            "write the code: JPY or CNY, as 500 JPY",
        ),
        ("EUR 12 GBP", "two currencies stand here: EUR and GBP", "keep one"),
        (
            "twelve EUR",
            "`twelve EUR` is not an amount of money",
            "an amount and a currency, as 6.40 EUR",
        ),
        ("1.2.3 EUR", "`1.2.3` is not a number", "write it as 1234.5"),
    ],
)
def test_what_is_wrong_with_an_amount_is_said(text: str, message: str, hint: str) -> None:
    found = parse_money(text)

    assert isinstance(found, Slip)
    assert (found.message, found.hint) == (message, hint)


def test_the_currencies_are_those_of_the_standard() -> None:
    # ISO 4217: active codes of the euro, the pound sterling, the yen and the US dollar.
    assert {"EUR", "GBP", "JPY", "USD"} <= currencies()
    assert "EURO" not in currencies()


@pytest.mark.parametrize(
    ("text", "numbers", "value"),
    [
        ("1234.5", "point", "1234.5"),
        ("1,234.5", "point", "1234.5"),
        ("1,234", "point", "1234"),
        ("1,234,567", "point", "1234567"),
        ("1234,5", "comma", "1234.5"),
        ("1.234,5", "comma", "1234.5"),
        ("1,234", "comma", "1.234"),
        ("5.", "point", "5"),
    ],
)
def test_what_a_comma_means_is_said_once(text: str, numbers: str, value: str) -> None:
    assert parse_number(text, numbers) == Decimal(value)


@pytest.mark.parametrize(
    ("text", "numbers", "message"),
    [
        ("1,5", "point", "`1,5` has two readings: 1.5 and 15"),
        ("12,34", "point", "`12,34` has two readings: 12.34 and 1234"),
        ("1.250", "comma", "`1.250` has two readings: 1.250 and 1250"),
        ("1.5", "comma", "`1.5` has two readings: 1.5 and 15"),
        (
            "0,8",
            "point",
            "`0,8` is not written as this journal writes decimals, with a point",
        ),
        (
            "0.8",
            "comma",
            "`0.8` is not written as this journal writes decimals, with a comma",
        ),
        ("1,23,456", "point", "`1,23,456` is not a number"),
        ("1.5,5", "point", "`1.5,5` is not a number"),
        ("1234567890123456", "point", "`1234567890123456` has more than 15 digits"),
    ],
)
def test_a_text_with_two_readings_shows_both(text: str, numbers: str, message: str) -> None:
    found = parse_number(text, numbers)

    assert isinstance(found, Slip)
    assert found.message == message


@pytest.mark.parametrize(
    ("name", "made"),
    [
        ("Turbine inlet gasket", "turbine-inlet-gasket"),
        ("Hose #8, -10 AN", "hose-8-10-an"),
        ("  Über-Öl  ", "uber-ol"),
        ("Straße", "strasse"),
        ("Łożysko", "lozysko"),
        ("Турбина", "turbina"),
        ("Ёлка", "elka"),
        ("Συμπιεστής", "sympiestis"),
        ("ターボ", "tabo"),
        ("터보", "teobo"),
        ("涡轮", "6da18f6e"),
        ("\N{FULLWIDTH DIGIT ONE}\N{FULLWIDTH DIGIT TWO} mm", "12-mm"),
        ("!!!", ""),
        ("🙂", ""),
    ],
)
def test_a_name_in_any_script_becomes_an_id(name: str, made: str) -> None:
    assert to_id(name) == made
    assert to_id(made) == made


def test_only_latin_names_have_ids_that_can_be_guessed() -> None:
    assert is_latin("Łożysko, 44 mm")
    assert not is_latin("Турбина")


def test_a_day_is_year_month_day() -> None:
    assert parse_date("2026-02-14") == date(2026, 2, 14)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("14.02.2026", "write 2026-02-14"),
        ("14/2/2026", "write 2026-02-14"),
        ("2/3/2026", "write 2026-02-03 or 2026-03-02"),
        ("2026/2/14", "write 2026-02-14"),
        ("2026-2-14", "write 2026-02-14"),
        ("14 Feb 2026", "write 2026-02-14"),
        ("2nd August, 2026", "write 2026-08-02"),
        ("31 Feb 2026", "year, month, day: as 2026-02-14"),
        ("not yet", "leave the key out until the day is known"),
        ("2026-02", "year, month, day: as 2026-02-14"),
        ("\N{ARABIC-INDIC DIGIT TWO}026-02-14", "year, month, day: as 2026-02-14"),
    ],
)
def test_another_way_of_writing_a_day_is_put_right(text: str, hint: str) -> None:
    found = parse_date(text)

    assert isinstance(found, Slip)
    assert found.hint == hint


@pytest.mark.parametrize(
    ("text", "seconds"), [("0:00", 0), ("4:10", 250), ("75:00", 4500), ("1:02:03", 3723)]
)
def test_a_time_in_a_video_is_read(text: str, seconds: int) -> None:
    assert parse_timecode(text) == seconds


@pytest.mark.parametrize("text", ["4", "4:1", "4:60", "1:60:00", "-1:00", "4.10", ""])
def test_what_is_no_time_in_a_video_is_a_slip(text: str) -> None:
    assert isinstance(parse_timecode(text), Slip)


@pytest.mark.parametrize(
    ("text", "name", "share", "evidence"),
    [
        ("petrol", "petrol", None, Evidence.STATED),
        ("methanol, measured", "methanol", None, Evidence.MEASURED),
        ("ethanol blend 74 %, measured", "ethanol blend", 0.74, Evidence.MEASURED),
        ("ethanol blend", "ethanol blend", None, Evidence.STATED),
        ("methanol blend 15 %", "methanol blend", 0.15, Evidence.STATED),
    ],
)
def test_a_fuel_is_a_name_and_a_blend_has_a_share(
    text: str, name: str, share: float | None, evidence: Evidence
) -> None:
    found = parse_fuel(text)

    assert isinstance(found, Fuel)
    assert (found.name, found.evidence) == (name, evidence)
    assert (found.share.value if found.share else None) == share
