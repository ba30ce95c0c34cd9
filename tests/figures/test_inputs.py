"""From a state to base inputs: where each comes from, how wide it is, and what is missing."""

from dataclasses import replace

import numpy as np
import pytest

from hoistbook.authored.records import BoostBySpeed, Given, Reading
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.figure import Missing
from hoistbook.figures.inputs import grid, inputs_of
from hoistbook.figures.spreads import spread
from hoistbook.figures.stage import estimates
from hoistbook.history.state import Dated
from hoistbook.values.evidence import Evidence
from tests.figures.states import (
    CAR,
    PARTS,
    PLACE,
    TURBO_PARTS,
    boosted,
    fitted,
    given,
    quantity,
    state,
)


def base(of_state, key):
    return next(each for each in inputs_of(of_state).bases if each.key == key)


def missing(of_state, name, subject="engine"):
    found = next(
        each
        for each in estimates(inputs_of(of_state))
        if (each.key.quantity, each.key.subject) == (name, subject)
    )
    assert isinstance(found, Missing)
    return found.give


def notes_of(inputs, quantity_id):
    return [text for name, text in inputs.notes if name == quantity_id]


def boost_by_speed(*points):
    return BoostBySpeed(
        speeds=tuple(float(speed) for speed, _ in points),
        pressures=tuple(quantity(bar, "bar", reference="gauge") for _, bar in points),
        place=PLACE,
    )


def test_a_number_of_the_car_keeps_its_place_and_its_episode():
    found = base(state(), "displacement")
    assert (found.origin, found.evidence, found.episode, found.place) == (
        "car: engine displacement",
        Evidence.STATED,
        0,
        PLACE,
    )


def test_a_band_that_the_author_gives_beats_the_table():
    assert base(state(), "air_pressure").half_width == 1500


def test_a_number_without_a_band_gets_that_of_its_evidence():
    sure = state(car=CAR | {"mass": given(900, "kg", Evidence.MEASURED)})
    told = state(car=CAR | {"mass": given(900, "kg", Evidence.STATED)})
    guessed = state(car=CAR | {"mass": given(900, "kg", Evidence.ASSUMED)})
    widths = [base(each, "vehicle_mass").half_width for each in (sure, told, guessed)]
    assert widths == pytest.approx([13.5, 45.0, 90.0])


def test_evidence_beside_the_number_wins():
    mass = Given(value=quantity(900, "kg", evidence=Evidence.MEASURED), place=PLACE)
    assert base(state(car=CAR | {"mass": mass}), "vehicle_mass").evidence is Evidence.MEASURED


def test_a_reading_of_the_mass_beats_an_older_statement():
    reading = Dated(
        value=Reading(what="mass", values=(quantity(905, "kg"),), place=PLACE), episode=2
    )
    found = base(state(readings=[reading]), "vehicle_mass")
    assert (found.value, found.evidence, found.episode) == (905, Evidence.MEASURED, 2)


def test_a_default_says_so_and_why():
    found = base(state(), "friction_scale")
    assert found.evidence is Evidence.ASSUMED
    assert found.origin == (
        "default: the formula was fitted to engines of the 1970s; later ones have 20 to 30 % less "
        "(common practice, no source)"
    )


def test_every_default_gives_its_reason():
    for name, default in DEFAULTS.items():
        assert len(default.reason) > 10, name
        assert default.half_width >= 0


def test_without_boost_the_manifold_is_a_little_below_the_air():
    found = base(state(), "boost")
    assert found.value == -3e3
    assert "boosted" not in inputs_of(state()).conditions


def test_a_boost_of_none_reads_as_no_boost_whichever_way_it_was_typed():
    for nothing in (given("none"), given(0, "bar", reference="gauge")):
        assert "unboosted" in inputs_of(state(settings={"boost": nothing})).conditions


def test_boost_is_drawn_only_between_the_speeds_that_the_author_gives():
    listed = boosted(settings={"boost": boost_by_speed((2500, 0.2), (3500, 0.8), (6000, 0.7))})
    inputs = inputs_of(listed)
    assert (inputs.speeds[0], inputs.speeds[-1]) == (2500, 6000)
    boost = dict(zip(inputs.speeds, base(listed, "boost").value, strict=True))
    assert [boost[speed] / 1e5 for speed in (2500, 3000, 3500, 6000)] == pytest.approx(
        [0.2, 0.5, 0.8, 0.7]
    )
    (note,) = notes_of(inputs, "manifold_absolute_pressure")
    assert note == "Boost is given from 2,500 to 6,000 rpm; nothing is drawn beyond."


def test_one_boost_pressure_is_not_drawn_at_speeds_nobody_spoke_of():
    inputs = inputs_of(boosted(0.8))
    assert (inputs.speeds[0], inputs.speeds[-1]) == (3150, 6300)
    assert notes_of(inputs, "manifold_absolute_pressure") == [
        "One boost pressure is given for all engine speeds. It is drawn from half the rev "
        "limit up; below that nobody has said that it is reached."
    ]


def test_an_absolute_boost_pressure_is_never_taken_for_a_gauge_one():
    absolute = boosted(settings={"boost": given(179, "kPa", reference="absolute")})
    gauge = boosted(settings={"boost": given(80, "kPa", reference="gauge")})
    assert base(absolute, "boost").value == pytest.approx(base(gauge, "boost").value)
    assert "absolute" in base(absolute, "boost").origin


def test_speeds_are_full_hundreds_with_both_ends():
    assert grid(3150, 3420) == (3150, 3200, 3300, 3400, 3420)
    assert grid(1000, 1200) == (1000, 1100, 1200)


def test_the_filling_over_speed_is_best_in_the_middle_and_given_ones_are_level():
    shape = base(state(), "volumetric_efficiency").value
    assert max(shape) == 1.03
    assert shape[0] < shape[len(shape) // 2] > shape[-1]
    own = state(car=CAR | {"engine volumetric efficiency": given(0.9)})
    assert base(own, "volumetric_efficiency").value == 0.9


def test_only_what_is_on_the_car_and_whole_counts():
    broken = fitted("pump", "fuel pump", {"flow": given(165, "L/h")}, broken=True)
    assert missing(state(parts=PARTS | {"pump": broken}), "pump_margin") == (
        "flow of the fitted fuel pump: its part with `kind: fuel pump` and "
        "`facts: {flow: 165 L/h at 4 bar}`",
    )


def test_the_part_fitted_last_is_the_one_that_works():
    later = fitted("pump-2", "fuel pump", {"flow": given(255, "L/h")}, episode=5)
    found = base(state(parts=PARTS | {"pump-2": later}), "rated_pump_flow")
    assert found.origin == "flow of Pump 2"


@pytest.mark.parametrize(
    ("left_out", "quantity_id", "give"),
    [
        (
            {"car": {"mass": CAR["mass"], "engine compression ratio": given(9.4)}},
            "power",
            ("displacement, as in `car: {engine displacement: 1598 cc}`",),
        ),
        (
            {"car": {key: CAR[key] for key in ("mass", "engine displacement")}},
            "torque",
            ("compression ratio, as in `car: {engine compression ratio: 9.5:1}`",),
        ),
        (
            {"car": {key: CAR[key] for key in CAR if key != "mass"}},
            "power_to_mass",
            ("mass of the car, as in `car: {mass: 905 kg}`",),
        ),
        (
            {"settings": {"fuel": given("whatever the tank holds")}},
            "injector_duty",
            ("fuel, as in `settings: {fuel: petrol}` or `settings: {fuel: ethanol blend 74 %}`",),
        ),
        (
            {"settings": {"rev limit": given("high")}},
            "engine_air_flow",
            ("rev limit, as in `settings: {rev limit: 6500 rpm}`",),
        ),
        (
            {"parts": {"pump": PARTS["pump"]}},
            "injector_duty",
            (
                "static flow of the fitted injectors: their part with `kind: injectors` and "
                "`facts: {static flow: 550 cc/min at 3 bar}`",
            ),
        ),
    ],
)
def test_what_is_missing_is_said_with_the_line_to_write(left_out, quantity_id, give):
    assert missing(state(**left_out), quantity_id) == give


@pytest.mark.parametrize(
    ("change", "quantity_id", "give"),
    [
        (
            {"car": CAR | {"engine displacement": given(0, "cc")}},
            "engine_air_flow",
            ("a number above zero for car: engine displacement",),
        ),
        (
            {"car": CAR | {"engine displacement": given(-1600, "cc")}},
            "power",
            ("a number above zero for car: engine displacement",),
        ),
        (
            {"settings": {"mixture": given(0)}},
            "fuel_flow",
            ("a number above zero for settings: mixture",),
        ),
        (
            {"settings": {"air humidity": given(-50, "%")}},
            "air_density",
            ("a number of nothing or more for settings: air humidity",),
        ),
        (
            {"settings": {"air pressure": given(9.9, "kPa")}},
            "air_density",
            ("an air pressure between 400 and 1150 hPa for settings: air pressure",),
        ),
        (
            {"settings": {"air humidity": given(60)}},
            "air_density",
            ("a number up to 100 % for settings: air humidity",),
        ),
        (
            {"settings": {"rev limit": given(6_300_000, "rpm")}},
            "power",
            ("a possible rev limit, between 1,000 and 25,000 rpm",),
        ),
    ],
)
def test_a_number_that_cannot_be_gives_no_figure(change, quantity_id, give):
    assert missing(state(**change), quantity_id) == give


def test_a_mixture_far_from_any_engine_is_said_to_be_beyond_the_formula():
    lean = state(settings={"mixture": given(1.58)})
    flow = next(each for each in estimates(inputs_of(lean)) if each.key.quantity == "fuel_flow")
    assert flow.notes == ("Lambda leaves the range that this formula is good for.",)
    beside_power = (
        'Lambda leaves the range that the formula of "work per mass of air, against that at '
        'lambda 1" is good for. The band does not cover that.'
    )
    for quantity_id, at in (("power", lean), ("torque", lean), ("power", state())):
        found = next(each for each in estimates(inputs_of(at)) if each.key.quantity == quantity_id)
        assert (beside_power in found.notes) == (at is lean)


def test_a_turbocharger_without_a_word_on_boost_asks_for_it():
    turbo = state(parts=TURBO_PARTS)
    settings = {key: value for key, value in turbo.settings.items() if key != "boost"}
    assert missing(replace(turbo, settings=settings), "power") == (
        "boost, as in `settings: {boost: 0.8 bar gauge}`; without a charger at work "
        "`settings: {boost: none}`",
    )


def test_a_pipe_asks_for_its_bore_and_for_what_it_carries():
    bare = boosted(parts=TURBO_PARTS | {"hot-pipe": fitted("hot-pipe", "pipe")})
    assert missing(bare, "pipe_velocity", "hot-pipe") == (
        "what hot-pipe carries, as in `facts: {carries: charge air, after the cooler}`",
        "bore of hot-pipe, as in `facts: {bore: 54 mm}`",
    )


def test_an_oil_hose_has_no_velocity():
    hose = fitted("feed", "hose", {"carries": given("oil"), "bore": given(6, "mm")})
    subjects = inputs_of(boosted(parts=PARTS | {"feed": hose})).subjects
    assert not [each for each in subjects if each.kind == "pipe"]


def test_the_same_flow_is_slower_where_the_air_is_cold():
    cold = fitted(
        "cold-pipe",
        "pipe",
        {"bore": given(47.8, "mm"), "carries": given("charge air, after the cooler")},
    )
    figures = estimates(inputs_of(boosted(parts=TURBO_PARTS | {"cold-pipe": cold})))
    speed = {
        each.key.subject: each.value for each in figures if each.key.quantity == "pipe_velocity"
    }
    assert speed["cold-pipe"] < speed["hot-pipe"]


def test_a_bench_number_is_wider_the_less_is_known_of_it():
    widths = [spread("boost", each, 80e3) for each in Evidence]
    assert widths == pytest.approx([5e3, 15e3, 10e3, 20e3])
    assert spread("drivetrain_loss", Evidence.STATED, 0.2) == pytest.approx(0.01)


def test_bands_over_speed_move_as_a_whole():
    column = base(
        boosted(settings={"boost": boost_by_speed((2500, 0.2), (6000, 0.8))}), "boost"
    ).column()
    assert np.allclose(column[0] - column[0, 0], column[-1] - column[-1, 0])


def test_the_pressure_of_the_air_and_a_hair_more_is_no_boost():
    # Common practice, no source: the air of two days differs by as much.
    for pressure in (99, 100, 101):
        of_air = boosted(settings={"boost": given(pressure, "kPa", reference="absolute")})
        assert "unboosted" in inputs_of(of_air).conditions
