"""Compressor maps that are given as points, and what is wrong with those that are none."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.authored.map_points import CompressorMap
from tests.authored.journals import FIRST, journal_of, lay_down, messages

GOOD = "Flow [g/s],Pressure ratio,Efficiency [%]\n50,1.4,60\n150,1.4,64\n100,2.0,74\n"
AIR = "reference pressure: 100 kPa, reference temperature: 25 degC"


def files(csv: str, more: str = "", kind: str = "turbocharger") -> dict[str, str]:
    text = (
        f"---\ntitle: One\ngot:\n  - part: turbo\n    came: given\n    kind: {kind}\n"
        f"    compressor map: {{points: map.csv, {AIR}{more}}}\n---\n"
    )
    return {FIRST: text, "episodes/01-one/map.csv": csv}


def map_of(folder: Path, csv: str, more: str = "") -> CompressorMap:
    (part,) = journal_of(folder, files(csv, more)).episodes[0].got
    assert part.compressor_map is not None
    return part.compressor_map


def test_a_map_is_read_in_si_with_the_air_that_it_holds_for(tmp_path: Path) -> None:
    read = map_of(tmp_path, GOOD)

    assert read.file == "episodes/01-one/map.csv"
    assert read.flow == pytest.approx((0.05, 0.15, 0.10))
    assert read.pressure_ratio == (1.4, 1.4, 2.0)
    assert read.efficiency == pytest.approx((0.60, 0.64, 0.74))
    assert read.shaft_speed == ()
    assert read.reference_pressure.value == pytest.approx(100e3)
    assert read.reference_temperature.value == pytest.approx(298.15)


def test_the_author_may_name_columns_and_their_units(tmp_path: Path) -> None:
    read = map_of(
        tmp_path,
        "Durchsatz;PR;eta;n\n6,6;1,4;0,60;80000\n20;1,4;0,64;90000\n13,2;2,0;0,74;120000\n",
        ", columns: {flow: Durchsatz in lb/min, pressure ratio: PR, efficiency: eta,"
        " shaft speed: n}",
    )

    # 1 lb/min is 7.559873 g/s (NIST SP 811).
    assert read.flow == pytest.approx((0.04989516, 0.1511975, 0.09979032), rel=1e-6)
    assert read.shaft_speed == (80e3, 90e3, 120e3)


def test_a_volume_flow_is_that_of_air_of_the_reference_state(tmp_path: Path) -> None:
    csv = "Volume flow [m3/s],Pressure ratio,Efficiency\n0.05,1.4,0.6\n0.15,1.4,0.64\n0.1,2,0.7\n"
    read = map_of(tmp_path, csv)

    # Dry air at 100 kPa and 25 degC has 1.1685 kg/m3 (CoolProp 8.0.0: 1.16882, real gas).
    assert read.flow == pytest.approx((0.05 * 1.1685, 0.15 * 1.1685, 0.1 * 1.1685), rel=5e-4)


@pytest.mark.parametrize(
    ("csv", "said"),
    [
        (
            "Flow [g/s],Pressure ratio,Efficiency [%]\n50,1.4,60\n",
            "1:1: this map has one point: there is no room between them to read it",
        ),
        (
            "Flow [g/s],Pressure ratio,Efficiency [%]\n50,1.4,60\n100,1.6,64\n150,1.8,70\n",
            "1:1: this map has 3 points, all on one line: there is no room between them to read "
            "it",
        ),
        (GOOD + "120,,70\n", "5:1: this point has no pressure ratio"),
        (GOOD + "120,1.7,NaN\n", "5:1: this point has no efficiency"),
        (GOOD + "150,1.4,66\n", "5:1: this point stands on line 3 already"),
        (GOOD + "120,0.7,70\n", "5:1: 0.7 in SI units is no pressure ratio of a compressor"),
        (GOOD + "120,1.7,0.7\n", "5:1: 0.007 in SI units is no efficiency of a compressor"),
        (GOOD + "120,x,70\n", "5:1: `x` in the column pressure ratio is not a number"),
        (
            "Flow,Pressure ratio,Efficiency\n50,1.4,0.6\n",
            "1:1: the column `Flow` has no unit",
        ),
        (
            "Flow [g/s],Efficiency [%]\n50,60\n",
            "1:1: no column of this map is known to be pressure ratio",
        ),
    ],
)
def test_what_is_no_map_is_said_with_its_line(tmp_path: Path, csv: str, said: str) -> None:
    assert messages(tmp_path, files(csv)) == [f"episodes/01-one/map.csv:{said}"]


def test_a_map_says_for_which_air_it_holds(tmp_path: Path) -> None:
    text = (
        "---\ntitle: One\ngot:\n  - part: turbo\n    kind: turbocharger\n"
        "    compressor map: {points: map.csv}\n---\n"
    )

    assert messages(tmp_path, {FIRST: text, "episodes/01-one/map.csv": GOOD}) == [
        f"{FIRST}:6:21: a compressor map needs `reference pressure`",
        f"{FIRST}:6:21: a compressor map needs `reference temperature`",
    ]


def test_a_map_of_what_compresses_nothing_is_noticed(tmp_path: Path) -> None:
    lay_down(tmp_path, files(GOOD, kind="hose"))
    read = read_journal(tmp_path)

    assert read.problems == ()
    assert [str(each.message) for each in read.notices] == [
        "nothing reads the map of a part that compresses no air"
    ]
