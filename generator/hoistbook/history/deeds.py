"""What each word under `done` does to a part, and when it contradicts what was written before."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from hoistbook.authored.parts import CAR
from hoistbook.authored.records import Done, Verb
from hoistbook.history.bench import UNBOUGHT, Bench
from hoistbook.history.coming import come_in
from hoistbook.history.contradictions import contradiction, money_still_to_come
from hoistbook.history.state import PartState, Status


def do(bench: Bench, done: Done) -> None:
    """Carry out one line under `done`, or put down why it cannot have been so."""
    if done.part == CAR and done.verb is Verb.SOLD:
        return
    if done.new_part is not None and not come_in(bench, done.new_part, STATUS_OF[done.verb]):
        return
    state = bench.find(done.part, done.place)
    if state is None:
        return
    problem = contradiction(state, done, bench.episode)
    if problem is not None:
        bench.problems.append(problem)
    elif money_still_to_come(state, done):
        bench.parts[done.part] = replace(state, last=done)
    else:
        after = DEEDS[done.verb](bench, state, done)
        bench.parts[done.part] = replace(
            after,
            changed_in=bench.episode,
            last=done,
            because=done.because or lasting(state, bench.episode),
        )
        take_its_place(bench, done)


def lasting(state: PartState, episode: int) -> str | None:
    """Return the reason that outlasts what is done next: why a part broke or was replaced.

    Why only some of several broke is told in the episode in which they did.
    """
    some_broke = state.broke_in == episode
    return state.because if state.broken or state.replaced_by or some_broke else None


def set_status(bench: Bench, state: PartState, done: Done) -> PartState:
    """Plan it, or order it."""
    return replace(state, status=STATUS_OF[done.verb], since=bench.episode)


def arrive(bench: Bench, state: PartState, done: Done) -> PartState:
    """Let it be here now."""
    return bench.come(state)


def fit(bench: Bench, state: PartState, done: Done) -> PartState:
    """Put it, or so many of it, on the car."""
    here = bench.come(state)
    left = here.pieces_left or 0
    count = left - here.pieces_fitted if done.count is None else done.count
    return replace(
        here,
        status=Status.FITTED,
        since=bench.episode,
        fitted_in=here.fitted_in if here.pieces_fitted else bench.episode,
        pieces_fitted=here.pieces_fitted + count,
        replaced_by=None,
        replaced_in=None,
    )


def take_off(bench: Bench, state: PartState, done: Done) -> PartState:
    """Take it, or so many of it, off the car."""
    return bench.take_off(state, state.pieces_fitted if done.count is None else done.count)


def try_on(bench: Bench, state: PartState, done: Done) -> PartState:
    """Hold it in place, find that it does not fit, and keep it on hand."""
    return replace(bench.come(state), since=bench.episode)


def break_(bench: Bench, state: PartState, done: Done) -> PartState:
    """Break it where it is; of several, the broken ones are used up."""
    here = replace(bench.come(state), broke_in=bench.episode)
    if done.count is None or done.count >= (here.pieces_left or 0):
        return replace(here, broken=True)
    if here.status is Status.FITTED:
        # A part breaks at work: those on the car go first, the spare ones are whole.
        here = bench.take_off(here, done.count)
    return bench.use_up(here, done.count, "broken")


def go(bench: Bench, state: PartState, done: Done) -> PartState:
    """Let it, or so many of it, leave the build; a plan that is scrapped is given up."""
    left = state.pieces_left or 0
    how = "given up" if state.status is Status.PLANNED else HOW_GONE[done.verb]
    return bench.use_up(state, left if done.count is None else done.count, how)


STATUS_OF = {Verb.PLANNED: Status.PLANNED, Verb.ORDERED: Status.ORDERED}

HOW_GONE = {
    Verb.SOLD: "sold",
    Verb.GAVE_AWAY: "given away",
    Verb.SENT_BACK: "sent back",
    Verb.SCRAPPED: "scrapped",
}

DEEDS: Mapping[Verb, Callable[[Bench, PartState, Done], PartState]] = {
    Verb.PLANNED: set_status,
    Verb.ORDERED: set_status,
    Verb.ARRIVED: arrive,
    Verb.FITTED: fit,
    Verb.TOOK_OFF: take_off,
    Verb.TRIED: try_on,
    Verb.BROKE: break_,
    Verb.SOLD: go,
    Verb.GAVE_AWAY: go,
    Verb.SENT_BACK: go,
    Verb.SCRAPPED: go,
}


def take_its_place(bench: Bench, done: Done) -> None:
    """Let the new part take the place of the old one, when it is said and once it is fitted.

    Until then the intention is remembered; an old part that was never bought is given up at once.
    """
    if done.instead_of is not None:
        old = bench.find(done.instead_of, done.place)
        if old is None:
            return
        bench.successors[done.part] = (old.part.id, done.because)
    if done.part not in bench.successors:
        return
    old_id, because = bench.successors[done.part]
    old = bench.parts[old_id]
    never_bought = old.status in UNBOUGHT and old.came_in is None
    if done.verb is not Verb.FITTED and not never_bought:
        return
    if never_bought:
        old = bench.use_up(old, old.pieces_left or 0, "given up")
    elif old.status is Status.FITTED:
        old = bench.take_off(old, old.pieces_fitted)
    bench.parts[old_id] = replace(
        old,
        changed_in=bench.episode,
        replaced_by=done.part,
        replaced_in=bench.episode,
        because=because or done.because or lasting(old, bench.episode),
    )
    del bench.successors[done.part]
