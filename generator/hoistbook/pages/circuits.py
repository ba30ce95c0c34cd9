"""The page of the circuits: each drawn, told as a list, with its open ends."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache, partial

from hoistbook.authored.records import JoinEnd
from hoistbook.figures.service import flow_services
from hoistbook.fit.circuits import Circuit, circuits_of, ends_in_order, feeds
from hoistbook.fit.joins import JoinVerdict
from hoistbook.fit.piping import piping_of
from hoistbook.fit.suggestions import OpenEnd, open_ends
from hoistbook.fit.verdict import Verdict
from hoistbook.pages import links
from hoistbook.pages.circuit_drawing import CircuitDrawing, Drawn, Node, NodeSort, draw_circuit
from hoistbook.pages.desk import Desk
from hoistbook.pages.joins import EndShown, JoinRow, join_row, joins_held, never_joined
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, PartRef, Picture, Sheet

SORTS = {
    Verdict.MATES: NodeSort.MATES,
    Verdict.WITH_SEALANT: NodeSort.SEALANT,
    Verdict.LOOKS_RIGHT: NodeSort.NEVER,
    Verdict.NEEDS_ADAPTER: NodeSort.ADAPTER,
    Verdict.UNKNOWN: NodeSort.UNKNOWN,
}


MOST_CLOSERS = 6
"""Parts that are named as closing an open end; those on the shelf come first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CloserShown:
    """A part that would close an open end."""

    part: PartRef
    end: str
    verdict: str
    on_hand: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenRow:
    """An open end and what would close it."""

    part: PartRef
    end: str
    full: str
    unclear: str
    """What is not known of it and how to measure it; empty where all is known."""
    closers: tuple[CloserShown, ...]
    """The first few; empty where nothing in the journal fits."""
    more: str
    """"and 12 more"; empty where the few are all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitShown:
    """One circuit."""

    id: str
    title: str
    picture: Picture
    joins: tuple[JoinRow, ...]
    """In the order of the flow: the same as the picture, in words."""
    open: tuple[OpenRow, ...]
    earlier: tuple[Link, ...]
    """Episodes that changed it, with the picture as it was."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitThen:
    """A circuit as an episode left it, on the page of that episode."""

    picture: Picture
    joins: tuple[JoinRow, ...]
    """In the order of the flow: the same as the picture, in words."""
    open: tuple[EndShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitsContext(Sheet):
    """`circuits.html`: the circuits as at the last episode."""

    warnings: tuple[JoinRow, ...]
    circuits: tuple[CircuitShown, ...]
    bench: Link
    """The fitting table."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plot:
    """A circuit's drawing and the episode that it was first true of."""

    name: str
    since: int
    circuit: Circuit
    drawing: CircuitDrawing


def circuits_page(desk: Desk) -> Page:
    """Return the page of the circuits."""
    words = desk.words
    title = words("circuits.title")
    shown = _circuits(desk)
    return Page(
        address=links.CIRCUITS,
        template="circuits.html",
        title=title,
        description=words("circuits.description", title=desk.material.journal.title),
        context=CircuitsContext(
            heading=title,
            margin=desk.margin(),
            lead=words("circuits.lead" if shown else "circuits.none"),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in shown),
            warnings=tuple(never_joined(joins_held(desk, desk.last))),
            circuits=shown,
            bench=Link(text=words("bench.title"), address=links.BENCH),
        ),
        owed=desk.owed(links.CIRCUITS),
    )


def _circuits(desk: Desk) -> tuple[CircuitShown, ...]:
    plots = _plots(desk)
    loose = {each.end: each for each in loose_ends(desk)}
    return tuple(
        CircuitShown(
            id=name.replace(" ", "-"),
            title=desk.words(f"circuits.{name.replace(' ', '_')}"),
            picture=_picture(desk, plot, desk.last),
            joins=_joins(desk, plot.circuit, desk.last),
            open=tuple(open_row(desk, loose[key]) for key in plot.circuit.open if key in loose),
            earlier=_earlier(desk, plots, name),
        )
        for name, plot in plots.get(desk.last, {}).items()
    )


def _joins(desk: Desk, circuit: Circuit, number: int) -> tuple[JoinRow, ...]:
    name = desk.naming(number)
    return tuple(join_row(desk, each, number, name) for each in circuit.joins)


def loose_ends(desk: Desk) -> tuple[OpenEnd, ...]:
    """Return the open ends as at the last episode."""
    state = desk.states[desk.last]
    return open_ends(state, flow_services(state, desk.figures[desk.last]))


def open_row(desk: Desk, loose: OpenEnd) -> OpenRow:
    """Return an open end as a row."""
    typed, more = loose.typed, len(loose.closers) - MOST_CLOSERS
    return OpenRow(
        part=desk.part(loose.end.part),
        end=loose.end.end,
        full=typed.full,
        unclear=f"{typed.unclear}: {typed.measure}" if typed.unclear else "",
        closers=tuple(
            CloserShown(
                part=desk.part(each.end.part),
                end=each.end.end,
                verdict=desk.word("verdict", each.fit.verdict),
                on_hand=each.on_hand,
            )
            for each in loose.closers[:MOST_CLOSERS]
        ),
        more=desk.words("circuits.more", n=more) if more > 0 else "",
    )


def _earlier(desk: Desk, plots: Mapping[int, Mapping[str, _Plot]], name: str) -> tuple[Link, ...]:
    since = {found[name].since for found in plots.values() if name in found}
    return tuple(
        Link(text=desk.episode(number).text, address=f"{links.episode(number)}#circuits")
        for number in sorted(since)
        if number in desk.episodes
    )


def circuits_on(desk: Desk, number: int) -> tuple[CircuitThen, ...]:
    """Return the circuits that an episode changed, as it left them."""
    ends, name = piping_of(desk.states[number]).ends, desk.naming(number)
    return tuple(
        CircuitThen(
            picture=_picture(desk, plot, number),
            joins=_joins(desk, plot.circuit, number),
            open=tuple(
                EndShown(part=name(key.part), name=key.end, full=ends[key].full)
                for key in plot.circuit.open
            ),
        )
        for plot in _plots(desk).get(number, {}).values()
        if plot.since == number
    )


def circuit_files(
    desk: Desk, remember: Callable[[Callable[[], bytes], str], bytes]
) -> dict[str, bytes]:
    """Return every drawing of a circuit: path in the site -> content."""
    return {
        links.file_path(_address(plot, narrow=narrow)): remember(
            partial(_svg, plot.drawing, narrow=narrow), f"circuit {narrow} {plot.drawing!r}"
        )
        for found in _plots(desk).values()
        for plot in found.values()
        for narrow in (False, True)
    }


def _svg(drawing: CircuitDrawing, *, narrow: bool) -> bytes:
    return _drawn(drawing, narrow=narrow).svg


@lru_cache(maxsize=256)
def _drawn(drawing: CircuitDrawing, *, narrow: bool) -> Drawn:
    return draw_circuit(drawing, narrow=narrow)


def _address(plot: _Plot, *, narrow: bool) -> str:
    return links.chart(f"{plot.name}-narrow" if narrow else plot.name)


def _picture(desk: Desk, plot: _Plot, number: int) -> Picture:
    wide, narrow = (_drawn(plot.drawing, narrow=each) for each in (False, True))
    circuit = plot.circuit
    text = desk.words(
        "circuits.picture",
        name=plot.drawing.title,
        parts=desk.words("circuits.parts", n=len(circuit.parts)),
        joins=desk.words("circuits.joins", n=len(circuit.joins)),
        open=desk.words("circuits.open_ends", n=len(circuit.open)),
    )
    return Picture(
        address=_address(plot, narrow=False),
        width=wide.width,
        height=wide.height,
        text=text,
        caption=desk.words("circuits.caption", name=plot.drawing.title, number=number),
        narrow=Picture(
            address=_address(plot, narrow=True),
            width=narrow.width,
            height=narrow.height,
            text=text,
        ),
    )


@lru_cache(maxsize=1)
def _plots(desk: Desk) -> dict[int, dict[str, _Plot]]:
    """Return the circuits of every state; one that stays as it was keeps its drawing."""
    found: dict[int, dict[str, _Plot]] = {}
    before: dict[str, _Plot] = {}
    for number, state in desk.states.items():
        here = {}
        for circuit in circuits_of(state, desk.verdicts(number)):
            drawing = _drawing(desk, circuit)
            old = before.get(circuit.name)
            since = old.since if old and old.drawing == drawing else number
            name = f"circuit-{circuit.name.replace(' ', '-')}-episode-{since}"
            here[str(circuit.name)] = _Plot(
                name=name, since=since, circuit=circuit, drawing=drawing
            )
        found[number] = before = here
    return found


def _drawing(desk: Desk, circuit: Circuit) -> CircuitDrawing:
    """Return what a drawing shows: each join and each open end is a node between parts."""
    place = {part: index for index, part in enumerate(circuit.parts)}
    nodes = [
        Node(id=part, sort=NodeSort.PART, text=desk.part_name(part)) for part in circuit.parts
    ]
    edges, flow = [], []
    for index, judged in enumerate(circuit.joins):
        id_ = f"join {index}"
        upstream, downstream = ends_in_order(judged)
        nodes.append(_join_node(desk, id_, judged, upstream, downstream))
        flow += _through(id_, upstream, downstream)
        edges += _through(id_, *sorted((upstream, downstream), key=lambda end: place[end.part]))
    for index, key in enumerate(circuit.open):
        id_ = f"open {index}"
        word = desk.words("circuits.open_word")
        nodes.append(Node(id=id_, sort=NodeSort.OPEN, text=key.end, word=word))
        edge = (id_, key.part) if feeds(key) else (key.part, id_)
        edges.append(edge)
        flow.append(edge)
    title = desk.words(f"circuits.{circuit.name.replace(' ', '_')}")
    return CircuitDrawing(
        title=title,
        nodes=tuple(nodes),
        edges=tuple(edges),
        flow=tuple(flow),
        again=desk.words("circuits.again"),
    )


def _through(id_: str, first: JoinEnd, second: JoinEnd) -> list[tuple[str, str]]:
    """Return the lines from one part by a join to another, or to the same part."""
    return [(first.part, id_), *([(id_, second.part)] if second.part != first.part else [])]


def _join_node(desk: Desk, id_: str, judged: JoinVerdict, first: JoinEnd, second: JoinEnd) -> Node:
    return Node(
        id=id_,
        sort=SORTS[judged.fit.verdict],
        text=desk.words("circuits.ends", a=first.end, b=second.end),
        word=desk.word("verdict", judged.fit.verdict),
    )
