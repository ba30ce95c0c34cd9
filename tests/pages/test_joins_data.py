"""Joins as data: ends, verdict, sealant, torque and source, from and until which episode."""

from __future__ import annotations

import json
from pathlib import Path

from hoistbook.pages.data import data_files
from hoistbook.pages.desk import desk_of
from tests.pages.joined import RIGHT, WRONG, material

FEED = "-4 JIC 37 degree flare"


def rows(folder: Path, *episodes: str) -> list[dict[str, object]]:
    files = data_files(desk_of(material(folder, *episodes)))
    found: list[dict[str, object]] = json.loads(files["data/joins.json"])["joins"]
    return found


def test_a_join_that_is_put_right_has_the_episodes_from_and_until_which_it_held(
    tmp_path: Path,
) -> None:
    found = rows(tmp_path, WRONG, RIGHT)

    told = [
        (row["part"], row["other part"], row["verdict"], row["from episode"], row["until episode"])
        for row in found
    ]
    assert told == [
        ("block", "adapter", "looks right, do not join", 1, 2),
        ("adapter", "feed", "mates", 1, 2),
        ("block", "taper", "mates with sealant", 2, None),
        ("taper", "feed", "mates", 2, None),
    ]


def test_a_row_has_both_ends_what_to_add_how_tight_and_the_source(tmp_path: Path) -> None:
    (row,) = [each for each in rows(tmp_path, WRONG, RIGHT) if each["other part"] == "taper"]

    assert row == {
        "part": "block",
        "end": "oil gallery",
        "end in full": "Rc 1/8 taper, female",
        "other part": "taper",
        "other end": "block end",
        "other end in full": "R 1/8 taper, male",
        "carries": "oil",
        "gauge pressure in bar": None,
        "temperature in degC": None,
        "verdict": "mates with sealant",
        "why": "one taper thread in another; the paste fills the spiral path",
        "to add": "thread paste made for the fluid, not on the first thread",
        "sealed with": None,
        "how tight": (
            "1.5 to 3 turns past finger tight, not torque: the sealant lets the thread slip and "
            "the taper wedges it, so one torque may be one turn or four; in aluminium the fewer, "
            "and never turned back. The maker's own figure beats every figure here."
        ),
        "torque here": None,
        "source of how tight": (
            "hand/wrench turns published: laboratory-supply thread page (A laboratory supplier's "
            "page on pipe threads) (steel pipe make-up); turns past finger tight from memory: "
            "fluid-power assembly practice"
        ),
        "joined knowingly because": None,
        "from episode": 2,
        "until episode": None,
    }


def test_a_join_that_comes_again_has_a_row_for_each_time(tmp_path: Path) -> None:
    off = "---\ntitle: Off\ndone:\n  - took off: feed\n---\n"
    joined = "joins:\n  - adapter hose end to feed block end\n"
    on = f"---\ntitle: On\ndone:\n  - fitted: feed\n{joined}---\n"

    told = [
        (row["from episode"], row["until episode"])
        for row in rows(tmp_path, WRONG, off, on)
        if row["other part"] == "feed"
    ]

    assert told == [(1, 2), (3, None)]
