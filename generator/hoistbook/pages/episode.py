"""The page of one episode, in the order of a day in the workshop."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from hoistbook.authored.prose_links import figure_named
from hoistbook.authored.records import Episode
from hoistbook.figures.figure import Figure, Missing
from hoistbook.history.ledger import Entry as LedgerEntry
from hoistbook.history.ledger import EntryKind
from hoistbook.pages import links
from hoistbook.pages.change_rows import ChangeRow, change_table, on_the_car
from hoistbook.pages.charts import charts_on
from hoistbook.pages.circuits import CircuitThen, circuits_on
from hoistbook.pages.day import (
    ClaimRow,
    DecisionShown,
    DoneRow,
    MadeRow,
    ReadingRow,
    WorkRow,
    claims_of,
    decisions_of,
    done_of,
    made_of,
    readings_of,
    work_of,
)
from hoistbook.pages.desk import Desk, NamePart, sections
from hoistbook.pages.joins import JoinRow, joins_held, joins_made, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.parts_copy import CopyShown, copies_of
from hoistbook.pages.pictures import pictures_of, poster_of
from hoistbook.pages.prose import Targets, render_prose
from hoistbook.pages.receipts import ReceiptShown, came_of, receipts_of
from hoistbook.pages.runs import RunShown, runs_of
from hoistbook.pages.shown import (
    Chart,
    Entry,
    FigureRow,
    Link,
    Number,
    PartRef,
    Sheet,
)
from hoistbook.pages.tally import TallyShown, tally_of
from hoistbook.pages.video import Video, video_of


@dataclass(frozen=True, slots=True, kw_only=True)
class GotRow:
    """A part that came without a receipt."""

    part: PartRef
    came: str
    """"supplied free", "already owned"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EpisodeContext(Sheet):
    """`episode.html`: one episode."""

    number: int
    summary: str
    unpublished: bool
    """True in a preview of an episode that is not published yet: a theme says so."""
    dates: tuple[Entry, ...]
    video: Video | None
    receipts: tuple[ReceiptShown, ...]
    got: tuple[GotRow, ...]
    spent: tuple[Entry, ...]
    """Money that is not a part."""
    made: tuple[MadeRow, ...]
    done: tuple[DoneRow, ...]
    work: tuple[WorkRow, ...]
    work_total: str
    """The hours of all work together."""
    copy: CopyShown
    """The list of the parts that came, to take away."""
    tally: TallyShown
    changes: tuple[ChangeRow, ...]
    """Those of which neither work nor joins tell."""
    all_changes: Link | None
    """Where all that the episode changed stands, as it was and as it is; None for nothing."""
    figures: tuple[FigureRow, ...]
    """Those that moved."""
    readings: tuple[ReadingRow, ...]
    warnings: tuple[JoinRow, ...]
    """Joins that hold at this episode and must not be made."""
    joins: tuple[JoinRow, ...]
    """Those that it made."""
    circuits: tuple[CircuitThen, ...]
    """Those that it changed."""
    decisions: tuple[DecisionShown, ...]
    prose: Markup
    """Ready HTML; its headings begin at the third level."""
    charts: tuple[Chart, ...]
    """Those of the state that the prose does not place itself."""
    runs: tuple[RunShown, ...]
    claims: tuple[ClaimRow, ...]
    corrections: tuple[Entry, ...]
    spec: Link
    """The spec sheet as at this episode."""
    workings: tuple[Link, ...]
    """Of the figures that moved."""


_SECTIONS = {
    "video": ("video",),
    "bought": ("receipts", "got", "spent"),
    "work": ("made", "done", "work", "readings"),
    "joins": ("joins",),
    "circuits": ("circuits",),
    "tally": ("tally",),
    "changes": ("all_changes",),
    "figures": ("figures",),
    "decisions": ("decisions",),
    "story": ("prose",),
    "charts": ("charts",),
    "power": ("runs",),
    "claims": ("claims",),
    "corrections": ("corrections",),
    "workings": ("workings",),
}
"""The sections of the page in their order, each with the fields that it shows."""


def episode_page(desk: Desk, episode: Episode) -> Page:
    """Return the page of one episode."""
    words, journal = desk.words, desk.material.journal
    address = links.episode(episode.number)
    owed = desk.owed(address)
    context = _context(desk, episode)
    present = [
        section
        for section, fields in _SECTIONS.items()
        if any(getattr(context, each) for each in fields)
    ]
    shown = [*present, "cautions"] if owed else present
    return Page(
        address=address,
        template="episode.html",
        title=words("episode.page_title", number=episode.number, title=episode.title),
        description=episode.summary
        or words("episode.description", title=episode.title, journal=journal.title),
        context=replace(context, contents=sections(words, "episode", shown)),
        owed=owed,
    )


def _context(desk: Desk, episode: Episode) -> EpisodeContext:
    number, journal = episode.number, desk.material.journal
    charts = charts_on(desk, number)
    placed = {each.target for each in episode.links if each.kind == "chart"}
    work, work_total = work_of(desk, episode)
    moved = _moved(desk, number, desk.on_the_way(number))
    told: set[str] = set()
    bought, worked = desk.naming(number, told), desk.naming(number, told)
    return EpisodeContext(
        heading=episode.title,
        margin=desk.margin(number),
        picture=poster_of(journal, episode),
        before=_neighbour(desk, number, -1),
        after=_neighbour(desk, number, 1),
        number=number,
        summary=episode.summary or "",
        unpublished=episode.published is None,
        dates=_dates(desk, episode),
        video=video_of(journal, episode),
        receipts=receipts_of(desk, episode, bought),
        got=_got(desk, episode, bought),
        spent=_spent(desk, number),
        made=made_of(desk, episode, worked),
        done=done_of(desk, episode, worked),
        work=work,
        work_total=work_total,
        copy=copies_of(desk, number),
        tally=tally_of(desk, number, desk.naming(number, told)),
        changes=_changes(desk, episode, desk.naming(number, told)),
        all_changes=_all_changes(desk, number),
        figures=moved,
        readings=readings_of(desk, episode),
        warnings=tuple(never_joined(joins_held(desk, number))),
        joins=joins_made(desk, number),
        circuits=circuits_on(desk, number),
        decisions=decisions_of(episode),
        prose=_prose(desk, episode, charts),
        charts=tuple(each for name, each in charts.items() if name not in placed),
        runs=runs_of(desk, number),
        claims=claims_of(desk, number),
        corrections=_corrections(desk, episode),
        spec=Link(text=desk.words("episode.spec", number=number), address=links.spec(number)),
        workings=_workings(moved),
    )


def _got(desk: Desk, episode: Episode, name: NamePart) -> tuple[GotRow, ...]:
    return tuple(GotRow(part=name(each.id), came=came_of(desk, each)) for each in episode.got)


def _changes(desk: Desk, episode: Episode, name: NamePart) -> tuple[ChangeRow, ...]:
    """Return the changes of which the tables of work and joins do not tell."""
    told = {f"part:{name}" for name in _worked_on(episode)}
    changes = (
        each
        for each in desk.changes[episode.number]
        if on_the_car(each) and each.subject not in told
    )
    rows = change_table(desk, changes, desk.before(episode.number), name)
    return tuple(row for row in rows if row.joined is None)


def _worked_on(episode: Episode) -> Iterator[str]:
    """Yield the parts of which the tables of work say what was done to them."""
    for done in episode.done:
        yield done.part
        if done.instead_of:
            yield done.instead_of
    for made in episode.made:
        yield made.id
        yield from (each.part for each in made.made_from)


def _all_changes(desk: Desk, number: int) -> Link | None:
    if not any(map(on_the_car, desk.changes[number])):
        return None
    text = desk.words("episode.all_changes", number=number)
    return Link(text=text, address=f"{links.CHANGES}#episode-{number}")


def _corrections(desk: Desk, episode: Episode) -> tuple[Entry, ...]:
    return tuple(
        Entry(label=desk.formats.date(each.date), text=each.text) for each in episode.corrections
    )


def _neighbour(desk: Desk, number: int, step: int) -> Link | None:
    numbers = list(desk.episodes)
    at = numbers.index(number) + step
    if not 0 <= at < len(numbers):
        return None
    title = desk.episodes[numbers[at]].title
    text = desk.words("episode.page_title", number=numbers[at], title=title)
    return Link(text=text, address=links.episode(numbers[at]))


def _dates(desk: Desk, episode: Episode) -> tuple[Entry, ...]:
    dates = (("filmed", episode.filmed), ("published", episode.published))
    return tuple(
        Entry(label=desk.words(f"episode.{name}"), text=desk.formats.date(day))
        for name, day in dates
        if day is not None
    )


def _spent(desk: Desk, number: int) -> tuple[Entry, ...]:
    """Return the money of an episode that is not a part, and what came back."""
    return tuple(
        Entry(
            label=entry.label,
            text=desk.home_money(entry.home),
            note=", ".join(each for each in (entry.supplier, _rate(desk, entry)) if each),
        )
        for entry in desk.material.ledger.entries
        if entry.episode == number and entry.kind is EntryKind.SPENT
    )


def _rate(desk: Desk, entry: LedgerEntry) -> str:
    if entry.amount.currency == desk.currency:
        return ""
    return f"{desk.formats.money(entry.amount)}, {entry.rate}"


def _moved(desk: Desk, number: int, figures: Iterable[Figure | Missing]) -> tuple[FigureRow, ...]:
    """Return those of some figures that read otherwise than at the episode before."""
    before = desk.figures[desk.before(number)]
    rows = (
        desk.row(figure, before.get(figure.key.quantity, figure.key.subject))
        for figure in figures
        if isinstance(figure, Figure)
    )
    return tuple(row for row in rows if not _reads_alike(row))


def _workings(moved: Iterable[FigureRow]) -> tuple[Link, ...]:
    """Return where the figures that moved are worked out, a quantity of several parts once."""
    shown = {row.title: row.now.address for row in reversed(tuple(moved)) if row.now}
    return tuple(Link(text=title, address=shown[title]) for title in reversed(shown))


def _reads_alike(row: FigureRow) -> bool:
    """Tell whether a figure prints the same value: its band or speed alone does not make news."""
    now, before = row.now, row.before
    if now is None or before is None:
        return now is before
    return (now.value, now.evidence, now.limit) == (before.value, before.evidence, before.limit)


def _prose(desk: Desk, episode: Episode, charts: Mapping[str, Chart]) -> Markup:
    start, number = links.episode(episode.number), episode.number

    def figure(target: str) -> Number | str | None:
        named = figure_named(target)
        at = number if named.episode is None else int(named.episode)
        found = desk.figures[at].get(named.quantity, named.subject) if at in desk.figures else None
        if isinstance(found, Missing):
            return desk.words("figure.missing")
        if found is None or named.episode is None:
            return desk.number(found) if found else None
        shown = desk.number(found)
        as_at = desk.words("figure.as_at", evidence=shown.evidence, number=at)
        return replace(shown, evidence=as_at)

    name_part = desk.naming(number)

    def part(name: str) -> PartRef | None:
        return name_part(name) if name in desk.states[desk.last].parts else None

    def other(name: str) -> str | None:
        known = name.isdecimal() and int(name) in desk.episodes
        return links.episode(int(name)) if known else None

    targets = Targets(
        href=lambda address: links.relative(start, address),
        parts=part,
        episodes=other,
        figures=figure,
        charts=charts,
        pictures=pictures_of(desk.material.journal, episode),
    )
    return render_prose(episode.prose, targets, desk.words("episode.table"))
