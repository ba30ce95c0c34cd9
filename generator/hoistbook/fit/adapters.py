"""Parts on hand that would go between two ends that do not go together."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import permutations

from hoistbook.fit.flows import typed_ends
from hoistbook.fit.rules import fit
from hoistbook.fit.verdict import CLOSING, Service
from hoistbook.history.state import State, Status
from hoistbook.values.end import End


def adapters(a: End, b: End, state: State, service: Service) -> tuple[str, ...]:
    """Return the parts on hand of which two ends mate with two ends, by id."""
    return tuple(
        each.part.id
        for each in state.parts.values()
        if each.status is Status.ON_HAND
        and _goes_between(a, b, list(typed_ends([each.part]).values()), service)
    )


def _goes_between(a: End, b: End, ends: Sequence[End], service: Service) -> bool:
    return any(
        fit(a, one, service).verdict in CLOSING and fit(b, other, service).verdict in CLOSING
        for one, other in permutations(ends, 2)
    )
