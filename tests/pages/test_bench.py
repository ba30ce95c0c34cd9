"""The fitting table: torque of bolts, wire and fuse of loads."""

from __future__ import annotations

from dataclasses import fields, replace
from pathlib import Path
from typing import TypeVar

import pytest

from hoistbook.pages.bench import BoltRow, LoadRow
from hoistbook.pages.desk import Desk, desk_of
from tests.pages.joined import WRONG, bench, material

Row = TypeVar("Row", LoadRow, BoltRow)


@pytest.fixture
def wrong(tmp_path: Path) -> Desk:
    return desk_of(material(tmp_path, WRONG))


def test_the_bench_says_torque_with_its_spread_and_what_the_maker_says(wrong: Desk) -> None:
    (row,) = bench(wrong).bolts

    # K 0.12 (0.09 to 0.16), 75 % of 830 MPa x 36.6 mm2 on 8 mm: 21.9 N m.
    assert (row.thread, row.lubrication, row.torque, row.said) == (
        "M8x1.25, 10.9",
        "anti-seize / moly paste",
        "22 N m",
        "20 N m",
    )
    assert plain(row).spread == "at that torque the preload is 75 % to 133 % of the one aimed at"


def test_the_bench_says_how_tight_plugs_are_and_why_a_hollow_bolt_has_no_torque(
    tmp_path: Path,
) -> None:
    plugs = "got:\n  - {part: plugs, kind: spark plugs, came: given, facts: {thread: M10x1}}\n"
    banjo = "  - {part: banjo, kind: bolts, came: given, name: Banjo bolt M10x1 8.8}\n"
    text = WRONG.replace("got:\n", plugs + banjo)

    rows = {each.part.text: plain(each) for each in bench(desk_of(material(tmp_path, text))).bolts}

    assert rows["Banjo bolt M10x1 8.8"].torque == ""
    assert rows["Banjo bolt M10x1 8.8"].spread == (
        "hollow: no torque is aimed at, it bears less than a solid bolt; the washer and the port "
        "decide, by the maker's figure"
    )
    assert rows["Plugs"].spread == (
        "aluminium 10 to 15 N m (sources conflict, 10 to 12 and 10 to 15: begin with the lower), "
        "cast iron 10 to 15 N m; which metal is not said: begin with the lower; for a seat with a "
        "gasket; a taper seat takes less; thread dry and new, as delivered; a greased one takes "
        "about a third less (common practice) (from memory: Tables that two makers of spark plugs "
        "print)"
    )


def test_the_bench_says_wire_and_fuse_of_a_load(wrong: Desk) -> None:
    (row,) = bench(wrong).loads

    # 2 x 6 m x 10 A x 2.155 mohm/m (ideal copper) = 0.259 V: within 3 % of 12.0 V for a pump.
    assert plain(row) == LoadRow(
        part=row.part,
        current="10 A",
        length="4.0 m (2.0 to 6.0 m), assumed",
        supply="12.5 V (12.0 to 14.4 V), assumed",
        wire="8 mm²",
        drop="0.17 V (0.09 to 0.26 V) lost, 1.4 % of the supply; 3 % allowed",
        laid="",
        fuse="15 A",
    )


def test_the_bench_says_whether_the_wire_that_is_laid_serves(tmp_path: Path) -> None:
    facts = "{current: 10 A, wire length: 4 m, voltage: 13.5 V, wire: 2.5 mm2}"
    laid = WRONG.replace("{current: 10 A}", facts)

    (row,) = bench(desk_of(material(tmp_path, laid))).loads

    # 2 x 4 m x 10 A x 7.98 mohm/m = 0.638 V: 4.7 % of 13.5 V; 4.95 mohm/m: 0.396 V.
    shown = plain(row)
    assert (shown.length, shown.supply, shown.wire) == ("4 m", "13.5 V", "4 mm²")
    assert shown.drop == "0.396 V lost, 2.9 % of the supply; 3 % allowed"
    assert shown.laid == ("2.5 mm² is too thin: 0.638 V lost, 4.7 % of the supply; 3 % allowed")


def test_a_load_of_unknown_current_says_how_to_measure_it(tmp_path: Path) -> None:
    silent = WRONG.replace("facts: {current: 10 A}", "note: No plate on it")

    (row,) = bench(desk_of(material(tmp_path, silent))).loads

    assert (row.wire, row.fuse) == ("", "")
    assert row.current == (
        "not said: read its plate, or put an ammeter in place of its fuse, and write current "
        "under facts"
    )


def plain(row: Row) -> Row:
    """Return a row with ordinary spaces."""
    texts = {n: v for each in fields(row) if isinstance(v := getattr(row, n := each.name), str)}
    return replace(row, **{n: t.replace("\N{NO-BREAK SPACE}", " ") for n, t in texts.items()})
