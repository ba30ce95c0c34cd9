"""How a figure stands to its limit."""

import pytest

from hoistbook.figures.figure import LimitState
from hoistbook.figures.limits import THRESHOLDS, limit_of


@pytest.mark.parametrize(
    ("quantity", "value", "low", "high", "state"),
    [
        ("injector_duty", 0.60, 0.50, 0.70, LimitState.WITHIN),
        ("injector_duty", 0.82, 0.81, 0.83, LimitState.NEAR),
        ("injector_duty", 0.70, 0.55, 0.90, LimitState.NEAR),
        ("injector_duty", 0.86, 0.80, 0.95, LimitState.OVER),
        ("pump_margin", 0.60, 0.40, 0.90, LimitState.WITHIN),
        ("pump_margin", 0.20, 0.18, 0.22, LimitState.NEAR),
        ("pump_margin", 0.50, 0.10, 0.90, LimitState.NEAR),
        ("pump_margin", -0.05, -0.20, 0.10, LimitState.OVER),
        ("mach_number", 0.12, 0.10, 0.15, LimitState.WITHIN),
        ("mach_number", 0.31, 0.28, 0.35, LimitState.OVER),
    ],
)
def test_a_figure_stands_within_near_or_over_its_limit(quantity, value, low, high, state):
    assert limit_of(quantity, value, low, high).state is state


def test_a_quantity_without_a_threshold_has_no_limit():
    assert limit_of("power", 100e3, 80e3, 120e3) is None


def test_every_threshold_gives_its_reason_and_where_it_comes_from():
    for rule in THRESHOLDS.values():
        assert rule.reason.endswith(("(common practice, no source)", "section 9.4)"))
