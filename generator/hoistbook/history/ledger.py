"""The running cost: one entry for each amount that moved, in both currencies, to the cent."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from hoistbook.problems import Place
from hoistbook.values.money import Money

BY_CHARGED = "by what left the account"
"""How an amount became the journal's currency where the author says what was charged."""


class EntryKind(StrEnum):
    """What an amount was."""

    PART = "part"
    SPENT = "money that is not a part"
    SALE = "sale"
    REFUND = "refund"


class Stage(StrEnum):
    """Whether the money has left.

    Spent: a price was paid. Committed: ordered and not paid. Planned: neither.
    """

    SPENT = "spent"
    COMMITTED = "committed"
    PLANNED = "planned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One amount of the tally."""

    episode: int
    kind: EntryKind
    stage: Stage
    label: str
    amount: Money
    """As paid, in the currency of the receipt; negative when it came back."""
    home: Decimal
    """In the journal's currency, to the cent; with its shares of postage, tax and discount."""
    place: Place
    day: date | None = None
    part: str | None = None
    system: str | None = None
    supplier: str | None = None
    postage: Decimal = Decimal(0)
    """Of `home`, what is its share of postage, tax and discount."""
    list_home: Decimal | None = None
    """The list price in the journal's currency at the same rate, where one is known."""
    rate: str = ""
    """How the amount became the journal's currency, in words: "0.8712 GBP for 1 EUR, ECB
    reference rate of 2026-01-20", or `BY_CHARGED`; empty when it was the journal's own."""
    until: int | None = None
    """For committed and planned amounts: the episode from which it no longer stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """The running cost as at one episode, in the journal's currency."""

    episode: int
    spent: Decimal
    """All that was paid less all that came back: what the build has cost so far."""
    spent_here: Decimal
    """The same for this episode alone."""
    committed: Decimal
    planned: Decimal
    list_total: Decimal
    """What the same things cost at list price (paid price where no list price is known)."""
    came_back: Decimal
    """Sales, refunds and other money that came back so far, as a positive number."""
    by_system: tuple[tuple[str, Decimal], ...]
    budget: Decimal | None
    unpriced: tuple[str, ...]
    """Ids of bought parts whose price is not given."""
    also_shown: tuple[Money, ...] = ()
    """`spent` in the other currencies that the journal shows, at the rates of that day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """All entries in order and the tally as at every episode."""

    currency: str
    entries: tuple[Entry, ...]
    tallies: tuple[Tally, ...]
    """One per state, the same order as the states."""
