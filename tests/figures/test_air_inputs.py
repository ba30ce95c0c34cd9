"""The air of the day: a barometer on the spot, or a weather report and a height."""

from dataclasses import replace

import pytest

from hoistbook.figures.figure import Figure
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from tests.figures.states import SETTINGS, given, state

WITHOUT = {key: value for key, value in SETTINGS.items() if key != "air pressure"}


def figure(settings, quantity):
    own = state(settings=settings)
    kept = {key: each for key, each in own.settings.items() if key in {*settings, *WITHOUT}}
    inputs = inputs_of(replace(own, settings=kept))
    return inputs, next(each for each in estimates(inputs) if each.key.quantity == quantity)


def test_a_report_is_brought_down_to_the_height_of_the_place():
    settings = {"sea level pressure": given(1013.25, "hPa"), "altitude": given(300, "m")}
    inputs, altitude = figure(settings, "altitude")
    pressure = next(base for base in inputs.bases if base.key == "air_pressure")
    # US Standard Atmosphere 1976: 97,772.6 Pa at 300 m; a report left as it is errs by 3.5 %.
    assert pressure.value == pytest.approx(97772.6, rel=1e-4)
    assert isinstance(altitude, Figure)
    assert altitude.value == pytest.approx(300, abs=1)
    assert pressure.origin == (
        "settings: sea level pressure, brought down to 300 m by the standard atmosphere"
    )
    assert 900 < pressure.half_width < 1100


def test_a_report_without_a_height_gives_no_pressure():
    _, density = figure({"sea level pressure": given(1013.25, "hPa")}, "air_density")
    assert density.give == (
        "height of the place, as in `settings: {sea level pressure: 1013 hPa, altitude: 320 m}`, "
        "or the pressure on the spot, `air pressure: 975 hPa`",
    )


def test_a_barometer_on_the_spot_goes_before_a_report_of_the_same_day():
    more = {"sea level pressure": given(1013.25, "hPa"), "altitude": given(300, "m")}
    inputs = inputs_of(state(settings=more))
    assert next(base for base in inputs.bases if base.key == "air_pressure").value == 99e3


def test_the_higher_the_place_the_less_a_report_tells_of_it():
    def share(metres):
        settings = {"sea level pressure": given(1013.25, "hPa"), "altitude": given(metres, "m")}
        base = next(
            each for each in figure(settings, "altitude")[0].bases if each.key == "air_pressure"
        )
        return base.half_width / base.value

    # 1 % for each kilometre beside the band of the report (common practice, no source).
    assert share(2000) ** 2 - share(0) ** 2 == pytest.approx(0.02**2)


@pytest.mark.parametrize(
    ("report", "height", "give"),
    [
        (0, 300, "a number above zero"),
        (10, 300, "an air pressure between 400 and 1150 hPa"),
        (1013, 50_000, "height of the place"),
        (1013, -50_000, "height of the place"),
    ],
)
def test_a_report_or_a_height_that_cannot_be_gives_no_pressure(report, height, give):
    settings = {"sea level pressure": given(report, "hPa"), "altitude": given(height, "m")}
    _, density = figure(settings, "air_density")
    (told,) = density.give
    assert told.startswith(give)
