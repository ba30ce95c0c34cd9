"""Rule R5; common practice, no source, where nothing else stands beside a case."""

from __future__ import annotations

import pytest

from hoistbook.fit.verdict import Verdict
from tests.fit.ends import NAMES, decided, of, service


@pytest.mark.parametrize(
    ("pipe", "hose", "verdict"),
    [
        # By size: more than 2 mm wider or 6 % narrower asks for a reducer.
        (50, 52.0, "looks_alike_no"),
        (50, 52.1, "needs_adapter"),
        (50, 50.6, "mates"),
        (50, 50.7, "looks_alike_no"),
        (50, 48.5, "mates"),
        (50, 48.4, "looks_alike_no"),
        (50, 47.0, "looks_alike_no"),
        (50, 46.9, "needs_adapter"),
        # Every label of the trade on its own pipe.
        (44.45, 45, "mates"),
        (50.8, 51, "mates"),
        (57.15, 57, "mates"),
        (63.5, 63, "mates"),
        (69.85, 70, "mates"),
        (76.2, 76, "mates"),
        (88.9, 89, "mates"),
        (101.6, 102, "mates"),
        # Neighbours that are not the same.
        (76.2, 75, "mates"),
        (76.2, 80, "needs_adapter"),
    ],
)
def test_r5_a_hose_by_its_size(pipe: float, hose: float, verdict: str) -> None:
    found = of(f"spigot:{pipe}mm:M;bead=yes", f"silhose:{hose}mm:F;medium=air;p_bar=1")

    assert (found.rule, NAMES[found.verdict]) == ("R5", verdict)


@pytest.mark.parametrize(
    ("hose", "verdict"),
    [
        ("silhose:8mm:F;medium=oil", "looks_alike_no"),
        ("silhose:8mm:F;medium=petrol", "looks_alike_no"),
        ("silhose:8mm:F;medium=ethanol", "looks_alike_no"),
        ("silhose:8mm:F;medium=coolant", "mates"),
        ("silhose:8mm:F;medium=air", "mates"),
        # SAE J20-2022: its scope is water and glycol coolant only.
        ("hose:8mm:F;spec=20R3;medium=coolant", "mates"),
        ("hose:8mm:F;spec=20R3;medium=oil", "looks_alike_no"),
        ("hose:8mm:F;spec=20R4;medium=petrol", "looks_alike_no"),
        ("hose:8mm:F;spec=20R3;medium=air", "looks_alike_no"),
        # FMVSS 106: brake hoses are assemblies to J1401, crimped, and nothing takes their place.
        ("hose:8mm:F;spec=J1401;medium=brake_fluid", "looks_alike_no"),
        ("hose:8mm:F;spec=30R9;medium=brake_fluid", "looks_alike_no"),
        ("hose:8mm:F;medium=brake_fluid", "looks_alike_no"),
        ("silhose:8mm:F;medium=brake_fluid", "looks_alike_no"),
        ("hose:8mm:F;medium=exhaust", "looks_alike_no"),
        # SAE J30 JUN1998: R6, R7 and R8 are low-pressure hoses, R9 is for injection.
        ("hose:8mm:F;spec=30R6;medium=petrol;p_bar=0.5", "mates"),
        ("hose:8mm:F;spec=30R6;medium=petrol;p_bar=1", "mates"),
        ("hose:8mm:F;spec=30R6;medium=petrol;p_bar=1.1", "looks_alike_no"),
        ("hose:8mm:F;spec=30R7;medium=ethanol;p_bar=3", "looks_alike_no"),
        ("hose:8mm:F;spec=30R8;medium=petrol;p_bar=3", "looks_alike_no"),
        ("hose:8mm:F;spec=30R9;medium=petrol;p_bar=6.9", "mates"),
        ("hose:8mm:F;spec=30R9;medium=petrol;p_bar=7", "looks_alike_no"),
        ("hose:8mm:F;spec=30R9;medium=oil;p_bar=5", "mates"),
        ("hose:8mm:F;spec=30R11;medium=petrol;p_bar=1", "mates"),
        ("hose:8mm:F;spec=30R11;medium=petrol;p_bar=3", "looks_alike_no"),
        ("hose:8mm:F;spec=30R14;medium=petrol;p_bar=3;max_bar=6", "mates"),
        ("hose:8mm:F;spec=30R14;medium=petrol;p_bar=1", "mates"),
        # Its title says fuel and oil; glycol hardens it: common practice, no source.
        ("hose:8mm:F;spec=30R9;medium=coolant", "looks_alike_no"),
        # A lining for brake fluid swells in petrol and oil: common practice, no source.
        ("hose:8mm:F;spec=J1401;medium=petrol;p_bar=3", "looks_alike_no"),
        ("hose:8mm:F;spec=J1401;medium=oil;p_bar=3", "looks_alike_no"),
        ("hose:8mm:F;spec=J1401;medium=coolant", "looks_alike_no"),
        ("hose:8mm:F;spec=PTFE;medium=oil;p_bar=5", "needs_adapter"),
        ("hose:8mm:F;spec=PTFE;medium=petrol;p_bar=5", "needs_adapter"),
        # In the tank only R10.
        ("hose:8mm:F;spec=30R10;medium=petrol;p_bar=3;submerged=yes", "mates"),
        ("hose:8mm:F;spec=30R9;medium=petrol;p_bar=3;submerged=yes", "looks_alike_no"),
        # What the maker allows.
        ("hose:8mm:F;spec=30R9;medium=oil;p_bar=5;max_bar=4", "looks_alike_no"),
        ("hose:8mm:F;spec=30R9;medium=oil;t_c=150;max_c=120", "looks_alike_no"),
        ("hose:8mm:F;spec=30R9;medium=oil;t_c=120;max_c=120", "mates"),
        # SAE J20-2022, class A: silicone to 175 degC.
        ("silhose:8mm:F;medium=air;t_c=175", "mates"),
        ("silhose:8mm:F;medium=air;t_c=176", "looks_alike_no"),
    ],
)
def test_r5_a_hose_that_fits_must_be_made_for_what_it_carries(hose: str, verdict: str) -> None:
    assert decided("barb:8mm:M", hose) == ("R5", verdict)


@pytest.mark.parametrize(
    ("bead", "pressure", "verdict"),
    [
        (";bead=yes", 2.0, "mates"),
        (";bead=no", 0.3, "mates"),
        (";bead=no", 0.31, "looks_alike_no"),
        ("", 0.3, "mates"),
        ("", 0.31, "unknown"),
    ],
)
def test_r5_a_pipe_end_without_a_bead_holds_no_pressure(
    bead: str, pressure: float, verdict: str
) -> None:
    found = of(f"spigot:51mm:M{bead}", f"silhose:51mm:F;medium=air;p_bar={pressure}")

    assert NAMES[found.verdict] == verdict


def test_r5_a_hose_said_to_be_for_one_thing_does_not_carry_another() -> None:
    carrying = service("oil", 4)

    found = of("barb:8mm:M", "hose:8mm:F;medium=coolant", carrying)

    assert (found.verdict, found.why) == (
        Verdict.LOOKS_RIGHT,
        "the hose is for coolant, not for oil",
    )


def test_r5_says_what_pressure_it_met_and_what_the_hose_holds() -> None:
    found = of("barb:8mm:M", "hose:8mm:F;spec=30R7;medium=petrol;p_bar=4")

    assert found.why == "30R7 is low-pressure hose, and 4 bar flow through it"


@pytest.mark.parametrize(
    ("pipe", "hose", "why"),
    [
        (
            "barb:8mm:M",
            "hose:8mm:F;spec=30R14;medium=petrol;p_bar=3",
            "what pressure the hose holds is not said",
        ),
        (
            "spigot:51mm:M;bead=yes",
            "hose:51mm:F;medium=air;p_bar=0.8",
            "what pressure the hose holds is not said",
        ),
        ("barb:8mm:M", "hose:8mm:F;medium=coolant;spec=", "what the hose is made for is not said"),
    ],
)
def test_r5_a_hose_that_nobody_says_enough_of_stays_unknown(
    pipe: str, hose: str, why: str
) -> None:
    carrying = service("coolant") if "coolant" in hose else service()
    found = of(pipe, hose.replace(";medium=coolant;spec=", ""), carrying)

    assert (found.rule, found.verdict, found.why) == ("R0", Verdict.UNKNOWN, why)


@pytest.mark.parametrize(
    "hose",
    ["hose:51mm:F;medium=air;p_bar=0.8;max_bar=2", "hose:51mm:F;medium=air;p_bar=0.3"],
)
def test_r5_a_duct_that_is_said_to_hold_boost_or_sees_none_mates(hose: str) -> None:
    assert decided("spigot:51mm:M;bead=yes", hose) == ("R5", "mates")
