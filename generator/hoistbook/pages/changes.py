"""What changed from one state to another, in words, and the page of all changes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from hoistbook.history.differences import differences
from hoistbook.history.state import Change
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, PartRef, Sheet
from hoistbook.pages.spec import stated


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherEnd:
    """What the end of a part was joined to."""

    part: PartRef
    end: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """One difference between two states."""

    what: str
    """"Mass", "Boost"; for a join, the end of `part`; empty where `part` says it all."""
    part: PartRef | None
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

    whole: tuple[ChangeRow, ...]
    """What is otherwise about the car and its settings now than when it was bought."""
    episodes: tuple[EpisodeChanges, ...]


def changes_page(desk: Desk) -> Page:
    """Return the page of all changes."""
    shown = tuple(
        EpisodeChanges(
            episode=desk.episode(number),
            title=desk.episodes[number].title,
            number=number,
            rows=change_rows(desk, filter(_on_the_car, desk.changes[number]), desk.before(number)),
        )
        for number in desk.episodes
    )
    title = desk.words("changes.title")
    return Page(
        address=links.CHANGES,
        template="changes.html",
        title=title,
        description=desk.words("changes.description", title=desk.material.journal.title),
        context=ChangesContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("changes.lead"),
            contents=tuple(
                Link(text=each.episode.text, address=f"#episode-{each.number}") for each in shown
            ),
            whole=_whole(desk),
            episodes=shown,
        ),
        owed=desk.owed(links.CHANGES),
    )


def _on_the_car(change: Change) -> bool:
    return change.kind not in ("came", "ordered", "planned")


def _whole(desk: Desk) -> tuple[ChangeRow, ...]:
    changes = differences(desk.states[0], desk.states[desk.last])
    return change_rows(desk, (each for each in changes if each.kind == "set"), 0)


def change_rows(desk: Desk, changes: Iterable[Change], start: int) -> tuple[ChangeRow, ...]:
    """Return changes since the state of an episode in the words of a page."""
    return tuple(_row(desk, each, start) for each in changes)


def _row(desk: Desk, change: Change, start: int) -> ChangeRow:
    about, _, name = change.subject.partition(":")
    kind = desk.words(f"change.{change.kind.replace(' ', '_')}")
    if about == "join":
        return _join_row(desk, change, kind)
    is_part = about == "part"
    return ChangeRow(
        what="" if is_part else name[:1].upper() + name[1:],
        part=desk.part(name) if is_part else None,
        kind=kind,
        before=(change.before or "") if is_part else _set(desk, start, name),
        after=_after(desk, change, name) if is_part else _set(desk, change.episode, name),
        because=change.because or "",
        parted=None,
        joined=None,
        number=change.episode,
    )


def _set(desk: Desk, number: int, name: str) -> str:
    """Return a property of the car, or a setting, as at an episode, with how it is known."""
    state = desk.states[number]
    dated = state.car.get(name) or state.settings.get(name)
    if dated is None:
        return ""
    value = stated(desk, dated.value)
    return desk.words("change.value", value=value, evidence=dated.value.evidence)


def _after(desk: Desk, change: Change, name: str) -> str:
    """Return how things stand after a change; what replaced a part goes by its name."""
    if change.kind == "replaced":
        other = desk.states[change.episode].parts[name].replaced_by
        if other is not None:
            return desk.words("change.replaced_by", part=desk.part_name(other))
    return change.after or ""


def _join_row(desk: Desk, change: Change, kind: str) -> ChangeRow:
    """Return a join made or undone, its parts named and linked."""
    join = desk.joins[change.before or change.after or ""]
    other = OtherEnd(part=desk.part(join.b.part), end=join.b.end)
    return ChangeRow(
        what=join.a.end,
        part=desk.part(join.a.part),
        kind=kind,
        before="",
        after="",
        because=change.because or "",
        parted=other if change.before else None,
        joined=other if change.after else None,
        number=change.episode,
    )


def sentence_of(desk: Desk, row: ChangeRow) -> str:
    """Return a change as one sentence: "Boost: 0.6 bar gauge, before 0.4 bar gauge"."""
    what = " ".join(each for each in (row.part.text if row.part else "", row.what) if each)
    if row.joined or row.parted:
        other = row.joined or row.parted
        text = f"{row.kind} {other.part.text} {other.end}" if other else row.kind
        return desk.words("change.plain", what=what, kind=text)
    if row.before and row.after and row.part is None:
        return desk.words("change.from_to", what=what, before=row.before, after=row.after)
    return desk.words("change.plain", what=what, kind=row.after or row.kind)
