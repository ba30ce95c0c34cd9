"""The demo's drawings: titled, harmless, legible in the dark, and no two alike."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from hoistbook.publish.pictures import publishable

EPISODES = Path(__file__).parents[2] / "content" / "episodes"
DRAWINGS = sorted(EPISODES.rglob("*.svg"))
SVG = "{http://www.w3.org/2000/svg}"


def test_there_is_a_poster_for_each_episode_and_more() -> None:
    assert len([each for each in DRAWINGS if each.name == "poster.svg"]) == 10
    assert len(DRAWINGS) >= 14


@pytest.mark.parametrize("drawing", DRAWINGS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_a_drawing_is_titled_and_fit_to_publish(drawing: Path) -> None:
    content = drawing.read_bytes()
    root = ElementTree.fromstring(content)
    assert root.findtext(f"{SVG}title")
    assert root.findtext(f"{SVG}desc")
    assert "prefers-color-scheme: dark" in (root.findtext(f"{SVG}style") or "")
    assert publishable(drawing.name, content) == content


def test_no_two_drawings_are_alike() -> None:
    titles = [ElementTree.parse(each).getroot().findtext(f"{SVG}title") for each in DRAWINGS]
    assert len(set(titles)) == len(DRAWINGS)
