"""The pages of all changes: from first to last, by episode, and between any two episodes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from hoistbook.history.differences import differences
from hoistbook.history.state import Change
from hoistbook.pages import links
from hoistbook.pages.broken import BrokenRow, broken_rows
from hoistbook.pages.change_rows import ChangeRow, change_rows, change_table, on_the_car, set_words
from hoistbook.pages.desk import Desk
from hoistbook.pages.joins import JoinRow, joins_made, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.sheets import Filed, filed_at, filed_on, sheets_of
from hoistbook.pages.shown import Link, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class EpisodeChanges:
    """What one episode changed from the one before it."""

    episode: Link
    title: str
    number: int
    rows: tuple[ChangeRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesContext(Sheet):
    """`changes.html`: what changed on the car, by episode."""

    warnings: tuple[JoinRow, ...]
    """Joins of these episodes that must not be made: a theme prints them in full."""
    broken: tuple[BrokenRow, ...]
    """What broke in all episodes; none on a filed sheet."""
    whole: tuple[ChangeRow, ...]
    """What is otherwise about the car and its settings now than when it was bought."""
    episodes: tuple[EpisodeChanges, ...]
    filed: tuple[Filed, ...]
    """Episodes whose changes stand on sheets of their own; none on such a sheet."""
    compared: dict[str, object]
    """For a script that tells any two states apart: their `points`, each with number and name;
    `subjects`, each with what it is called, its link, what became of it and the episode it is
    known from; and `rows`, each with episode, subject, before and after."""


MOST_WEIGHT = 180
"""Of one sheet: rows of changes have fewer elements than amounts have."""


def changes_pages(desk: Desk) -> Iterator[Page]:
    """Yield the page of all changes, and the full sheets filed under it."""
    tables = {number: _table(desk, number) for number in desk.episodes}
    weights = {number: _weight(rows) for number, rows in tables.items()}
    sheets = sheets_of(weights, MOST_WEIGHT)
    for sheet in sheets[:-1]:
        first, last = sheet[0], sheet[-1]
        title = desk.words("changes.sheet", first=first, last=last)
        context = _context(desk, title, [tables[each] for each in sheet])
        yield _page(desk, filed_at(links.CHANGES, sheet), title, context)
    title = desk.words("changes.title")
    context = _context(desk, title, [tables[each] for each in sheets[-1]], sheets)
    yield _page(desk, links.CHANGES, title, context)


def _page(desk: Desk, address: str, title: str, context: ChangesContext) -> Page:
    return Page(
        address=address,
        template="changes.html",
        title=title,
        description=desk.words("changes.description", title=desk.material.journal.title),
        context=context,
        owed=desk.owed(links.CHANGES),
    )


def _context(
    desk: Desk,
    title: str,
    shown: Iterable[EpisodeChanges],
    sheets: tuple[tuple[int, ...], ...] = (),
) -> ChangesContext:
    episodes = tuple(shown)
    broken = broken_rows(desk) if sheets else ()
    first = (Link(text=desk.words("broke.title"), address="#broke"),) if broken else ()
    return ChangesContext(
        heading=title,
        margin=desk.margin(),
        lead=desk.words("changes.lead"),
        contents=(
            *first,
            *(
                Link(text=each.episode.text, address=f"#episode-{each.number}")
                for each in episodes
            ),
        ),
        warnings=tuple(
            row for each in episodes for row in never_joined(joins_made(desk, each.number))
        ),
        broken=broken,
        whole=_whole(desk) if sheets else (),
        episodes=episodes,
        filed=filed_on(desk, links.CHANGES, sheets),
        compared=_compared(desk) if sheets else {},
    )


def _table(desk: Desk, number: int) -> EpisodeChanges:
    changes = filter(on_the_car, desk.changes[number])
    return EpisodeChanges(
        episode=desk.episode(number),
        title=desk.episodes[number].title,
        number=number,
        rows=change_table(desk, changes, desk.before(number), desk.naming(number)),
    )


def _weight(shown: EpisodeChanges) -> int:
    """Return how many rows the changes of an episode weigh: a part in a shared row is half one."""
    return sum(max(2, len(each.parts)) for each in shown.rows) // 2 + 1


def _whole(desk: Desk) -> tuple[ChangeRow, ...]:
    changes = differences(desk.states[0], desk.states[desk.last])
    return change_rows(desk, (each for each in changes if each.kind == "set"), 0)


def _compared(desk: Desk) -> dict[str, object]:
    """Return every change as data, from which a script tells any two states apart.

    A subject stands before its first change as that says, and after its last as that says.
    """
    subjects: dict[str, list[object]] = {}
    rows: list[list[object]] = []
    for number in desk.episodes:
        changes = [each for each in desk.changes[number] if on_the_car(each)]
        table = change_rows(desk, changes, desk.before(number))
        for change, row in zip(changes, table, strict=True):
            key, subject, before, after = _told(desk, change, row, number)
            subjects[key] = subject
            rows.append([number, key, before, after])
    points = [[number, desk.episode(number).text] for number in desk.states]
    return {"points": points, "subjects": subjects, "rows": rows}


def _told(
    desk: Desk, change: Change, row: ChangeRow, number: int
) -> tuple[str, list[object], str, str]:
    """Return what names a subject, what is said of it, and how it stood before and after."""
    about, _, name = change.subject.partition(":")
    if not row.parts:
        before, after = set_words(desk, name, desk.before(number), number, all_states=True)
        return change.subject, [row.what, "", "", 0], before, after
    (part,) = row.parts
    href = links.relative(links.CHANGES, part.address)
    if about == "join":
        other = row.joined or row.parted
        words = desk.words("change.joined") if other else ""
        held = f"{words} {other.part.text} {other.end}" if other else ""
        key = f"join:{change.before or change.after}"
        subject = [f"{part.text} {row.what}", href, part.fate, 0]
        return key, subject, held if row.parted else "", held if row.joined else ""
    known = desk.states[desk.last].parts[name].known_in
    return change.subject, [part.text, href, part.fate, known], row.before, row.after
