"""A circuit drawn as SVG: parts as boxes in the order of flow, joins between them in words.

Every join and every open end is a node of its own in a layered layout, so that no label meets
another. The same circuit gives the same bytes on every machine: sizes are counted in letters, not
measured in a font.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any
from xml.sax.saxutils import escape

from pyelk import ELK

BOX = 176
"""Width of a box [px]; two of them stand side by side on a telephone."""
LETTERS = 22
"""In a line of a box, at 13 px."""
LINE = 17
PADDING = 8
FONT = "system-ui, 'Liberation Sans', sans-serif"
OPTIONS = {
    "elk.algorithm": "layered",
    "elk.direction": "DOWN",
    "elk.spacing.nodeNode": "12",
    "elk.layered.spacing.nodeNodeBetweenLayers": "16",
}
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
@media (prefers-color-scheme: dark) {{
rect, path {{ stroke: #dfe5ec }}
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


FRAMED = (NodeSort.PART, NodeSort.NEVER, NodeSort.OPEN)


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
    edges: tuple[tuple[str, str], ...]
    """Ids of two nodes, the one upstream first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A drawing and its size."""

    svg: bytes
    width: int
    height: int


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, LETTERS) or []


def draw_circuit(drawing: CircuitDrawing) -> Drawn:
    """Return a circuit as SVG, from top to bottom; what does not hang together stands below."""
    nodes = {node.id: node for node in drawing.nodes}
    shapes: list[str] = []
    width = height = 0
    for ids in _pieces(drawing):
        placed = _placed([nodes[each] for each in nodes if each in ids], drawing.edges)
        shapes.append(f'<g transform="translate(0 {height})">')
        shapes += _edges(placed["edges"], nodes)
        shapes += _boxes(placed["children"], nodes)
        shapes.append("</g>")
        width = max(width, round(placed["width"]))
        height += round(placed["height"])
    svg = "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}"'
            f' width="{width}" height="{height}" role="img">',
            f"<title>{escape(drawing.title)}</title>",
            f"<style>{STYLE}</style>",
            *shapes,
            "</svg>\n",
        )
    )
    return Drawn(svg=svg.encode(), width=width, height=height)


def _pieces(drawing: CircuitDrawing) -> list[set[str]]:
    """Return the ids of the nodes that hang together, piece by piece."""
    pieces = [{node.id} for node in drawing.nodes]
    for edge in drawing.edges:
        held = [piece for piece in pieces if piece & set(edge)]
        held[0].update(*held[1:])
        pieces = [piece for piece in pieces if piece not in held[1:]]
    return pieces


def _placed(nodes: Sequence[Node], edges: Iterable[tuple[str, str]]) -> dict[str, Any]:
    """Return what the layout library makes of one piece."""
    here = {node.id for node in nodes}
    graph = {
        "id": "circuit",
        "layoutOptions": OPTIONS,
        "children": [{"id": node.id, "width": BOX, "height": node.height} for node in nodes],
        "edges": [
            {"id": f"edge {index}", "sources": [one], "targets": [other]}
            for index, (one, other) in enumerate(edges)
            if one in here
        ],
    }
    return dict(ELK().layout(graph))


def _boxes(children: Iterable[Mapping[str, Any]], nodes: Mapping[str, Node]) -> Iterator[str]:
    for child in children:
        node, x, y = nodes[child["id"]], child["x"], child["y"]
        yield f'<g class="{node.sort}">'
        if node.sort in FRAMED:
            yield (
                f'<rect x="{_px(x)}" y="{_px(y)}" width="{BOX}" height="{node.height}" rx="2"/>'
            )
        for index, (line, word) in enumerate(node.lines):
            down = y + PADDING + LINE * (index + 0.75)
            style = ' class="word"' if word else ""
            yield f'<text x="{_px(x + BOX / 2)}" y="{_px(down)}"{style}>{escape(line)}</text>'
        yield "</g>"


def _edges(edges: Iterable[Mapping[str, Any]], nodes: Mapping[str, Node]) -> Iterator[str]:
    for edge in edges:
        ends = (*edge["sources"], *edge["targets"])
        sort = next(nodes[end].sort for end in ends if nodes[end].sort is not NodeSort.PART)
        for section in edge["sections"]:
            bends = section.get("bendPoints") or ()
            points = [section["startPoint"], *bends, section["endPoint"]]
            path = " L".join(f"{_px(each['x'])} {_px(each['y'])}" for each in points)
            yield f'<g class="{sort}"><path d="M{path}"/></g>'


def _px(value: float) -> str:
    return f"{value:.1f}".rstrip("0").rstrip(".")
