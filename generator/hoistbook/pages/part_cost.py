"""What a part cost, each number leading to its amount in the tally."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from hoistbook.authored.records import Part
from hoistbook.history.ledger import Entry as LedgerEntry
from hoistbook.history.ledger import EntryKind, Stage
from hoistbook.pages.desk import Desk
from hoistbook.pages.receipts import count_of
from hoistbook.pages.shown import Entry, Link


def cost_of(
    desk: Desk, part: Part, amounts: Iterable[tuple[LedgerEntry, str]]
) -> tuple[Entry, ...]:
    """Return what was paid for a part, what became of that in the tally, and what came back.

    Parameters
    ----------
    desk
        The journal's desk.
    part
        The part.
    amounts
        Its amounts in the tally, each with its address.
    """
    placed = tuple(amounts)
    paid = any(_is_price(entry) and entry.stage is Stage.SPENT for entry, _ in placed)
    return tuple(
        row
        for entry, address in placed
        if entry.stage is Stage.SPENT or not paid
        for row in _rows(desk, part, entry, address)
    )


def _is_price(entry: LedgerEntry) -> bool:
    return entry.kind is EntryKind.PART


def _rows(desk: Desk, part: Part, entry: LedgerEntry, address: str) -> Iterator[Entry]:
    if not _is_price(entry):
        back = desk.home_money(-entry.home)
        yield _row(desk, "sale" if entry.kind is EntryKind.SALE else "refund", back, address)
    elif entry.stage is not Stage.SPENT:
        amount = desk.formats.money(entry.amount)
        yield _row(desk, entry.stage.value, amount, address, _until(desk, entry))
    else:
        yield from _paid(desk, part, entry, address)


def _paid(desk: Desk, part: Part, entry: LedgerEntry, address: str) -> Iterator[Entry]:
    money = desk.formats.money
    foreign = entry.amount.currency != desk.currency
    yield _row(desk, "paid", money(entry.amount), address, count_of(desk, part))
    if entry.postage:
        yield _row(desk, "postage", desk.home_money(entry.postage), address)
    if entry.rate:
        yield _row(desk, "rate", entry.rate, address)
    if foreign or entry.home != entry.amount.amount:
        yield _row(desk, "in_tally", desk.home_money(entry.home), address)
    if part.list_price:
        at_home = desk.home_money(entry.list_home) if foreign and entry.list_home else ""
        yield _row(desk, "list", money(part.list_price), "", at_home)


def _row(desk: Desk, key: str, text: str, address: str, note: str = "") -> Entry:
    label = desk.words(f"part_cost.{key}")
    if not address:
        return Entry(label=label, text=text, note=note)
    return Entry(label=label, links=(Link(text=text, address=address),), note=note)


def _until(desk: Desk, entry: LedgerEntry) -> str:
    return "" if entry.until is None else desk.words("tally.until", number=entry.until)
