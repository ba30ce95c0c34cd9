"""Tables, and how they become CSV (RFC 4180) that is safe to open in a spreadsheet."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

_FORMULA = re.compile(r"[=+\-@\t\r]")
_NUMBER = re.compile(r"-?\d[\d,.]*(e[+-]?\d+)?")


Cell: TypeAlias = str | int | float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One table of data."""

    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def csv_table(header: Sequence[str], rows: Iterable[Sequence[str]]) -> bytes:
    r"""Return a table as CSV in UTF-8 with lines that end as the standard says.

    Examples
    --------
    >>> csv_table(["part", "price"], [["=1+1", "-4.50"]])
    b"part,price\r\n'=1+1,-4.50\r\n"
    """
    file = io.StringIO()
    writer = csv.writer(file)
    writer.writerow([harmless(cell) for cell in header])
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return file.getvalue().encode()


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula; numbers stay numbers."""
    if _FORMULA.match(cell) and not _NUMBER.fullmatch(cell):
        return f"'{cell}"
    return cell
