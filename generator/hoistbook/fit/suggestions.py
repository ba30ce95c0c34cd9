"""Open ends by what flows in them, and the parts on hand that would close them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.flows import MEDIA, Flow
from hoistbook.fit.piping import piping_of
from hoistbook.fit.shelf import Shelf
from hoistbook.fit.verdict import Fit, Service
from hoistbook.history.state import State, Status
from hoistbook.values.end import End


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """An end that would close another."""

    end: JoinEnd
    fit: Fit
    on_hand: bool
    """Whether its part lies there unused; else it is on the car and open as well."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenEnd:
    """An end of a fitted part that nothing is joined to."""

    end: JoinEnd
    typed: End
    flow: Flow | None
    closers: tuple[Candidate, ...]
    """Ends that mate with it, those on hand first; empty if nothing in the journal does."""


def open_ends(state: State, services: Mapping[Flow, Service] | None = None) -> tuple[OpenEnd, ...]:
    """Return the open ends of all fitted parts, with what would close each.

    Parameters
    ----------
    state : State
        The build as at one episode.
    services : mapping
        What each flow asks of a join, as far as known.
    """
    piping = piping_of(state)
    ends, flows = piping.ends, piping.flows
    taken = {key for dated in state.joins for key in (dated.value.a, dated.value.b)}
    free = [key for key in ends if key not in taken and _usable(state, key)]
    shelf = Shelf({key: ends[key] for key in free})
    return tuple(
        OpenEnd(
            end=key,
            typed=ends[key],
            flow=flows.get(key),
            closers=tuple(_closers(key, state, shelf, ends, flows, services or {})),
        )
        for key in free
        if state.parts[key.part].status is Status.FITTED
    )


def _usable(state: State, key: JoinEnd) -> bool:
    part = state.parts.get(key.part)
    return part is not None and part.status in (Status.FITTED, Status.ON_HAND) and not part.broken


def _closers(
    key: JoinEnd,
    state: State,
    shelf: Shelf,
    ends: Mapping[JoinEnd, End],
    flows: Mapping[JoinEnd, Flow],
    services: Mapping[Flow, Service],
) -> list[Candidate]:
    flow = flows.get(key)
    service = services.get(flow, Service(MEDIA[flow])) if flow else Service()
    if service.medium is None and flow is not None:
        service = replace(service, medium=MEDIA[flow])
    found = []
    for other, judged in shelf.closing(ends[key], service):
        on_hand = state.parts[other.part].status is Status.ON_HAND
        # Of parts on the car only an end that carries the same comes into question.
        if other.part != key.part and (on_hand or flows.get(other) is flow):
            found.append(Candidate(end=other, fit=judged, on_hand=on_hand))
    return sorted(found, key=lambda each: not each.on_hand)
