"""Torques that makers print against the range that the state of the thread leaves open."""

from __future__ import annotations

import pytest

from hoistbook.fit.fasteners import Tightening, bolting_in
from hoistbook.fit.tables import keyed, table

FACTORS = keyed("k_factors", "condition")


def torque(diameter: int, property_class: str, state: str) -> Tightening:
    """Return the torque of a bolt of coarse thread in words of the bench."""
    found = bolting_in(f"M{diameter}, {property_class}, {state}")
    assert found is not None
    assert found.tightening is not None
    return found.tightening


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
    oiled = torque(diameter, property_class, "in oil")
    dry = torque(diameter, property_class, "dry")

    assert oiled.torque < printed < dry.torque


def test_a_dry_torque_on_pasted_threads_can_pass_the_yield_stress() -> None:
    # Why a torque is never given without its lubricant: ISO 898-1, class 8.8, M8: 640 MPa.
    dry, pasted = torque(8, "8.8", "dry"), torque(8, "8.8", "anti-seize")

    assert dry.torque / pasted.torque * pasted.preload > 640e6 * 36.6e-6


@pytest.mark.parametrize("condition", [each for each in FACTORS if FACTORS[each]["K_typical"]])
def test_a_nut_factor_stands_in_a_range_of_its_own_as_a_handbook_says(condition: str) -> None:
    # Abstract of a handbook chapter: the mean factors of lubricants lie between 0.086 and 0.52.
    row = FACTORS[condition]
    low, typical, high = (float(row[f"K_{each}"]) for each in ("low", "typical", "high"))

    assert low < typical < high
    assert 0.086 < typical < 0.52


def test_the_marking_of_a_class_gives_a_stress_above_its_proof() -> None:
    # ISO 898-1: hundredths of the nominal tensile stress, and tenths of it that it yields at.
    for row in table("property_classes"):
        hundreds, tenths = (int(each) for each in row["property_class"].split("."))
        assert 0.85 < float(row["proof_stress_MPa"]) / (hundreds * tenths * 10) < 0.96
