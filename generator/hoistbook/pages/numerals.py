"""Plain numbers in the numerals of a language.

They stand apart from all other formats so that a process that draws charts loads nothing else.
"""

from __future__ import annotations

from decimal import Decimal
from functools import lru_cache

from babel import Locale
from babel.numbers import format_decimal


def as_written(locale: Locale, value: float) -> str:
    """Return a number as an author would write it: no digits that say nothing."""
    return all_digits(locale, Decimal(f"{value:.6g}"))


def all_digits(locale: Locale, number: Decimal) -> str:
    """Return a number with exactly the decimals it carries."""
    return _printed(locale, str(number))


@lru_cache(maxsize=4096)
def _printed(locale: Locale, written: str) -> str:
    """Return a number as printed; known by its text, because 1.0 and 1.00 are equal numbers.

    Of the numbers on a site nearly all stand on many pages.
    """
    number = Decimal(written)
    exponent = number.as_tuple().exponent
    decimals = max(0, -exponent) if isinstance(exponent, int) else 0
    pattern = "#,##0" + ("." + "0" * decimals if decimals else "")
    text = format_decimal(number, format=pattern, locale=locale)
    return text.replace("-", "\N{MINUS SIGN}")
