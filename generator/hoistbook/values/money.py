"""Amounts of money in a currency; always Decimal, never a float."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from hoistbook.values.number import MINUS, NUMBER, parse_number
from hoistbook.values.slip import Slip

SYMBOLS = {"€": "EUR", "£": "GBP"}
"""Currency signs that mean one currency only."""

_SHARED = {
    "$": "USD, CAD, AUD or NZD",
    "¥": "JPY or CNY",
    "kr": "SEK, NOK, DKK or ISK",
    "kr.": "SEK, NOK, DKK or ISK",
}


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in a currency named by its ISO 4217 code."""

    amount: Decimal
    currency: str


def parse_money(
    text: str, numbers: str = "point", home: str = "EUR", *, of_one: bool = False
) -> Money | Slip:
    """Return the amount of money in a text, or what is wrong with it.

    Parameters
    ----------
    text
        "690.80 EUR", "EUR 690.80", "-4.50 EUR", "€ 12".
    numbers
        What stands before the decimals in this journal, "point" or "comma".
    home
        The journal's own currency, which a hint names.
    of_one
        Whether it is the price of one of many, which may be a part of a cent.

    Examples
    --------
    >>> parse_money("690.80 EUR")
    Money(amount=Decimal('690.80'), currency='EUR')
    >>> parse_money("$12").hint
    'write the code: USD, CAD, AUD or NZD, as 12 USD'
    """
    match = re.fullmatch(
        rf"(?P<sign>[-+{MINUS}]?)\s*(?P<before>[^\W\d_]{{2,4}}\.?|[€£$¥])?\s*(?P<number>{NUMBER})"
        r"\s*(?P<after>[^\W\d_]{1,8}\.?|[€£$¥])?",
        text,
    )
    if match is None:
        return Slip(
            "bad-money", f"`{text}` is not an amount of money", _example(text, numbers, home)
        )
    number = parse_number(match["sign"] + match["number"], numbers)
    if isinstance(number, Slip):
        return number
    currency = _currency(match["before"], match["after"], match["number"], home)
    if isinstance(currency, Slip):
        return currency
    return Money(number, currency) if of_one else _in_coins(number, currency, text, numbers)


def _in_coins(number: Decimal, currency: str, text: str, numbers: str) -> Money | Slip:
    """Return an amount that can be paid: 1.200 EUR is 1,200 to half of Europe."""
    exponent = number.as_tuple().exponent
    if not isinstance(exponent, int) or exponent > -3 or coins(currency) > 2:
        return Money(number, currency)
    mark = "," if numbers == "comma" else "."
    cents = f"{number:.{coins(currency)}f}".replace(".", mark)
    if exponent == -3 and 1 <= abs(number) < 1000:
        whole = f"{abs(number) * 1000:.0f}"
        return Slip(
            "two-readings",
            f"`{text}` has two readings: {cents.lstrip('-+')} and {whole}",
            f"write {cents.lstrip('-+')} {currency} or {whole} {currency}",
        )
    return Slip(
        "bad-money", f"`{text}` has more decimals than {currency}", f"as {cents} {currency}"
    )


def parse_currency(text: str) -> str | Slip:
    """Return the ISO 4217 code in a text, or what is wrong with it."""
    code = text.upper()
    if code in currencies():
        return code
    return Slip("unknown-currency", f"`{text}` is not a currency", "write its code, as EUR or GBP")


def _currency(before: str | None, after: str | None, number: str, home: str) -> str | Slip:
    if before and after:
        return Slip("bad-money", f"two currencies stand here: {before} and {after}", "keep one")
    word = before or after
    if word is None:
        return Slip("no-currency", f"`{number}` has no currency", f"as {number} {home}")
    if word in SYMBOLS:
        return SYMBOLS[word]
    if word in _SHARED:
        several = _SHARED[word]
        return Slip(
            "unclear-currency",
            f"`{word}` is the sign of several currencies",
            f"write the code: {several}, as {number} {several.split(',')[0].split()[0]}",
        )
    if word.upper() in currencies():
        return word.upper()
    return Slip(
        "unknown-currency", f"`{word}` is not a currency", f"write its code, as {number} {home}"
    )


def _example(text: str, numbers: str, home: str) -> str:
    example = f"an amount and a currency, as {'6,40' if numbers == 'comma' else '6.40'} {home}"
    return f"write what the share comes to: {example}" if text.endswith("%") else example


@cache
def coins(currency: str) -> int:
    """Return how many decimals a currency has (ISO 4217, as carried by Babel)."""
    from babel.numbers import get_currency_precision

    return get_currency_precision(currency)


@cache
def currencies() -> frozenset[str]:
    """Return the currency codes in use (ISO 4217, as carried by Babel)."""
    from babel.core import get_global

    return frozenset(get_global("all_currencies"))
