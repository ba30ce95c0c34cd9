"""The filling of full load and that of part load are kept apart, in what is set and in logs.

On one boosted 2.0 L test-bench engine (27 windows of 0.36 s; no published source) the filling was
0.95 under boost and 0.54 to 0.90 at or below the pressure of the air.
"""

from dataclasses import replace

import pytest

from hoistbook.authored.records import BoostBySpeed
from hoistbook.figures.figure import Missing
from hoistbook.figures.inputs import FULL_LOAD_FROM, inputs_of
from hoistbook.figures.known_runs import at_the_run, known_runs
from hoistbook.figures.learning import calibrated
from hoistbook.figures.logged import as_logged
from hoistbook.figures.stage import figures_of
from tests.figures.runs import SPEEDS, estimate, journal, log, run_of
from tests.figures.states import PLACE, boosted, quantity, state

BELOW = (
    "Between 2,000 and 2,100 rpm the boost is below nothing: where the throttle is not open "
    "there, the filling is less than the one taken here, and air, fuel and power with it. On one "
    "test-bench engine it was 0.95 under boost and 0.54 to 0.90 at or below the pressure of the "
    "air."
)
NAN = float("nan")
HELD = range(8)
"""Places of the samples of a log that begins before the throttle is open."""


def of_list(*points):
    boost = BoostBySpeed(
        speeds=tuple(float(speed) for speed, _ in points),
        pressures=tuple(quantity(bar, "bar", reference="gauge") for _, bar in points),
        place=PLACE,
    )
    return boosted(settings={"boost": boost})


def after_a_run(first, **columns):
    """Return the figures of an engine after a run of it, and the run."""
    first = replace(first, episode=2, runs=(run_of(2),))
    after = replace(first, episode=4)
    logs = journal(log(speed=SPEEDS, **columns))
    (run,) = known_runs(logs, (first, after))
    return {
        each.key.quantity: each
        for each in figures_of(logs, (first, after))[-1].figures
        if each.key.subject == "engine"
    }, run


def held(at_part_load, at_full_load):
    """Return a log's column: one value while the throttle is not open, then another."""
    return [at_part_load if each in HELD else at_full_load for each in range(len(SPEEDS))]


def test_nothing_is_drawn_where_the_throttle_is_not_open():
    inputs = inputs_of(of_list((1500, -0.3), (4000, 0.8)))

    # A straight line from -0.3 to 0.8 bar crosses -0.1 bar at 1,955 1/min.
    assert (inputs.speeds[0], inputs.speeds[-1]) == (2000, 4000)
    assert [text for name, text in inputs.notes if name == "manifold_absolute_pressure"] == [
        "Boost is given from 1,500 to 4,000 rpm; nothing is drawn beyond.",
        "Nothing is drawn between 1,500 and 1,900 rpm: the boost given there is more than 0.1 bar "
        "below nothing, so the throttle is not open, and the filling of full load must not be "
        "carried to part load.",
    ]


@pytest.mark.parametrize(
    "name", ["engine_air_flow", "power", "torque", "wheel_power", "fuel_flow"]
)
def test_where_boost_is_below_nothing_each_figure_of_the_filling_says_so(name):
    inputs = inputs_of(of_list((1500, -0.3), (4000, 0.8)))

    assert BELOW in estimate(inputs, name).notes
    assert BELOW not in estimate(inputs_of(of_list((2000, 0.1), (4000, 0.8))), name).notes
    assert "below nothing" not in " ".join(estimate(inputs_of(state()), name).notes)


def test_where_the_throttle_is_nowhere_open_there_is_no_figure():
    found = estimate(inputs_of(of_list((1500, -0.3), (4000, -0.2))), "power")

    assert isinstance(found, Missing)
    assert found.give == (
        "boost with the throttle open: all that is given lies more than 0.1 bar below the "
        "pressure of the air",
    )


def test_a_log_that_begins_before_the_throttle_is_open_teaches_as_if_it_began_later():
    begun, _ = after_a_run(boosted(), torque=held(60, 210), boost=held(-0.4e5, 0.8e5))
    later, _ = after_a_run(boosted(), torque=held(NAN, 210), boost=held(NAN, 0.8e5))

    assert (begun["power"].value, begun["power"].low, begun["power"].high) == (
        later["power"].value,
        later["power"].low,
        later["power"].high,
    )
    # What was measured there was measured, and it is said what it was.
    assert begun["wheel_power"].curve.speeds[0] == 3500
    assert begun["wheel_power"].notes[-1] == (
        "Between 3,500 and 4,200 rpm the manifold was more than 0.1 bar below the air: the "
        "throttle was not open, and nothing of full load is learnt from there."
    )
    assert "throttle" not in " ".join(later["wheel_power"].notes)


def test_a_log_of_part_load_alone_teaches_nothing():
    figures, run = after_a_run(boosted(), torque=held(60, 60), boost=held(-0.4e5, -0.4e5))

    assert run.held_back == SPEEDS
    assert figures["power"].value == estimate(inputs_of(boosted()), "power").value
    assert calibrated(inputs_of(boosted()), boosted(), [run]) == inputs_of(boosted())
    assert at_the_run(run).speeds == ()


def test_a_log_of_part_load_does_not_stand_in_the_way_of_an_earlier_one():
    first = replace(boosted(), episode=2, runs=(run_of(2),))
    after = replace(boosted(), episode=4, runs=(run_of(2), run_of(4, log="run-2.csv")))
    logs = journal(
        log(speed=SPEEDS, torque=held(150, 150), boost=held(0.7e5, 0.7e5)),
        log(speed=SPEEDS, torque=held(60, 60), boost=held(-0.4e5, -0.4e5)),
    )

    inputs = as_logged(after, known_runs(logs, (first, after)))

    boost = next(base for base in inputs.bases if base.key == "boost")
    assert dict(zip(inputs.speeds, boost.value, strict=True))[4000] == pytest.approx(0.7e5)


def test_an_open_throttle_behind_a_filter_is_full_load():
    # Common practice, no source: filter and open throttle take up to some 5 kPa.
    assert FULL_LOAD_FROM < -5.5e3
    figures, run = after_a_run(state(), torque=held(90, 100), boost=held(-5e3, -5e3))
    assert run.held_back == ()
    assert "calibrated by the run of episode 2" in figures["power"].notes[0]
