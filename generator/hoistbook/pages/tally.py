"""The running cost: as at one episode, and every amount once with its episodes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from hoistbook.history.ledger import Entry as LedgerEntry
from hoistbook.history.ledger import EntryKind, Stage, Tally
from hoistbook.pages import links
from hoistbook.pages.amounts import amount_ids, amount_sheets
from hoistbook.pages.charts import cost_charts
from hoistbook.pages.cost_of_power import cost_of_power
from hoistbook.pages.desk import Desk, NamePart, sections
from hoistbook.pages.page import Page
from hoistbook.pages.sheets import Filed, filed_at, filed_on
from hoistbook.pages.shown import Chart, Entry, Link, PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyShown:
    """The running cost as at one episode."""

    lines: tuple[Entry, ...]
    """Spent in the episode and so far, ordered, planned, at list price, come back, budget."""
    systems: tuple[Entry, ...]
    """What has been spent on each system so far."""
    total: str
    """What has been spent so far: the sum of the systems."""
    per_power: Entry | None
    """What each kilowatt gained has cost; None without two power runs at the same place."""
    unpriced: tuple[PartRef, ...]
    """Bought parts whose price is not given: the tally is too low by these."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyRow:
    """One amount of the tally."""

    episode: Link
    number: int
    id: str
    """Anchor of an amount of a part; empty for others."""
    first: bool
    """Whether it is the first amount of its episode: a theme gives it an anchor."""
    until: int | None
    """Of an amount only ordered or planned: the episode from which it no longer stands."""
    date: str
    what: str
    part: PartRef | None
    """The part it was for; `what` then repeats its name."""
    kind: str
    """"sold", "came back"; empty for money that was spent, and where what became of the part
    says so already."""
    stage: str
    """"spent", "ordered, not paid" or "planned"."""
    supplier: str
    system: str
    amount: str
    """As paid, in its own currency; empty where that is the journal's."""
    home: str
    postage: str
    """Of `home`, the share of postage, tax and discount; empty where there is none."""
    list_price: str
    rate: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RunningRow:
    """The tally as at one episode, as a row."""

    episode: Link
    title: str
    date: str
    here: str
    total: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AmountsContext(Sheet):
    """`amounts.html`: the amounts of a full sheet."""

    rows: tuple[TallyRow, ...]
    files: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyContext(Sheet):
    """`tally.html`: every amount once, the running total, and the tally as at the last episode."""

    tally: TallyShown
    charts: tuple[Chart, ...]
    running: tuple[RunningRow, ...]
    rows: tuple[TallyRow, ...]
    files: tuple[Link, ...]
    filed: tuple[Filed, ...]
    """Episodes whose amounts stand on sheets of their own; none on such a sheet."""


def tally_pages(desk: Desk) -> Iterator[Page]:
    """Yield the page of the running cost, and the full sheets of amounts filed under it."""
    sheets = amount_sheets(desk)
    for sheet in sheets[:-1]:
        yield _amounts_page(desk, sheet)
    yield _whole_page(desk, sheets)


def _whole_page(desk: Desk, sheets: tuple[tuple[int, ...], ...]) -> Page:
    title = desk.words("tally.title")
    total = desk.home_money(desk.tallies[desk.last].spent)
    return Page(
        address=links.TALLY,
        template="tally.html",
        title=title,
        description=desk.words(
            "tally.description", title=desk.material.journal.title, total=total
        ),
        context=TallyContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("tally.lead"),
            contents=sections(desk.words, "tally", ("now", "running", "amounts")),
            tally=tally_of(desk, desk.last),
            charts=cost_charts(desk),
            running=tuple(_running(desk, each) for each in desk.material.ledger.tallies),
            rows=_rows(desk, sheets[-1]),
            files=desk.files("tally"),
            filed=filed_on(desk, links.TALLY, sheets),
        ),
    )


def _amounts_page(desk: Desk, sheet: tuple[int, ...]) -> Page:
    title = desk.words("tally.sheet", first=sheet[0], last=sheet[-1])
    return Page(
        address=filed_at(links.TALLY, sheet),
        template="amounts.html",
        title=title,
        description=title,
        context=AmountsContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("tally.lead"),
            rows=_rows(desk, sheet),
            files=desk.files("tally"),
        ),
    )


def _rows(desk: Desk, sheet: tuple[int, ...]) -> tuple[TallyRow, ...]:
    name = desk.naming()
    placed = zip(desk.material.ledger.entries, amount_ids(desk), strict=True)
    entries = [(each, id_) for each, id_ in placed if each.episode in sheet]
    numbers = [None, *(each.episode for each, _ in entries)]
    return tuple(
        _row(desk, each, name, id_, first=each.episode != before)
        for (each, id_), before in zip(entries, numbers, strict=False)
    )


def tally_of(desk: Desk, number: int, name: NamePart | None = None) -> TallyShown:
    """Return the running cost as at one episode."""
    tally = desk.tallies[number]
    here, so_far, *others = (
        Entry(label=desk.words(f"tally.{key}"), text=desk.home_money(amount))
        for key, amount in _lines(tally)
    )
    elsewhere = (
        Entry(
            label=desk.words("tally.also", currency=money.currency),
            text=desk.formats.money(money),
        )
        for money in tally.also_shown
    )
    return TallyShown(
        lines=(here, so_far, *elsewhere, *others),
        systems=tuple(
            Entry(label=desk.system(system), text=desk.home_money(amount))
            for system, amount in tally.by_system
        ),
        total=desk.home_money(tally.spent),
        per_power=cost_of_power(desk, number),
        unpriced=tuple((name or desk.part)(each) for each in tally.unpriced),
    )


def _lines(tally: Tally) -> list[tuple[str, Decimal]]:
    """Return the lines of a tally that say something: an amount of nothing is left out."""
    lines = [
        ("spent_here", tally.spent_here),
        ("spent", tally.spent),
        ("list_total", tally.list_total),
        ("came_back", tally.came_back),
        ("committed", tally.committed),
        ("planned", tally.planned),
    ]
    kept = [(key, amount) for key, amount in lines if amount or key.startswith("spent")]
    if tally.budget is not None:
        left = tally.budget - tally.spent
        kept += [("budget", tally.budget), ("over" if left < 0 else "left", abs(left))]
    return kept


def _running(desk: Desk, tally: Tally) -> RunningRow:
    episode = desk.episodes.get(tally.episode)
    return RunningRow(
        episode=desk.episode(tally.episode),
        title=episode.title if episode else "",
        date=desk.formats.date(episode.filmed) if episode and episode.filmed else "",
        here=desk.home_money(tally.spent_here),
        total=desk.home_money(tally.spent),
    )


def _row(desk: Desk, entry: LedgerEntry, name: NamePart, id_: str, *, first: bool) -> TallyRow:
    foreign = entry.amount.currency != desk.currency
    part = name(entry.part) if entry.part else None
    return TallyRow(
        episode=desk.episode(entry.episode),
        number=entry.episode,
        id=id_,
        first=first,
        until=entry.until,
        date=desk.formats.date(entry.day) if entry.day else "",
        what=entry.label,
        part=part,
        kind="" if _told_as_sold(desk, entry, part) else _came_back(desk, entry),
        stage="" if entry.stage is Stage.SPENT else desk.words(f"stage.{entry.stage.value}"),
        supplier=entry.supplier or "",
        system=desk.system(entry.system),
        amount=desk.formats.money(entry.amount) if foreign else "",
        home=desk.home_money(entry.home),
        postage=desk.home_money(entry.postage) if entry.postage else "",
        list_price=desk.home_money(entry.list_home) if entry.list_home is not None else "",
        rate=entry.rate,
    )


def _came_back(desk: Desk, entry: LedgerEntry) -> str:
    if entry.kind is EntryKind.SALE:
        return desk.words("kind.sale")
    return desk.words("kind.refund") if entry.home < 0 else ""


def _told_as_sold(desk: Desk, entry: LedgerEntry, part: PartRef | None) -> bool:
    """Return whether the name of the part, with what became of it, says this sale already."""
    return (
        entry.kind is EntryKind.SALE
        and entry.part is not None
        and part is not None
        and part.fate != ""
        and any(
            each.how == "sold" and each.episode == entry.episode
            for each in desk.fate(entry.part).events
        )
    )
