"""Logs of power runs in the dialects that people send."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.authored.records import Log, PowerRun
from tests.authored.journals import FIRST, journal_of, lay_down, messages

RUN = "measured:\n  - power run: {{log: run.csv, at: wheels{more}}}"


def files(csv: str, more: str = "") -> dict[str, str]:
    text = f"---\ntitle: One\n{RUN.format(more=more)}\n---\n"
    return {FIRST: text, "episodes/01-one/run.csv": csv}


def log_of(folder: Path, csv: str, more: str = "") -> Log:
    journal = journal_of(folder, files(csv, more))
    (run,) = journal.episodes[0].measured
    assert isinstance(run, PowerRun)
    assert (run.log, run.at) == ("episodes/01-one/run.csv", "wheels")
    return journal.logs[run.log]


@pytest.mark.parametrize(
    "csv",
    [
        "Engine speed [rpm],Torque [N m]\n2000,90.5\n3000,110\n",
        "Engine speed [rpm];Torque [N m]\n2000;90,5\n3000;110\n",
        "Engine speed [rpm];Torque [N m]\n2000;90.5\n3000;110\n",
        "Engine speed [rpm]\tTorque [N m]\n2000\t90,5\n3000\t110,0\n",
        "# exported at the hall\n\nRPM,Torque (Nm)\n2000,90.5\n3000,110.0\n",
        '"RPM","Torque [N m]"\n"2000","90.5"\n"3000","110"\n',
        "RPM,Torque [N m],Remark\n2000,90.5,begin\n\n3000,110,\n",
        "\ufeffRPM,Torque [N m]\r\n2000,90.5\r\n3000,1.1e2\r\n",
    ],
    ids=["comma", "decimal comma", "semicolon", "tab", "notes", "quotes", "remark", "windows"],
)
def test_every_dialect_reads_the_same(tmp_path: Path, csv: str) -> None:
    assert log_of(tmp_path, csv) == Log(
        columns={"speed": (2000.0, 3000.0), "torque": (90.5, 110.0)}
    )


def test_units_are_those_of_the_headings(tmp_path: Path) -> None:
    log = log_of(
        tmp_path,
        "RPM,Power [PS],Boost [psi gauge],Lambda [-],Charge temperature [degC],MAP [kPa abs]\n"
        "2000,50,1.5,0.95,23.2,110\n3000,60,5,0.90,25.0,135\n",
    )

    # 1 PS is 75 kgf m/s = 735.49875 W by definition; 1 psi is 6894.757 Pa (NIST SP 811).
    assert log.columns["power"] == pytest.approx((50 * 735.49875, 60 * 735.49875))
    assert log.columns["boost"] == pytest.approx((1.5 * 6894.757, 5 * 6894.757))
    assert log.columns["lambda"] == (0.95, 0.90)
    assert log.columns["charge temperature"] == pytest.approx((296.35, 298.15))
    assert log.columns["manifold pressure"] == pytest.approx((110e3, 135e3))


def test_the_author_may_name_columns_and_their_units(tmp_path: Path) -> None:
    log = log_of(
        tmp_path,
        "Drehzahl,Moment,Druck [bar]\n2000,90,0.1\n3000,110,0.4\n",
        ", columns: {speed: Drehzahl in 1/min, torque: moment in lb ft,"
        " boost: Druck in bar gauge}",
    )

    # 1 lbf ft is 1.355818 N m (NIST SP 811).
    assert log.columns["torque"] == pytest.approx((90 * 1.355818, 110 * 1.355818), rel=1e-6)
    assert log.columns["boost"] == pytest.approx((10e3, 40e3))


def test_gaps_are_not_numbers(tmp_path: Path) -> None:
    log = log_of(tmp_path, "RPM,Torque [N m]\n2000,\n3000,-\n4000,NaN\n5000\n6000,90\n")

    assert [math.isnan(value) for value in log.columns["torque"]] == [True] * 4 + [False]


@pytest.mark.parametrize(
    ("csv", "message"),
    [
        (
            "RPM,Torque [kW]\n2000,90\n3000,100\n",
            "run.csv:1:1: the column `Torque [kW]` has `kW`, not a unit of torque",
        ),
        (
            "RPM,Torque [N m],MAP [kPa]\n2000,90,1\n3000,100,1\n",
            "run.csv:1:1: the column `MAP [kPa]` does not say gauge or absolute; "
            "manifold pressure is absolute",
        ),
        (
            "RPM,Torque [N m]\n2000,90\nabc,1\ndef,2\nghi,3\njkl,4\n",
            "run.csv:3:1: `abc` in the column speed is not a number",
        ),
        ("", "run.csv:1:1: the log is empty"),
        ('RPM,"Torque\n2000,90\n', "run.csv:1:1: no column of this log is known to be torque or"),
    ],
)
def test_a_log_that_cannot_be_read_is_said_with_its_line(
    tmp_path: Path, csv: str, message: str
) -> None:
    said = messages(tmp_path, files(csv))

    assert said[0].removeprefix("episodes/01-one/").startswith(message)
    assert len(said) <= 3


def test_a_log_outside_the_journal_is_refused(tmp_path: Path) -> None:
    journal = tmp_path / "journal"
    (tmp_path / "secret.csv").write_text("RPM,Torque [N m]\n1,2\n3,4\n")
    said = messages(
        journal,
        {
            FIRST: "---\ntitle: One\nmeasured:\n"
            "  - power run: {log: ../../../secret.csv, at: wheels}\n---\n"
        },
    )

    assert said == [f"{FIRST}:4:22: `../../../secret.csv` leads out of the journal"]


def test_a_file_of_another_sort_is_no_log(tmp_path: Path) -> None:
    said = messages(tmp_path, files('"RPM","Torque\n' + "x" * 140_000))

    assert said == [
        "episodes/01-one/run.csv:1:1: this is not a CSV file "
        "(field larger than field limit (131072))"
    ]


def test_a_log_of_many_hours_is_refused(tmp_path: Path) -> None:
    said = messages(tmp_path, files("RPM,Torque [N m]\n" + "2000,90\n" * 300_001))

    assert said == ["episodes/01-one/run.csv:1:1: this log has over 300000 lines"]


def test_what_a_log_has_of_air_and_fuel_is_read_too(tmp_path: Path) -> None:
    log = log_of(
        tmp_path,
        "RPM,Torque [N m],Injector time [ms],Mass air flow [g/s]\n2000,90,3.5,30\n3000,110,4,48\n",
    )

    assert log.columns["injector time"] == pytest.approx((3.5e-3, 4e-3))
    assert log.columns["air mass flow"] == pytest.approx((0.030, 0.048))


def test_a_decimal_comma_may_come_late(tmp_path: Path) -> None:
    lines = "".join(f"{2000 + 10 * number};90\n" for number in range(100))
    log = log_of(tmp_path, f"RPM;Torque [N m]\n{lines}3000;90,5\n")

    assert log.columns["torque"][-2:] == (90.0, 90.5)


def test_a_run_at_forty_speeds_in_any_order_and_twice_is_read_as_it_is(tmp_path: Path) -> None:
    speeds = [2000 + 100 * (7 * number % 40) for number in range(80)]
    lines = "".join(f"{speed},{speed / 50}\n" for speed in speeds)
    log = log_of(tmp_path, f"RPM,Torque [N m]\n{lines}")

    assert log.columns["speed"] == tuple(map(float, speeds))


@pytest.mark.parametrize(
    ("csv", "said"),
    [
        (
            "Time [s],Torque [N m]\n0.1,90\n0.2,100\n",
            "run.csv:1:1: no column of this log is known to be speed",
        ),
        (
            "RPM,Torque [N m]\nNaN,NaN\nNaN,90\n3000,NaN\n4000,NaN\n",
            "run.csv:1:1: no line of this log has both an engine speed and a torque above zero",
        ),
        (
            "RPM,Torque [N m]\n0,90\n-100,80\n",
            "run.csv:1:1: no line of this log has both an engine speed and a torque above zero",
        ),
        (
            "RPM,Power [kW]\n3000,-30\n4000,0\n",
            "run.csv:1:1: no line of this log has both an engine speed and a power above zero",
        ),
        ("RPM,Torque [N m]\nNaN,90\nNaN,80\n", "run.csv:1:1: this log holds fewer than two lines"),
        ("RPM,Torque [N m]\n", "run.csv:1:1: this log holds fewer than two lines"),
        (
            "RPM,Torque [N m]\n2000,inf\n3000,90\n",
            "run.csv:2:1: `inf` in the column torque is not a number",
        ),
        (
            "RPM,Torque [N m]\n2000,90\n3_000,90\n",
            "run.csv:3:1: `3_000` in the column speed is not a number",
        ),
        (
            "RPM;Torque [N m]\n2000;90.5\n3.000,5;90.5\n",
            "run.csv:3:1: `3.000,5` in the column speed is not a number",
        ),
        (
            "RPM,Torque [N m]\n2000,90\n3000,3.4e38\n",
            "run.csv:3:1: `3.4e38` in the column torque is not a number",
        ),
        (
            "RPM,Torque [N m],Remark\n2000,n/a,\n3000,-3.4e38,\n",
            "run.csv:3:1: `-3.4e38` in the column torque is not a number",
        ),
        (
            "RPM,Torque [N m],Torque [N m]\n2000,90,180\n3000,100,200\n",
            "run.csv:1:1: several columns of this log could be torque: `Torque [N m]` and "
            "`Torque [N m]`",
        ),
        (
            "RPM,Engine torque [N m],Wheel torque [N m]\n2000,90,80\n3000,100,90\n",
            "run.csv:1:1: several columns of this log could be torque: `Engine torque [N m]` and "
            "`Wheel torque [N m]`",
        ),
        (
            "RPM,Torque [N m]\n1e999,90\n3000,90\n",
            "run.csv:2:1: `1e999` in the column speed is not a number",
        ),
    ],
)
def test_a_log_without_the_numbers_it_is_for_gives_its_cause(
    tmp_path: Path, csv: str, said: str
) -> None:
    assert messages(tmp_path, files(csv)) == [f"episodes/01-one/{said}"]


def test_lines_in_which_the_engine_does_not_pull_are_noticed(tmp_path: Path) -> None:
    lay_down(tmp_path, files("RPM,Torque [N m]\n3000,90\n4000,95\n4000,-20\n3000,0\n2000,\n"))
    (notice,) = (each for each in read_journal(tmp_path).notices if each.code == "overrun")

    assert (notice.message, notice.hint) == (
        "left out, since their torque is nothing or less: 2 of 5 lines of this log",
        "the engine does not pull there: the car rolls out, or stands",
    )


@pytest.mark.parametrize(
    ("csv", "hint"),
    [
        (
            'RPM,Torque [N m]\n"2,000",90\n',
            "if this is a thousand and more, write it without a mark between the thousands",
        ),
        (
            "RPM;Torque [N m]\n2 000;90\n",
            "if this is a thousand and more, write it without a mark between the thousands",
        ),
        (
            "RPM;Torque [N m]\n2000;90.5\n3000;91,5\n",
            "commas and points stand before decimals in one file: use one of them throughout",
        ),
        ("RPM,Torque [N m]\n2000,ERR\n", "correct the file or leave it empty"),
        (
            "RPM,Torque [N m],Torque [N m]\n2000,90,180\n3000,100,200\n",
            "give one of them another heading in the file",
        ),
        (
            "RPM,Engine torque [N m],Wheel torque [N m]\n2000,90,80\n3000,100,90\n",
            "say which, as `columns: {torque: Engine torque [N m]}`",
        ),
    ],
)
def test_what_is_wrong_with_a_cell_or_a_heading_comes_with_what_to_do(
    tmp_path: Path, csv: str, hint: str
) -> None:
    lay_down(tmp_path, files(csv))

    assert [each.hint for each in read_journal(tmp_path).problems] == [hint]


def test_a_column_in_another_unit_than_it_says_is_noticed(tmp_path: Path) -> None:
    csv = "RPM,Torque [N m],Boost [bar gauge]\n33,90,50\n50,100,55\n66,100,60\n"
    lay_down(tmp_path, files(csv))
    notices = [each for each in read_journal(tmp_path).notices if each.code == "unlikely"]

    assert [each.message for each in notices] == [
        "the middle of the column speed of 50 rpm is far from the usual 300 rpm to 20000 rpm",
        "the middle of the column boost of 55 bar is far from the usual -1 bar to 5 bar",
    ]
    assert {each.place.file for each in notices} == {"episodes/01-one/run.csv"}


def test_an_air_fuel_ratio_is_not_taken_for_lambda(tmp_path: Path) -> None:
    # The figure of a gauge is lambda times a constant of petrol, 14.7 or 14.6 (common practice, no
    # source).
    lay_down(tmp_path, files("RPM,Torque [N m],Lambda\n2000,90,12.5\n3000,100,12.9\n"))
    (notice,) = (each for each in read_journal(tmp_path).notices if each.code == "unlikely")

    assert notice.message == (
        "the middle of the column lambda of 12.7 lambda is far from the usual 0.6 to 1.6"
    )
    assert notice.hint == (
        "an air-fuel ratio is no lambda: divide it by the gauge's own, mostly 14.7 or 14.6"
    )


@pytest.mark.parametrize(
    ("second", "hint"),
    [
        (
            "1,rpm,2",
            "if this line holds the units, put # before it, and write them under `columns`",
        ),
        ("00:01:02.5,2000,90", "write a time in seconds, or give the column another heading"),
        ("1,OFF,90", "correct the file or leave it empty"),
    ],
)
def test_a_cell_that_is_no_number_says_what_to_write(
    tmp_path: Path, second: str, hint: str
) -> None:
    lay_down(tmp_path, files(f"Time,RPM,Torque [N m]\n{second}\n3,3000,100\n4,4000,110\n"))

    assert [each.hint for each in read_journal(tmp_path).problems] == [hint]


@pytest.mark.parametrize("mark", ["--", "---", "#N/A", "None", "null"])
def test_a_mark_for_nothing_is_a_gap_that_is_told(tmp_path: Path, mark: str) -> None:
    lay_down(tmp_path, files(f"RPM,Torque [N m]\n2000,90\n3000,{mark}\n4000,110\n"))

    assert [each.message for each in read_journal(tmp_path).notices] == [
        f"lines without a reading, of 3 lines in this log: 1 of torque (`{mark}` on line 3)"
    ]
