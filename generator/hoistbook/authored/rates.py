"""Exchange rates: the journal's own rates.csv, and the reference rates that it is filled from.

A rate that a receipt needs is looked up once, written to the journal and from then on only read
there, so that no later table changes a published total. The table of the European Central Bank's
euro foreign exchange reference rates comes with CurrencyConverter and needs no network.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import ROUND_HALF_UP, Context, Decimal, InvalidOperation
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from hoistbook.authored.records import Rate
from hoistbook.problems import Place, Problem
from hoistbook.values.dates import parse_date

if TYPE_CHECKING:
    from currency_converter import CurrencyConverter

FILE = "rates.csv"
COLUMNS = ("date", "currency", "rate", "source")

LATEST = timedelta(days=7)
"""So long after the table's last day its last rate still serves."""

ECB = "ECB reference rate"
FOR_ONE = ", for 1 "

CROSS_RATE = Context(prec=10, rounding=ROUND_HALF_UP)
"""A rate between two currencies by way of the euro is worked out to ten digits, more than the six
of the rates it comes from, so that it rounds no cent of any receipt."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RateNeed:
    """A rate that an amount of the journal needs."""

    day: date
    currency: str
    place: Place
    """The amount that needs it."""
    for_show: bool = False
    """Only a total in one of the other currencies needs it: it may stay missing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundRates:
    """Rates that were read or looked up, and what is wrong with the others."""

    rates: tuple[Rate, ...]
    problems: tuple[Problem, ...]


def read_rates(folder: Path, currency: str = "EUR") -> FoundRates:
    """Read rates.csv of a journal in a currency; a journal without the file has no rates."""
    file = folder / FILE
    if not file.is_file():
        return FoundRates(rates=(), problems=())
    try:
        text = file.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        problem = Problem(
            "not-utf-8", f"{FILE} is not UTF-8 text", Place(FILE), "save it as UTF-8"
        )
        return FoundRates(rates=(), problems=(problem,))
    return parse_rates(text, currency)


def parse_rates(text: str, currency: str) -> FoundRates:
    """Return the rates in the text of a rates.csv."""
    lines = text.splitlines()
    if not lines or tuple(lines[0].split(",")) != COLUMNS:
        return FoundRates(
            rates=(),
            problems=(
                Problem(
                    "bad-heading",
                    f"{FILE} does not begin with its heading",
                    Place(FILE, text=lines[0] if lines else ""),
                    f"the first line is {','.join(COLUMNS)}",
                ),
            ),
        )
    rates: dict[tuple[date, str], Rate] = {}
    problems: list[Problem] = []
    for number, line in enumerate(lines[1:], start=2):
        if not line.strip():
            continue
        place = Place(FILE, number, text=line)
        rate = parse_rate(line, place, currency)
        if isinstance(rate, Problem):
            problems.append(rate)
        elif (rate.day, rate.currency) in rates:
            problems.append(
                Problem(
                    "duplicate-rate",
                    f"the rate of {rate.currency} on {rate.day} is written twice",
                    place,
                    "keep the one that was published",
                )
            )
        else:
            rates[rate.day, rate.currency] = rate
    return FoundRates(rates=tuple(rates.values()), problems=tuple(problems))


def parse_rate(line: str, place: Place, home: str) -> Rate | Problem:
    """Return the rate in one line of rates.csv."""
    cells = [cell.strip() for cell in next(csv.reader([line]))]
    if len(cells) != len(COLUMNS):
        return Problem(
            "bad-rate",
            f"this line has {len(cells)} cells, not {len(COLUMNS)}",
            place,
            f"the cells are {', '.join(COLUMNS)}",
        )
    day = parse_date(cells[0])
    if not isinstance(day, date):
        return Problem(day.code, day.message, place, day.hint)
    if not is_rate(cells[2]):
        return Problem(
            "bad-rate",
            f"`{cells[2]}` is not a rate",
            place,
            f"so many {cells[1]} for 1 {home}, with a point, as 0.8642",
        )
    rate = Rate(day=day, currency=cells[1], rate=cells[2], source=cells[3])
    return wrong_base(rate, place, home) or rate


def is_rate(text: str) -> bool:
    """Tell whether a text is a positive decimal number."""
    try:
        number = Decimal(text)
    except InvalidOperation:
        return False
    return number.is_finite() and number > 0


def wrong_base(rate: Rate, place: Place, home: str) -> Problem | None:
    """Return the problem of a rate that was written for a journal in another currency."""
    base = rate.source.partition(FOR_ONE)[2] or "EUR"
    if rate.currency != home and (base == home or not rate.source.startswith(ECB)):
        return None
    return Problem(
        "wrong-base",
        f"this rate of {rate.currency} was not written for a journal in {home}",
        place,
        f"put back the journal's currency, or delete {FILE} and run `hoistbook rates`",
    )


def look_up(needs: Iterable[RateNeed], home: str = "EUR") -> FoundRates:
    """Look up the reference rates that are needed.

    Parameters
    ----------
    needs
        Days and currencies; the currency of the journal is none of them.
    home
        The journal's currency, as its ISO 4217 code.

    Returns
    -------
    FoundRates
        One rate per day and currency, in their order, and a problem for each that the table
        does not have. On a day without rates (a weekend, a holiday) the rates of the last day
        before it serve, and the source says which day that is.
    """
    found: dict[tuple[date, str], Rate] = {}
    problems: list[Problem] = []
    for need in sorted(needs, key=lambda need: (need.day, need.currency)):
        rate = look_up_one(need, home)
        if isinstance(rate, Rate):
            found.setdefault((need.day, need.currency), rate)
        elif not need.for_show:
            problems.append(rate)
    return FoundRates(rates=tuple(found.values()), problems=tuple(problems))


def look_up_one(need: RateNeed, home: str) -> Rate | Problem:
    """Look up one reference rate."""
    table = reference_table()
    for currency in (need.currency, home):
        if currency not in table.currencies:
            return no_rate(need, f"the European Central Bank lists no rate of {currency}", home)
    first = max(table.bounds[currency].first_date for currency in (need.currency, home))
    last = min(table.bounds[currency].last_date for currency in (need.currency, home))
    if need.day < first or need.day > last + LATEST:
        return no_rate(
            need,
            f"the table of reference rates for {need.currency} runs from {first} to {last}, and "
            f"this is of {need.day}",
            home,
        )
    for day in (min(need.day, last) - timedelta(days=back) for back in range(LATEST.days)):
        rate = rate_of_day(need.currency, home, day)
        if rate is not None:
            return Rate(day=need.day, currency=need.currency, rate=rate, source=source(day, home))
    return no_rate(need, f"there is no reference rate of {need.currency} near {need.day}", home)


def no_rate(need: RateNeed, why: str, home: str) -> Problem:
    """Return the problem of a rate that the table does not have."""
    return Problem(
        "no-rate",
        why,
        need.place,
        f"write what left the account, as `charged: 100.00 {home}`, or put a line into {FILE}: "
        f"{need.day},{need.currency},RATE,where the rate is from",
    )


def source(day: date, home: str) -> str:
    """Return where a rate is from, in words, and what it is for when that is not the euro."""
    return f"{ECB} of {day}" if home == "EUR" else f"{ECB}s of {day}{FOR_ONE}{home}"


def rate_of_day(currency: str, home: str, day: date) -> str | None:
    """Return the rate of one day as decimal text, None on a day without rates."""
    from currency_converter import RateNotFoundError

    try:
        rate: Decimal = reference_table().convert(1, home, currency, date=day)
    except RateNotFoundError:
        return None
    return f"{rate if home == 'EUR' else CROSS_RATE.plus(rate):f}"


@cache
def reference_table() -> CurrencyConverter:
    """Load the table of reference rates; it takes a good part of a second."""
    from currency_converter import CurrencyConverter

    return CurrencyConverter(decimal=True)


def write_rates(folder: Path, rates: Iterable[Rate]) -> int:
    """Add rates to rates.csv of a journal, and leave every line that is there as it is.

    Returns
    -------
    int
        How many lines were added.
    """
    file = folder / FILE
    before = file.read_text(encoding="utf-8") if file.exists() else f"{','.join(COLUMNS)}\n"
    known = {tuple(line.split(",")[:2]) for line in before.splitlines()}
    new = [rate for rate in rates if (str(rate.day), rate.currency) not in known]
    if not new:
        return 0
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerows((rate.day, rate.currency, rate.rate, rate.source) for rate in new)
    staged = file.with_suffix(".csv.part")
    staged.write_text(
        before + ("" if before.endswith("\n") else "\n") + text.getvalue(),
        encoding="utf-8",
        newline="\n",
    )
    staged.replace(file)
    return len(new)
