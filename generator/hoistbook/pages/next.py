"""What comes next: planned, waited for, soon to expire, and numbers that are missing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal

from hoistbook.figures.figure import Missing
from hoistbook.fit.forgotten import dismissed, forgotten
from hoistbook.history.fates import used_unfitted
from hoistbook.history.ledger import EntryKind, Stage
from hoistbook.history.state import Outcome, PartState, Status, own_count
from hoistbook.pages import links
from hoistbook.pages.circuits import OpenRow, loose_ends, open_row
from hoistbook.pages.desk import Desk, sections
from hoistbook.pages.page import Page
from hoistbook.pages.receipts import count_of
from hoistbook.pages.shown import FigureRow, Link, PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class AwaitedRow:
    """A part that is planned, or ordered and not here."""

    part: PartRef
    count: str
    price: str
    """In the journal's currency; empty where none is given."""
    why: str
    since: Link


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpiryRow:
    """Something that is good until a date."""

    part: PartRef
    until: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ForgottenRow:
    """Something that is usually forgotten."""

    id: str
    """By which its author dismisses it."""
    item: str
    why: str
    because_of: tuple[PartRef, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NextContext(Sheet):
    """`next.html`: what comes next."""

    planned: tuple[AwaitedRow, ...]
    waiting: tuple[AwaitedRow, ...]
    on_hand: tuple[AwaitedRow, ...]
    """Here and not fitted yet; what nobody fits, as tools and clothing, is in use."""
    expiring: tuple[ExpiryRow, ...]
    missing: tuple[FigureRow, ...]
    open: tuple[OpenRow, ...]
    """Ends of fitted parts that nothing is joined to."""
    forgotten: tuple[ForgottenRow, ...]
    """What such parts call for and the parts list lacks."""


def next_page(desk: Desk) -> Page:
    """Return the page of what comes next."""
    title = desk.words("next.title")
    parts = desk.states[desk.last].parts.values()
    return Page(
        address=links.NEXT,
        template="next.html",
        title=title,
        description=desk.words("next.description", title=desk.material.journal.title),
        context=NextContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("next.lead"),
            contents=sections(
                desk.words,
                "next",
                ("planned", "waiting", "on_hand", "open", "forgotten", "expiring", "missing"),
            ),
            planned=_awaited(desk, parts, Status.PLANNED),
            waiting=_awaited(desk, parts, Status.ORDERED),
            on_hand=_awaited(desk, parts, Status.ON_HAND),
            expiring=tuple(_expiring(desk, parts)),
            missing=tuple(
                desk.row(each) for each in desk.listed(desk.last) if isinstance(each, Missing)
            ),
            open=tuple(open_row(desk, each) for each in loose_ends(desk)),
            forgotten=_forgotten(desk),
        ),
        owed=desk.owed(links.NEXT),
    )


def _awaited(desk: Desk, parts: Iterable[PartState], status: Status) -> tuple[AwaitedRow, ...]:
    prices = {
        each.part: each.home
        for each in desk.material.ledger.entries
        if each.kind is EntryKind.PART
        and each.part
        and each.home
        and (each.stage is Stage.SPENT or each.until is None)
    }
    shown = (
        each
        for each in parts
        if each.status is status
        and not desk.fate(each.part.id).dropped
        and not (status is Status.ON_HAND and used_unfitted(each.part))
    )
    return tuple(
        AwaitedRow(
            part=_named(desk, each.part.id),
            count=_left_count(desk, each),
            price=_price_of_left(desk, each, prices.get(each.part.id)),
            why=each.because or each.part.note or "",
            since=desk.episode(each.since),
        )
        for each in shown
    )


def _left(state: PartState) -> tuple[int, int]:
    """Return how many pieces still wait, and of how many the price is."""
    bought = own_count(state.part)
    return (bought if state.pieces_left is None else state.pieces_left), bought


def _left_count(desk: Desk, state: PartState) -> str:
    left, bought = _left(state)
    if left == bought:
        return count_of(desk, state.part)
    return desk.words("part.number_off", count=left)


def _price_of_left(desk: Desk, state: PartState, price: Decimal | None) -> str:
    """Return the price of the pieces that wait: what was used is paid for elsewhere."""
    if price is None:
        return ""
    left, bought = _left(state)
    return desk.home_money((price * left / bought).quantize(price, ROUND_HALF_UP))


def _named(desk: Desk, part_id: str) -> PartRef:
    """Return a part without what the heading of its section says of it already."""
    fate, ref = desk.fate(part_id), desk.part(part_id)
    waits = fate.outcome is Outcome.NOT_YET and fate.shared is None
    return replace(ref, fate="") if waits else ref


def _forgotten(desk: Desk) -> tuple[ForgottenRow, ...]:
    return tuple(
        ForgottenRow(
            id=each.id,
            item=each.item[:1].upper() + each.item[1:],
            why=each.why,
            because_of=tuple(desk.part(part) for part in each.because_of),
        )
        for each in forgotten(desk.states[desk.last], dismissed(desk.material.episodes))
    )


def _expiring(desk: Desk, parts: Iterable[PartState]) -> Iterator[ExpiryRow]:
    dated = [(each.part.good_until, each.part.id) for each in parts if each.part.good_until]
    for until, part_id in sorted(dated):
        if not desk.fate(part_id).dropped:
            yield ExpiryRow(part=desk.part(part_id), until=desk.formats.date(until))
