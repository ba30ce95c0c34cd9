"""The tables of the trade in `data/`, read once; every row says where it comes from."""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

Row = Mapping[str, str]

CITED = re.compile(r"\[(S\d+[a-z]?)\]")


@cache
def table(name: str) -> tuple[Row, ...]:
    """Return the rows of a table, as `threads`.

    Parameters
    ----------
    name : str
        Name of the file without its ending.
    """
    text = files("hoistbook.fit").joinpath(f"data/{name}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))


@cache
def keyed(name: str, column: str) -> Mapping[str, Row]:
    """Return the rows of a table by the text of one column."""
    return {row[column]: row for row in table(name)}


@cache
def sources() -> Mapping[str, str]:
    """Return the source of each key that a provenance cites."""
    return {row["key"]: row["source"] for row in table("sources")}


def cited(provenance: str) -> tuple[str, ...]:
    """Return the sources that a provenance cites, in its order.

    Examples
    --------
    >>> cited("published: [S49]; rest from memory")
    ('SAE J1926-4 JUL2009, foreword',)
    """
    return tuple(sources()[key] for key in CITED.findall(provenance))
