"""What is contradictory, or worth a look, about the money of a journal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from hoistbook.authored.parts import CAR
from hoistbook.authored.records import Came, Episode, Journal, Part, Receipt, Verb
from hoistbook.history.known import all_episodes, parts_written
from hoistbook.history.ledger import Entry, EntryKind, Stage
from hoistbook.history.promised import unpaid_notices
from hoistbook.history.receipts import HAS_A_PRICE, extras_of, prices_of
from hoistbook.history.spread import rounded
from hoistbook.history.state import State
from hoistbook.problems import Notice, Problem

COSTS_NOTHING = (Came.GIVEN, Came.FREE, Came.WITH)


def money_problems(journal: Journal) -> Iterator[Problem]:
    """Yield the contradictions in what a journal says about money."""
    if journal.budget is not None and journal.budget.currency != journal.currency:
        yield Problem(
            "budget-currency",
            f"the budget is in {journal.budget.currency} and the journal is in {journal.currency}",
            journal.place,
            f"write the budget in {journal.currency}",
        )
    for episode in all_episodes(journal):
        for part in parts_written(episode):
            if part.came in COSTS_NOTHING and part.paid is not None and part.paid.amount:
                yield Problem(
                    "price-of-nothing",
                    f"`{part.id}` came {part.came} and has a price of its own",
                    part.place,
                    "leave the price out (`list:` says what it is worth), or change how it came",
                )


def money_notices(
    journal: Journal, entries: Sequence[Entry], states: Sequence[State]
) -> Iterator[Notice]:
    """Yield what the owner of the tally should look at."""
    for episode in journal.episodes:
        for part in unpriced_parts(episode):
            yield Notice(
                "no-price",
                f"`{part.id}` was bought and has no price; the tally leaves it out",
                part.place,
                "write `paid:`",
                episode.number,
            )
        for receipt in episode.bought:
            message = charged_otherwise(receipt, journal)
            if message:
                hint = "look at both; the tally counts what was charged"
                yield Notice("receipt-sum", message, receipt.place, hint, episode.number)
    yield from unpaid_notices(entries, states[-1])
    sold_in = car_sold_in(journal)
    if sold_in is not None:
        yield from closed_notices(entries, sold_in)


FAR_APART = 2
"""By this factor a charged sum is no longer a bank's rate, fee or duty but a slip of a digit."""


def charged_otherwise(receipt: Receipt, journal: Journal) -> str:
    """Return how what was charged contradicts the lines of a receipt; empty where it does not."""
    charged = receipt.charged
    monies = [(1, money) for money in prices_of(receipt)] + list(extras_of(receipt))
    currencies = {money.currency for _, money in monies}
    whole = all(part.paid for part in receipt.parts if part.came in HAS_A_PRICE)
    if charged is None or len(currencies) != 1 or not whole:
        return ""
    (currency,) = currencies
    total = sum(sign * money.amount for sign, money in monies)
    said = f"the lines of the receipt from {receipt.supplier} come to {total} {currency}"
    if currency == journal.currency:
        apart = total != charged.amount
        return f"{said}, and {charged.amount} {charged.currency} was charged" if apart else ""
    rates = [rate for rate in journal.rates if rate.currency == currency]
    if not rates or total <= 0 or charged.amount <= 0:
        return ""
    near = min(rates, key=lambda rate: (abs(rate.day - receipt.date), rate.day))
    home = rounded(Fraction(total) / Fraction(near.rate), journal.currency)
    if max(home / charged.amount, charged.amount / home) < FAR_APART:
        return ""
    return (
        f"{said}, about {home} {journal.currency}, and {charged.amount} {charged.currency} was "
        "charged"
    )


def unpriced_parts(episode: Episode) -> Iterator[Part]:
    """Yield the parts on receipts whose price is not known.

    Where a receipt gives no price at all but what was charged, that is spread over its parts and
    none of them is without a price.
    """
    for receipt in episode.bought:
        if receipt.charged is not None and not any(part.paid for part in receipt.parts):
            continue
        for part in receipt.parts:
            if part.paid is None and part.came in HAS_A_PRICE:
                yield part


def car_sold_in(journal: Journal) -> int | None:
    """Return the episode in which the car was sold, which closes the tally."""
    for episode in journal.episodes:
        if any(done.verb is Verb.SOLD and done.part == CAR for done in episode.done):
            return episode.number
    return None


def closed_notices(entries: Sequence[Entry], sold_in: int) -> Iterator[Notice]:
    """Yield a notice for each amount that comes after the tally was closed."""
    for entry in entries:
        if entry.episode > sold_in and entry.stage is Stage.SPENT:
            what = "came in" if entry.kind in (EntryKind.SALE, EntryKind.REFUND) else "was spent"
            yield Notice(
                "tally-closed",
                f"{entry.label}: this {what} after the car was sold in episode {sold_in} and is "
                f"not in the tally",
                entry.place,
                "",
                entry.episode,
            )
