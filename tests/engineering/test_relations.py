"""The relations against reference values and libraries; each source stands beside its check."""

from __future__ import annotations

import fluids
import numpy as np
import pytest

from hoistbook.engineering.relations import (
    bend_loss_range,
    colebrook_friction_factor,
    crane_bend_loss_coefficient,
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
