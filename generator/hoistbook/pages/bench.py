"""The fitting table: every join with its verdict, what to add and how tight, for the bench."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.fit.bench import Bolt, Load, bolts_of, loads_of
from hoistbook.pages import links
from hoistbook.pages.desk import Desk, sections
from hoistbook.pages.joins import JoinRow, joins_held, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.shown import PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltRow:
    """A bolt with its torque and what the state of its thread makes of it."""

    part: PartRef
    thread: str
    """"M8x1.25, 10.9"."""
    lubrication: str
    torque: str
    spread: str
    """"at that torque its preload is 74 to 111 % of the one aimed at"."""
    said: str
    """The torque that its owner or maker states; empty without."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadRow:
    """An electrical load with its wire and fuse."""

    part: PartRef
    current: str
    wire: str
    fuse: str
    drop: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchContext(Sheet):
    """`bench.html`: the fitting table as at the last episode."""

    warnings: tuple[JoinRow, ...]
    joins: tuple[JoinRow, ...]
    bolts: tuple[BoltRow, ...]
    loads: tuple[LoadRow, ...]


def bench_page(desk: Desk) -> Page:
    """Return the fitting table."""
    words, state = desk.words, desk.states[desk.last]
    title = words("bench.title")
    joins = joins_held(desk, desk.last)
    bolts = tuple(_bolt(desk, each) for each in bolts_of(state))
    loads = tuple(_load(desk, each) for each in loads_of(state))
    rows = {"joins": joins, "bolts": bolts, "loads": loads}
    return Page(
        address=links.BENCH,
        template="bench.html",
        title=title,
        description=words("bench.description", title=desk.material.journal.title),
        context=BenchContext(
            heading=title,
            margin=desk.margin(),
            lead=words("bench.lead"),
            contents=sections(words, "bench", (name for name, each in rows.items() if each)),
            warnings=tuple(never_joined(joins)),
            joins=joins,
            bolts=bolts,
            loads=loads,
        ),
        owed=desk.owed(links.BENCH),
    )


def _bolt(desk: Desk, bolt: Bolt) -> BoltRow:
    made = bolt.tightening
    low, high = made.spread
    return BoltRow(
        part=desk.part(bolt.part),
        thread=f"{made.thread}, {made.property_class}",
        lubrication=made.lubrication,
        torque=f"{made.torque:.2g} N m",
        spread=desk.words("bench.spread", low=f"{low:.0%}", high=f"{high:.0%}"),
        said=f"{bolt.said:.3g} N m" if bolt.said is not None else "",
    )


def _load(desk: Desk, load: Load) -> LoadRow:
    wire = load.wire
    return LoadRow(
        part=desk.part(load.part),
        current=f"{load.current:g} A",
        wire=wire.label.replace("mm2", "mm²") if wire else desk.words("bench.no_wire"),
        fuse=f"{wire.fuse:g} A" if wire and wire.fuse else "",
        drop=(
            desk.words("bench.drop", drop=f"{wire.drop:.2f}", share=f"{wire.share:.1%}")
            if wire
            else ""
        ),
    )
