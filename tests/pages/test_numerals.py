"""Plain numbers carry the decimals that they were given with, whatever was printed before."""

from __future__ import annotations

from decimal import Decimal

import pytest
from babel import Locale

from hoistbook.pages.numerals import all_digits


@pytest.mark.parametrize(("language", "mark"), [("en", "."), ("de", ",")])
def test_equal_numbers_of_other_decimals_are_printed_each_with_its_own(
    language: str, mark: str
) -> None:
    locale = Locale.parse(language)
    written = ("-1", "-1.0", "-1.00", "-1.0")
    assert [all_digits(locale, Decimal(each)) for each in written] == [
        f"\N{MINUS SIGN}1{each[2:].replace('.', mark)}" for each in written
    ]
