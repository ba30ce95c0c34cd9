"""The list of all parts, once, each with the episodes from and until which it was in the build."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from itertools import groupby

from hoistbook.authored.kinds import systems
from hoistbook.authored.records import Came, Part
from hoistbook.history.ledger import Entry, EntryKind, Stage
from hoistbook.history.state import PartState
from hoistbook.history.tallies import NO_SYSTEM
from hoistbook.pages import links
from hoistbook.pages.amounts import amounts_by_part
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.parts_copy import CopyShown, copies_of
from hoistbook.pages.parts_listed import filed_systems
from hoistbook.pages.receipts import came_of, count_of
from hoistbook.pages.shown import Link, PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """A part as a row of the list."""

    part: PartRef
    count: str
    maker: str
    """Maker and part number, as far as known."""
    came: str
    """"used", "made", "supplied free"; empty for what was bought new."""
    ends: tuple[str, ...]
    """"oil in: M12x1.5 female"."""
    price: str
    """As paid or planned, in its own currency; empty where the tally has the same amount."""
    cost: Link | None
    """What the tally has for it, in the journal's currency with its share of postage, tax and
    discount, leading there; None where nothing was paid."""
    bought: str
    """Supplier and date."""
    link: str
    """Full URL; empty without."""
    must: str
    """What it had to meet."""
    status: str
    """"fitted", "planned"."""
    start: int
    """The episode that wrote it down."""
    until: int | None
    """The episode from which it was no longer in the build; None while it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SystemParts:
    """The parts of one system of the car."""

    name: str
    """As its author writes it."""
    id: str
    title: str
    spent: str
    """What the tally has for the system, money that is not a part included."""
    rows: tuple[PartRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SystemFiled:
    """A system whose parts stand on a page of their own."""

    id: str
    link: Link
    count: int
    in_build: int
    spent: str
    """What the tally has for the system."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsContext(Sheet):
    """`parts.html`: all parts by system, or the parts of one system."""

    systems: tuple[SystemParts, ...]
    """Empty where the list is filed by system."""
    filed: tuple[SystemFiled, ...]
    """Each system whose parts have a page of their own."""
    episodes: tuple[Link, ...]
    """The episodes that a script may show the list as at."""
    states: tuple[Link, ...]
    """The spec sheets as at these: they say without a script what was fitted."""
    copy: CopyShown
    """The list to take away, of the system that the page shows or of all."""


MOST_COPIED = 250
"""Of a longer list the clipboard's copies would be most of the page: its files hold the same."""


def parts_pages(desk: Desk) -> Iterator[Page]:
    """Yield the page that lists all parts, or says where they are filed, and the filed pages."""
    parts = desk.states[desk.last].parts
    shown = _by_system(desk, parts.values())
    filed = bool(filed_systems(desk))
    yield _whole_page(desk, shown, filed=filed)
    if filed:
        yield from (_system_page(desk, each) for each in shown)


def _system_page(desk: Desk, system: SystemParts) -> Page:
    title = desk.words("parts.system_caption", system=system.title)
    journal = desk.material.journal.title
    return Page(
        address=links.system(system.id),
        template="parts.html",
        title=title,
        description=desk.words("parts.system_description", title=journal, system=system.title),
        context=PartsContext(
            heading=title,
            margin=desk.margin(),
            systems=(system,),
            filed=(),
            episodes=tuple(desk.episode(each) for each in desk.states),
            states=_states(desk),
            copy=copies_of(desk, system.name, on_page=len(system.rows) <= MOST_COPIED),
        ),
        owed=desk.owed(links.PARTS),
    )


def _filed(system: SystemParts) -> SystemFiled:
    return SystemFiled(
        id=system.id,
        link=Link(text=system.title, address=links.system(system.id)),
        count=len(system.rows),
        in_build=sum(1 for each in system.rows if each.until is None),
        spent=system.spent,
    )


def _states(desk: Desk) -> tuple[Link, ...]:
    return tuple(
        Link(text=desk.episode(each).text, address=f"{links.spec(each)}#fitted")
        for each in desk.states
    )


def _whole_page(desk: Desk, shown: tuple[SystemParts, ...], *, filed: bool) -> Page:
    title = desk.words("parts.title")
    known = desk.states[desk.last].parts
    return Page(
        address=links.PARTS,
        template="parts.html",
        title=title,
        description=desk.words(
            "parts.description", title=desk.material.journal.title, n=len(known)
        ),
        context=PartsContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("parts.lead"),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in shown),
            systems=() if filed else shown,
            filed=tuple(_filed(each) for each in shown) if filed else (),
            episodes=tuple(desk.episode(each) for each in desk.states),
            states=_states(desk),
            copy=copies_of(desk, on_page=len(known) <= MOST_COPIED),
        ),
        owed=desk.owed(links.PARTS),
    )


def _by_system(desk: Desk, parts: Iterable[PartState]) -> tuple[SystemParts, ...]:
    order = {system: at for at, system in enumerate(systems())}
    by_system = sorted(parts, key=lambda each: order.get(each.part.system or "", len(order)))
    spent, amounts = dict(desk.tallies[desk.last].by_system), amounts_by_part(desk)
    return tuple(
        SystemParts(
            name=system or "other",
            id=(system or "other").replace(" ", "-"),
            title=desk.system(system),
            spent=desk.home_money(spent.get(system or NO_SYSTEM, Decimal(0))),
            rows=tuple(_row(desk, each, amounts.get(each.part.id, ())) for each in members),
        )
        for system, members in groupby(by_system, key=lambda each: each.part.system)
    )


def _row(desk: Desk, state: PartState, amounts: Iterable[tuple[Entry, str]]) -> PartRow:
    """Return a part as a row."""
    part = state.part
    ref, cost = desk.part(part.id), _cost(desk, amounts)
    paid = desk.formats.money(part.paid) if part.paid else ""
    return PartRow(
        part=ref,
        count=count_of(desk, part),
        maker=" ".join(each for each in (part.maker, part.part_number) if each),
        came="" if part.came is Came.BOUGHT else came_of(desk, part),
        ends=ends_of(part),
        price="" if cost and cost.text == paid else paid,
        cost=cost,
        bought=bought_at(desk, part.id),
        link=part.link or "",
        must=part.must or "",
        status=state.status,
        start=state.known_in,
        until=desk.fate(part.id).episode if ref.dropped else None,
    )


def _cost(desk: Desk, amounts: Iterable[tuple[Entry, str]]) -> Link | None:
    """Return what was paid for a part as the tally has it; what came back stands on its page."""
    for entry, address in amounts:
        if entry.kind is EntryKind.PART and entry.stage is Stage.SPENT:
            return Link(text=desk.home_money(entry.home), address=address)
    return None


def bought_at(desk: Desk, part_id: str) -> str:
    """Return where and when a part was bought; empty where no receipt says."""
    entry = desk.paid.get(part_id)
    if entry is None:
        return ""
    day = desk.formats.date(entry.day) if entry.day else None
    return ", ".join(each for each in (entry.supplier, day) if each)


def ends_of(part: Part) -> tuple[str, ...]:
    """Return the ends of a part as spoken."""
    return tuple(f"{each.name}: {each.text}" for each in part.ends.values())
