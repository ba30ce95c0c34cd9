"""The entries of one receipt: prices in the journal's currency, with their shares of the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from hoistbook.authored.records import Came, Part, Receipt
from hoistbook.history.exchange import Exchange
from hoistbook.history.ledger import BY_CHARGED, Entry, EntryKind, Stage
from hoistbook.history.spread import rounded, spread
from hoistbook.values.money import Money

HAS_A_PRICE = (Came.BOUGHT, Came.USED)
"""How a part came that should have a price of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """What a receipt comes to in the journal's currency."""

    goods: Decimal
    extras: Decimal
    """Postage and tax less discount."""
    weights: tuple[Fraction, ...]
    """What each part weighs when the sums are spread: its price, all in one currency."""
    implied: Fraction | None
    """What one unit of the receipt's own currency cost, where the charged sum says it."""


def receipt_entries(receipt: Receipt, episode: int, exchange: Exchange) -> tuple[Entry, ...]:
    """Return one entry for each part of a receipt that cost anything.

    Postage, tax and discount are spread over the parts by price, and so is what was charged,
    where that is known: it beats any exchange rate. Of parts bought partly for somebody else only
    the kept share is entered. Nothing comes back when a rate is missing; the exchange keeps that.
    """
    sums = receipt_sums(receipt, exchange)
    if sums is None:
        return ()
    goods = spread(sums.goods, sums.weights, exchange.currency)
    extras = spread(sums.extras, sums.weights, exchange.currency)
    return tuple(
        part_entry(receipt, part, episode, exchange, sums.implied, price, share)
        for part, price, share in zip(receipt.parts, goods, extras, strict=True)
        if price or share
    )


def receipt_sums(receipt: Receipt, exchange: Exchange) -> Sums | None:
    """Return what a receipt comes to, None when a rate for it is missing."""
    monies = [*prices_of(receipt), *(money for _, money in extras_of(receipt))]
    currencies = {money.currency for money in monies}
    charged = receipt.charged
    at_face_value = charged is not None and len(currencies) == 1

    def value(money: Money) -> Fraction | None:
        if at_face_value:
            return Fraction(money.amount)
        return exchange.home(money, receipt.date, receipt.place)

    prices = [value(part.paid) if part.paid else Fraction(0) for part in receipt.parts]
    extras = [(sign, value(money)) for sign, money in extras_of(receipt)]
    known_prices = tuple(price for price in prices if price is not None)
    known_extras = [sign * extra for sign, extra in extras if extra is not None]
    if len(known_prices) < len(prices) or len(known_extras) < len(extras):
        return None
    goods, total = sum(known_prices), sum(known_prices) + sum(known_extras)
    weights = known_prices if any(known_prices) else even_weights(receipt)
    if charged is None:
        home = rounded(Fraction(total), exchange.currency)
        home_goods = rounded(Fraction(goods), exchange.currency)
    else:
        home = charged.amount
        home_goods = (
            rounded(Fraction(home) * goods / total, exchange.currency) if goods and total else home
        )
    implied = Fraction(home) / total if at_face_value and goods and total else None
    return Sums(goods=home_goods, extras=home - home_goods, weights=weights, implied=implied)


def prices_of(receipt: Receipt) -> Iterator[Money]:
    """Yield the prices that a receipt gives."""
    yield from (part.paid for part in receipt.parts if part.paid is not None)


def extras_of(receipt: Receipt) -> Iterator[tuple[int, Money]]:
    """Yield what is added to the prices of a receipt and, with the sign -1, taken off them."""
    for sign, money in ((1, receipt.postage), (1, receipt.tax), (-1, receipt.discount)):
        if money is not None:
            yield sign, money


def even_weights(receipt: Receipt) -> tuple[Fraction, ...]:
    """Return weights for a receipt without prices: the same for each part that has one."""
    weights = tuple(Fraction(part.came in HAS_A_PRICE) for part in receipt.parts)
    return weights if any(weights) else (Fraction(1),) * len(weights)


def part_entry(
    receipt: Receipt,
    part: Part,
    episode: int,
    exchange: Exchange,
    implied: Fraction | None,
    price: Decimal,
    share: Decimal,
) -> Entry:
    """Return the entry of one part, given its whole price and its share of the rest."""
    kept = kept_share(part)
    home = rounded(Fraction(price + share) * kept, exchange.currency)
    extras = rounded(Fraction(share) * kept, exchange.currency)
    paid = part.paid or Money(price if receipt.charged else Decimal(0), exchange.currency)
    listed = list_price_home(receipt, part, exchange, implied)
    return Entry(
        episode=episode,
        kind=EntryKind.PART,
        stage=Stage.SPENT,
        label=label_of(part),
        amount=Money(rounded(Fraction(paid.amount) * kept, paid.currency), paid.currency),
        home=home,
        place=part.place,
        day=receipt.date,
        part=part.id,
        system=part.system,
        supplier=receipt.supplier,
        postage=extras,
        list_home=None if listed is None else rounded(listed * kept, exchange.currency),
        rate=BY_CHARGED if receipt.charged else exchange.words(paid.currency, receipt.date),
    )


def list_price_home(
    receipt: Receipt, part: Part, exchange: Exchange, implied: Fraction | None
) -> Fraction | None:
    """Return the list price of a part at the same rate as the price that was paid."""
    listed = part.list_price
    if listed is None:
        return None
    own = part.paid.currency if part.paid else None
    if implied is not None and listed.currency == own and own != exchange.currency:
        return Fraction(listed.amount) * implied
    return exchange.home(listed, receipt.date, part.place)


def kept_share(part: Part) -> Fraction:
    """Return which share of a part is the build's own."""
    return Fraction(1) if part.kept is None else Fraction(part.kept, part.count)


def label_of(part: Part) -> str:
    """Return how a part is named in the tally, with the count that was kept of it."""
    if part.kept is None or part.kept == part.count:
        return part.name
    return f"{part.name}, {part.kept} of {part.count} kept"
