"""The verdict on every join of a state, with how it is made up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from hoistbook.authored.records import Join, JoinEnd
from hoistbook.fit.adapters import adapters
from hoistbook.fit.drains import drain_notes
from hoistbook.fit.flows import MEDIA, Flow, TypedEnds, flows_of, typed_ends
from hoistbook.fit.make_up import MakeUp, make_up
from hoistbook.fit.rules import fit
from hoistbook.fit.verdict import NOTHING_SAID, Fit, Service, Verdict
from hoistbook.history.state import State, Status
from hoistbook.values.end import End

JoinKey = tuple[JoinEnd, JoinEnd]
"""The two ends of a join, as its author wrote them."""
NO_SERVICE: Mapping[JoinKey, Service] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinVerdict:
    """One join as at one episode, judged."""

    join: Join
    episode: int
    """The episode that joined it."""
    ends: tuple[End, End]
    flow: Flow | None
    service: Service
    fit: Fit
    make_up: MakeUp
    adapters: tuple[str, ...] = ()
    """Ids of the parts on hand that would go between, of ends that need an adapter."""

    @property
    def alarms(self) -> bool:
        """Whether the join must not be made, and its author does not say that he knows."""
        return self.fit.verdict is Verdict.LOOKS_RIGHT and self.join.knowingly is None


def join_verdicts(
    state: State, service: Mapping[JoinKey, Service] = NO_SERVICE
) -> tuple[JoinVerdict, ...]:
    """Return the verdict on every join that holds, in the order in which they were made.

    Parameters
    ----------
    state : State
        The build as at one episode.
    service : mapping
        What joins must carry, as far as known; what flows is told from the parts where it
        says nothing.
    """
    ends = joined_ends(state)
    flows = flows_of(state, ends)
    return tuple(
        _judged(dated.value, dated.episode, ends, flows, service, state) for dated in state.joins
    )


def joined_ends(state: State) -> dict[JoinEnd, End]:
    """Return the typed ends of all parts that are not gone, and those that joins only name."""
    ends = typed_ends(each.part for each in state.parts.values() if each.status is not Status.GONE)
    for dated in state.joins:
        for key in (dated.value.a, dated.value.b):
            ends.setdefault(key, NOT_WRITTEN)
    return ends


NOT_WRITTEN = End(
    unclear="nobody wrote down what this end is",
    measure="a caliper and a thread gauge; write it under ends: of its part",
)
"""An end that a join names and its part does not."""


def _judged(
    join: Join,
    episode: int,
    ends: TypedEnds,
    flows: Mapping[JoinEnd, Flow],
    service: Mapping[JoinKey, Service],
    state: State,
) -> JoinVerdict:
    flow = flows.get(join.a) or flows.get(join.b)
    carried = service.get((join.a, join.b), NOTHING_SAID)
    if carried.medium is None and flow is not None:
        carried = replace(carried, medium=MEDIA[flow])
    pair = ends[join.a], ends[join.b]
    found = fit(*pair, carried)
    if notes := tuple(drain_notes(join, pair, flow, state)):
        found = replace(found, notes=(*found.notes, *notes))
    return JoinVerdict(
        join=join,
        episode=episode,
        ends=pair,
        flow=flow,
        service=carried,
        fit=found,
        make_up=make_up(*pair, found, carried.medium),
        adapters=(
            adapters(*pair, state, carried) if found.verdict is Verdict.NEEDS_ADAPTER else ()
        ),
    )
