"""Where the boxes of a circuit stand and how its lines run: the only home of the layout library.

The library places the nodes of a graph in layers. A line over several layers is given nodes of its
own there, so that it runs beside the words and not through them. For a phone a circuit is taken
apart into strips without a branch; a tall drawing is folded into columns.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil
from typing import Any

from pyelk import ELK

BOX = 176
"""Width of a box [px]."""
WAY = 18
"""Width that a line takes beside boxes [px]."""
MARGIN = 12
"""Around everything [px]; the library's own."""
OPTIONS = {
    "elk.algorithm": "layered",
    "elk.direction": "DOWN",
    "elk.spacing.nodeNode": "12",
    "elk.layered.spacing.nodeNodeBetweenLayers": "16",
}
TALL = 720.0
"""A drawing higher than this is folded, so that it fits a screen and a sheet of paper [px]."""
WIDE = 640.0
"""What a sheet of paper takes without making the letters smaller [px]."""
MARK = 24.0
"""Room for the mark of a line that goes on in the next column [px]."""

Edge = tuple[str, str]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Box:
    """A node in its place."""

    id: str
    x: float
    y: float
    height: float


@dataclass(frozen=True, slots=True)
class Route:
    """A line from one node to another."""

    edge: Edge
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a line leaves a column or comes in; both ends have one letter."""

    letter: str
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A graph in its place."""

    boxes: tuple[Box, ...]
    routes: tuple[Route, ...]
    marks: tuple[Mark, ...] = ()
    width: float
    height: float


def laid_out(heights: Mapping[str, float], edges: Sequence[Edge]) -> Layout:
    """Return a graph from top to bottom; what does not hang together stands below.

    Parameters
    ----------
    heights : mapping
        Height of each node by its id [px], in the order of the flow.
    edges : sequence
        Ids of two nodes, the one upstream first.
    """
    boxes: list[Box] = []
    routes: list[Route] = []
    width = height = 0.0
    for ids in pieces(heights, edges):
        piece = _piece(
            {id_: heights[id_] for id_ in ids}, [edge for edge in edges if edge[0] in ids]
        )
        boxes += (replace(box, y=box.y + height) for box in piece.boxes)
        routes += (
            replace(each, points=tuple((x, y + height) for x, y in each.points))
            for each in piece.routes
        )
        width, height = max(width, piece.width), height + piece.height
    return Layout(boxes=tuple(boxes), routes=tuple(routes), width=width, height=height)


def pieces(ids: Iterable[str], edges: Iterable[Edge]) -> list[list[str]]:
    """Return the ids of the nodes that hang together, piece by piece."""
    found = [[id_] for id_ in ids]
    for edge in edges:
        held = [piece for piece in found if set(edge) & set(piece)]
        for piece in held[1:]:
            held[0] += piece
            found.remove(piece)
    return found


def _piece(heights: Mapping[str, float], edges: Sequence[Edge]) -> Layout:
    """Return one piece; of a line over several layers the library is asked a second time."""
    sizes = {id_: (float(BOX), height) for id_, height in heights.items()}
    drafted = _placed(sizes, edges)
    ways = {
        edge: (edge[0], *(f"{number} beside {step}" for step in range(bends)), edge[1])
        for number, (edge, bends) in enumerate(zip(edges, _bends(drafted), strict=True))
    }
    extra = {id_: (float(WAY), 1.0) for way in ways.values() for id_ in way[1:-1]}
    steps = [step for way in ways.values() for step in pairwise(way)]
    placed = _placed(sizes | extra, steps) if extra else drafted
    nodes = {child["id"]: child for child in placed["children"]}
    lower: dict[float, float] = {}
    for child in nodes.values():
        lower[child["y"]] = max(lower.get(child["y"], 0.0), child["y"] + child["height"])
    return Layout(
        boxes=tuple(Box(id_, nodes[id_]["x"], nodes[id_]["y"], heights[id_]) for id_ in heights),
        routes=tuple(Route(edge, _points(way, nodes, lower)) for edge, way in ways.items()),
        width=placed["width"],
        height=placed["height"],
    )


def _placed(sizes: Mapping[str, tuple[float, float]], edges: Sequence[Edge]) -> dict[str, Any]:
    graph = {
        "id": "circuit",
        "layoutOptions": OPTIONS,
        "children": [
            {"id": id_, "width": width, "height": height} for id_, (width, height) in sizes.items()
        ],
        "edges": [
            {"id": str(index), "sources": [one], "targets": [other]}
            for index, (one, other) in enumerate(edges)
        ],
    }
    return dict(ELK().layout(graph))


def _bends(placed: Mapping[str, Any]) -> Iterator[int]:
    """Yield how many layers each line passes by."""
    for edge in placed["edges"]:
        yield sum(len(section.get("bendPoints") or ()) for section in edge["sections"])


def _points(
    way: Sequence[str], nodes: Mapping[str, Any], lower: Mapping[float, float]
) -> tuple[Point, ...]:
    """Return a line that is upright beside and below boxes and aslant only between layers."""
    points: list[Point] = []
    for id_ in way:
        node = nodes[id_]
        middle, top = node["x"] + node["width"] / 2, node["y"]
        if id_ != way[0]:
            points.append((middle, top))
        if id_ == way[0]:
            points.append((middle, top + node["height"]))
        if id_ != way[-1]:
            points.append((middle, lower[top]))
    return tuple(points)


@dataclass(frozen=True, slots=True)
class Strip:
    """A chain of nodes without a branch."""

    ids: tuple[str, ...]
    """Of the nodes, in the order of the flow."""
    again: tuple[bool, ...]
    """Whether each has been in a strip before this one."""


def strips(ids: Sequence[str], edges: Sequence[Edge]) -> tuple[Strip, ...]:
    """Return a graph taken apart so that every edge is in one strip; a branch begins a new one.

    Examples
    --------
    >>> [each.ids for each in strips("abcd", [("a", "b"), ("b", "c"), ("b", "d")])]
    [('a', 'b', 'c'), ('b', 'd')]
    """
    left = list(edges)
    into = Counter(other for _, other in edges)
    shown: set[str] = set()
    found = []
    for first in sorted(ids, key=lambda id_: bool(into[id_])):
        while first not in shown or any(edge[0] == first for edge in left):
            chain, again = [first], [first in shown]
            shown.add(first)
            while edge := next((each for each in left if each[0] == chain[-1]), None):
                left.remove(edge)
                chain.append(edge[1])
                again.append(edge[1] in shown)
                if again[-1]:
                    break
                shown.add(edge[1])
            found.append(Strip(tuple(chain), tuple(again)))
    return tuple(found)


def folded(layout: Layout) -> Layout:
    """Return a drawing that is too tall in columns, cut between two boxes."""
    count = max(1, min(ceil(layout.height / TALL), int(WIDE // layout.width)))
    cuts = _cuts(layout, count)
    edges = [0.0, *cuts, layout.height]
    columns = [
        _column(layout, number, top, bottom)
        for number, (top, bottom) in enumerate(pairwise(edges))
    ]
    return Layout(
        boxes=tuple(box for each in columns for box in each.boxes),
        routes=tuple(route for each in columns for route in each.routes),
        marks=_marks(layout, cuts),
        width=layout.width * len(columns),
        height=max(each.height for each in columns),
    )


def _cuts(layout: Layout, count: int) -> list[float]:
    """Return the heights nearest to an even share at which no box is cut."""
    free = [
        box.y - MARGIN / 2
        for box in layout.boxes
        if not any(each.y < box.y - MARGIN / 2 < each.y + each.height for each in layout.boxes)
    ]
    even = (layout.height * share / count for share in range(1, count))
    return sorted({min((abs(y - at), y) for y in free)[1] for at in even})


def _column(layout: Layout, number: int, top: float, bottom: float) -> Layout:
    right, down = layout.width * number, (MARK if number else 0.0) - top
    return Layout(
        boxes=tuple(
            replace(box, x=box.x + right, y=box.y + down)
            for box in layout.boxes
            if top <= box.y < bottom
        ),
        routes=tuple(
            replace(route, points=tuple((x + right, y + down) for x, y in points))
            for route in layout.routes
            if len(points := _between(route.points, top, bottom)) > 1
        ),
        width=layout.width,
        height=bottom + down + MARK,
    )


def _between(points: Sequence[Point], top: float, bottom: float) -> tuple[Point, ...]:
    """Return the part of a line, which runs downwards, between two heights."""
    kept = [point for point in points if top <= point[1] <= bottom]
    first = [_at(points, top)] if points[0][1] < top < points[-1][1] else []
    last = [_at(points, bottom)] if points[0][1] < bottom < points[-1][1] else []
    return (*first, *kept, *last)


def _at(points: Sequence[Point], y: float) -> Point:
    """Return where a line crosses a height."""
    (x0, y0), (x1, y1) = next(
        (one, other) for one, other in pairwise(points) if one[1] <= y <= other[1] > one[1]
    )
    return x0 + (x1 - x0) * (y - y0) / (y1 - y0), y


def _marks(layout: Layout, cuts: Sequence[float]) -> tuple[Mark, ...]:
    """Return a mark for both sides of every line that is cut."""
    found: list[Mark] = []
    for number, cut in enumerate(cuts):
        above = (cuts[number - 1] if number else 0.0) - (MARK if number else 0.0)
        crossed = [r for r in layout.routes if r.points[0][1] < cut < r.points[-1][1]]
        for route in crossed:
            letter = chr(ord("A") + len(found) // 2)
            x = _at(route.points, cut)[0] + layout.width * number
            found.append(Mark(letter, x, cut - above + MARK / 2))
            found.append(Mark(letter, x + layout.width, MARK / 2))
    return tuple(found)
