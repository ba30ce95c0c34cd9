"""An episode's receipts as they are printed: what was bought, where, and what it came to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from hoistbook.authored.records import Came, Episode, Part, Receipt
from hoistbook.history.ledger import Entry as LedgerEntry
from hoistbook.history.ledger import EntryKind
from hoistbook.history.state import PartState, own_count
from hoistbook.pages.desk import Desk, NamePart
from hoistbook.pages.shown import Entry, PartRef
from hoistbook.values.money import Money


@dataclass(frozen=True, slots=True, kw_only=True)
class BoughtRow:
    """One part of a receipt."""

    part: PartRef
    count: str
    """"4 off"; empty for a single one."""
    came: str
    """"used"; empty for what was bought new."""
    price: str
    """In the receipt's currency; empty where it is not given."""
    list_price: str
    total: str
    """In the journal's currency, with its share of postage, tax and discount."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReceiptShown:
    """One purchase."""

    supplier: str
    date: str
    number: str
    link: str
    """Full URL; empty without."""
    rows: tuple[BoughtRow, ...]
    extras: tuple[Entry, ...]
    """Postage, tax, discount, what was charged: each where the receipt has it."""
    total: str
    """What the receipt came to for the build, in the journal's currency."""
    rate: str
    """How it became the journal's currency; empty where it was in it."""


def receipts_of(desk: Desk, episode: Episode, name: NamePart) -> tuple[ReceiptShown, ...]:
    """Return the receipts of an episode in the order of the file."""
    entries = {
        each.part: each
        for each in desk.material.ledger.entries
        if each.episode == episode.number and each.kind is EntryKind.PART and each.part
    }
    return tuple(_receipt(desk, each, entries, name) for each in episode.bought)


def _receipt(
    desk: Desk, receipt: Receipt, entries: Mapping[str, LedgerEntry], name: NamePart
) -> ReceiptShown:
    booked = [entries[each.id] for each in receipt.parts if each.id in entries]
    foreign = {each.rate for each in booked if each.amount.currency != desk.currency}
    extras = (
        ("postage", receipt.postage),
        ("tax", receipt.tax),
        ("discount", receipt.discount),
        ("charged", receipt.charged),
    )
    return ReceiptShown(
        supplier=receipt.supplier,
        date=desk.formats.date(receipt.date),
        number=receipt.number or "",
        link=receipt.link or "",
        rows=tuple(_row(desk, each, entries.get(each.id), name) for each in receipt.parts),
        extras=tuple(
            Entry(
                label=desk.words(f"receipt.{key}"),
                text=desk.formats.money(_off(money) if key == "discount" else money),
            )
            for key, money in extras
            if money is not None
        ),
        total=desk.home_money(sum((each.home for each in booked), start=Decimal(0))),
        rate="; ".join(sorted(foreign - {""})),
    )


def _off(money: Money) -> Money:
    return Money(-money.amount, money.currency)


def _row(desk: Desk, part: Part, entry: LedgerEntry | None, name: NamePart) -> BoughtRow:
    return BoughtRow(
        part=name(part.id),
        count=count_of(desk, part),
        came="" if part.came is Came.BOUGHT else came_of(desk, part),
        price=desk.formats.money(part.paid) if part.paid else "",
        list_price=desk.formats.money(part.list_price) if part.list_price else "",
        total=desk.home_money(entry.home) if entry else "",
    )


def count_of(desk: Desk, part: Part) -> str:
    """Return how many there are, and how many of them stayed; empty for a single one."""
    if part.kept is not None and part.kept != part.count:
        return desk.words("part.kept", count=part.count, kept=part.kept)
    return desk.words("part.number_off", count=part.count) if part.count != 1 else ""


def fitted_count(desk: Desk, state: PartState) -> str:
    """Return how many are on the car, and of how many where all that stayed are."""
    part, fitted = state.part, state.pieces_fitted
    if fitted == own_count(part):
        return count_of(desk, part)
    return desk.words("part.number_off", count=fitted)


def came_of(desk: Desk, part: Part) -> str:
    """Return how a part came: "used", "with Timing belt kit"; empty for one that never came."""
    known = desk.states[desk.last].parts[part.id]
    if part.came in (Came.BOUGHT, Came.USED) and known.came_in is None:
        return ""
    if part.came is Came.WITH:
        if part.came_with is None:
            return desk.words("came.with_car")
        return desk.words("came.with", part=desk.part_name(part.came_with))
    return desk.words(f"came.{part.came.name.lower()}")
