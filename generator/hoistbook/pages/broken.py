"""What broke: each part that did, why, what replaced it and what that cost."""

from __future__ import annotations

from dataclasses import dataclass, replace

from hoistbook.authored.records import Done, Verb
from hoistbook.history.ledger import Stage
from hoistbook.history.state import own_count
from hoistbook.pages.amounts import amounts_by_part
from hoistbook.pages.desk import Desk
from hoistbook.pages.shown import Link, PartRef


@dataclass(frozen=True, slots=True, kw_only=True)
class BrokenRow:
    """A part that broke, or some of several."""

    part: PartRef
    """Without its fate, which the row tells."""
    count: str
    """"1 of 10"; empty for all there were."""
    episode: Link
    date: str
    because: str
    """What happened; empty where the author does not say."""
    by: PartRef | None
    """What replaced it; None where nothing else did."""
    otherwise: str
    """What is said where no other part replaced it: "a spare one of the same"."""
    since: Link | None
    """The episode that replaced it, where that is a later one."""
    cost: Link | None
    """Of what replaced it, as the tally has it, leading there; None where nothing was paid."""


def broken_rows(desk: Desk) -> tuple[BrokenRow, ...]:
    """Return all that broke in the episodes shown, in their order."""
    return tuple(
        _row(desk, number, done, at)
        for number, episode in desk.episodes.items()
        for at, done in enumerate(episode.done)
        if done.verb is Verb.BROKE
    )


def _row(desk: Desk, number: int, broke: Done, at: int) -> BrokenRow:
    since, by = _replaced(desk, number, broke, at)
    other = by if by != broke.part else None
    count, day = _count(desk, broke), broke.date or desk.episodes[number].filmed
    same = "broke.spare" if count else "broke.mended"
    return BrokenRow(
        part=_named(desk, broke.part),
        count=count,
        episode=desk.episode(number),
        date=desk.formats.date(day) if day else "",
        because=broke.because or "",
        by=_named(desk, other) if other else None,
        otherwise="" if other else desk.words(same if by else "broke.not_replaced"),
        since=desk.episode(since) if since != number else None,
        cost=_cost(desk, other) if other else None,
    )


def _named(desk: Desk, part_id: str) -> PartRef:
    return replace(desk.part(part_id), fate="")


def _count(desk: Desk, broke: Done) -> str:
    part = desk.states[desk.last].parts[broke.part].part
    there = own_count(part)
    if broke.count is None or broke.count == there:
        return ""
    return desk.words("broke.count", n=broke.count, count=there)


def _replaced(desk: Desk, number: int, broke: Done, at: int) -> tuple[int, str | None]:
    """Return in which episode what broke was replaced, and by which part; itself for a spare."""
    for later, episode in desk.episodes.items():
        if later < number:
            continue
        state = desk.states[later].parts[broke.part]
        if state.replaced_by is not None and (state.replaced_in or 0) >= number:
            return later, state.replaced_by
        done = episode.done[at + 1 :] if later == number else episode.done
        if any(each.verb is Verb.FITTED and each.part == broke.part for each in done):
            return later, broke.part
    return number, None


def _cost(desk: Desk, part_id: str) -> Link | None:
    for entry, address in amounts_by_part(desk).get(part_id, ()):
        if entry.stage is Stage.SPENT and entry.home > 0:
            return Link(text=desk.home_money(entry.home), address=address)
    return None
