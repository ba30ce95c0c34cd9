"""The fitting table: every join with its verdict, what to add and how tight, for the bench."""

from __future__ import annotations

from dataclasses import dataclass, replace

from hoistbook.fit.bench import Bolt, Load, ScrewedIn, bolts_of, loads_of, screwed_in
from hoistbook.fit.wiring import Known, Wire
from hoistbook.pages import links
from hoistbook.pages.desk import Desk, sections
from hoistbook.pages.joins import JoinRow, joins_held, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, PartRef, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltRow:
    """A bolt, plug or sensor with its torque and what the state of its thread makes of it."""

    part: PartRef
    thread: str
    """"M8x1.25, 10.9"."""
    lubrication: str
    torque: str
    spread: str
    """"at that torque its preload is 74 to 111 % of the one aimed at", or what is missing; of a
    plug or sensor what its table says."""
    said: str
    """The torque that its owner or maker states; empty without."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadRow:
    """An electrical load with its wire and fuse; every text is ready to print."""

    part: PartRef
    current: str
    """"8 A", or that nobody says it and how to measure it."""
    length: str
    """"4 m (2 to 6 m), assumed"."""
    supply: str
    wire: str = ""
    """The thinnest that serves over the whole bands."""
    drop: str = ""
    """What that loses."""
    laid: str = ""
    """What the author says that he laid, what it loses and whether it serves."""
    fuse: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchContext(Sheet):
    """`bench.html`: the fitting table as at the last episode."""

    warnings: tuple[JoinRow, ...]
    joins: tuple[JoinRow, ...]
    bolts: tuple[BoltRow, ...]
    loads: tuple[LoadRow, ...]
    data: tuple[Link, ...]
    """The joins of all episodes as files."""


def bench_page(desk: Desk) -> Page:
    """Return the fitting table."""
    words, state = desk.words, desk.states[desk.last]
    title = words("bench.title")
    joins = joins_held(desk, desk.last)
    bolts = (
        *(_bolt(desk, each) for each in bolts_of(state)),
        *(_screwed_in(desk, each) for each in screwed_in(state)),
    )
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
            data=tuple(
                Link(
                    text=words("bench.data", form=form.upper()),
                    address=f"{links.DATA}joins.{form}",
                )
                for form in ("csv", "json")
            ),
        ),
        owed=desk.owed(links.BENCH),
    )


def _bolt(desk: Desk, bolt: Bolt) -> BoltRow:
    words, made = desk.words, bolt.bolting.solid
    thread, ref = bolt.bolting.thread, desk.part(bolt.part)
    said = f"{bolt.said:.3g} N m" if bolt.said is not None else ""
    if made is None:
        none = words("bench.hollow" if bolt.bolting.hollow else "bench.no_class")
        return BoltRow(part=ref, thread=thread, lubrication="", torque="", spread=none, said=said)
    low, high = (desk.formats.share(each) for each in made.spread)
    return BoltRow(
        part=ref,
        thread=f"{thread}, {made.property_class}",
        lubrication=made.lubrication,
        torque=made.aimed,
        spread=words("bench.spread", low=low, high=high),
        said=said,
    )


def _screwed_in(desk: Desk, given: ScrewedIn) -> BoltRow:
    return BoltRow(
        part=desk.part(given.part),
        thread=given.thread,
        lubrication="",
        torque="",
        spread=f"{given.made.how} ({given.made.source})",
        said=f"{given.said:.3g} N m" if given.said is not None else "",
    )


def _load(desk: Desk, load: Load) -> LoadRow:
    words, formats = desk.words, desk.formats
    wanted, ref = load.wanted, desk.part(load.part)
    length = _given(desk, load.length, "cable_length")
    supply = _given(desk, load.supply, "supply_voltage")
    if load.current is None:
        say = words("bench.no_current")
        return LoadRow(part=ref, current=say, length=length, supply=supply)
    return LoadRow(
        part=ref,
        current=_given(desk, load.current, "wire_current"),
        length=length,
        supply=supply,
        wire=_mm2(wanted) if wanted else words("bench.no_wire"),
        drop=_drop(desk, load, wanted) if wanted else "",
        laid=_laid(desk, load),
        fuse=formats.quantity(load.fuse, "wire_current") if load.fuse else words("bench.no_fuse"),
    )


def _mm2(wire: Wire) -> str:
    return wire.label.replace("mm2", "mm²")


def _laid(desk: Desk, load: Load) -> str:
    if load.laid is None:
        return ""
    key = "bench.laid_serves" if load.serves(load.laid) else "bench.laid_too_thin"
    return desk.words(key, wire=_mm2(load.laid), drop=_drop(desk, load, load.laid))


def _drop(desk: Desk, load: Load, wire: Wire) -> str:
    lost, formats = load.lost(wire), desk.formats
    return desk.words(
        "bench.drop",
        drop=_given(desk, replace(lost, assumed=False), "voltage_drop"),
        share=formats.in_percent(formats.number(lost.value / load.supply.value * 100, 2)),
        limit=formats.share(load.limit),
    )


def _given(desk: Desk, known: Known, quantity: str) -> str:
    """Return a number with its band and, where nobody said it, that it is assumed."""
    number, band = desk.formats.banded(known.value, known.low, known.high, quantity)
    text = f"{number} ({band})" if band else number
    return desk.words("bench.assumed", value=text) if known.assumed else text
