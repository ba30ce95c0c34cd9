"""Rounding to the cent and spreading sums over parts."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoistbook.authored.records import Journal, Rate
from hoistbook.history.exchange import Exchange
from hoistbook.history.spread import rounded, spread
from hoistbook.problems import Place
from hoistbook.values.money import Money

AT = Place("build.yaml")

# Conversion rates: Council Regulation (EC) No 2866/98, Article 1. Results in euro to the cent, as
# rounded by Council Regulation (EC) No 1103/97, Articles 4 and 5; the pairs were printed on every
# price list of 1999 to 2001 (from memory).
EURO_CHANGEOVER = [
    ("BEF", "40.3399", "1000", "24.79"),
    ("DEM", "1.95583", "100", "51.13"),
    ("ESP", "166.386", "1000", "6.01"),
    ("FRF", "6.55957", "100", "15.24"),
    ("IEP", "0.787564", "1", "1.27"),
    ("ITL", "1936.27", "1000", "0.52"),
    ("NLG", "2.20371", "100", "45.38"),
    ("ATS", "13.7603", "100", "7.27"),
    ("PTE", "200.482", "1000", "4.99"),
    ("FIM", "5.94573", "100", "16.82"),
]


@pytest.mark.parametrize(("currency", "rate", "amount", "euro"), EURO_CHANGEOVER)
def test_amounts_convert_as_at_the_changeover_to_the_euro(
    currency: str, rate: str, amount: str, euro: str
) -> None:
    day = date(1999, 1, 1)
    line = Rate(day=day, currency=currency, rate=rate, source="Regulation 2866/98")
    exchange = Exchange(Journal(title="t", place=AT, episodes=(), rates=(line,)))
    exact = exchange.home(Money(Decimal(amount), currency), day, AT)
    assert exact is not None
    assert rounded(exact, "EUR") == Decimal(euro)


# Regulation (EC) No 1103/97, Article 5: a result exactly half-way is rounded up.
@pytest.mark.parametrize(
    ("amount", "currency", "result"),
    [
        ("0.005", "EUR", "0.01"),
        ("0.0049", "EUR", "0.00"),
        ("2.675", "EUR", "2.68"),
        ("-2.675", "EUR", "-2.68"),
        ("1234.5", "JPY", "1235"),
    ],
)
def test_halves_are_rounded_up(amount: str, currency: str, result: str) -> None:
    assert str(rounded(Fraction(amount), currency)) == result


def test_spreading_is_the_method_of_largest_remainders() -> None:
    # Seats of the House for 120 members by the census of 1790, the bill that this method is
    # named for: M. L. Balinski and H. P. Young, Fair Representation, Yale 1982, table of the
    # apportionment of 1791 (from memory).
    census = {
        "Virginia": (630_560, 21),
        "Massachusetts": (475_327, 16),
        "Pennsylvania": (432_879, 14),
        "North Carolina": (353_523, 12),
        "New York": (331_589, 11),
        "Maryland": (278_514, 9),
        "Connecticut": (236_841, 8),
        "South Carolina": (206_236, 7),
        "New Jersey": (179_570, 6),
        "New Hampshire": (141_822, 5),
        "Vermont": (85_533, 3),
        "Georgia": (70_835, 2),
        "Kentucky": (68_705, 2),
        "Rhode Island": (68_446, 2),
        "Delaware": (55_540, 2),
    }
    seats = spread(Decimal(120), [Fraction(people) for people, _ in census.values()], "JPY")
    assert [int(share) for share in seats] == [seats for _, seats in census.values()]


def test_of_equals_the_first_gets_the_cent_left_over() -> None:
    assert [str(share) for share in spread(Decimal("0.05"), [Fraction(1)] * 3, "EUR")] == [
        "0.02",
        "0.02",
        "0.01",
    ]


def test_without_any_weight_all_weigh_the_same() -> None:
    assert spread(Decimal("9.00"), [Fraction(0)] * 2, "EUR") == (Decimal("4.50"), Decimal("4.50"))
    assert spread(Decimal("9.00"), [], "EUR") == ()


@settings(deadline=None, derandomize=True)
@given(
    cents=st.integers(-100_000, 100_000),
    weights=st.lists(st.integers(0, 10_000), min_size=1, max_size=12).filter(any),
)
def test_shares_add_up_and_none_is_a_cent_off(cents: int, weights: list[int]) -> None:
    total = Decimal(cents) / 100
    shares = spread(total, [Fraction(weight) for weight in weights], "EUR")
    assert sum(shares) == total
    for share, weight in zip(shares, weights, strict=True):
        assert abs(Fraction(share) - Fraction(total) * weight / sum(weights)) < Fraction(1, 100)
        assert weight or not share
