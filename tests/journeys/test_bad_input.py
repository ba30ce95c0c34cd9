"""What cannot be gives no number: a problem or a notice names it, and no figure rests on it."""

import pytest

from hoistbook.figures.figure import Figure, Missing
from hoistbook.pipeline import work_out
from tests.authored.journals import FIRST, lay_down

BUILD = """format: 1
title: A car
car:
  mass: 900 kg
  engine: {{displacement: {displacement}, compression ratio: "9.4:1"}}
settings:
  boost: {boost}
  fuel: petrol
  rev limit: 6300 rpm
  mixture: {mixture}
"""
RUN = "measured:\n  - power run: {log: run.csv, at: wheels}\n"


def worked(folder, log="", **slips):
    values = {"displacement": "1600 cc", "boost": "none", "mixture": "lambda 0.9"} | slips
    files = {
        "build.yaml": BUILD.format(**values),
        FIRST: f"---\ntitle: One\npublished: 2026-01-01\n{RUN if log else ''}---\n",
    }
    lay_down(folder, files | ({"episodes/01-one/run.csv": log} if log else {}))
    return work_out(folder)


def test_the_car_without_a_slip_has_its_power(tmp_path):
    built = worked(tmp_path)
    assert (built.problems, built.notices) == ((), ())
    assert isinstance(built.material.figures[-1].get("power"), Figure)


@pytest.mark.parametrize(
    ("slip", "notice", "give"),
    [
        (
            {"displacement": "0 cc"},
            "engine displacement of 0 cc is far from the usual 200 cc to 9000 cc",
            "a number above zero for car: engine displacement",
        ),
        (
            {"displacement": "-1600 cc"},
            "engine displacement of -1600 cc is far from the usual 200 cc to 9000 cc",
            "a number above zero for car: engine displacement",
        ),
        (
            {"displacement": "1.6 cc"},
            "engine displacement of 1.6 cc is far from the usual 200 cc to 9000 cc",
            "a displacement between 20 cc and 20 L for car: engine displacement",
        ),
        (
            {"mixture": "lambda 3"},
            "mixture of lambda 3 is far from the usual 0.6 to 1.2",
            "a lambda between 0.5 and 1.6 for settings: mixture",
        ),
        (
            {"boost": "80 psi gauge"},
            "boost of 80 psi gauge is far from the usual 0.1 bar to 4 bar",
            "a boost between 0.05 and 4.5 bar gauge, or none, for settings: boost",
        ),
        (
            {"boost": "0.5 psi gauge"},
            "boost of 0.5 psi gauge is far from the usual 0.1 bar to 4 bar",
            "a boost between 0.05 and 4.5 bar gauge, or none, for settings: boost",
        ),
        (
            {"boost": "0.5 bar absolute"},
            "boost of 0.5 bar absolute is far from the usual 0.1 bar to 4 bar",
            "a boost between 0.05 and 4.5 bar gauge, or none, for settings: boost",
        ),
        (
            {"boost": "-0.5 bar gauge"},
            "boost of -0.5 bar gauge is far from the usual 0.1 bar to 4 bar",
            "a boost between 0.05 and 4.5 bar gauge, or none, for settings: boost",
        ),
    ],
)
def test_a_number_that_cannot_be_is_noticed_and_nothing_is_worked_out_from_it(
    tmp_path, slip, notice, give
):
    built = worked(tmp_path, **slip)
    # This car has nothing that makes boost, which is noticed too.
    assert [each.message for each in built.notices if each.code != "no-charger"] == [notice]
    found = built.material.figures[-1]
    for quantity in ("power", "wheel_power", "fuel_flow"):
        missing = found.get(quantity)
        assert isinstance(missing, Missing)
        assert missing.give == (give,)


@pytest.mark.parametrize(
    ("slip", "problem"),
    [
        ({"boost": "0.8 m"}, "`0.8 m` is a length, and here a pressure is wanted"),
        ({"boost": "0.8 bar"}, "`0.8 bar` does not say from where the pressure counts"),
        ({"boost": "NaN bar gauge"}, "`NaN bar gauge` has no number"),
        ({"displacement": "nan cc"}, "`nan cc` has no number"),
        (
            {"log": "Time [s],Torque [N m]\n1,90\n2,90\n"},
            "no column of this log is known to be speed",
        ),
        ({"log": "RPM,Torque [N m]\nNaN,90\nNaN,90\n"}, "this log holds fewer than two lines"),
    ],
)
def test_what_cannot_be_read_stops_with_its_cause(tmp_path, slip, problem):
    built = worked(tmp_path, **slip)
    assert [each.message for each in built.problems] == [problem]
    assert built.material is None


def test_a_run_at_forty_speeds_in_random_order_gives_the_curve_of_a_run_in_order(tmp_path):
    speeds = [2000 + 100 * number for number in range(40)]
    shuffled = [2000 + 100 * (13 * number % 40) for number in range(40)]
    curves = []
    for name, order in (("one", speeds), ("other", shuffled)):
        lines = "".join(f"{speed},{120 - (speed - 4000) ** 2 / 4e5:.1f}\n" for speed in order)
        built = worked(tmp_path / name, log=f"RPM,Torque [N m]\n{lines}")
        assert built.problems == ()
        curves.append(built.material.figures[-1].get("wheel_power").curve)
    assert curves[0] == curves[1]
    assert curves[0].speeds == tuple(map(float, speeds))
