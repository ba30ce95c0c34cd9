"""Entries without a receipt: money that is not a part, parts already owned, and what came back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction

from hoistbook.authored.kinds import THE_CAR
from hoistbook.authored.parts import CAR
from hoistbook.authored.records import Came, Done, Episode, Verb
from hoistbook.history.exchange import Exchange
from hoistbook.history.ledger import BY_CHARGED, Entry, EntryKind, Stage
from hoistbook.history.receipts import kept_share, label_of
from hoistbook.history.spread import rounded
from hoistbook.history.state import State
from hoistbook.problems import Place
from hoistbook.values.money import Money

BRINGS_MONEY = (Verb.SOLD, Verb.GAVE_AWAY, Verb.SENT_BACK, Verb.SCRAPPED)


def spent_entries(episode: Episode, exchange: Exchange) -> Iterator[Entry]:
    """Yield the entries of money that is not a part."""
    for spent in episode.spent:
        day = spent.date or episode.filmed
        home = in_home_currency(spent.amount, spent.charged, day, spent.place, exchange)
        if home is None:
            continue
        yield Entry(
            episode=episode.number,
            kind=EntryKind.SPENT,
            stage=Stage.SPENT,
            label=spent.what,
            amount=spent.amount,
            home=home,
            place=spent.place,
            day=day,
            system=spent.system,
            supplier=spent.to,
            rate=rate_words(spent.amount, spent.charged, day, exchange),
        )


def got_entries(episode: Episode, exchange: Exchange) -> Iterator[Entry]:
    """Yield the entries of parts that came without a receipt and yet have a price."""
    for part in episode.got:
        if part.paid is None or part.came is not Came.OWNED:
            continue
        day = episode.filmed
        home = exchange.home(part.paid, day, part.place)
        if home is None:
            continue
        listed = exchange.home(part.list_price, day, part.place) if part.list_price else None
        kept = kept_share(part)
        yield Entry(
            episode=episode.number,
            kind=EntryKind.PART,
            stage=Stage.SPENT,
            label=label_of(part),
            amount=share_of(part.paid, kept),
            home=rounded(home * kept, exchange.currency),
            place=part.place,
            day=day,
            part=part.id,
            system=part.system,
            list_home=None if listed is None else rounded(listed * kept, exchange.currency),
            rate=exchange.words(part.paid.currency, day),
        )


def returned_entries(
    episode: Episode, last: State, before: Sequence[Entry], exchange: Exchange
) -> Iterator[Entry]:
    """Yield the entries of what was sold or sent back for money; their amounts are negative."""
    for done in episode.done:
        got = done.amount or done.charged
        if done.verb not in BRINGS_MONEY or got is None:
            continue
        day = done.date or episode.filmed
        home = in_home_currency(got, done.charged, day, done.place, exchange)
        known = last.parts.get(done.part)
        if home is None or (known is None and done.part != CAR):
            continue
        bought = next((each for each in before if each.part == done.part), None)
        yield Entry(
            episode=episode.number,
            kind=EntryKind.REFUND if done.verb is Verb.SENT_BACK else EntryKind.SALE,
            stage=Stage.SPENT,
            label="the car" if known is None else known.part.name,
            amount=Money(-got.amount, got.currency),
            home=-home,
            place=done.place,
            day=day,
            part=None if known is None else done.part,
            system=THE_CAR if known is None else known.part.system,
            supplier=done.to or (bought.supplier if bought else None),
            list_home=refund_at_list(done, home, bought, exchange),
            rate=rate_words(got, done.charged, day, exchange),
        )


def refund_at_list(
    done: Done, home: Decimal, bought: Entry | None, exchange: Exchange
) -> Decimal | None:
    """Return what a refund takes off the total at list prices: as large a share as off the paid.

    A part that was sent back would otherwise go on looking like a saving.
    """
    if done.verb is not Verb.SENT_BACK or bought is None or bought.list_home is None:
        return None
    goods = bought.home - bought.postage
    if not goods:
        return None
    return -rounded(
        Fraction(home) * Fraction(bought.list_home) / Fraction(goods), exchange.currency
    )


def in_home_currency(
    amount: Money, charged: Money | None, day: date | None, place: Place, exchange: Exchange
) -> Decimal | None:
    """Return an amount in the journal's currency, by what was charged if that is known.

    What was charged takes the sign of the amount, so that `-30 GBP, charged 34.10 EUR` came back.
    """
    if charged is not None:
        return abs(charged.amount) if amount.amount >= 0 else -abs(charged.amount)
    home = exchange.home(amount, day, place)
    return None if home is None else rounded(home, exchange.currency)


def rate_words(amount: Money, charged: Money | None, day: date | None, exchange: Exchange) -> str:
    """Return how an amount became the journal's currency."""
    return BY_CHARGED if charged is not None else exchange.words(amount.currency, day)


def share_of(money: Money, kept: Fraction) -> Money:
    """Return the kept share of an amount."""
    return Money(rounded(Fraction(money.amount) * kept, money.currency), money.currency)
