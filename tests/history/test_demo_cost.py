"""The running cost of the demo journal, reckoned a second time by other code from a typed table.

`demo_amounts.csv` was typed from the episodes: every amount with its date, and the euro reference
rates of the European Central Bank for those dates. The sums are exact fractions. Nothing of the
program's own reading, spreading or rounding is used.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from math import floor
from pathlib import Path

import pytest

from hoistbook.authored.journal import read_journal
from hoistbook.authored.rates import RateNeed, look_up
from hoistbook.history.fold import fold
from hoistbook.history.ledger import Ledger
from hoistbook.history.money import ledger
from hoistbook.problems import Place

CONTENT = Path(__file__).resolve().parents[2] / "content"
Row = dict[str, str]


def typed() -> list[Row]:
    table = Path(__file__).with_name("demo_amounts.csv").read_text(encoding="utf-8")
    return list(csv.DictReader(table.splitlines()))


def amount(row: Row) -> Fraction:
    return Fraction(row["each"]) * int(row["times"])


def to_the_cent(exact: Fraction) -> Fraction:
    """Round halves up: Council Regulation (EC) No 1103/97, Article 5."""
    return Fraction(floor(exact * 100 + Fraction(1, 2)), 100)


def in_euro(rows: list[Row]) -> Fraction:
    """Return what one receipt, payment or sale came to for the build."""
    signs = {"discount": -1, "came back": -1, "charged": 0}
    total = sum(amount(row) * signs.get(row["kind"], 1) for row in rows)
    charged = [amount(row) for row in rows if row["kind"] == "charged"]
    paid = charged[0] if charged else to_the_cent(total / Fraction(rows[0]["rate"] or 1))
    return to_the_cent(paid * Fraction(rows[0]["share"] or 1))


def receipts(kinds: set[str], last: int) -> Iterator[list[Row]]:
    """Yield the rows of each receipt up to an episode."""
    grouped: dict[tuple[str, str], list[Row]] = {}
    for row in typed():
        if row["kind"] in kinds and int(row["episode"]) <= last:
            grouped.setdefault((row["episode"], row["receipt"]), []).append(row)
    yield from grouped.values()


PAID = {"part", "postage", "tax", "discount", "charged", "payment"}


def promised(kind: str, episode: int) -> Fraction:
    """Return what was planned, or ordered and unpaid, as at an episode."""
    standing = (
        rows
        for rows in receipts({kind}, episode)
        if not rows[0]["until"] or episode < int(rows[0]["until"])
    )
    return sum((in_euro(rows) for rows in standing), Fraction(0))


@pytest.fixture(scope="module")
def demo() -> Ledger:
    read = read_journal(CONTENT)
    assert read.journal is not None
    reckoned = ledger(read.journal, fold(read.journal).states)
    assert reckoned.problems == ()
    return reckoned.ledger


@pytest.mark.parametrize("episode", range(11))
def test_the_running_cost_agrees_to_the_cent(demo: Ledger, episode: int) -> None:
    tally = demo.tallies[episode]
    assert tally.episode == episode
    paid = sum(in_euro(rows) for rows in receipts(PAID, episode))
    back = -sum(in_euro(rows) for rows in receipts({"came back"}, episode))
    assert Fraction(tally.spent) == paid - back
    assert Fraction(tally.came_back) == back
    assert Fraction(tally.planned) == promised("planned", episode)
    assert Fraction(tally.committed) == promised("ordered", episode)
    assert sum(cost for _, cost in tally.by_system) == tally.spent


def test_every_entry_of_the_demo_is_in_the_table_and_the_other_way_round(demo: Ledger) -> None:
    of_parts = {"part", "planned", "ordered", "payment", "came back"}
    counted = [int(row["episode"]) for row in typed() if row["kind"] in of_parts]
    assert sorted(entry.episode for entry in demo.entries) == sorted(counted)


def test_the_typed_rates_are_those_of_the_bank() -> None:
    place = Place("demo_amounts.csv")
    for row in typed():
        if row["rate"]:
            day = date.fromisoformat(row["date"])
            need = RateNeed(day=day, currency=row["currency"], place=place)
            (rate,) = look_up([need]).rates
            assert rate.rate == row["rate"]
