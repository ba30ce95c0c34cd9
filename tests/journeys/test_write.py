"""Writing a site, as an author does it: in a folder, with the command, once and again."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from hoistbook.authored.kinds import car_facts, setting_facts
from hoistbook.pipeline import build
from hoistbook.publish.swap import read_tree
from tests.helpers.journals import changed, copied, hoistbook, tree

COMMAND = re.compile(r"^    .*hoistbook watch$", re.MULTILINE)


def said(out: str) -> str:
    """Return what was printed, with the program named as it is on a shell's path."""
    return COMMAND.sub("    hoistbook watch", out)


LEFT_OUT = (
    "content/episodes/03-not-yet-up/episode.md:2:1\n"
    "notice: episode 3 is not published yet: the site is written without it\n"
    "    title: Nobody has seen this yet\n"
    "    ^\n"
    "  add `published:` with the day, as 2026-03-06, once its video is up; "
    "`hoistbook watch` shows it until then\n"
    "\n"
)


def times(home: Path) -> dict[str, int]:
    return {str(file): file.stat().st_mtime_ns for file in sorted((home / "output").rglob("*"))}


def test_the_first_writing_says_what_to_open_and_how_to_watch(tmp_path: Path) -> None:
    copied(tmp_path)

    ran = hoistbook("write", folder=tmp_path)

    assert (ran.status, ran.err) == (0, "")
    assert said(ran.out) == LEFT_OUT + (
        "Wrote output/site/index.html\n"
        "Open that file in a browser. To see every change while you write:\n"
        "    hoistbook watch\n"
    )


def test_the_site_of_a_car_that_is_sold_is_written(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    episode = journal / "episodes/02-half-a-bar/episode.md"
    changed(episode, "  - fitted: turbo\n", "  - fitted: turbo\n  - {sold: car, for: 800 EUR}\n")

    built = build(journal)

    assert (built.problems, built.tree is None) == ((), False)
    page = (built.tree or {})["episodes/2/index.html"].decode()
    assert '<a href="../../spec/index.html">The car</a>' in page


def test_what_it_says_to_type_can_be_typed_when_folders_and_program_have_other_names(
    tmp_path: Path,
) -> None:
    journal = copied(tmp_path).rename(tmp_path / "my car's journal")
    program = tmp_path / "a venv/hoistbook"
    program.parent.mkdir()
    program.symlink_to(Path(sys.executable).with_name("hoistbook"))
    asked = [program, "write", "--journal", journal.name, "--into", "out/to dry"]

    ran = subprocess.run(
        asked,
        cwd=tmp_path,
        env=os.environ | {"PATH": "/usr/bin:/bin"},
        capture_output=True,
        text=True,
        check=True,
    )

    said = ran.stdout.splitlines()[-1]
    assert said == (
        f"    '{program}' watch --journal 'my car'\"'\"'s journal' --into 'out/to dry'"
    )
    assert shlex.split(said) == [
        str(program), "watch", "--journal", journal.name, "--into", "out/to dry"
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("target", "why"),
    [
        ("/proc/foo", "nothing can be written to /proc (No such file or directory)"),
        ("content/build.yaml/site", "nothing can be written to content/build.yaml (File exists)"),
        (
            "content/build.yaml/a/b",
            "nothing can be written to content/build.yaml/a (Not a directory)",
        ),
    ],
)
def test_a_place_that_nothing_can_be_written_to_is_named(
    tmp_path: Path, target: str, why: str
) -> None:
    copied(tmp_path)

    ran = hoistbook("write", "--into", target, folder=tmp_path)

    assert (ran.status, ran.err) == (1, f"Error: {why}: name a folder of your own with --into\n")


def test_writing_again_touches_nothing(home: Path) -> None:
    before = times(home)

    ran = hoistbook("write", folder=home)

    assert ran.status == 0
    assert said(ran.out).startswith(LEFT_OUT + "Nothing has changed: output/site/index.html\n")
    changes = {file for file, time in times(home).items() if before.get(file) != time}
    assert changes <= {str(home / "output/.site.lock")}


def test_a_change_that_shows_nowhere_leaves_the_site_as_it_is(home: Path) -> None:
    before = {file: time for file, time in times(home).items() if "/site/" in file}
    changed(home / "content/build.yaml", "format: 1", "format: 1   # a comment")

    assert hoistbook("write", folder=home).status == 0

    assert {file: time for file, time in times(home).items() if "/site/" in file} == before


def test_a_site_that_was_damaged_is_written_again(home: Path) -> None:
    whole = tree(home)
    (home / "output/site/tally/index.html").unlink()

    assert hoistbook("write", folder=home).status == 0

    assert tree(home) == whole


def test_a_problem_leaves_the_old_site_byte_for_byte(home: Path) -> None:
    before = tree(home)
    file = home / "content/episodes/02-half-a-bar/episode.md"
    changed(file, "  mass: 910 kg", "  mass: 910")

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.out == ""
    assert ran.err == (
        "content/episodes/02-half-a-bar/episode.md:24:9\n"
        "problem: `910` has no unit\n"
        "      mass: 910\n"
        "            ^\n"
        "  as 910 kg; units that fit here: kg, g, lb, t\n"
        "\n"
        "1 problem, 0 notices; the site stays as it was\n"
    )
    assert tree(home) == before


def test_the_same_journal_gives_the_same_bytes_everywhere(home: Path) -> None:
    elsewhere = {
        "PYTHONHASHSEED": "4711",
        "TZ": "Pacific/Kiritimati",
        "LANG": "tr_TR.UTF-8",
        "LC_ALL": "C",
        "PYTHONCOERCECLOCALE": "0",
        "PYTHONUTF8": "0",
        "COLUMNS": "40",
    }

    ran = hoistbook("write", "--into", "other/site", folder=home, environment=elsewhere)

    assert ran.status == 0
    assert read_tree(home / "other/site") == tree(home)


def test_a_terminal_without_the_letter_is_told_its_number(home: Path) -> None:
    file = home / "content/episodes/02-half-a-bar/episode.md"
    changed(file, "Injectors, larger", "Injectors, größer")

    ran = hoistbook(
        "spec",
        folder=home,
        environment={"LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"},
    )

    assert ran.status == 0
    assert "Injectors, gr\\xf6\\xdfer" in ran.out


def test_nothing_of_an_unpublished_episode_or_a_private_note_is_written(home: Path) -> None:
    unseen = [b"Nobody has seen this yet", b"must not be published", b"Secret shop"]
    unseen += [b"unseen-gasket", b"the key is under the mat"]

    found = {
        (path, word) for path, content in tree(home).items() for word in unseen if word in content
    }

    assert found == set()


def test_an_unpublished_episode_is_shown_while_watching(home: Path) -> None:
    shown = build(home / "content", unpublished=True).tree

    assert shown is not None
    assert b"Nobody has seen this yet" in shown["episodes/3/index.html"]
    assert b"the key is under the mat" not in b"".join(shown.values())


def test_a_damaged_cache_changes_nothing(home: Path) -> None:
    before = tree(home)
    for file in (home / "output/.cache").iterdir():
        file.write_bytes(file.read_bytes()[:-1] + b"?")

    assert hoistbook("write", folder=home).status == 0

    assert tree(home) == before


def test_a_folder_of_somebody_elses_is_not_replaced(tmp_path: Path) -> None:
    copied(tmp_path)
    (tmp_path / "pictures").mkdir()
    (tmp_path / "pictures/one.jpg").write_bytes(b"mine")

    ran = hoistbook("write", "--into", "pictures", folder=tmp_path)

    assert ran.status == 1
    assert ran.err == (
        "Error: pictures holds something that hoistbook did not write, so it is left alone: "
        "name an empty or a new folder with --into\n"
    )
    assert (tmp_path / "pictures/one.jpg").read_bytes() == b"mine"


CAR = """
  mass: 880 kg
  engine displacement: 1700 cc
  engine cylinders: 5
  engine bore: 80 mm
  engine stroke: 84 mm
  engine rod length: 140 mm
  engine compression ratio: 8.2:1
  engine valves per cylinder: 4
  engine volumetric efficiency: 0.97, assumed
  engine gross indicated efficiency: 0.36, assumed
  engine firing order: 1-3-4-2
  gearing gears: [3.2, 1.9, 1.3, 1.0]
  gearing final drive: 4.2
  tyres: 195/50 R15
  driven wheels: rear
  frontal area: 1.8 m2
  drag coefficient: 0.4
  driver mass: 70 kg
  engine chamber volume: 38 cc
  engine gasket thickness: 1.4 mm
  engine gasket bore: 82 mm
  engine deck clearance: 0.5 mm
  engine dish volume: 5 cc
  engine inlet closes: 50 deg
"""
SETTINGS = """
  boost: 0.7 bar gauge
  fuel: ethanol blend 60 %
  rev limit: 7000 rpm
  mixture: lambda 0.80
  fuel pressure: 3.5 bar gauge
  regulator: fixed
  pump voltage: 12 V
  oil: 5W-40
  plug gap: 0.6 mm
  tyre pressures: 1.8 bar
  tyre pressures front: 1.9 bar
  tyre pressures rear: 1.7 bar
  air pressure: 980 hPa
  air temperature: 25 degC
  air humidity: 40 %
  ignition retard: 4 deg
  sea level pressure: 1010 hPa
  altitude: 250 m
  boost control: follows the air
"""
"""Every key of car and settings, with another value than before."""


def keys_of(lines: str) -> set[str]:
    return {line.split(":")[0].strip() for line in lines.splitlines() if line.strip()}


def test_nothing_of_the_last_episode_reaches_an_earlier_page(tmp_path: Path) -> None:
    assert keys_of(CAR) == {*car_facts(), "gearing gears"}
    assert keys_of(SETTINGS) == set(setting_facts())
    journal = copied(tmp_path)
    before = build(journal).tree
    last = journal / "episodes/02-half-a-bar/episode.md"
    changed(last, "\n  mass: 910 kg\n", CAR)
    changed(last, "\n  boost: 0.5 bar gauge\n", SETTINGS)

    after = build(journal).tree

    assert before is not None
    assert after is not None
    earlier = [path for path in before if re.match(r"(episodes/1|spec/[01])/", path)]
    assert [path for path in earlier if after[path] != before[path]] == []
    for key in keys_of(CAR) | keys_of(SETTINGS):
        shown = (key[0].upper() + key[1:]).encode()
        assert shown in after["spec/2/index.html"], key


def test_what_became_of_a_part_is_told_on_earlier_pages(tmp_path: Path) -> None:
    journal = copied(tmp_path)
    before = build(journal).tree
    last = journal / "episodes/02-half-a-bar/episode.md"
    changed(last, "  - fitted: turbo\n", "  - fitted: turbo\n  - broke: oil-filter\n")

    after = build(journal).tree

    assert before is not None
    assert after is not None
    assert after["episodes/1/index.html"] != before["episodes/1/index.html"]
    assert b"broke in episode 2" in after["episodes/1/index.html"]
