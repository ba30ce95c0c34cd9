"""The verdict on every join of a state, with how it is made up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from hoistbook.authored.records import Join, JoinEnd
from hoistbook.fit.bench import bolt_words
from hoistbook.fit.drains import drain_notes
from hoistbook.fit.flows import MEDIA, Flow
from hoistbook.fit.make_up import make_up
from hoistbook.fit.piping import Piping
from hoistbook.fit.rules import fit
from hoistbook.fit.verdict import NOTHING_SAID, Fit, MakeUp, Service, Verdict
from hoistbook.history.state import State
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

    @property
    def alarms(self) -> bool:
        """Whether the join must not be made, and its author does not say that he knows."""
        return self.fit.verdict is Verdict.LOOKS_RIGHT and self.join.knowingly is None


def judged(
    piping: Piping, service: Mapping[JoinKey, Service] = NO_SERVICE
) -> tuple[JoinVerdict, ...]:
    """Return the verdict on every join that holds, in the order in which they were made.

    Parameters
    ----------
    piping : Piping
        The ends of a state.
    service : mapping
        What joins must carry, as far as known; what flows is told from the parts where it
        says nothing.
    """
    return tuple(
        _judged(dated.value, dated.episode, piping, service) for dated in piping.state.joins
    )


def _judged(
    join: Join, episode: int, piping: Piping, service: Mapping[JoinKey, Service]
) -> JoinVerdict:
    flow = piping.flow_in(join)
    carried = service.get((join.a, join.b), NOTHING_SAID)
    if carried.medium is None and flow is not None:
        carried = replace(carried, medium=MEDIA[flow])
    pair = piping.ends[join.a], piping.ends[join.b]
    found = fit(*pair, carried)
    if notes := tuple(drain_notes(join, pair, flow, piping.state)):
        found = replace(found, notes=(*found.notes, *notes))
    return JoinVerdict(
        join=join,
        episode=episode,
        ends=pair,
        flow=flow,
        service=carried,
        fit=found,
        make_up=make_up(
            *pair, found, carried, _bolts(join, piping.state), _kinds(join, piping.state)
        ),
    )


def _bolts(join: Join, state: State) -> str:
    """Return what is said of the bolts of a join, what their part says included."""
    said = join.bolts or ""
    known = state.parts.get(said.partition(",")[0].strip())
    return f"{said}, {bolt_words(known.part)}" if known else said


def _kinds(join: Join, state: State) -> tuple[str, ...]:
    """Return the kinds of the parts of a join, as far as known."""
    parts = (state.parts.get(key.part) for key in (join.a, join.b))
    return tuple(kind for each in parts if each and (kind := each.part.kind))
