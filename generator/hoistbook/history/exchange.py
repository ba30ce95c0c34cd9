"""Turning amounts into the journal's currency, by the rates that the journal carries."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction

from hoistbook.authored.rates import FILE, RateNeed
from hoistbook.authored.records import Journal, Rate
from hoistbook.history.spread import rounded
from hoistbook.problems import Notice, Place, Problem
from hoistbook.values.money import Money


class Exchange:
    """The rates of a journal; it remembers which ones were asked for in vain."""

    def __init__(self, journal: Journal) -> None:
        self.currency = journal.currency
        self.needs: list[RateNeed] = []
        self.problems: list[Problem] = []
        self.notices: list[Notice] = []
        self._rates = {(rate.day, rate.currency): rate for rate in journal.rates}

    def rate(self, currency: str, day: date | None) -> Rate | None:
        """Return the rate of a currency on a day, None where the journal has none."""
        return None if day is None else self._rates.get((day, currency))

    def home(self, money: Money, day: date | None, place: Place) -> Fraction | None:
        """Return an amount in the journal's currency, exactly; None when its rate is missing.

        The amount is divided by the rate as it is published; a rate is never inverted or rounded
        first (Council Regulation (EC) No 1103/97, Article 4).
        """
        if money.currency == self.currency:
            return Fraction(money.amount)
        rate = self.rate(money.currency, day)
        if rate is None:
            self._miss(money.currency, day, place)
            return None
        return Fraction(money.amount) / Fraction(rate.rate)

    def abroad(self, amount: Decimal, currency: str, day: date, place: Place) -> Money | None:
        """Return an amount of the journal's currency in another; None when its rate is missing.

        Nothing that was paid depends on it, so a missing rate is a notice and no problem.
        """
        rate = self.rate(currency, day)
        if rate is not None:
            return Money(rounded(Fraction(amount) * Fraction(rate.rate), currency), currency)
        self.needs.append(RateNeed(day=day, currency=currency, place=place, for_show=True))
        self.notices.append(
            Notice(
                "missing-rate",
                f"{FILE} has no rate of {currency} for {day}; the total of that day is not shown "
                f"in {currency}",
                place,
                "run `hoistbook rates`, which looks it up and writes it there",
            )
        )
        return None

    def words(self, currency: str, day: date | None) -> str:
        """Return how a currency became the journal's, for the reader of the tally."""
        rate = self.rate(currency, day)
        if rate is None:
            return ""
        return f"{rate.rate} {currency} for 1 {self.currency}, {rate.source}"

    def _miss(self, currency: str, day: date | None, place: Place) -> None:
        if day is None:
            problem = Problem(
                "no-day-for-rate",
                f"an amount in {currency} has no day whose rate could turn it into "
                f"{self.currency}",
                place,
                f"add `date:`, or what left the account, as `charged: 100.00 {self.currency}`",
            )
        else:
            need = RateNeed(day=day, currency=currency, place=place)
            if need not in self.needs:
                self.needs.append(need)
            problem = Problem(
                "missing-rate",
                f"{FILE} has no rate of {currency} for {day}",
                place,
                "run `hoistbook rates`, which looks it up and writes it there",
            )
        if problem not in self.problems:
            self.problems.append(problem)
