"""What became of each part by the last episode, as it stands beside the part on every page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from hoistbook.authored.records import Part, Verb
from hoistbook.history.state import Event, Fate, Outcome, PartState, State, Status

WORKSHOP = "workshop"
"""The system of tools and consumables, which are used without being fitted."""
CLOTHING = "clothing"
"""The kind of what the driver wears: overalls, helmet, gloves."""


def used_unfitted(part: Part) -> bool:
    """Tell whether a part is in use as soon as it is here, since nobody fits it to a car."""
    return part.system == WORKSHOP or part.kind == CLOTHING


def fates(states: Sequence[State]) -> dict[str, Fate]:
    """Return what became of every part of a build, by its id."""
    last = states[-1].parts
    return {id_: fate(state, last) for id_, state in last.items()}


def fate(state: PartState, parts: Mapping[str, PartState]) -> Fate:
    """Return what became of one part."""
    if state.built_into is not None and not state.pieces_fitted:
        return fate_of_piece(state, parts)
    if state.status is Status.GONE:
        return gone(state, parts)
    if state.replaced_by is not None:
        events = (*broke(state), replaced(state, parts))
        return told(Outcome.REPLACED, state.replaced_in, state, *events)
    if state.broken:
        return told(Outcome.BROKEN, state.broke_in, state, *broke(state))
    here = state.status is Status.ON_HAND
    if state.status is Status.FITTED or (here and used_unfitted(state.part)):
        return Fate(outcome=Outcome.IN_USE, events=some_broke(state))
    if state.last is not None and state.last.verb is Verb.TRIED:
        tried = Event(how="did not fit", episode=state.since)
        return told(Outcome.DID_NOT_FIT, state.since, state, tried)
    if state.fitted_in is not None:
        off = Event(how="taken off", episode=state.since)
        return told(Outcome.TAKEN_OFF, state.since, state, off)
    waiting = Event(how=str(state.status))
    return Fate(outcome=Outcome.NOT_YET, episode=state.since, events=(waiting,))


def gone(state: PartState, parts: Mapping[str, PartState]) -> Fate:
    """Return the fate of a part that has left the build, and of one replaced before it left."""
    amount = state.last.amount if state.last is not None else None
    left = Event(how=state.how_gone or str(state.status), episode=state.since, amount=amount)
    if state.replaced_by is not None and state.came_in is None:
        instead = replace(left, part=parts[state.replaced_by].part.name)
        return told(Outcome.GONE, state.since, state, instead)
    if state.replaced_by is not None:
        after = replaced(state, parts)
        first = state.since < (after.episode or state.since)
        events = (left, after) if first else (after, left)
        return told(Outcome.REPLACED, after.episode, state, *broke(state), *events)
    return told(Outcome.GONE, state.since, state, *broke(state), left)


def replaced(state: PartState, parts: Mapping[str, PartState]) -> Event:
    """Return that a part was replaced, in which episode and by what."""
    by = parts[state.replaced_by or ""].part.name
    return Event(how="replaced", episode=state.replaced_in or state.since, part=by)


def broke(state: PartState) -> tuple[Event, ...]:
    """Return that a part broke, and in which episode, if it did."""
    return (Event(how="broke", episode=state.broke_in),) if state.broken else ()


def some_broke(state: PartState) -> tuple[Event, ...]:
    """Return that of several one or more broke, and how many are left, if they did."""
    if state.broke_in is None:
        return ()
    left = (state.pieces_left or 0, state.part.count)
    return (Event(how="broke", episode=state.broke_in, left=left),)


def fate_of_piece(state: PartState, parts: Mapping[str, PartState]) -> Fate:
    """Return the fate of a part that was used up in a made one: it shares that one's."""
    made = parts[state.built_into or ""]
    shared = fate(made, parts)
    left = (state.pieces_left, state.part.count) if state.pieces_left else None
    used = Event(how="built into", episode=state.built_in, part=made.part.name, left=left)
    return Fate(
        outcome=shared.outcome,
        episode=state.built_in,
        events=(used,),
        shared=shared if shared.events else None,
    )


def told(outcome: Outcome, episode: int | None, state: PartState, *events: Event) -> Fate:
    """Return a fate with its reason, where one was given."""
    return Fate(outcome=outcome, episode=episode, events=events, because=state.because or "")
