"""Pictures whose names mean something in an address: a space, an umlaut, `&`, `?`, `#`, `%`."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoistbook.pipeline import build
from tests.helpers.journals import changed, copied


@pytest.mark.parametrize(
    "name", ["before & after.svg", "what now?.svg", "no #8.svg", "100 %.svg", "bänk (1).svg"]
)
def test_a_picture_is_shown_whatever_its_name(tmp_path: Path, name: str) -> None:
    folder = copied(tmp_path) / "episodes/01-as-bought"
    (folder / name).write_bytes((folder / "poster.svg").read_bytes())
    with (folder / "episode.md").open("a") as episode:
        target = name.replace("%", "%25").replace("#", "%23")
        episode.write(f"\n![The bench with a vice](<{target}>)\n")

    built = build(tmp_path / "content")

    assert (built.problems, built.tree is None) == ((), False)
    assert f"episodes/1/{name}" in (built.tree or {})
    page = (built.tree or {})["episodes/1/index.html"].decode()
    assert re.search(r'<img src="[^"]*" alt="The bench with a vice" width="\d+"', page)


def test_the_address_of_a_poster_in_a_feed_is_quoted_once(tmp_path: Path) -> None:
    folder = copied(tmp_path) / "episodes/01-as-bought"
    (folder / "poster.svg").rename(folder / "the car & I.svg")
    episode = folder / "episode.md"
    changed(episode, "poster: poster.svg", "poster: the car & I.svg")
    changed(episode, "](poster.svg ", "](<the car & I.svg> ")

    tree = build(tmp_path / "content").tree or {}

    assert b"/episodes/1/the%20car%20%26%20I.svg" in tree["feed.json"]
    assert "episodes/1/the car & I.svg" in tree
