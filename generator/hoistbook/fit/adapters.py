"""Parts on hand that would go between two ends that do not go together."""

from __future__ import annotations

from hoistbook.fit.flows import typed_ends
from hoistbook.fit.shelf import Shelf
from hoistbook.fit.verdict import Service
from hoistbook.history.state import State, Status
from hoistbook.values.end import End


def spare_ends(state: State) -> Shelf:
    """Return the ends of all parts that lie on the shelf."""
    spare = (each.part for each in state.parts.values() if each.status is Status.ON_HAND)
    return Shelf(typed_ends(spare))


def adapters(a: End, b: End, spares: Shelf, service: Service) -> tuple[str, ...]:
    """Return the parts of which one end mates with one of two ends and another with the other.

    Parameters
    ----------
    a, b : End
        Two ends that do not go together.
    spares : Shelf
        The ends to choose from.
    service : Service
        What the join must carry.
    """
    beside_b = [key for key, _ in spares.closing(b, service)]
    found = (
        key.part
        for key, _ in spares.closing(a, service)
        if any(other.part == key.part and other != key for other in beside_b)
    )
    return tuple(dict.fromkeys(found))
