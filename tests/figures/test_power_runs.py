"""Power runs: from a log as it comes to measured power, and how long a measurement holds."""

import math
from dataclasses import replace

import pytest

from hoistbook.authored.records import Journal, Log, PowerRun
from hoistbook.figures.figure import Figure
from hoistbook.figures.power_runs import binned, measured_power, measured_torque, pulling
from hoistbook.figures.stage import figures_of
from hoistbook.history.state import Dated
from hoistbook.values.evidence import Evidence
from tests.figures.states import CAR, PLACE, TURBO_PARTS, boosted, given, state

RUN = PowerRun(log="run.csv", at="wheels", power_standard="none", place=PLACE)
NAN = math.nan


def log(**columns):
    return Log(columns={name.replace("_", " "): tuple(cells) for name, cells in columns.items()})


LOG = log(speed=(3010, 4990, 2990, 5010, 4020), torque=(100, 90, 104, 92, 98))


def journal(of_log=LOG):
    return Journal(title="A build", place=PLACE, episodes=(), logs={"run.csv": of_log})


def states(*changes, run=RUN, episode=2):
    """Return states from the run on, each with its changes against the first."""
    first = state(episode=episode, runs=[Dated(value=run, episode=episode)])
    later = [
        replace(first, episode=episode + 1 + at, **change) for at, change in enumerate(changes)
    ]
    return (first, *later)


def test_samples_in_any_order_become_a_curve_by_engine_speed():
    assert binned(LOG, "torque") == {3000: 102, 4000: 98, 5000: 91}


def test_a_median_shrugs_off_a_spike():
    spiky = log(speed=(3000, 3010, 2990), torque=(100, 900, 101))
    assert binned(spiky, "torque") == {3000: 101}


def test_gaps_and_a_standing_engine_are_left_out():
    gappy = log(speed=(3000, NAN, 0, 3000), torque=(NAN, 100, 100, 90))
    assert binned(gappy, "torque") == {3000: 90}


def test_a_roll_out_is_no_part_of_the_pull():
    rolled_out = log(
        speed=(3000, 4000, 5000, 5000, 4000, 3000),
        torque=(102, 98, 91, -30, -25, -20),
        boost=(5e4, 5e4, 5e4, -6e4, -6e4, -6e4),
    )
    pull = pulling(rolled_out)
    assert binned(pull, "torque") == {3000: 102, 4000: 98, 5000: 91}
    assert set(binned(pull, "boost").values()) == {5e4}
    found = figures_of(journal(rolled_out), states())[0].get("wheel_power")
    assert found.value == pytest.approx(91 * 2 * math.pi * 5000 / 60)


def test_an_engine_that_hardly_turns_has_no_torque():
    cranking = log(speed=(30, 50, 3000), power=(100, 100, 31_415.93))
    assert measured_torque(cranking) == {3000: pytest.approx(100)}


@pytest.mark.parametrize("columns", [{"torque": (100,)}, {"speed": (3000,), "boost": (1,)}])
def test_a_log_without_speed_or_without_power_gives_no_figure(columns):
    found = figures_of(journal(log(**columns)), states())[0].get("wheel_power")
    assert found.evidence is Evidence.ESTIMATED


def test_power_and_torque_come_from_one_another():
    # 2 pi N / 60 M, Heywood (1988), eq. 2.13, from memory: 150 N m at 6,000 1/min are 94.25 kW.
    by_torque = log(speed=(6000,), torque=(150,))
    by_power = log(speed=(6000,), power=(94_247.78,))
    assert measured_power(by_torque)[6000] == pytest.approx(94_247.78)
    assert measured_torque(by_power)[6000] == pytest.approx(150)


def test_a_measurement_stands_in_the_place_of_the_estimate():
    found = figures_of(journal(), states())[0].get("wheel_power")
    assert isinstance(found, Figure)
    assert found.value == pytest.approx(91 * 2 * math.pi * 5000 / 60)
    assert (found.evidence, found.headline, found.at_speed) == (Evidence.MEASURED, "highest", 5000)
    assert (found.low, found.high) == pytest.approx((0.95 * found.value, 1.05 * found.value))
    assert (found.formula, found.place) == ("", PLACE)
    assert found.notes == (
        "Measured at the wheels; power standard: none, as observed.",
        "Each point is the median of all samples within 50 rpm of it.",
        "The band is 5 %, for the rollers, the tyres on them and how the car is strapped down "
        "(common practice, no source).",
    )


def test_the_estimate_at_the_crank_stays_beside_a_run_at_the_wheels():
    figures = figures_of(journal(), states())[0]
    assert figures.get("power").evidence is Evidence.ESTIMATED
    assert figures.get("crank_power") is None


def test_a_run_at_the_crank_says_nothing_of_the_wheels():
    run = replace(RUN, at="crank", power_standard="ISO 1585")
    figures = figures_of(journal(), states(run=run))[0]
    assert figures.get("wheel_power").evidence is Evidence.ESTIMATED
    assert figures.get("crank_power").evidence is Evidence.MEASURED
    assert figures.get("crank_power").notes[0] == (
        "Measured at the crank; power standard: ISO 1585."
    )


def test_a_measurement_holds_until_something_that_makes_the_power_changes():
    lighter = {"car": {**states()[0].car, "mass": Dated(value=given(800, "kg"), episode=3)}}
    settings = boosted().settings
    turned_up = {"settings": {**settings, "rev limit": settings["rev limit"]}}
    run, mass, boost = figures_of(journal(), states(lighter, turned_up))
    assert mass.get("wheel_power") == run.get("wheel_power")
    assert boost.get("wheel_power").evidence is Evidence.ESTIMATED


def test_a_run_before_the_work_measured_the_car_of_the_episode_before():
    before = state(episode=1)
    after = boosted(episode=2, runs=[Dated(value=replace(RUN, before_work=True), episode=2)])
    first, second = figures_of(journal(), (before, after))
    assert second.get("wheel_power").evidence is Evidence.ESTIMATED
    assert first.get("wheel_power").evidence is Evidence.ESTIMATED


def test_figures_come_in_the_order_of_the_states_and_name_their_episode():
    found = figures_of(journal(), states({}, {}))
    assert [each.episode for each in found] == [2, 3, 4]
    missing = figures_of(journal(), (state(episode=7, car={"mass": CAR["mass"]}),))[0]
    assert missing.get("power").episode == 7


def test_a_figure_is_of_the_episode_since_which_it_is_as_it_is():
    # The cooler comes off in episode 4 and nothing is set then; in 5 it is back, in 6 nothing is.
    with_cooler, without = dict(TURBO_PARTS), dict(TURBO_PARTS)
    del without["cooler"]
    of_states = (
        boosted(episode=3, parts=with_cooler),
        boosted(episode=4, parts=without),
        boosted(episode=5, parts=with_cooler),
        boosted(episode=6, parts=with_cooler),
    )
    found = [each.get("charge_temperature") for each in figures_of(journal(), of_states)]
    assert [each.episode for each in found] == [3, 4, 5, 5]
    assert found[1].value > found[0].value == found[2].value
