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


def sourced(provenance: str) -> str:
    r"""Return a provenance with the sources that it cites in words.

    Examples
    --------
    >>> sourced("published: [S49]; rest from memory")
    'published: SAE J1926-4 JUL2009, foreword; rest from memory'
    >>> sourced("published: a page on hose clamps [S16]")
    'published: a page on hose clamps (An engine maker\'s service page "Hose Clamps")'
    """

    def words(found: re.Match[str]) -> str:
        source = sources()[found[1]]
        alone = provenance[: found.start()].rstrip().endswith((":", ",", "against", ";"))
        return source if alone or not found.start() else f"({source})"

    return CITED.sub(words, provenance)
