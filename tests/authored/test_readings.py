"""What of a log's cells are readings, and what is said of those that are none."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from tests.authored.journals import lay_down
from tests.authored.test_logs import files


def test_readings_that_are_none_are_left_out_and_noticed_with_the_first_of_each(
    tmp_path: Path,
) -> None:
    # What loggers write for none: NaN, nothing, -999, the largest of 16 bits, an engine that rolls
    # out lean (common practice, no source).
    csv = (
        "RPM,Torque [N m],Boost [bar gauge],Lambda\n2000,90,-999,0.95\nNaN,91,0.1,0.95\n"
        "65535,92,,0.95\n4000,93,0.3,1.8\n5000,94,0.4\n6000,-5,0.1,9.99\n"
    )
    lay_down(tmp_path, files(csv))
    read = read_journal(tmp_path)
    told = {each.code: each for each in read.notices}

    gaps, beyond = told["no-reading"], told["impossible-reading"]
    assert (gaps.message, gaps.hint) == (
        "lines without a reading, of 6 lines in this log: 1 of speed (`NaN` on line 3), "
        "1 of boost (nothing on line 4), 1 of lambda (nothing on line 6)",
        "they are left out there; a logger that has each channel in its own time leaves gaps",
    )
    assert (beyond.message, beyond.hint) == (
        "readings that cannot be, of 6 lines in this log: 1 of speed (`65535` on line 4), "
        "1 of boost (`-999` on line 2), 1 of lambda (`1.8` on line 5)",
        "they are left out; look at the unit of the column, and at what the logger writes for "
        "none",
    )
    assert (gaps.place.line, beyond.place.line) == (3, 2)
    assert beyond.place.text == "2000,90,-999,0.95"
    assert read.journal is not None
    columns = read.journal.logs["episodes/01-one/run.csv"].columns
    assert [math.isnan(value) for value in columns["speed"]] == [0, 1, 1, 0, 0, 0]
    assert [math.isnan(value) for value in columns["boost"]] == [1, 0, 1, 0, 0, 0]
    assert [math.isnan(value) for value in columns["lambda"]] == [0, 0, 0, 1, 1, 1]


def test_a_reading_that_stands_out_alone_is_left_out_and_noticed(tmp_path: Path) -> None:
    # One sample of 5,000 N m among some of 150 would be the power of the car, 2.6 MW.
    rows = [f"{speed},{150 - (speed - 4000) / 100:.0f},0.5" for speed in range(2000, 6000, 200)]
    rows[11] = "4200,5000,0.5"
    rows[15] = "5000,140,3.9"
    lay_down(tmp_path, files("RPM,Torque [N m],Boost [bar gauge]\n" + "\n".join(rows)))
    read = read_journal(tmp_path)
    (notice,) = (each for each in read.notices if each.code == "lone-reading")

    assert notice.message == (
        "readings that stand out alone, of 20 lines in this log: "
        "1 of torque (`5000` on line 13), 1 of boost (`3.9` on line 17)"
    )
    assert notice.hint == (
        "they are left out as slips of a sensor; if they are none, log the run again"
    )
    assert notice.place.line == 13
    assert read.journal is not None
    columns = read.journal.logs["episodes/01-one/run.csv"].columns
    assert [at for at, each in enumerate(columns["torque"]) if math.isnan(each)] == [11]
    assert [at for at, each in enumerate(columns["boost"]) if math.isnan(each)] == [15]


@pytest.mark.parametrize(
    "torques",
    [
        # The throttle opens, the clutch slips, two runs lie apart, an engine is quiet, or noisy.
        [20, 22, 25, 24, 150, 152, 151, 155, 150, 149, 151, 150],
        [150, 151, 152, 150, 90, 60, 92, 150, 149, 150, 151, 150],
        [150, 110, 151, 111, 149, 109, 150, 110, 151, 112, 150, 111],
        [150] * 12,
        [150, 170, 140, 165, 135, 172, 150, 161, 140, 168, 141, 159],
    ],
)
def test_what_engines_do_is_no_lone_reading(tmp_path: Path, torques: list[int]) -> None:
    rows = "\n".join(f"{2000 + 300 * n},{each}" for n, each in enumerate(torques))
    lay_down(tmp_path, files(f"RPM,Torque [N m]\n{rows}\n"))

    assert not [each for each in read_journal(tmp_path).notices if each.code == "lone-reading"]


def test_a_log_without_gaps_is_not_noticed(tmp_path: Path) -> None:
    lay_down(tmp_path, files("RPM,Torque [N m]\n3000,90\n4000,95\n"))

    assert not [each for each in read_journal(tmp_path).notices if "reading" in each.code]
