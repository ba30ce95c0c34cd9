"""A circuit drawn as SVG: parts as boxes in the order of flow, joins between them in words.

Every join and every open end is a node of its own, so that no label meets another. The same
circuit gives the same bytes on every machine: sizes are counted in letters, not in a font.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from xml.sax.saxutils import escape

from hoistbook.pages.circuit_layout import (
    BOX,
    TALL,
    WIDE,
    Box,
    Edge,
    Layout,
    Mark,
    Route,
    folded,
    laid_out,
    strips,
)

LETTERS = 22
"""In a line of a box, at 13 px."""
LINE = 17
PADDING = 8
PHONE = 280.0
"""What a telephone of 320 px shows without scrolling [px]."""
FONT = "system-ui, 'Liberation Sans', sans-serif"
STYLE = f"""
svg {{ color-scheme: light dark; font: 13px/1.3 {FONT} }}
rect {{ fill: none; stroke: #1d2733; stroke-width: 1.5 }}
text {{ fill: #1d2733; text-anchor: middle }}
.word {{ font-weight: 700 }}
path {{ fill: none; stroke: #1d2733; stroke-width: 1.5 }}
.sealant path {{ stroke-width: 4 }}
.never path {{ stroke-dasharray: 2 5; stroke-width: 3 }}
.never rect {{ stroke-width: 3; stroke-dasharray: 2 5 }}
.adapter path {{ stroke-dasharray: 9 5 }}
.unknown path, .open path {{ stroke-dasharray: 1 4 }}
.open rect {{ stroke-dasharray: 1 4 }}
.again rect {{ stroke-width: 0.75 }}
circle {{ fill: none; stroke: #1d2733 }}
@media (prefers-color-scheme: dark) {{
rect, path, circle {{ stroke: #dfe5ec }}
text {{ fill: #dfe5ec }}
}}
"""


class NodeSort(StrEnum):
    """What a node of the drawing is; also the class of its shapes."""

    PART = "part"
    MATES = "mates"
    SEALANT = "sealant"
    NEVER = "never"
    ADAPTER = "adapter"
    UNKNOWN = "unknown"
    OPEN = "open"
    AGAIN = "again"
    """A part that stands further up as well."""


PARTS = (NodeSort.PART, NodeSort.AGAIN)
FRAMED = (*PARTS, NodeSort.NEVER, NodeSort.OPEN)


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """A part, a join or an open end."""

    id: str
    sort: NodeSort
    text: str
    """The name of a part; the two ends of a join."""
    word: str = ""
    """The verdict of a join, "open" for an open end."""

    @property
    def lines(self) -> list[tuple[str, bool]]:
        """The lines of its text, each with whether it is the word."""
        text = [(line, False) for line in _wrapped(self.text)]
        return text + [(line, True) for line in _wrapped(self.word)]

    @property
    def height(self) -> int:
        """Height of its box [px]."""
        return len(self.lines) * LINE + 2 * PADDING


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitDrawing:
    """What a drawing shows; two that are equal give the same bytes."""

    title: str
    nodes: tuple[Node, ...]
    edges: tuple[Edge, ...]
    """Ids of two nodes, the one that stands higher first; they make no ring."""
    flow: tuple[Edge, ...] = ()
    """The same, the one upstream first, where that differs: strips follow the flow."""
    again: str = "again"
    """The word below a part that stands further up as well."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A drawing and its size."""

    svg: bytes
    width: int
    height: int


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, LETTERS) or []


def draw_circuit(drawing: CircuitDrawing, *, narrow: bool = False) -> Drawn:
    """Return a circuit as SVG, from top to bottom.

    Parameters
    ----------
    drawing : CircuitDrawing
        What it shows.
    narrow : bool
        For a phone: taken apart into strips where it has branches, and never in columns.
    """
    layout = _layout(drawing)
    if layout.width > PHONE if narrow else layout.width > WIDE:
        drawing = _in_strips(drawing)
        layout = _layout(drawing)
    if layout.height > TALL and not narrow:
        layout = folded(layout)
    nodes = {node.id: node for node in drawing.nodes}
    width, height = round(layout.width), round(layout.height)
    svg = "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}"'
            f' width="{width}" height="{height}" role="img">',
            f"<title>{escape(drawing.title)}</title>",
            f"<style>{STYLE}</style>",
            *(_line(route, nodes) for route in layout.routes),
            *(shape for box in layout.boxes for shape in _box(box, nodes[box.id])),
            *(shape for mark in layout.marks for shape in _mark(mark)),
            "</svg>\n",
        )
    )
    return Drawn(svg=svg.encode(), width=width, height=height)


def _layout(drawing: CircuitDrawing) -> Layout:
    return laid_out({node.id: node.height for node in drawing.nodes}, drawing.edges)


def _in_strips(drawing: CircuitDrawing) -> CircuitDrawing:
    """Return the same taken apart where it has branches; a part may then stand there again."""
    named = {node.id: node for node in drawing.nodes}
    nodes: list[Node] = []
    edges: list[Edge] = []
    for number, strip in enumerate(strips(list(named), drawing.flow or drawing.edges)):
        ids = [f"{number} {id_}" for id_ in strip.ids]
        nodes += (
            replace(
                named[id_],
                id=new,
                sort=NodeSort.AGAIN if again else named[id_].sort,
                word=drawing.again if again else named[id_].word,
            )
            for id_, new, again in zip(strip.ids, ids, strip.again, strict=True)
        )
        edges += pairwise(ids)
    return replace(drawing, nodes=tuple(nodes), edges=tuple(edges))


def _box(box: Box, node: Node) -> Iterator[str]:
    yield f'<g class="{node.sort}">'
    if node.sort in FRAMED:
        place = f'x="{_px(box.x)}" y="{_px(box.y)}" width="{BOX}" height="{node.height}"'
        yield f'<rect {place} rx="2"/>'
    for index, (line, word) in enumerate(node.lines):
        down = box.y + PADDING + LINE * (index + 0.75)
        style = ' class="word"' if word else ""
        yield f'<text x="{_px(box.x + BOX / 2)}" y="{_px(down)}"{style}>{escape(line)}</text>'
    yield "</g>"


def _line(route: Route, nodes: Mapping[str, Node]) -> str:
    sort = next(nodes[end].sort for end in route.edge if nodes[end].sort not in PARTS)
    path = " L".join(f"{_px(x)} {_px(y)}" for x, y in route.points)
    return f'<g class="{sort}"><path d="M{path}"/></g>'


def _mark(mark: Mark) -> Iterator[str]:
    """Yield the connector of flow charts (ISO 5807): one letter where a line stops and goes on."""
    yield f'<circle cx="{_px(mark.x)}" cy="{_px(mark.y)}" r="9"/>'
    yield f'<text x="{_px(mark.x)}" y="{_px(mark.y + 4.5)}">{mark.letter}</text>'


def _px(value: float) -> str:
    return f"{value:.1f}".rstrip("0").rstrip(".")
