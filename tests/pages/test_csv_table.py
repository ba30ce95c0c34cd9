"""CSV as RFC 4180 has it, and no cell that a spreadsheet would run (CWE-1236)."""

import csv
import io

import pytest

from hoistbook.pages.csv_table import csv_table, harmless


def test_a_table_is_quoted_where_it_must_be_and_ends_its_lines_as_the_standard_says() -> None:
    written = csv_table(["part", "price"], [['Hose, 8 mm "soft"', "12.40"], ["two\nlines", ""]])
    assert written == b'part,price\r\n"Hose, 8 mm ""soft""",12.40\r\n"two\nlines",\r\n'
    read = list(csv.reader(io.StringIO(written.decode(), newline="")))
    assert read[1] == ['Hose, 8 mm "soft"', "12.40"]


@pytest.mark.parametrize(
    ("cell", "expected"),
    [
        ("=HYPERLINK(1)", "'=HYPERLINK(1)"),
        ("+44 1", "'+44 1"),
        ("-10 AN hose", "'-10 AN hose"),
        ("@part", "'@part"),
        ("\t=1", "'\t=1"),
        ("-4.50", "-4.50"),
        ("-1.5e-05", "-1.5e-05"),
        ("Hose #8", "Hose #8"),
        ("", ""),
    ],
)
def test_no_cell_begins_a_formula(cell: str, expected: str) -> None:
    assert harmless(cell) == expected
