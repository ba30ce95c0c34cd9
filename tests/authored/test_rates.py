"""Exchange rates: looked up once, written down, and from then on only read."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from hoistbook.authored.rates import (
    FoundRates,
    RateNeed,
    look_up,
    parse_rates,
    read_rates,
    reference_table,
    write_rates,
)
from hoistbook.authored.records import Rate
from hoistbook.problems import Place, Problem

AT = Place("episodes/01-first.md", 7, 3, "  - from: Spares by post")
HEADING = "date,currency,rate,source\n"


def needs(day: date, currency: str, *, for_show: bool = False) -> list[RateNeed]:
    return [RateNeed(day=day, currency=currency, place=AT, for_show=for_show)]


# The first euro foreign exchange reference rates, of 4 January 1999: European Central Bank,
# statistics of euro foreign exchange reference rates (from memory).
@pytest.mark.parametrize(
    ("currency", "rate"),
    [
        ("USD", "1.1789"),
        ("JPY", "133.73"),
        ("GBP", "0.7111"),
        ("CHF", "1.6168"),
        ("SEK", "9.4696"),
    ],
)
def test_a_rate_is_what_one_euro_bought_that_day(currency: str, rate: str) -> None:
    found = look_up(needs(date(1999, 1, 4), currency))
    assert found == FoundRates(
        rates=(
            Rate(
                day=date(1999, 1, 4),
                currency=currency,
                rate=rate,
                source="ECB reference rate of 1999-01-04",
            ),
        ),
        problems=(),
    )


# 2026-01-17 was a Saturday; the bank sets no rates from Friday to Monday, nor on the holidays of
# its payment system, of which 1 January is one.
@pytest.mark.parametrize(
    ("asked", "used"),
    [
        (date(2026, 1, 16), date(2026, 1, 16)),
        (date(2026, 1, 17), date(2026, 1, 16)),
        (date(2026, 1, 18), date(2026, 1, 16)),
        (date(2026, 1, 19), date(2026, 1, 19)),
        (date(2026, 1, 1), date(2025, 12, 31)),
    ],
)
def test_a_day_without_rates_takes_those_of_the_last_day_before_and_says_so(
    asked: date, used: date
) -> None:
    (rate,) = look_up(needs(asked, "GBP")).rates
    (same,) = look_up(needs(used, "GBP")).rates
    assert (rate.day, rate.rate) == (asked, same.rate)
    assert rate.source == f"ECB reference rate of {used}"


def test_a_journal_in_another_currency_takes_the_rate_by_way_of_the_euro() -> None:
    day = date(1999, 1, 4)
    (rate,) = look_up(needs(day, "USD"), "GBP").rates
    # 0.7111 x 1.657854029 = 1.178900000 by long multiplication
    assert rate.rate == "1.657854029"
    assert rate.source == "ECB reference rates of 1999-01-04, for 1 GBP"
    (euro,) = look_up(needs(day, "EUR"), "GBP").rates
    # 0.7111 x 1.406271973 = 1.000000000
    assert euro.rate == "1.406271973"


def test_rates_come_once_for_each_day_and_currency_and_in_order() -> None:
    asked = [*needs(date(2026, 1, 16), "USD"), *needs(date(2026, 1, 16), "GBP")]
    found = look_up([*asked, *needs(date(2025, 9, 1), "USD"), *asked])
    assert [(str(rate.day), rate.currency) for rate in found.rates] == [
        ("2025-09-01", "USD"),
        ("2026-01-16", "GBP"),
        ("2026-01-16", "USD"),
    ]


def test_seven_days_past_the_end_of_the_table_its_last_rate_serves_and_eight_days_do_not() -> None:
    first, last = reference_table().bounds["GBP"]
    near, far = last.fromordinal(last.toordinal() + 7), last.fromordinal(last.toordinal() + 8)
    assert look_up(needs(near, "GBP")).rates[0].source == f"ECB reference rate of {last}"
    assert look_up(needs(far, "GBP")) == FoundRates(
        rates=(),
        problems=(
            Problem(
                "no-rate",
                f"the table of reference rates for GBP runs from {first} to {last}, and this is "
                f"of {far}",
                AT,
                "write what left the account, as `charged: 100.00 EUR`, or put a line into "
                f"rates.csv: {far},GBP,RATE,where the rate is from",
            ),
        ),
    )


def test_a_currency_without_reference_rate_is_a_problem() -> None:
    assert look_up(needs(date(2026, 1, 16), "ARS")).problems == (
        Problem(
            "no-rate",
            "the European Central Bank lists no rate of ARS",
            AT,
            "write what left the account, as `charged: 100.00 EUR`, or put a line into "
            "rates.csv: 2026-01-16,ARS,RATE,where the rate is from",
        ),
    )


def test_a_gap_of_years_in_the_table_is_not_bridged() -> None:
    # The bank quoted no Icelandic krona between December 2008 and February 2018 (its statistics).
    (problem,) = look_up(needs(date(2012, 6, 1), "ISK")).problems
    assert problem.message == "there is no reference rate of ISK near 2012-06-01"


def test_a_rate_that_is_only_for_show_may_stay_missing() -> None:
    assert look_up(needs(date(2026, 1, 16), "ARS", for_show=True)) == FoundRates(
        rates=(), problems=()
    )


def test_rates_once_written_never_change(tmp_path: Path) -> None:
    file = tmp_path / "rates.csv"
    file.write_text(HEADING + '2026-01-16,GBP,0.9,"my bank, by hand"\n', encoding="utf-8")
    found = look_up([*needs(date(2026, 1, 16), "GBP"), *needs(date(2026, 1, 17), "USD")])
    assert write_rates(tmp_path, found.rates) == 1
    written = file.read_text(encoding="utf-8")
    assert written == (
        HEADING
        + '2026-01-16,GBP,0.9,"my bank, by hand"\n'
        + "2026-01-17,USD,1.1617,ECB reference rate of 2026-01-16\n"
    )
    assert write_rates(tmp_path, found.rates) == 0
    assert file.read_text(encoding="utf-8") == written
    assert [path.name for path in tmp_path.iterdir()] == ["rates.csv"]


def test_what_is_written_is_read_again(tmp_path: Path) -> None:
    found = look_up([*needs(date(2026, 1, 16), "GBP"), *needs(date(2026, 1, 17), "USD")], "SEK")
    write_rates(tmp_path, found.rates)
    assert read_rates(tmp_path, "SEK") == found


def test_a_journal_without_rates_has_none(tmp_path: Path) -> None:
    assert read_rates(tmp_path) == FoundRates(rates=(), problems=())


@pytest.mark.parametrize(
    ("text", "line", "code", "message", "hint"),
    [
        (
            "day,currency,rate\n",
            1,
            "bad-heading",
            "rates.csv does not begin with its heading",
            "the first line is date,currency,rate,source",
        ),
        (
            HEADING + "2026-01-16,GBP,0.86\n",
            2,
            "bad-rate",
            "this line has 3 cells, not 4",
            "the cells are date, currency, rate, source",
        ),
        (
            HEADING + "16.1.2026,GBP,0.86,bank\n",
            2,
            "bad-date",
            "`16.1.2026` is not a date",
            "write 2026-01-16",
        ),
        (
            HEADING + "\n2026-01-16,GBP,-0.86,bank\n",
            3,
            "bad-rate",
            "`-0.86` is not a rate",
            "so many GBP for 1 EUR, with a point, as 0.8642",
        ),
        (
            HEADING + "2026-01-16,GBP,about one,bank\n",
            2,
            "bad-rate",
            "`about one` is not a rate",
            "so many GBP for 1 EUR, with a point, as 0.8642",
        ),
        (
            HEADING + "2026-01-16,GBP,0.86,bank\n2026-01-16,GBP,0.87,bank\n",
            3,
            "duplicate-rate",
            "the rate of GBP on 2026-01-16 is written twice",
            "keep the one that was published",
        ),
        (
            HEADING + '2026-01-16,USD,1.34,"ECB reference rates of 2026-01-16, for 1 GBP"\n',
            2,
            "wrong-base",
            "this rate of USD was not written for a journal in EUR",
            "put back the journal's currency, or delete rates.csv and run `hoistbook rates`",
        ),
        (
            HEADING + "2026-01-16,EUR,1.17,bank\n",
            2,
            "wrong-base",
            "this rate of EUR was not written for a journal in EUR",
            "put back the journal's currency, or delete rates.csv and run `hoistbook rates`",
        ),
    ],
)
def test_a_line_that_cannot_be_read_is_a_problem(
    text: str, line: int, code: str, message: str, hint: str
) -> None:
    written = text.splitlines()[line - 1]
    assert parse_rates(text, "EUR").problems == (
        Problem(code, message, Place("rates.csv", line, text=written), hint),
    )


def test_rates_that_are_not_utf_8_are_a_problem(tmp_path: Path) -> None:
    (tmp_path / "rates.csv").write_bytes(HEADING.encode() + b"2026-01-16,GBP,0.86,caf\xe9\n")
    assert read_rates(tmp_path).problems == (
        Problem(
            "not-utf-8", "rates.csv is not UTF-8 text", Place("rates.csv"), "save it as UTF-8"
        ),
    )
