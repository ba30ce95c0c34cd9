"""Bolts, clamps and wires against published tables."""

from __future__ import annotations

import pytest

from hoistbook.fit.clamps import ClampChoice, clamp_for
from hoistbook.fit.fasteners import (
    DRY,
    fastener_in,
    lubrication_of,
    tightening,
)
from hoistbook.fit.tables import keyed, table
from hoistbook.fit.threads import Thread, thread_of
from hoistbook.fit.wiring import PARTICULAR, fuse_for, wire_for
from hoistbook.values.end import End, EndKind, Gender


def metric(size: str) -> Thread:
    found = thread_of(End(kind=EndKind.METRIC, size=size, gender=Gender.MALE))
    assert found is not None
    return found


def test_a_torque_comes_with_what_the_state_of_the_thread_makes_of_it() -> None:
    # 0.75 x 580 MPa x 36.6 mm2 = 15.9 kN; K 0.20 (0.18 to 0.27) dry.
    found = tightening(metric("M8x1.25"), "8.8")

    assert found is not None
    assert found.preload == pytest.approx(15.9e3, rel=0.002)
    assert found.torque == pytest.approx(25.5, abs=0.05)
    assert found.spread == pytest.approx((0.20 / 0.27, 0.20 / 0.18))


def test_a_dry_torque_on_a_greased_stud_overloads_it() -> None:
    # K 0.12 in place of 0.20 gives 1.67 times the preload.
    dry, greased = (
        tightening(metric("M8x1.25"), "8.8", state) for state in (DRY, "anti-seize / moly paste")
    )

    assert dry is not None
    assert greased is not None
    assert dry.torque / greased.torque == pytest.approx(0.20 / 0.12)


def test_large_bolts_of_8_8_have_the_higher_proof_stress() -> None:
    # ISO 898-1: 580 MPa up to M16, 600 MPa above; stress areas 157 and 192 mm2, from memory.
    small, large = tightening(metric("M16x2"), "8.8"), tightening(metric("M18x2.5"), "8.8")

    assert small is not None
    assert large is not None
    assert small.preload == pytest.approx(0.75 * 580 * 157, rel=0.005)
    assert large.preload == pytest.approx(0.75 * 600 * 192, rel=0.005)


def test_of_a_class_in_no_table_no_torque_is_said() -> None:
    assert tightening(metric("M8x1.25"), "A2-70") is None


@pytest.mark.parametrize(
    ("words", "name", "property_class"),
    [
        ("Stud M8x1.25, 10.9", "M8x1.25", "10.9"),
        ("Flange bolt M10, class 8.8", "M10x1.5", "8.8"),
        ("M10 x 1.25 nut", "M10x1.25", None),
    ],
)
def test_a_fastener_is_found_in_words(words: str, name: str, property_class: str | None) -> None:
    found = fastener_in(words)

    assert found is not None
    assert (found[0].name, found[1]) == (name, property_class)


@pytest.mark.parametrize("words", ["Turbine inlet gasket", "M9 bolt", "AM12"])
def test_what_is_no_fastener_is_none(words: str) -> None:
    assert fastener_in(words) is None


@pytest.mark.parametrize(
    ("words", "row"),
    [
        ("a drop of oil", "machine/engine oil"),
        ("M8 stud, oiled", "machine/engine oil"),
        ("oil pan bolts M6", DRY),
        ("zinc flake", "zinc-flake coating"),
        ("zinc plated", "zinc plated"),
        ("bare", DRY),
    ],
)
def test_the_state_of_a_thread_is_found_in_words(words: str, row: str) -> None:
    assert lubrication_of(words) == row
    assert row in keyed("k_factors", "condition")


def test_a_clamp_is_chosen_by_the_hose_on_the_pipe() -> None:
    assert clamp_for(50.8) == ClampChoice("50-70", 60.8)
    assert clamp_for(50.8, "t_bolt") == ClampChoice("60-63", 60.8)
    assert clamp_for(300) is None


def test_ten_amperes_over_four_metres_want_four_square_millimetres() -> None:
    # 2 x 4 m x 10 A x 7.98 mohm/m = 0.638 V = 5.1 % of 12.5 V in 2.5 mm2 (IEC 60228, class 5).
    found = wire_for(10, 4)

    assert found is not None
    assert found.label == "4 mm2"
    assert found.lost(10, 4) == pytest.approx(0.396, abs=5e-4)
    assert fuse_for(10, found.largest_fuse) == 15


def test_a_pump_wants_the_thicker_wire() -> None:
    found = wire_for(10, 4, limit=PARTICULAR)

    assert found is not None
    assert found.label == "6 mm2"


def test_a_load_that_no_wire_of_the_table_carries_has_none() -> None:
    assert wire_for(500, 1) is None


def test_a_fuse_protects_the_cable_and_holds_the_load() -> None:
    assert fuse_for(10, 20) == 15
    assert fuse_for(8, 20) == 15
    assert fuse_for(19, 20) is None


# Common practice, no source: the next blade fuse at or above 1.25 times a current that flows all
# the time, 20 A for 14 A and 15 A for 9 A.
@pytest.mark.parametrize(("current", "rating"), [(14.0, 20), (9.0, 15), (4.0, 7.5), (32.0, None)])
def test_a_fuse_has_a_quarter_and_more_above_the_load(
    current: float, rating: float | None
) -> None:
    assert fuse_for(current, 40) == rating


def test_fuses_are_those_of_the_table() -> None:
    listed = [float(row["value"]) for row in table("hoses_media") if row["property"] == "rating_A"]

    assert {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40} == set(listed)
