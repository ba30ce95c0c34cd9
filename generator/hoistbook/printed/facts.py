"""The tally, the spec sheet and the changes, as their pages have them, as tables of text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from hoistbook.history.differences import differences
from hoistbook.history.words import join_words
from hoistbook.pages import links
from hoistbook.pages.change_rows import ChangeRow, change_rows, rejoined
from hoistbook.pages.day import ReadingRow
from hoistbook.pages.desk import Desk
from hoistbook.pages.joins import EndShown, JoinRow, joins_held, never_joined
from hoistbook.pages.shown import Entry, FigureRow, PartRef
from hoistbook.pages.spec import SpecContext, SpecRow, spec_pages
from hoistbook.pages.tally import TallyShown, tally_of
from hoistbook.printed.block import Block


def tally_blocks(desk: Desk, number: int) -> Iterator[Block]:
    """Yield the running cost as at an episode."""
    shown = tally_of(desk, number)
    title = f"Tally, {_as_at(desk, number)}"
    yield Block(
        title=title, headings=("", ">Amount"), rows=(*_entries(shown.lines), *_per_power(shown))
    )
    total = ("Total", shown.total)
    yield Block(
        title="Spent by system",
        headings=("System", ">Spent"),
        rows=(*_entries(shown.systems), total),
    )
    if shown.unpriced:
        rows = tuple((each.text,) for each in shown.unpriced)
        yield Block(title="Bought, price not given", headings=("Part",), rows=rows)


def _per_power(shown: TallyShown) -> tuple[tuple[str, ...], ...]:
    given = shown.per_power
    if given is None or given.number is None:
        return ()
    return ((given.label, f"{given.number.value} ({given.number.band}), {given.number.evidence}"),)


def spec_blocks(desk: Desk, number: int) -> Iterator[Block]:
    """Yield the spec sheet as at an episode."""
    context = _spec(desk, number)
    yield _properties(f"The car, {_as_at(desk, number)}", context.car)
    yield _properties("Settings", context.settings)
    yield figure_block(context.figures)
    yield _readings(context.readings)
    fitted = tuple(
        (system.title, _named(row.part), row.count, row.since.text)
        for system in context.systems
        for row in system.rows
    )
    yield Block(title="Fitted", headings=("System", "Part", "Count", "Since"), rows=fitted)
    joins = tuple(
        (_side(each.a), _side(each.b), each.verdict, each.episode.text) for each in context.joins
    )
    yield Block(title="Joins", headings=("End", "Joined to", "Verdict", "Since"), rows=joins)
    yield from _warnings(context.joins)


def _readings(rows: Iterable[ReadingRow]) -> Block:
    return Block(
        title="Last measured",
        headings=("What", "Value", "Evidence", "Since", "Note"),
        rows=tuple(
            (each.what, each.values, each.evidence, each.since.text, each.note) for each in rows
        ),
    )


def _side(end: EndShown) -> str:
    return f"{end.part.text} {end.name} ({end.full})"


def _warnings(rows: Iterable[JoinRow]) -> Iterator[Block]:
    """Yield the joins that must not be made, where there are any."""
    told = tuple(
        (
            f"{_side(row.a)} to {_side(row.b)}",
            row.why,
            row.tell_apart,
            row.goes_wrong,
            row.knowingly,
        )
        for row in never_joined(rows)
    )
    if told:
        headings = ("Ends", "Why", "Tell apart by", "What goes wrong", "Its author knows")
        yield Block(title="Looks right, do not join", headings=headings, rows=told)


def _spec(desk: Desk, number: int) -> SpecContext:
    address = links.spec(number)
    (page,) = (each for each in spec_pages(desk) if each.address == address)
    if not isinstance(page.context, SpecContext):
        raise TypeError(f"{address} is not a spec sheet")
    return page.context


def change_blocks(desk: Desk, before: int, after: int) -> Iterator[Block]:
    """Yield what changed from one episode to another."""
    changes = differences(desk.states[before], desk.states[after])
    rows = tuple(_change(each) for each in rejoined(change_rows(desk, changes, before)))
    yield Block(
        title=f"Changes from {_as_at(desk, before)} to {_as_at(desk, after)}",
        headings=("What", "Change", "Before", "After"),
        rows=rows,
    )
    held = {join_words(each.join) for each in desk.verdicts(before)}
    made = zip(desk.verdicts(after), joins_held(desk, after), strict=True)
    yield from _warnings(row for each, row in made if join_words(each.join) not in held)


def _change(row: ChangeRow) -> tuple[str, ...]:
    what = " ".join(each for each in (*(part.text for part in row.parts), row.what) if each)
    before, after = (
        words or (f"{end.part.text} {end.end}" if end else "")
        for words, end in ((row.before, row.parted), (row.after, row.joined))
    )
    return what, row.kind, before, after


def figure_block(figures: Iterable[FigureRow]) -> Block:
    """Return figures with all that must stand beside them."""
    return Block(
        title="Figures",
        headings=("Figure", "Of", ">Value", "95 % band", "Evidence", "Limit"),
        rows=tuple(_figure(each) for each in figures),
    )


def _figure(row: FigureRow) -> tuple[str, ...]:
    of = row.subject.text if row.subject else ""
    if row.now is None:
        return (row.title, of, "missing", "", "", f"give {'; '.join(row.missing)}")
    title = ", ".join(each for each in (row.title, row.now.headline, row.now.standard) if each)
    return (title, of, row.now.value, row.now.band, row.now.evidence, row.now.limit)


def _properties(title: str, rows: Iterable[SpecRow]) -> Block:
    return Block(
        title=title,
        headings=("Property", "Value", "Evidence", "Since"),
        rows=tuple((each.name, each.value, each.evidence, each.since.text) for each in rows),
    )


def _entries(entries: Iterable[Entry]) -> tuple[tuple[str, ...], ...]:
    return tuple((each.label, each.text) for each in entries)


def _named(part: PartRef) -> str:
    return f"{part.text} ({part.fate})" if part.fate else part.text


def _as_at(desk: Desk, number: int) -> str:
    return "the car as bought" if number == 0 else f"episode {number}"
