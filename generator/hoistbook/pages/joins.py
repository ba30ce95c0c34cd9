"""Joins as pages show them: ends in full, the verdict in words, what to add, how to tell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from hoistbook.authored.records import JoinEnd
from hoistbook.fit.adapters import adapters, spare_ends
from hoistbook.fit.flows import PASCAL_PER_BAR
from hoistbook.fit.joins import JoinVerdict
from hoistbook.fit.verdict import Verdict
from hoistbook.pages.desk import Desk, NamePart
from hoistbook.pages.shown import Link, PartRef
from hoistbook.units import from_unit


@dataclass(frozen=True, slots=True, kw_only=True)
class EndShown:
    """One side of a join."""

    part: PartRef
    name: str
    """"oil in"."""
    full: str
    """"M12x1.5, female, flat port"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinRow:
    """A join with its verdict; every text is ready to print, an empty one says nothing."""

    a: EndShown
    b: EndShown
    flow: str
    """"oil"."""
    service: str
    """"0.8 bar gauge, 113 °C"."""
    verdict: str
    """"mates", "looks right, do not join": printed wherever the join stands."""
    never: bool
    """True where the ends must not be joined: a theme prints its warning."""
    why: str
    sealant: str
    """What must be added."""
    sealed_with: str
    """What its author put there."""
    torque: str
    """The author's own."""
    how: str
    """How tight it is usually made."""
    source: str
    """Of `how`."""
    tell_apart: str
    goes_wrong: str
    adapter: str
    between: tuple[PartRef, ...]
    """Parts on hand that would go between."""
    measure: str
    notes: tuple[str, ...]
    knowingly: str
    """Why its author joins what must not be joined."""
    note: str
    episode: Link
    """The one that joined it."""

    def beside(self, part: str, end: str) -> EndShown:
        """Return the other side, by the address of a part and the name of its end."""
        own = self.a.part.address == part and self.a.name == end
        return self.b if own else self.a


def join_row(desk: Desk, judged: JoinVerdict, number: int, name: NamePart) -> JoinRow:
    """Return a join as a row, as at an episode, in a section that names parts in one way."""
    join, found = judged.join, judged.fit
    sides = (
        EndShown(part=name(key.part), name=key.end, full=end.full)
        for key, end in zip((join.a, join.b), judged.ends, strict=True)
    )
    a, b = sides
    return JoinRow(
        a=a,
        b=b,
        flow=desk.word("flow", judged.flow) if judged.flow else "",
        service=_service(desk, judged),
        verdict=desk.word("verdict", found.verdict),
        never=found.verdict is Verdict.LOOKS_RIGHT,
        why=found.why,
        sealant=found.sealant,
        sealed_with=join.sealed_with or "",
        torque=desk.formats.given(join.torque) if join.torque else "",
        how=judged.make_up.how,
        source=judged.make_up.source,
        tell_apart=found.tell_apart,
        goes_wrong=found.goes_wrong,
        adapter=found.adapter,
        between=tuple(map(name, _between(desk, judged, number))),
        measure=found.measure,
        notes=found.notes,
        knowingly=join.knowingly or "",
        note=join.note or "",
        episode=desk.episode(judged.episode),
    )


def _between(desk: Desk, judged: JoinVerdict, number: int) -> tuple[str, ...]:
    """Return the parts on hand that would go between ends that need an adapter."""
    if judged.fit.verdict is not Verdict.NEEDS_ADAPTER:
        return ()
    return adapters(*judged.ends, spare_ends(desk.states[number]), judged.service)


def _service(desk: Desk, judged: JoinVerdict) -> str:
    """Return pressure and temperature that a join sees, where they are known and matter."""
    service, formats = judged.service, desk.formats
    pieces = []
    if service.pressure:
        pressure = formats.quantity(service.pressure * PASCAL_PER_BAR, "boost")
        pieces.append(desk.words("joins.gauge", pressure=pressure))
    if service.temperature is not None:
        pieces.append(
            formats.quantity(from_unit(service.temperature, "degC"), "charge_temperature")
        )
    return ", ".join(pieces)


def joins_made(desk: Desk, number: int) -> tuple[JoinRow, ...]:
    """Return the joins that an episode made."""
    name = desk.naming(number)
    return tuple(
        join_row(desk, each, number, name)
        for each in desk.verdicts(number)
        if each.episode == number
    )


def joins_held(desk: Desk, number: int) -> tuple[JoinRow, ...]:
    """Return the joins that hold at an episode."""
    name = desk.naming(number)
    return tuple(join_row(desk, each, number, name) for each in desk.verdicts(number))


def joins_of(desk: Desk, part: str) -> dict[JoinEnd, JoinRow]:
    """Return the joins of a part as at the last episode, by its own end."""
    name = desk.naming()
    return {
        own: join_row(desk, each, desk.last, name) for own, each in _by_part(desk).get(part, ())
    }


@lru_cache(maxsize=1)
def _by_part(desk: Desk) -> dict[str, list[tuple[JoinEnd, JoinVerdict]]]:
    """Return the joins as at the last episode by part, gone through once for all pages."""
    found: dict[str, list[tuple[JoinEnd, JoinVerdict]]] = {}
    for each in desk.verdicts(desk.last):
        for own in (each.join.a, each.join.b):
            found.setdefault(own.part, []).append((own, each))
    return found


def never_joined(rows: Iterable[JoinRow]) -> Iterator[JoinRow]:
    """Yield the rows that a page must warn of."""
    return (row for row in rows if row.never)
