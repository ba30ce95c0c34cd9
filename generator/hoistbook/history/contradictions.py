"""When a line under `done` cannot be true beside the lines before it.

Only contradictions are problems. What is merely odd about a car is left to its owner.
"""

from __future__ import annotations

from hoistbook.authored.records import Done, Verb
from hoistbook.history.state import PartState, Status
from hoistbook.problems import Problem

WORDS = {
    Verb.PLANNED: "planned",
    Verb.ORDERED: "ordered",
    Verb.ARRIVED: "arrived",
    Verb.FITTED: "fitted",
    Verb.TOOK_OFF: "taken off",
    Verb.TRIED: "tried",
    Verb.BROKE: "broken",
    Verb.SOLD: "sold",
    Verb.GAVE_AWAY: "given away",
    Verb.SENT_BACK: "sent back",
    Verb.SCRAPPED: "scrapped",
}
"""The participle of each verb, for sentences."""

NEEDS_THE_PART = (
    Verb.TOOK_OFF,
    Verb.TRIED,
    Verb.BROKE,
    Verb.SOLD,
    Verb.GAVE_AWAY,
    Verb.SENT_BACK,
)
"""What nobody can do to a part that is only planned."""

BRINGING = (Verb.PLANNED, Verb.ORDERED, Verb.ARRIVED, Verb.FITTED)
"""The verbs of a part that can come instead of another."""


def money_still_to_come(state: PartState, done: Done) -> bool:
    """Tell whether a line only adds the money to a sale or return written down before."""
    return (
        state.status is Status.GONE
        and state.last is not None
        and state.last.verb is done.verb
        and state.last.amount is None
        and done.amount is not None
    )


def contradiction(state: PartState, done: Done, episode: int) -> Problem | None:
    """Return what is contradictory about doing this to a part in that state, if anything is."""
    if money_still_to_come(state, done):
        return None
    return (
        _gone(state, done, episode)
        or _not_here(state, done)
        or _already(state, done, episode)
        or _never_fitted(state, done, episode)
        or _too_many(state, done)
        or _instead(done)
    )


def _gone(state: PartState, done: Done, episode: int) -> Problem | None:
    if state.status is not Status.GONE:
        return None
    return Problem(
        "gone-before",
        f"`{done.part}` was {state.how_gone} in episode {state.since} and cannot be "
        f"{WORDS[done.verb]} in episode {episode}",
        done.place,
        "if it came back, or this is another one, write it down under `got` with an id of its own",
    )


def _not_here(state: PartState, done: Done) -> Problem | None:
    if state.status is not Status.PLANNED or done.verb not in NEEDS_THE_PART:
        return None
    return Problem(
        "not-here-yet",
        f"`{done.part}` is only planned and cannot be {WORDS[done.verb]}",
        done.place,
        "write down how it came, under `bought` or `got`; a plan that is dropped is `scrapped`",
    )


def _already(state: PartState, done: Done, episode: int) -> Problem | None:
    bought_here = state.status is Status.ON_HAND and state.came_in == episode
    if done.verb in (Verb.PLANNED, Verb.ORDERED) and state.status in HERE:
        if done.verb is Verb.ORDERED and bought_here:
            return None
        return Problem(
            "already-here",
            f"`{done.part}` is {state.status} since episode {state.since} and cannot be "
            f"{WORDS[done.verb]} now",
            done.place,
            "if this is another one, give it an id of its own",
        )
    if done.verb is Verb.FITTED and state.pieces_fitted == state.pieces_left:
        return Problem(
            "fitted-twice",
            f"`{done.part}` is fitted since episode {state.fitted_in}",
            done.place,
            f"write `took off: {done.part}` where it came off, or leave this line out",
        )
    return None


HERE = (Status.ON_HAND, Status.FITTED)


def _never_fitted(state: PartState, done: Done, episode: int) -> Problem | None:
    if done.verb is not Verb.TOOK_OFF or state.pieces_fitted:
        return None
    if state.replaced_in == episode:
        return None
    return Problem(
        "removed-before-fitted",
        f"`{done.part}` is taken off in episode {episode} but is not on the car",
        done.place,
        f"write `fitted: {done.part}` where it was fitted, or leave this line out",
    )


def _too_many(state: PartState, done: Done) -> Problem | None:
    if done.count is None:
        return None
    left = state.pieces_left or 0
    there = {Verb.TOOK_OFF: state.pieces_fitted, Verb.FITTED: left - state.pieces_fitted}.get(
        done.verb, left
    )
    if done.count <= there:
        return None
    return Problem(
        "more-than-there-are",
        f"{done.count} of `{done.part}` cannot be {WORDS[done.verb]}: there "
        f"{'is' if there == 1 else 'are'} {there}",
        done.place,
        "correct the count, or write down the others that were bought",
    )


def _instead(done: Done) -> Problem | None:
    if done.instead_of is None:
        return None
    if done.instead_of == done.part:
        return Problem(
            "replaces-itself",
            f"`{done.part}` cannot come instead of itself",
            done.place,
            "name the old part after `instead of:`; if it is a new one of the same sort, give it "
            "an id of its own",
        )
    if done.verb in BRINGING:
        return None
    return Problem(
        "misplaced-instead",
        f"`instead of` says what a new part replaces; nothing new comes when `{done.part}` is "
        f"{WORDS[done.verb]}",
        done.place,
        "put `instead of` beside `planned`, `ordered`, `arrived` or `fitted` of the new part",
    )
