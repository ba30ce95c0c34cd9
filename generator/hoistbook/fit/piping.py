"""All ends of a state with what flows through them, worked out once for all that asks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hoistbook.authored.records import Join, JoinEnd
from hoistbook.fit.flows import Flow, TypedEnds, flows_of, typed_ends
from hoistbook.history.state import State, Status
from hoistbook.values.end import End

NOT_WRITTEN = End(
    unclear="nobody wrote down what this end is",
    measure="a caliper and a thread gauge; write it under ends: of its part",
)
"""An end that a join names and its part does not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piping:
    """A state as its ends see it."""

    state: State
    ends: TypedEnds
    """Of all parts that are not gone, and those that joins only name."""
    flows: Mapping[JoinEnd, Flow]

    def flow_in(self, join: Join) -> Flow | None:
        """Return what flows through a join, None where nothing says it."""
        return self.flows.get(join.a) or self.flows.get(join.b)


def piping_of(state: State) -> Piping:
    """Return the ends of a state with what flows through each."""
    ends = typed_ends(each.part for each in state.parts.values() if each.status is not Status.GONE)
    for dated in state.joins:
        for key in (dated.value.a, dated.value.b):
            ends.setdefault(key, NOT_WRITTEN)
    return Piping(state=state, ends=ends, flows=flows_of(state, ends))
