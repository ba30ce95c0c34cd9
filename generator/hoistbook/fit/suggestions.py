"""Open ends by what flows in them, and the parts on hand that would close them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.flows import MEDIA, Flow, flows_of
from hoistbook.fit.joins import joined_ends
from hoistbook.fit.rules import fit
from hoistbook.fit.thread_rules import family_name
from hoistbook.fit.threads import thread_of
from hoistbook.fit.verdict import CLOSING, Fit, Service
from hoistbook.history.state import State, Status
from hoistbook.values.end import ROUND, THREADED, End, EndKind

NEAR = 0.04
"""Diameters of ends that mate differ by less than this share; a sieve before the rules."""


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
    ends = joined_ends(state)
    flows = flows_of(state, ends)
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
    for other in shelf.near(ends[key]):
        on_hand = state.parts[other.part].status is Status.ON_HAND
        if other.part == key.part or (not on_hand and flows.get(other) is not flow):
            continue
        judged = fit(ends[key], ends[other], service)
        if judged.verdict in CLOSING:
            found.append(Candidate(end=other, fit=judged, on_hand=on_hand))
    return sorted(found, key=lambda each: not each.on_hand)


class Shelf:
    """Ends sorted by what could mate with them, so that few pairs need to be judged."""

    def __init__(self, ends: Mapping[JoinEnd, End]) -> None:
        self._by_size: dict[tuple[str, object], list[JoinEnd]] = {}
        for key, end in ends.items():
            for mark in marks(end):
                self._by_size.setdefault(mark, []).append(key)

    def near(self, end: End) -> Iterator[JoinEnd]:
        """Yield the ends that could mate with one."""
        for mark in sought(end):
            yield from self._by_size.get(mark, ())


def marks(end: End) -> tuple[tuple[str, object], ...]:
    """Return under what an end stands on the shelf; nothing for one that is unclear."""
    if end.unclear or end.kind is None:
        return ()
    if end.kind in THREADED:
        thread = thread_of(end)
        return (("thread", (family_name(thread.name), end.gender)),) if thread else ()
    if end.kind in ROUND or end.kind is EndKind.VBAND:
        return ((_sort(end), int(end.diameter or 0)),)
    return (("flange", end.size),)


def sought(end: End) -> Iterable[tuple[str, object]]:
    """Return under what the ends stand that could mate with one."""
    if end.unclear or end.kind is None:
        return ()
    if end.kind in THREADED:
        thread = thread_of(end)
        other = {"male": "female", "female": "male"}.get(end.gender or "")
        return (("thread", (family_name(thread.name), other)),) if thread else ()
    if end.kind in ROUND or end.kind is EndKind.VBAND:
        size = end.diameter or 0.0
        low, high = int(size * (1 - NEAR) - 1), int(size * (1 + NEAR) + 1)
        return ((sort, mm) for sort in MATES[_sort(end)] for mm in range(low, high + 1))
    return (("flange", end.size),)


def _sort(end: End) -> str:
    return SORTS.get(end.kind or EndKind.VBAND, "pipe")


SORTS = {
    EndKind.HOSE: "hose",
    EndKind.SILICONE: "hose",
    EndKind.COMPRESSION: "fitting",
    EndKind.TUBE: "tube",
    EndKind.VBAND: "band",
}
MATES = {
    "hose": ("pipe", "tube"),
    "pipe": ("hose",),
    "tube": ("hose", "fitting"),
    "fitting": ("tube",),
    "band": ("band",),
}
