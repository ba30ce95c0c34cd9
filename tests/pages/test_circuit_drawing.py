"""Drawings of circuits: what they show, how wide they are, the same bytes in every process."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree as ET

from hoistbook.pages import circuits as circuits_pages
from hoistbook.pages.circuit_drawing import CircuitDrawing, Node, NodeSort, draw_circuit

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
        "import hashlib; from tests.pages.test_circuit_drawing import DRAWING; "
        "from hoistbook.pages.circuit_drawing import draw_circuit; "
        "print(hashlib.sha256(draw_circuit(DRAWING).svg).hexdigest())"
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


SOURCE = str(Path(circuits_pages.__file__).parents[2])
