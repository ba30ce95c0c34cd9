"""What a run has logged stands in for what was set or assumed, while the set-up lasts."""

from dataclasses import replace

import numpy as np
import pytest

from hoistbook.authored.records import BoostBySpeed
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import known_runs
from hoistbook.figures.logged import as_logged
from hoistbook.figures.stage import figures_of
from hoistbook.values.evidence import Evidence
from tests.figures.runs import SPEEDS, estimate, expected, journal, log, run_of
from tests.figures.states import PLACE, TURBO_PARTS, boosted, given, quantity, state

BOOST = tuple(np.interp(SPEEDS, (3500, 4500, 6000), (0.4e5, 0.8e5, 0.7e5)))
TORQUE = (150.0,) * len(SPEEDS)


def logged(after, before=None, **columns):
    """Return the inputs of a state after a run of an earlier one, with its log's columns."""
    first = replace(before or boosted(), episode=2, runs=(run_of(2),))
    after = replace(after, episode=4, runs=first.runs)
    runs = known_runs(journal(log(speed=SPEEDS, torque=TORQUE, **columns)), (first, after))
    return as_logged(after, [run for run in runs if run])


def base(inputs, name):
    return next(each for each in inputs.bases if each.key == name)


def test_logged_boost_and_mixture_replace_what_was_set():
    inputs = logged(boosted(), boost=BOOST, **{"lambda": [0.80] * len(SPEEDS)})
    at = dict(zip(inputs.speeds, base(inputs, "boost").value, strict=True))
    assert at[4500] == pytest.approx(0.8e5)
    assert at[4000] == pytest.approx(0.6e5)
    mixture = base(inputs, "lambda_ratio")
    assert set(mixture.value) == {0.80}
    assert (mixture.evidence, mixture.origin, mixture.episode, mixture.place) == (
        Evidence.MEASURED,
        "the log of the run of episode 2",
        2,
        PLACE,
    )


def test_beyond_the_speeds_of_the_log_stands_what_was_set_and_nothing_where_nobody_said():
    inputs = logged(boosted(), boost=BOOST)
    boost = base(inputs, "boost")
    at = dict(zip(inputs.speeds, boost.value, strict=True))
    # One pressure is taken to be reached from half the rev limit of 6,300 1/min.
    assert (min(at), max(at)) == (3150, 6300)
    assert (at[3200], at[6300]) == (0.8e5, 0.8e5)
    assert boost.origin == (
        "the log of the run of episode 2; beyond its engine speeds, settings: boost"
    )
    unsaid = {key: value for key, value in boosted().settings.items() if key != "boost"}
    alone = logged(
        replace(boosted(), settings=unsaid), replace(boosted(), settings=unsaid), boost=BOOST
    )
    assert (alone.speeds[0], alone.speeds[-1]) == (3500, 6000)
    assert base(alone, "boost").origin == "the log of the run of episode 2"


def test_what_was_said_of_the_boost_is_said_of_the_log_now():
    notes = [text for name, text in logged(boosted(), boost=BOOST).notes if "Boost" in text]
    assert notes == ["Boost is that of the log of the run of episode 2 from 3,500 to 6,000 rpm."]


def test_an_absolute_manifold_pressure_is_boost_over_the_air_of_the_run():
    pressures = [99e3 + each for each in BOOST]
    absolute = logged(boosted(), manifold_pressure=pressures)
    gauge = logged(boosted(), boost=BOOST)
    assert base(absolute, "boost").value == pytest.approx(base(gauge, "boost").value)


def test_a_logged_charge_temperature_follows_the_air():
    warm = boosted(settings={"air temperature": given(25, "degC", half_width=8)})
    charge = base(logged(warm, charge_temperature=[320.0] * len(SPEEDS)), "charge_temperature")
    # The run was at 15 degrees: the charge is 10 K warmer on a day that is.
    assert charge.value[0] == pytest.approx(330)
    assert charge.origin == "the log of the run of episode 2, moved by +10 K for the air"
    assert charge.half_width == pytest.approx((2**2 + 8**2 + 2**2) ** 0.5)


def test_a_log_that_ends_early_says_nothing_of_full_speed():
    short = tuple(each if speed < 5000 else float("nan") for speed, each in zip(
        SPEEDS, [320.0] * len(SPEEDS), strict=True
    ))  # fmt: skip
    inputs = logged(boosted(), charge_temperature=short)
    assert not [each for each in inputs.bases if each.key == "charge_temperature"]


@pytest.mark.parametrize(
    "after",
    [
        boosted(1.0),
        boosted(settings={"mixture": given(0.80)}),
        boosted(parts={key: part for key, part in TURBO_PARTS.items() if key != "cooler"}),
        state(),
    ],
)
def test_another_set_up_takes_nothing_from_the_log(after):
    columns = {"lambda": [0.80] * len(SPEEDS)}
    assert logged(after, boost=BOOST, **columns) == inputs_of(replace(after, episode=4))


def test_a_boost_list_is_logged_over_too():
    pressures = tuple(quantity(bar, "bar", reference="gauge") for bar in (0.5, 0.5))
    listed = BoostBySpeed(speeds=(3000.0, 6200.0), pressures=pressures, place=PLACE)
    car = boosted(settings={"boost": listed})
    inputs = logged(car, car, boost=BOOST)
    at = dict(zip(inputs.speeds, base(inputs, "boost").value, strict=True))
    assert (at[3000], at[4500], at[6200]) == pytest.approx((0.5e5, 0.8e5, 0.5e5))


def test_a_band_over_the_log_is_that_of_its_sensor():
    # Common practice, no source: 5 kPa for a logged sensor, 10 kPa for a gauge or a spring.
    assert base(logged(boosted(), boost=BOOST), "boost").half_width == 5e3
    assert base(inputs_of(boosted()), "boost").half_width == 10e3


def test_estimates_use_what_was_logged():
    inputs = logged(boosted(), boost=BOOST)
    pressure = work_out(inputs, sampled=False).values["manifold_absolute_pressure"][:, 0]
    assert pressure[inputs.speeds.index(4500)] == pytest.approx(99e3 + 0.8e5)
    low = expected(boosted(), "power", speeds=(3500,))[0]
    power = estimate(inputs, "power").curve
    assert power.values[power.speeds.index(3500)] < 0.85 * low


def test_what_no_engine_has_is_not_taken_from_a_log():
    # A boost in the wrong unit, and a sensor that has died: no number comes of either.
    many = len(SPEEDS)
    dead = {
        "boost": (85e5,) * many,
        "lambda": (3.0,) * many,
        "charge temperature": (773.0,) * many,
    }
    car = boosted(0.8, runs=(run_of(),))
    (known,) = known_runs(journal(log(speed=SPEEDS, torque=TORQUE, **dead)), (car,))
    assert known is not None
    assert known.inputs == {}


@pytest.mark.parametrize(
    "air", [{"air pressure": given(0, "kPa")}, {"air temperature": given(0, "K")}]
)
def test_a_log_is_read_where_the_air_of_the_state_cannot_be(air):
    nowhere = boosted(settings=air)
    columns = {"manifold pressure": [150e3] * len(SPEEDS), "charge temperature": [315.0] * 26}
    first = replace(nowhere, episode=2, runs=(run_of(2, pressure=None, temperature=None),))
    book = journal(log(speed=SPEEDS, torque=TORQUE, **columns))
    (figures,) = figures_of(book, (first,))
    assert isinstance(figures.get("power"), Missing)
