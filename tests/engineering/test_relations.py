"""The relations against reference values and libraries; each source stands beside its check."""

from __future__ import annotations

import fluids
import numpy as np
import pytest

from hoistbook.engineering import FORMULAS
from hoistbook.engineering.relations import (
    bend_loss_range,
    colebrook_friction_factor,
    crane_bend_loss_coefficient,
    fuse_rating,
    wire_area,
)


# Computed with fluids 1.3.1 (Colebrook); tolerance 0.2 %.
@pytest.mark.parametrize(
    ("reynolds_number", "roughness", "bore", "expected"),
    [(1e5, 1.5e-6, 0.060, 0.01812414), (4e5, 50e-6, 0.076, 0.01876028)],
)
def test_the_friction_factor_solves_the_equation_of_colebrook(
    reynolds_number: float, roughness: float, bore: float, expected: float
) -> None:
    factor = colebrook_friction_factor(reynolds_number, roughness, bore)

    assert factor == pytest.approx(expected, rel=0.002)


def test_the_friction_factor_agrees_with_a_library_over_its_whole_range() -> None:
    random = np.random.default_rng(9)
    reynolds = 10 ** random.uniform(np.log10(4e3), 7, 200)
    relative = 10 ** random.uniform(-6, np.log10(0.05), 200)

    ours = colebrook_friction_factor(reynolds, relative * 0.06, 0.06)

    theirs = [
        fluids.Colebrook(*each) for each in zip(reynolds.tolist(), relative.tolist(), strict=True)
    ]
    assert ours == pytest.approx(np.array(theirs), rel=1e-8)


def test_the_table_of_bends_agrees_with_a_library() -> None:
    # fluids 1.3.1 (bend_rounded_Crane) gives 0.2568814 at r/D 1.5 and 60 mm; tolerance 2 %.
    assert crane_bend_loss_coefficient(1.5, 0.06) == pytest.approx(0.2568814, rel=0.02)


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0])
def test_each_row_of_the_table_of_bends_agrees_with_a_library(ratio: float) -> None:
    theirs = fluids.fittings.bend_rounded_Crane(Di=0.06, angle=90.0, bend_diameters=ratio)

    assert crane_bend_loss_coefficient(ratio, 0.06) == pytest.approx(theirs, rel=0.02)


# Common practice, no source (factor 1.25; blade ratings 5 7.5 10 15 20 25 30 40 A from memory).
@pytest.mark.parametrize(
    ("current", "rating"), [(14.0, 20.0), (9.0, 15.0), (4.0, 5.0), (32.0, 40.0), (32.1, None)]
)
def test_a_fuse_carries_a_quarter_more_than_the_continuous_current(
    current: float, rating: float | None
) -> None:
    assert fuse_rating(current) == rating


# fluids 1.3.1: the methods of Rennels, Miller, Ito and Crane, at Re 2e5 in a smooth tube of 60 mm.
@pytest.mark.parametrize("ratio", [1.0, 1.25, 1.5, 2.0, 3.0, 5.0, 6.0, 8.0])
def test_the_range_of_a_bend_holds_what_four_methods_give(ratio: float) -> None:
    friction = fluids.friction.Haaland(2e5, 0.0)
    theirs = [
        fluids.fittings.bend_rounded(
            Di=0.06, angle=90.0, bend_diameters=ratio, Re=2e5, roughness=0.0, method=method
        )
        for method in ("Rennels", "Miller", "Ito", "Crane")
    ]

    low, high = bend_loss_range(ratio, 0.06, friction)

    assert low <= min(theirs)
    assert max(theirs) <= high * 1.01
    assert high < 2.1 * low


# Common practice, no source: a drop of 3 %; resistances after IEC 60228 class 5.
@pytest.mark.parametrize(
    ("current", "length", "square_millimetres"),
    [
        (4.0, 1.0, 0.5),
        (14.0, 1.0, 2.5),  # the fuse of 20 A asks for it, the drop would let 1.5 do
        (14.0, 2.0, 4.0),  # the drop asks for it
        (14.0, 5.0, 10.0),
        (30.0, 8.0, None),
        (60.0, 1.0, None),
    ],
)
def test_a_wire_carries_its_fuse_and_loses_little(
    current: float, length: float, square_millimetres: float | None
) -> None:
    area = wire_area(current, length, 13.8)

    expected = square_millimetres and pytest.approx(square_millimetres * 1e-6)
    assert area == expected


def test_the_table_of_wires_is_at_most_a_sixth_above_plain_copper() -> None:
    # IEC 60228 class 5 allows 39.0, 26.0, 19.5, 13.3, 7.98, 4.95, 3.30 and 1.91 mohm/m.
    published = {0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3, 2.5: 7.98, 4.0: 4.95, 6.0: 3.30}
    for area, resistance in published.items():
        plain = FORMULAS["voltage_drop"](
            wire_current=1.0, cable_length=0.5, cable_area=area * 1e-6
        )
        assert plain < resistance * 1e-3 < plain * 7 / 6
