"""Torques that makers print against the range that the lubricant leaves open."""

from __future__ import annotations

import pytest

from hoistbook.engineering import FORMULAS
from hoistbook.engineering.fastening import NUT_FACTORS, PROPERTY_CLASSES, torque_range

PITCHES = {6: 1.0, 8: 1.25, 10: 1.5, 12: 1.75, 14: 2.0}


def preload(diameter: int, property_class: str) -> float:
    area = FORMULAS["stress_area"](
        thread_diameter=diameter * 1e-3, thread_pitch=PITCHES[diameter] * 1e-3
    )
    return float(
        FORMULAS["preload_of_proof_stress"](
            proof_share=0.75,
            proof_stress=PROPERTY_CLASSES[property_class].proof,
            stress_area=area,
        )
    )


# Torque tables in the manuals of three machines ("friction 0.12"; "0.14, lightly oiled"; "0.125,
# oiled, no dynamic load") and on an engineering reference page that states no friction; the first
# two both print 85 N m for M12.
@pytest.mark.parametrize(
    ("diameter", "property_class", "printed"),
    [
        (6, "8.8", 9.9),
        (8, "8.8", 24.0),
        (10, "8.8", 48.0),
        (12, "8.8", 85.0),
        (14, "8.8", 135.0),
        (8, "10.9", 34.0),
        (10, "10.9", 68.0),
        (12, "10.9", 120.0),
        (8, "8.8", 25.0),
        (10, "8.8", 49.0),
        (8, "8.8", 21.0),
        (10, "8.8", 42.0),
        (12, "8.8", 74.0),
        (8, "8.8", 23.0),
        (10, "8.8", 46.0),
    ],
)
def test_what_makers_print_lies_between_oiled_and_dry(
    diameter: int, property_class: str, printed: float
) -> None:
    force = preload(diameter, property_class)

    oiled = torque_range("engine oil", force, diameter * 1e-3).typical
    dry = torque_range("plain steel, dry and clean", force, diameter * 1e-3).typical

    assert oiled < printed < dry


def test_a_dry_torque_on_pasted_threads_can_pass_the_yield_stress() -> None:
    # Why a torque is never given without its lubricant: ISO 898-1, class 8.8, M8.
    force = preload(8, "8.8")
    dry = torque_range("plain steel, dry and clean", force, 8e-3).typical

    reached = dry / (NUT_FACTORS["anti-seize paste"].typical * 8e-3)

    assert reached > PROPERTY_CLASSES["8.8"].yielding * 36.6e-6


@pytest.mark.parametrize("condition", NUT_FACTORS)
def test_a_nut_factor_has_a_source_and_a_range_about_it(condition: str) -> None:
    factor = NUT_FACTORS[condition]

    assert factor.low < factor.typical < factor.high
    assert factor.source


def test_the_means_of_lubricants_spread_as_a_handbook_says() -> None:
    # Abstract of a handbook chapter: the mean factors of lubricants lie between 0.086 and 0.52.
    assert all(0.086 < factor.typical < 0.52 for factor in NUT_FACTORS.values())


@pytest.mark.parametrize("name", PROPERTY_CLASSES)
def test_the_marking_gives_the_tensile_and_the_yield_stress(name: str) -> None:
    # ISO 898-1: hundredths of the nominal tensile stress, and tenths of it that it yields at.
    hundreds, tenths = (int(each) for each in name.split("."))
    one = PROPERTY_CLASSES[name]

    assert one.proof < one.yielding < one.tensile
    assert one.tensile == pytest.approx(hundreds * 100e6, rel=0.04)
    assert one.yielding == pytest.approx(hundreds * tenths * 10e6, rel=0.05)
