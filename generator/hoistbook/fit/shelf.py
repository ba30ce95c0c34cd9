"""Ends sorted by what could mate with them, so that few pairs need to be judged."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.rules import fit
from hoistbook.fit.thread_rules import family_name
from hoistbook.fit.threads import thread_of
from hoistbook.fit.verdict import CLOSING, Fit, Service
from hoistbook.values.end import ROUND, THREADED, End, EndKind

NEAR = 0.04
"""Diameters of ends that mate differ by less than this share; a sieve before the rules."""


class Shelf:
    """Ends to choose from."""

    def __init__(self, ends: Mapping[JoinEnd, End]) -> None:
        self._ends = ends
        self._by_size: dict[tuple[str, object], list[JoinEnd]] = {}
        for key, end in ends.items():
            for mark in marks(end):
                self._by_size.setdefault(mark, []).append(key)

    def closing(self, end: End, service: Service) -> Iterator[tuple[JoinEnd, Fit]]:
        """Yield the ends that mate with one under a service, each with the verdict."""
        for mark in sought(end):
            for key in self._by_size.get(mark, ()):
                judged = fit(end, self._ends[key], service)
                if judged.verdict in CLOSING:
                    yield key, judged


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
