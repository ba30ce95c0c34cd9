"""What became of each part by the last episode, as it stands beside the part on every page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from hoistbook.authored.records import Verb
from hoistbook.history.state import Fate, Outcome, PartState, State, Status

WORKSHOP = "workshop"
"""The system of tools and consumables, which are used without being fitted."""


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
        by = parts[state.replaced_by].part.name
        text = f"replaced in episode {state.replaced_in} by {by}"
        return told(Outcome.REPLACED, state.replaced_in, text, state)
    if state.broken:
        return told(Outcome.BROKEN, state.broke_in, f"broke in episode {state.broke_in}", state)
    if state.status is Status.FITTED or state.part.system == WORKSHOP:
        return Fate(outcome=Outcome.IN_USE, episode=None, text="")
    if state.last is not None and state.last.verb is Verb.TRIED:
        return told(
            Outcome.DID_NOT_FIT, state.since, f"did not fit in episode {state.since}", state
        )
    if state.fitted_in is not None:
        return told(Outcome.TAKEN_OFF, state.since, f"taken off in episode {state.since}", state)
    return Fate(outcome=Outcome.NOT_YET, episode=state.since, text=NOT_YET[state.status])


NOT_YET = {
    Status.PLANNED: "planned, not bought",
    Status.ORDERED: "ordered, not here yet",
    Status.ON_HAND: "on hand, not fitted",
}


def gone(state: PartState, parts: Mapping[str, PartState]) -> Fate:
    """Return the fate of a part that has left the build, and of one replaced before it left."""
    how = f"{state.how_gone} in episode {state.since}"
    if state.last is not None and state.last.amount is not None:
        how += f" for {state.last.amount.amount} {state.last.amount.currency}"
    by = None if state.replaced_by is None else parts[state.replaced_by].part.name
    if by is not None and state.came_in is None:
        return told(Outcome.GONE, state.since, f"{how} for {by}", state)
    if by is not None:
        replaced_in = state.replaced_in or state.since
        replaced = f"replaced in episode {replaced_in} by {by}"
        both = f"{how}; {replaced}" if state.since < replaced_in else f"{replaced}; {how}"
        return told(Outcome.REPLACED, replaced_in, both, state)
    if state.broken:
        return told(Outcome.GONE, state.since, f"broke in episode {state.broke_in}; {how}", state)
    return told(Outcome.GONE, state.since, how, state)


def fate_of_piece(state: PartState, parts: Mapping[str, PartState]) -> Fate:
    """Return the fate of a part that was used up in a made one: it shares that one's."""
    made = parts[state.built_into or ""]
    shared = fate(made, parts)
    text = f"built into {made.part.name} in episode {state.built_in}"
    if state.pieces_left:
        text += f", {state.pieces_left} of {state.part.count} left"
    if shared.text:
        text += f"; {made.part.name}: {shared.text}"
    return Fate(outcome=shared.outcome, episode=state.built_in, text=text)


def told(outcome: Outcome, episode: int | None, text: str, state: PartState) -> Fate:
    """Return a fate with its reason, where one was given."""
    reason = f": {state.because}" if state.because else ""
    return Fate(outcome=outcome, episode=episode, text=text + reason)
