"""Drawings of circuits: what they show, how wide they are, the same bytes in every process."""

from __future__ import annotations

import subprocess
import sys
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

from hoistbook.pages import circuits as circuits_pages
from hoistbook.pages.circuit_drawing import PHONE, CircuitDrawing, Node, NodeSort, draw_circuit
from hoistbook.pages.circuit_layout import BOX, TALL, WIDE, Layout, folded, laid_out, strips

DRAWING = CircuitDrawing(
    title="Oil & <water>",
    nodes=(
        Node(id="a", sort=NodeSort.PART, text="Engine block, cast iron"),
        Node(id="b", sort=NodeSort.PART, text="Adapter <1/8>"),
        Node(id="j", sort=NodeSort.NEVER, text="gallery to block end", word="do not join"),
        Node(id="o", sort=NodeSort.OPEN, text="drain", word="open"),
        Node(id="c", sort=NodeSort.PART, text="Alone"),
    ),
    edges=(("a", "j"), ("j", "b"), ("b", "o")),
)


def test_a_drawing_is_well_formed_and_stays_inside_its_frame() -> None:
    drawn = draw_circuit(DRAWING)

    root = ET.fromstring(drawn.svg)
    (title,) = root.findall("{*}title")
    rectangles = [{k: float(v) for k, v in r.attrib.items()} for r in root.iter(tag("rect"))]
    assert title.text == "Oil & <water>"
    assert (root.get("width"), root.get("height")) == (str(drawn.width), str(drawn.height))
    assert len(rectangles) == 5
    assert all(r["x"] >= 0 and r["x"] + r["width"] <= drawn.width for r in rectangles)
    texts = [text.text for text in root.iter(tag("text"))]
    assert texts[:1] == ["Engine block, cast"]
    assert {"do not join", "open", "Adapter <1/8>"} <= set(texts)


def tag(name: str) -> str:
    return f"{{http://www.w3.org/2000/svg}}{name}"


def test_a_drawing_runs_from_top_to_bottom() -> None:
    root = ET.fromstring(draw_circuit(DRAWING).svg)
    heights = {text.text: float(text.get("y", 0)) for text in root.iter(tag("text"))}

    assert heights["Engine block, cast"] < heights["do not join"] < heights["Adapter <1/8>"]


def test_a_drawing_is_the_same_in_every_process() -> None:
    script = (
        "import hashlib; from tests.pages.test_circuit_drawing import BRANCHES, DRAWING, LONG; "
        "from hoistbook.pages.circuit_drawing import draw_circuit; "
        "print(*(hashlib.sha256(draw_circuit(each, narrow=narrow).svg).hexdigest() "
        "for each in (DRAWING, BRANCHES, LONG) for narrow in (False, True)))"
    )
    hashes = {
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=Path(__file__).parents[2],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": SOURCE},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(hashes) == 1


BRANCHES = CircuitDrawing(
    title="Coolant",
    nodes=(
        *(Node(id=id_, sort=NodeSort.PART, text=f"Part {id_}") for id_ in "abcde"),
        *(Node(id=f"j{n}", sort=NodeSort.MATES, text=f"join {n}", word="mates") for n in range(5)),
        Node(id="o", sort=NodeSort.OPEN, text="drain", word="open"),
    ),
    edges=(
        *(("a", "j0"), ("j0", "b"), ("b", "j1"), ("j1", "c"), ("b", "j2"), ("j2", "c")),
        *(("b", "j3"), ("j3", "d"), ("c", "j4"), ("j4", "e"), ("e", "o")),
    ),
    again="again",
)
LONG = CircuitDrawing(
    title="Air",
    nodes=tuple(
        Node(id=str(n), sort=NodeSort.SEALANT if n % 2 else NodeSort.PART, text=f"Part {n}")
        for n in range(39)
    ),
    edges=tuple((str(n), str(n + 1)) for n in range(38)),
)


def texts_of(svg: bytes) -> list[str]:
    return [text.text or "" for text in ET.fromstring(svg).iter(tag("text"))]


def test_a_circuit_with_branches_is_taken_apart_for_a_phone() -> None:
    wide, narrow = draw_circuit(BRANCHES), draw_circuit(BRANCHES, narrow=True)

    assert wide.width > PHONE >= narrow.width
    assert "again" not in texts_of(wide.svg)
    assert sorted(text for text in texts_of(narrow.svg) if text.startswith(("join", "drain"))) == [
        *("drain", "join 0", "join 1", "join 2", "join 3", "join 4"),
    ]
    # Once for each strip that begins or ends at a part shown before: b, b, c.
    assert texts_of(narrow.svg).count("again") == 3


def test_a_circuit_without_branches_is_the_same_strip_for_a_phone() -> None:
    assert draw_circuit(DRAWING) == draw_circuit(DRAWING, narrow=True)


def test_every_line_is_in_one_strip_and_a_ring_ends_where_it_began() -> None:
    ring = strips("abc", [("a", "b"), ("b", "c"), ("c", "a"), ("b", "a")])

    assert [(each.ids, each.again) for each in ring] == [
        (("a", "b", "c", "a"), (False, False, False, True)),
        (("b", "a"), (True, True)),
    ]


def layout_of(drawing: CircuitDrawing) -> Layout:
    return laid_out({node.id: node.height for node in drawing.nodes}, drawing.edges)


def test_no_line_runs_through_a_box() -> None:
    layout = layout_of(BRANCHES)

    for route in layout.routes:
        for (x0, y0), (x1, y1) in pairwise(route.points):
            for share in range(1, 20):
                x, y = x0 + (x1 - x0) * share / 20, y0 + (y1 - y0) * share / 20
                hit = [
                    box.id
                    for box in layout.boxes
                    if box.x < x < box.x + BOX and box.y < y < box.y + box.height
                ]
                assert hit == [], route


def test_a_tall_drawing_is_folded_into_columns_with_a_letter_at_both_ends_of_a_cut_line() -> None:
    whole, drawn = layout_of(LONG), draw_circuit(LONG)
    columns = folded(whole)

    assert whole.height > 2 * TALL
    assert columns.height <= TALL
    assert columns.width == 3 * whole.width <= WIDE
    assert drawn.height <= TALL
    assert [(mark.letter, round(mark.x)) for mark in columns.marks] == [
        *(("A", 100), ("A", 300), ("B", 300), ("B", 500)),
    ]
    assert len(columns.boxes) == 39
    assert [text for text in texts_of(drawn.svg) if text.startswith("Part")] == [
        f"Part {n}" for n in range(39)
    ]
    assert draw_circuit(LONG, narrow=True).width <= PHONE


def test_a_drawing_wider_than_paper_is_taken_apart_too() -> None:
    fan = CircuitDrawing(
        title="Fuel",
        nodes=(
            Node(id="rail", sort=NodeSort.PART, text="Rail"),
            *(Node(id=f"o{n}", sort=NodeSort.OPEN, text=f"injector {n}") for n in range(8)),
        ),
        edges=tuple(("rail", f"o{n}") for n in range(8)),
    )

    drawn = draw_circuit(fan)

    assert drawn.width <= WIDE
    assert texts_of(drawn.svg).count("again") == 7


SOURCE = str(Path(circuits_pages.__file__).parents[2])
