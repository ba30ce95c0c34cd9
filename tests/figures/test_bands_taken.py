"""Bands that are taken where the author gives none, against what is common in the trade."""

import pytest

from hoistbook.engineering import FORMULAS
from hoistbook.figures.defaults import DEFAULTS, RECTANGULAR
from hoistbook.figures.spreads import spread
from hoistbook.units import from_unit
from hoistbook.values.evidence import Evidence


def test_a_fuel_pump_turns_a_seventh_to_two_fifths_of_its_current_into_flow():
    # Common practice, no source: 25 to 40 %, small pumps down to 15 %.
    default = DEFAULTS["pump_efficiency"]
    low, high = default.value - default.half_width, default.value + default.half_width
    assert (low, high, default.shape) == (pytest.approx(0.14), pytest.approx(0.40), RECTANGULAR)
    # A pump of 255 L/h at 4.5 bar and 13.5 V draws 6 to 17 A by it; sheets of such pumps lie
    # between (common practice, no source).
    power = FORMULAS["pump_power"](
        pump_flow=from_unit(255, "L/h"), pump_pressure=from_unit(4.5, "bar")
    )
    currents = [
        FORMULAS["pump_current"](pump_power=power, pump_efficiency=each, pump_voltage=13.5)
        for each in (high, low)
    ]
    assert currents == pytest.approx([5.9, 16.9], abs=0.05)


@pytest.mark.parametrize(
    ("evidence", "kilopascals"),
    [
        (Evidence.MEASURED, 40),
        (Evidence.STATED, 50),
        (Evidence.ESTIMATED, 75),
        (Evidence.ASSUMED, 100),
    ],
)
def test_the_less_is_known_of_an_oil_pressure_the_wider_is_its_band(evidence, kilopascals):
    # Common practice, no source: a dashboard's gauge is no standard, some 10 % at 4 bar.
    found = spread("oil_pressure_difference", evidence, 400e3)
    assert found == pytest.approx(kilopascals * 1e3)


def test_an_oil_pressure_that_nobody_read_is_that_of_a_warm_engine_at_speed():
    # Common practice, no source: 2.5 to 4.5 bar.
    default = DEFAULTS["oil_pressure_difference"]
    assert default.value - default.half_width == pytest.approx(250e3)
    assert default.value + default.half_width == pytest.approx(450e3)
