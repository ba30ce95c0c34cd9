"""Power standards as they are written: of the journal, and of a run."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.authored.records import PowerRun
from hoistbook.problems import picture
from tests.authored.journals import BUILD, FIRST, journal_of, lay_down

RUN = """---
title: One
measured:
  - power run: {{log: run.csv, at: wheels, power standard: {standard}}}
---
"""
LOG = "Engine speed [rpm],Torque [N m]\n3000,100\n4000,110\n"


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("SAE J1349", "SAE J1349"),
        ("sae j1349", "SAE J1349"),
        ("J607", "SAE J607"),
        ("DIN 70020", "DIN 70020"),
        ("iso 1585", "ISO 1585"),
        ("as run", "none"),
        ("none", "none"),
    ],
)
def test_a_standard_is_read_as_people_write_it(tmp_path: Path, written: str, read: str) -> None:
    files = {
        "build.yaml": f"{BUILD}power standard: {written}\n",
        FIRST: RUN.format(standard=written),
        "episodes/01-one/run.csv": LOG,
    }
    journal = journal_of(tmp_path, files)
    assert journal.power_standard == read
    (run,) = journal.episodes[0].measured
    assert isinstance(run, PowerRun)
    assert run.power_standard == read


def test_a_standard_that_the_journal_cannot_have_is_a_problem(tmp_path: Path) -> None:
    build = f"{BUILD}power standard: SAE J1394\n"
    lay_down(tmp_path, {"build.yaml": build, FIRST: "---\ntitle: One\n---\n"})
    (problem,) = read_journal(tmp_path).problems
    assert picture(problem) == (
        "build.yaml:3:17\n"
        "problem: `SAE J1394` is no power standard that is known here\n"
        "    power standard: SAE J1394\n"
        "                    ^\n"
        "  known are none, SAE J1349, ISO 1585, DIN 70020, SAE J607"
    )


def test_a_log_by_a_standard_that_is_not_known_is_a_notice_and_kept(tmp_path: Path) -> None:
    files = {FIRST: RUN.format(standard="STD"), "episodes/01-one/run.csv": LOG}
    lay_down(tmp_path, files)
    read = read_journal(tmp_path)
    assert read.problems == ()
    (notice,) = [each for each in read.notices if each.code == "unknown-standard"]
    assert notice.message == (
        "`STD` is no power standard that is known here: it cannot be taken out"
    )
    assert notice.hint == "known are none, SAE J1349, ISO 1585, DIN 70020, SAE J607"
