"""What a power run teaches: how much, of what, and for how long."""

import math
from dataclasses import replace

import numpy as np
import pytest

from hoistbook.figures.chain import work_out
from hoistbook.figures.draws import SAMPLES, WIDTHS_PER_DEVIATION, band, draw
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import apart, at_the_run, known_runs, up_to
from hoistbook.figures.learning import calibrated, drawn_again
from hoistbook.figures.lessons import LESSONS
from hoistbook.figures.readings import Reading, covariance_of, weighed
from hoistbook.figures.spreads import spread
from hoistbook.figures.stage import figures_of, informed
from hoistbook.values.evidence import Evidence
from tests.figures.runs import (
    SPEEDS,
    estimate,
    expected,
    journal,
    log,
    run_of,
    torque_log,
)
from tests.figures.states import CAR, PARTS, boosted, fitted, given, quantity, state


def learnt(after, *logs, before=()):
    """Return the inputs of a state after runs of an earlier one, whose logs these are."""
    runs = tuple(
        run_of(episode=number + 2, log="run.csv" if number == 0 else f"run-{number + 1}.csv")
        for number in range(len(logs))
    )
    first = before or tuple(
        state(episode=number + 2, runs=runs[: number + 1]) for number in range(len(logs))
    )
    after = replace(after, runs=runs)
    states = (*first, after)
    return informed(after, up_to(known_runs(journal(*logs), states), after))


def half_band(figure):
    return (figure.high - figure.low) / (2 * figure.value)


def reading(levels, quantity="wheel_power", transfer="the same boost", run=None):
    gaps = np.asarray(levels)[np.newaxis, :]
    return Reading(run, transfer, frozenset(), quantity, None, (5000.0,), (1.0,), gaps)


def test_weighing_is_the_posterior_of_a_normal_prior_and_a_normal_reading():
    # Gelman et al., Bayesian Data Analysis, 3rd ed., eq. 2.10 and 2.11 (from memory): precisions
    # add, and the mean is that of prior and datum by precision. Prior deviation 6 %, read 5 %
    # above; the tolerance is four standard errors of a mean of some 1,500 effective samples.
    prior = draw("level", 0.0, 0.06 * WIDTHS_PER_DEVIATION)
    weighing = weighed([reading(0.05 - prior)])
    own = covariance_of([reading(prior)])[0, 0]
    precision = 1 / 0.06**2 + 1 / own
    mean = weighing.weights @ prior
    deviation = math.sqrt(weighing.weights @ (prior - mean) ** 2)
    assert mean == pytest.approx(0.05 / own / precision, abs=0.002)
    assert deviation == pytest.approx(precision**-0.5, rel=0.06)
    again = prior[drawn_again(weighing.weights)]
    assert again.mean() == pytest.approx(mean, abs=1e-4)
    assert again.std() == pytest.approx(deviation, rel=0.01)


def test_a_second_run_on_the_same_rollers_does_not_undo_their_error():
    # Of readings that share an error only the scatter of their own averages out.
    one, two = reading(np.zeros(SAMPLES), run="a"), reading(np.zeros(SAMPLES), run="b")
    of_mean = np.full(2, 0.5) @ covariance_of([one, two]) @ np.full(2, 0.5)
    shared = (spread("wheel_power", Evidence.MEASURED, 1.0) / WIDTHS_PER_DEVIATION) ** 2
    own = (LESSONS["repeat"].half_width / WIDTHS_PER_DEVIATION) ** 2
    assert of_mean == pytest.approx(shared + own / 2)


def test_readings_of_one_run_share_what_lies_between_it_and_the_estimate():
    # Power and air of one run: rollers and air meter err apart, the transfer is the same.
    of_run = [
        reading(np.zeros(SAMPLES), quantity, "another boost", run="a")
        for quantity in ("wheel_power", "engine_air_flow")
    ]
    transfer = (LESSONS["another boost"].half_width / WIDTHS_PER_DEVIATION) ** 2
    assert covariance_of(of_run)[0, 1] == pytest.approx(transfer)


def test_equal_weights_leave_every_sample_in_its_place():
    assert (drawn_again(np.full(SAMPLES, 1 / SAMPLES)) == np.arange(SAMPLES)).all()


def test_what_a_run_read_is_what_the_engine_is_expected_to_do_from_then_on():
    before = state()
    inputs = learnt(state(episode=4), torque_log(before, 0.9))
    # The run was in the very air of the estimate: 99 kPa and 15 degC.
    after, at_first = estimate(inputs, "wheel_power"), estimate(inputs_of(before), "wheel_power")
    for speed in (4000, 5000, 6000):
        now = np.interp(speed, after.curve.speeds, after.curve.values)
        then = np.interp(speed, at_first.curve.speeds, at_first.curve.values)
        assert now / then == pytest.approx(0.9, abs=0.025)
    assert half_band(after) < 0.4 * half_band(at_first)
    assert after.evidence is Evidence.ESTIMATED


def test_the_product_is_known_and_its_factors_are_not():
    names = ("volumetric_efficiency", "gross_indicated_efficiency")

    def spreads(inputs):
        values = work_out(inputs).values
        one, other = (values[name][-1, 1:] for name in names)
        return [each.std() / each.mean() for each in (one, other, one * other)]

    before = spreads(inputs_of(state()))
    after = spreads(learnt(state(episode=4), torque_log(state(), 0.9)))
    for factor in (0, 1):
        assert after[factor] > 0.7 * before[factor]
    assert after[2] < 0.6 * before[2]


def test_the_shape_over_engine_speed_is_the_run_s():
    before = state()
    tilt = 1 + 0.06 * (np.array(SPEEDS) - 4750) / 1250
    tilted = log(speed=SPEEDS, torque=tilt * expected(before, "wheel_torque"))
    after = estimate(learnt(state(episode=4), tilted), "wheel_power").curve
    first = estimate(inputs_of(before), "wheel_power").curve
    ratio = [
        np.interp(at, after.speeds, after.values) / np.interp(at, first.speeds, first.values)
        for at in (3500, 4750, 6000)
    ]
    assert ratio[0] / ratio[1] == pytest.approx(0.94, abs=0.005)
    assert ratio[2] / ratio[1] == pytest.approx(1.06, abs=0.005)


def test_a_run_at_the_wheels_tells_little_of_the_crank():
    inputs = learnt(state(episode=4), torque_log(state()))
    wheels, crank = estimate(inputs, "wheel_power"), estimate(inputs, "power")
    assert half_band(wheels) < 0.85 * half_band(crank)
    loss = next(base for base in inputs.bases if base.name == "drivetrain_loss")
    assert loss.half_width > 0.04
    assert crank.notes == (
        "An estimate, not a measurement, calibrated by the run of episode 2.",
        "Power alone fixes the product of volumetric and gross indicated efficiency and cannot "
        "tell the two apart: air and fuel stay less well known.",
        "The run was at the wheels: of the crank it tells no more than the range of what the "
        "drivetrain takes allows.",
    )
    assert crank.notes[2] not in wheels.notes


def test_from_no_boost_to_boost_something_stays_unsure_and_it_is_said():
    same = estimate(learnt(state(episode=4), torque_log(state())), "wheel_power")
    with_boost = estimate(learnt(boosted(episode=4), torque_log(state())), "wheel_power")
    untaught = estimate(inputs_of(boosted()), "wheel_power")
    assert half_band(same) < half_band(with_boost) < half_band(untaught)
    assert with_boost.notes[2] == (
        "The band holds 8 % for what may lie between a run without boost and an estimate with it."
    )
    another = learnt(boosted(1.0, episode=4), torque_log(boosted()), before=(
        boosted(episode=2, runs=[run_of(2)]),
    ))  # fmt: skip
    assert estimate(another, "wheel_power").notes[2] == (
        "The band holds 5 % for what may lie between a run and an estimate at another boost."
    )


def test_what_learns_is_called_calibrated_and_leads_to_its_episode():
    inputs = learnt(state(episode=4), torque_log(state(), 0.9))
    filling = next(base for base in inputs.bases if base.name == "volumetric_efficiency")
    assert (filling.origin, filling.evidence, filling.episode) == (
        "calibrated by the run of episode 2",
        Evidence.ESTIMATED,
        2,
    )
    both = learnt(state(episode=4), torque_log(state(), 0.9), torque_log(state(), 0.9))
    filling = next(base for base in both.bases if base.name == "volumetric_efficiency")
    assert filling.origin == "calibrated by the runs of episodes 2 and 3"


def test_the_budget_still_adds_up_and_names_the_product_s_factors():
    budget = estimate(learnt(state(episode=4), torque_log(state())), "power").budget
    assert sum(item.share for item in budget) == pytest.approx(1, abs=0.05)
    assert budget[0].name == "volumetric_efficiency"
    assert budget[0].origin == "calibrated by the run of episode 2"


def test_a_later_run_changes_no_earlier_figure():
    first = state(episode=1)
    second = state(episode=2, runs=[run_of(2)])
    alone = figures_of(journal(log(speed=())), (first,))
    after = figures_of(journal(torque_log(first, 0.8)), (first, second))
    assert after[0].figures == alone[0].figures
    assert after[1].get("power") != alone[0].get("power")


def test_a_run_before_the_work_teaches_from_its_own_episode_on():
    first = state(episode=1)
    second = boosted(episode=2, runs=[run_of(2, before_work=True)])
    figures = figures_of(journal(torque_log(first, 0.8)), (first, second))
    assert figures[0].get("power").notes[0].startswith("An estimate, not a measurement. The chain")
    assert figures[1].get("power").notes[0] == (
        "An estimate, not a measurement, calibrated by the run of episode 2."
    )


@pytest.mark.parametrize(
    "other",
    [
        state(episode=4, car=CAR | {"engine displacement": given(1800, "cc")}),
        state(episode=4, parts=PARTS | {"cam": fitted("cam", "camshaft")}),
    ],
)
def test_another_engine_learns_nothing(other):
    assert learnt(other, torque_log(state())) == inputs_of(other)


def test_a_run_far_off_is_said_to_be_and_is_trusted_less():
    inputs = learnt(state(episode=4), torque_log(state(), 0.5))
    notes = estimate(inputs, "wheel_power").notes
    assert notes[2] == (
        "The run of episode 2 read 50 % below what was expected, outside its band: look for a "
        "slip in the car's data or in the log."
    )
    assert notes[3].startswith(
        "The runs disagree, with one another or with what was assumed before them, so far that "
        "the runs were given only "
    )
    kept = np.frombuffer(
        next(base.learnt for base in inputs.bases if base.learnt is not None).kept, np.uint16
    )
    assert len(np.unique(kept)) > 100


def test_a_run_as_expected_disagrees_with_nothing():
    notes = estimate(learnt(state(episode=4), torque_log(state())), "wheel_power").notes
    assert not [note for note in notes if "outside its band" in note or "disagree" in note]


def test_an_air_meter_tells_filling_and_efficiency_apart():
    air = expected(state(), "engine_air_flow", 0.9)
    with_air = learnt(state(episode=4), torque_log(state(), 0.9, air_mass_flow=air))
    without = learnt(state(episode=4), torque_log(state(), 0.9))
    flow, unsure = (estimate(each, "engine_air_flow") for each in (with_air, without))
    assert half_band(flow) < 0.6 * half_band(unsure)
    assert flow.value == pytest.approx(
        0.9 * estimate(inputs_of(state()), "engine_air_flow").value, rel=0.02
    )
    assert not [note for note in flow.notes if note.startswith("Power alone")]


def test_the_time_that_injectors_are_open_tells_of_the_fuel():
    duty = np.array(expected(state(), "injector_duty", 0.9))
    times = duty * 120 / np.array(SPEEDS)
    told = learnt(state(episode=4), torque_log(state(), 0.95, injector_time=times))
    found = estimate(told, "injector_duty")
    assert found.value == pytest.approx(
        0.9 * estimate(inputs_of(state()), "injector_duty").value, rel=0.02
    )
    assert half_band(found) < 0.06


def test_the_air_of_another_day_is_no_wiser_for_a_run():
    inputs = learnt(state(episode=4), torque_log(state(), 0.9))
    own = {base.key: base for base in inputs_of(state()).bases}
    for base in inputs.bases:
        if base.name in ("air_pressure", "air_temperature", "relative_humidity"):
            assert base == own[base.key]


def test_the_run_itself_comes_out_as_read():
    of_state = state(episode=3, runs=[run_of()])
    (known,) = known_runs(journal(torque_log(state(), 1.1)), (of_state,))
    inputs = calibrated(at_the_run(known), of_state, [known])
    curve = estimate(inputs, "wheel_power").curve
    for speed, value, low, high in zip(
        curve.speeds, curve.values, curve.low, curve.high, strict=True
    ):
        assert value == pytest.approx(known.power[speed], rel=0.025)
        assert low < known.power[speed] < high


def test_samples_are_the_same_on_every_machine():
    one, two = (learnt(state(episode=4), torque_log(state(), 0.9)) for _ in range(2))
    assert one == two
    values = work_out(one).values["power"]
    assert band(values[:, 1:])[0][-1] == band(work_out(two).values["power"][:, 1:])[0][-1]


def test_what_may_lie_between_run_and_estimate_counts_against_the_run():
    for transfer, half_width in (("the same boost", 0.0), ("with and without boost", 0.08)):
        found = covariance_of([reading(np.zeros(SAMPLES), transfer=transfer)])[0, 0]
        shares = (0.05, 0.03, half_width)  # rollers, repeat, and what lies between
        assert found == pytest.approx(
            sum((share / WIDTHS_PER_DEVIATION) ** 2 for share in shares)
        )  # fmt: skip


def test_the_air_of_the_run_s_day_is_drawn_apart_from_that_of_others():
    # An engine learnt on a day whose air was taken too warm is taken too strong; that error is
    # that day's own, and the air of another day must not go along with it.
    loose = {"temperature": quantity(15, "degC", half_width=15)}
    first = state(episode=2, runs=[run_of(2, **loose)])
    after = replace(state(episode=4), runs=first.runs)
    runs = up_to(known_runs(journal(torque_log(state())), (first, after)), after)
    values = work_out(informed(after, runs)).values
    product = values["volumetric_efficiency"][-1, 1:] * values["gross_indicated_efficiency"][0, 1:]
    together = np.corrcoef(product, values["air_temperature"][0, 1:])[0, 1]
    assert abs(together) < 0.08
    of_run = apart(at_the_run(runs[0]), runs[0], frozenset({"volumetric_efficiency"}))
    own = {base.key: base for base in inputs_of(after).bases}
    for base in of_run.bases:
        if base.half_width > 0:
            same = np.corrcoef(base.deviations(), own[base.key].deviations())[0, 1]
            assert same > 0.999 if base.key == "volumetric_efficiency" else abs(same) < 0.1
