"""What changed from one state to another, in words, and the page of all changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.history.state import Change
from hoistbook.pages.became import standing
from hoistbook.pages.desk import Desk, NamePart
from hoistbook.pages.shown import PartRef
from hoistbook.pages.spec import in_short, stated


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherEnd:
    """What the end of a part was joined to."""

    part: PartRef
    end: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """One difference between two states, or one that several parts share."""

    what: str
    """"Mass", "Boost"; for a join, the end of the part; empty where the parts say it all."""
    parts: tuple[PartRef, ...]
    """Several where the same befell all of them; none for the car and its settings."""
    kind: str
    """"fitted", "taken off", "set"."""
    before: str
    after: str
    because: str
    parted: OtherEnd | None
    """What the end was joined to before."""
    joined: OtherEnd | None
    """What the end is joined to now."""
    number: int
    """The episode that changed it."""


def change_table(
    desk: Desk, changes: Iterable[Change], start: int, name: NamePart
) -> tuple[ChangeRow, ...]:
    """Return changes as the rows of a table: as few as say all.

    An end that was parted and joined anew is one row, and so are parts that the same befell.
    """
    return _gathered(rejoined(change_rows(desk, changes, start, name)))


def on_the_car(change: Change) -> bool:
    """Return whether a change is one of the car; buying and planning stand with the receipts."""
    return change.kind not in ("came", "ordered", "planned")


def change_rows(
    desk: Desk, changes: Iterable[Change], start: int, name: NamePart | None = None
) -> tuple[ChangeRow, ...]:
    """Return changes since the state of an episode in the words of a page, a row for each."""
    return tuple(_row(desk, each, start, name or desk.part) for each in changes)


def _row(desk: Desk, change: Change, start: int, name: NamePart) -> ChangeRow:
    about, _, of = change.subject.partition(":")
    if about == "join":
        return _join_row(desk, change, name)
    is_part = about == "part"
    if is_part:
        before, after = _standing(desk, start, of), _after(desk, change, of, start)
    else:
        before, after = set_words(desk, of, start, change.episode)
    return ChangeRow(
        what="" if is_part else of[:1].upper() + of[1:],
        parts=(name(of),) if is_part else (),
        kind=_kind(desk, change),
        before=before,
        after=after,
        because=change.because or "",
        parted=None,
        joined=None,
        number=change.episode,
    )


def _kind(desk: Desk, change: Change) -> str:
    return desk.words(f"change.{change.kind.replace(' ', '_')}")


def set_words(
    desk: Desk, name: str, start: int, end: int, *, all_states: bool = False
) -> tuple[str, str]:
    """Return a property of the car, or a setting, as at two episodes, with how it is known.

    A list by engine speed is said in short where that tells the two apart, or all states.
    """
    told = desk.states if all_states else (start, end)
    short = {number: _set(desk, name, number, in_short) for number in told}
    whole = {number: _set(desk, name, number, stated) for number in told}
    shown = short if len(set(short.values())) == len(set(whole.values())) else whole
    return shown[start], shown[end]


def _set(
    desk: Desk, name: str, number: int, text: Callable[[Desk, Given | BoostBySpeed], str]
) -> str:
    state = desk.states[number]
    dated = state.car.get(name) or state.settings.get(name)
    if dated is None:
        return ""
    evidence = desk.evidence(dated.value, setting=name in state.settings)
    value = text(desk, dated.value)
    return desk.words("change.value", value=value, evidence=evidence) if evidence else value


def _after(desk: Desk, change: Change, part_id: str, start: int) -> str:
    """Return how things stand after a change; what replaced a part goes by its name."""
    state = desk.states[change.episode].parts.get(part_id)
    after = _standing(desk, change.episode, part_id)
    if change.kind == "replaced" and state is not None and state.replaced_by is not None:
        after = desk.words("change.replaced_by", part=desk.part_name(state.replaced_by))
    broke = state is not None and state.broke_in is not None and state.broke_in > start
    return desk.words("change.and_broke", after=after) if broke else after


def _standing(desk: Desk, number: int, part_id: str) -> str:
    state = desk.states[number].parts.get(part_id)
    return standing(desk.words, desk.part_name, state) if state else ""


def _join_row(desk: Desk, change: Change, name: NamePart) -> ChangeRow:
    """Return a join made or undone, its parts named and linked."""
    join = desk.joins[change.before or change.after or ""]
    own, other = name(join.a.part), OtherEnd(part=name(join.b.part), end=join.b.end)
    return ChangeRow(
        what=join.a.end,
        parts=(own,),
        kind=_kind(desk, change),
        before="",
        after="",
        because=change.because or "",
        parted=other if change.before else None,
        joined=other if change.after else None,
        number=change.episode,
    )


def rejoined(rows: Sequence[ChangeRow]) -> tuple[ChangeRow, ...]:
    """Return the rows with an end that was parted, and joined to another, as one row."""
    kept = list(rows)
    for row in rows:
        if row.joined is None:
            continue
        found = next(((old, way) for old in kept for way in _anew(old, row)), None)
        if found is not None:
            old, way = found
            kept[kept.index(row)] = way
            kept.remove(old)
    return tuple(kept)


def _anew(old: ChangeRow, new: ChangeRow) -> Iterator[ChangeRow]:
    """Yield the one row that a join parted and a join made come to, if they share an end."""
    if old.parted is None or old.joined is not None:
        return
    for before in (old, _turned(old)):
        for after in (new, _turned(new)):
            if _end(before) == _end(after):
                yield replace(after, parted=before.parted)


def _end(row: ChangeRow) -> tuple[str, str]:
    return row.parts[0].address, row.what


def _turned(row: ChangeRow) -> ChangeRow:
    """Return a join told from its other end."""
    other = row.joined or row.parted
    if other is None:
        return row
    own = OtherEnd(part=row.parts[0], end=row.what)
    return replace(
        row,
        what=other.end,
        parts=(other.part,),
        parted=own if row.parted else None,
        joined=own if row.joined else None,
    )


def _gathered(rows: Iterable[ChangeRow]) -> tuple[ChangeRow, ...]:
    """Return the rows with parts that the same befell as one, where the first stood."""
    found: dict[ChangeRow, list[PartRef]] = {}
    for row in rows:
        alone = row.what or not row.parts
        found.setdefault(row if alone else replace(row, parts=()), []).extend(row.parts)
    return tuple(replace(row, parts=tuple(parts)) for row, parts in found.items())


def sentence_of(desk: Desk, row: ChangeRow) -> str:
    """Return a change as one sentence: "Boost: 0.6 bar gauge, before 0.4 bar gauge"."""
    what = " ".join(each for each in (*(part.text for part in row.parts), row.what) if each)
    other = row.joined or row.parted
    if other:
        text = f"{row.kind} {other.part.text} {other.end}"
        return desk.words("change.plain", what=what, kind=text)
    if row.before and row.after and not row.parts:
        return desk.words("change.from_to", what=what, before=row.before, after=row.after)
    return desk.words("change.plain", what=what, kind=row.after or row.kind)
