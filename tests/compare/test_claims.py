"""Claims: which figure words mean, what holds at which conditions, and by how much."""

import re
from dataclasses import replace

import pytest

from hoistbook.authored.records import BoostBySpeed, Claim, Episode, Journal
from hoistbook.compare.claims import NAMES, claim_verdicts, key_of
from hoistbook.compare.verdicts import Result
from hoistbook.figures.catalogue import QUANTITIES
from hoistbook.figures.figure import Key
from hoistbook.figures.stage import figures_of
from hoistbook.history.state import Dated, Status
from tests.figures.states import CAR, PLACE, TURBO_PARTS, boosted, fitted, given, quantity
from tests.figures.test_map_inputs import MAP, mapped


def claim(words, relation, *bounds, **conditions):
    return Claim(
        text=f"{words} {relation}",
        place=PLACE,
        quantity=words,
        relation=relation,
        bounds=tuple(quantity(*bound) for bound in bounds),
        conditions={name.replace("_", " "): value for name, value in conditions.items()},
    )


def verdict(of_claim, of_state=None):
    state = of_state or boosted(0.8)
    episode = Episode(
        number=state.episode,
        title="x",
        file="x.md",
        place=PLACE,
        prose="",
        prose_line=1,
        claims=(of_claim,),
    )
    journal = Journal(title="A build", place=PLACE, episodes=(episode,))
    (found,) = claim_verdicts(journal, (state,), figures_of(journal, (state,)))
    return found


def gauge(bar):
    return quantity(bar, "bar", reference="gauge")


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("injector duty", Key("injector_duty")),
        ("Injector Duty", Key("injector_duty")),
        ("power", Key("power")),
        ("power at the wheels", Key("wheel_power")),
        ("wheel power", Key("wheel_power")),
        ("manifold pressure", Key("manifold_absolute_pressure")),
        ("velocity in hot-pipe", Key("pipe_velocity", "hot-pipe")),
        ("velocity of the hot pipe", Key("pipe_velocity", "hot-pipe")),
        ("velocity in the pipe", Key("pipe_velocity", "hot-pipe")),
        ("mach number of hot-pipe", Key("mach_number", "hot-pipe")),
    ],
)
def test_words_name_a_figure(words, key):
    state = boosted()
    figures = figures_of(Journal(title="x", place=PLACE, episodes=()), (state,))[0]
    assert key_of(words, figures) == key


def test_every_title_names_its_figure():
    for name, title in QUANTITIES.items():
        assert NAMES[title.casefold()] == name


def test_a_claim_holds_with_a_margin():
    found = verdict(claim("injector duty", "below", (90, "%")))
    assert (found.result, found.figure) == (Result.HOLDS, Key("injector_duty"))
    duty = figures_of(Journal(title="x", place=PLACE, episodes=()), (boosted(),))[0]
    expected = (0.90 - duty.get("injector_duty").value) / 0.90
    assert found.margin == pytest.approx(expected)


def test_a_claim_that_does_not_hold_says_by_how_much():
    found = verdict(claim("injector duty", "below", (50, "%")))
    assert found.result is Result.FAILS
    assert found.margin < -0.3


def test_the_sentence_gives_value_band_and_place():
    found = verdict(claim("power", "above", (90, "kW")))
    assert found.why == (
        "Estimated: 139 kW, highest at 6,300 rpm; 95 % between 109 and 171 kW, "
        "not referred to any reference air. 55 % to spare."
    )


def test_a_band_that_reaches_across_the_bound_is_said_to():
    found = verdict(claim("power", "above", (120, "kW")))
    assert found.result is Result.HOLDS
    assert found.why.endswith(" The band reaches across the bound.")


def test_a_verdict_keeps_the_figure_at_its_conditions_and_its_margin_in_words():
    found = verdict(claim("power", "above", (120, "kW"), boost=gauge(0.5)))
    as_it_is = verdict(claim("power", "above", (90, "kW")))
    assert found.found.value < as_it_is.found.value
    assert (found.across, as_it_is.across) == (True, False)
    assert (as_it_is.spare, verdict(claim("zeal", "above", (1, "kW"))).spare) == ("55 %", "")


def test_a_condition_is_judged_on_the_same_chain_without_touching_the_car():
    at_half = verdict(claim("power", "below", (120, "kW"), boost=gauge(0.5)))
    as_it_is = verdict(claim("power", "below", (120, "kW")))
    assert (at_half.result, as_it_is.result) == (Result.HOLDS, Result.FAILS)


def test_several_conditions_are_judged_together():
    both = claim("injector duty", "below", (85, "%"), boost=gauge(0.5), mixture=quantity(0.9, "-"))
    boost_alone = claim("injector duty", "below", (85, "%"), boost=gauge(0.5))
    assert verdict(both).margin > verdict(boost_alone).margin


def test_a_temperature_keeps_its_margin_in_the_unit_of_the_author():
    found = verdict(claim("charge temperature", "below", (100, "degC")))
    assert 0.4 < found.margin < 0.7


def test_between_takes_the_nearer_bound():
    inside = verdict(claim("power", "between", (100, "kW"), (200, "kW")))
    outside = verdict(claim("power", "between", (200, "kW"), (100, "kW")))
    assert inside.margin == outside.margin > 0
    assert verdict(claim("power", "between", (20, "kW"), (50, "kW"))).result is Result.FAILS


def test_what_is_missing_makes_a_claim_undecided():
    state = boosted(car={key: CAR[key] for key in CAR if key != "mass"})
    found = verdict(claim("power to mass", "above", (100, "W/kg")), state)
    assert (found.result, found.margin) == (Result.UNKNOWN, None)
    assert found.why == ("Not known yet: give mass of the car, as in `car: {mass: 905 kg}`.")


def test_what_a_sheet_states_in_the_place_of_an_estimate_is_held_against_the_claim():
    found = verdict(claim("current of the pump", "below", (12, "A")))
    assert (found.result, found.spare) == (Result.HOLDS, "25 %")
    assert found.why == "Stated: 9.0 A; 95 % between 8.6 and 9.5 A. 25 % to spare."
    assert found.found.place == PLACE
    at_boost = verdict(claim("pump current", "below", (8, "A"), boost=gauge(0.8)))
    assert (at_boost.result, at_boost.spare) == (Result.FAILS, "12 %")


def test_words_that_name_nothing_get_the_closest_that_do():
    found = verdict(claim("injecter duty", "below", (85, "%")))
    assert found.result is Result.UNKNOWN
    assert found.why == '"injecter duty" names no figure; "injector duty" is one.'


def test_a_figure_of_several_parts_asks_of_which():
    cold = fitted(
        "cold-pipe",
        "pipe",
        {"bore": given(54, "mm"), "carries": given("charge air, after the cooler")},
    )
    state = boosted(parts=TURBO_PARTS | {"cold-pipe": cold})
    found = verdict(claim("velocity", "below", (100, "m/s")), state)
    assert found.why == 'Say of which part: "velocity of hot-pipe" or of cold-pipe.'


PIPE = fitted("hot-pipe", "pipe")


@pytest.mark.parametrize(
    ("part", "why"),
    [
        (
            replace(PIPE, status=Status.ON_HAND),
            "Hot pipe is not fitted as at episode 3: it is on hand.",
        ),
        (
            replace(PIPE, status=Status.GONE, how_gone="sold"),
            "Hot pipe is not fitted as at episode 3: it is sold.",
        ),
        (None, 'There is no part "hot-pipe" as at episode 3; "hot-pump" is one.'),
    ],
)
def test_a_claim_about_a_part_that_is_not_fitted_says_so(part, why):
    parts = {"hot-pump": fitted("hot-pump", "fuel pump")} | ({"hot-pipe": part} if part else {})
    found = verdict(claim("velocity in hot-pipe", "below", (100, "m/s")), boosted(parts=parts))
    assert (found.result, found.why) == (Result.UNKNOWN, why)


def test_a_part_that_has_no_such_figure_is_said_to_have_none():
    found = verdict(claim("velocity of turbo", "below", (100, "m/s")))
    assert found.why == '"Velocity in the pipe" is no figure of Turbo.'


def test_a_figure_that_the_engine_has_not_is_named():
    found = verdict(claim("velocity", "below", (100, "m/s")), boosted(parts={}))
    assert found.why == (
        "There is no such figure as the car is at episode 3: Velocity in the pipe."
    )


def conditions_told(of_claim, of_state=None):
    return verdict(of_claim, of_state).why.partition("Worked out at ")[2]


def test_a_claim_at_other_conditions_says_at_which_it_was_worked_out():
    power = ("power", "above", (90, "kW"))
    air = quantity(25, "degC")
    assert conditions_told(claim(*power, boost=gauge(0.5), air_temperature=air)) == (
        "the claim's own boost and air temperature (episode 3 itself: boost 0.8 bar, "
        "air temperature 15 degC); all else as at episode 3."
    )
    assert conditions_told(claim(*power, air_humidity=quantity(50, "%"))) == (
        "the claim's own air humidity (episode 3 itself: air humidity not set); "
        "all else as at episode 3."
    )


def test_boost_by_speed_is_told_by_its_highest():
    by_speed = BoostBySpeed(
        speeds=(2000.0, 3000.0), pressures=(gauge(0.4), gauge(0.8)), place=PLACE
    )
    state = boosted(0.8)
    state = replace(state, settings={**state.settings, "boost": Dated(value=by_speed, episode=3)})
    told = conditions_told(claim("power", "above", (90, "kW"), boost=gauge(0.8)), state)
    assert told == (
        "the claim's own boost (episode 3 itself: boost by speed, up to 0.8 bar); "
        "all else as at episode 3."
    )


def test_conditions_that_the_episode_has_itself_are_not_told_again():
    assert conditions_told(claim("power", "above", (90, "kW"), boost=gauge(0.8))) == ""
    assert conditions_told(claim("power", "above", (90, "kW"))) == ""


def test_a_condition_on_the_car_takes_the_place_of_what_the_car_is():
    light = claim("power to mass", "above", (10, "W/kg"), mass=quantity(460, "kg"))
    heavy = claim("power to mass", "above", (10, "W/kg"))
    assert verdict(light).margin == pytest.approx(2 * verdict(heavy).margin + 1, rel=1e-2)


def test_the_margin_of_a_temperature_is_told_in_degrees():
    found = verdict(claim("charge temperature", "below", (100, "degC")))
    sentence = re.fullmatch(
        r"Estimated: (\d+) °C, highest at 6,300 rpm; 95 % between \d+ and \d+ °C\. "
        r"(\d+) °C to spare\.",
        found.why,
    )
    assert sentence, found.why
    assert int(sentence[2]) == pytest.approx(100 - int(sentence[1]), abs=1)


def test_the_margin_of_a_share_is_told_in_points():
    found = verdict(claim("pump margin", "above", (20, "%")))
    margin = (
        100
        * figures_of(Journal(title="x", place=PLACE, episodes=()), (boosted(),))[0]
        .get("pump_margin")
        .value
    )
    assert f" {margin - 20:.0f} points to spare." in found.why
    assert found.margin == pytest.approx((margin - 20) / 20)


def test_a_bound_of_nothing_has_a_distance_for_a_margin():
    found = verdict(claim("pump margin", "above", (0, "%")))
    assert found.result is Result.HOLDS
    assert " points to spare." in found.why


def test_a_bound_in_the_wrong_unit_decides_nothing():
    found = verdict(claim("power", "above", (90, "N m")))
    assert (found.result, found.why) == (
        Result.UNKNOWN,
        "Power at the crank is not told in N m: write it in kW.",
    )


def test_a_bound_without_a_unit_is_told_the_unit():
    found = verdict(claim("power", "above", (90, "-")))
    assert (found.result, found.why) == (
        Result.UNKNOWN,
        "`90 -` has no unit: write it in kW.",
    )


def test_gauge_and_absolute_are_not_compared():
    found = verdict(
        Claim(
            text="manifold pressure below 0.9 bar gauge",
            place=PLACE,
            quantity="manifold pressure",
            relation="below",
            bounds=(gauge(0.9),),
        )
    )
    assert (found.result, found.why) == (
        Result.UNKNOWN,
        "Manifold absolute pressure is absolute and 0.9 bar is gauge: write it absolute.",
    )


def boosted_claim(words, relation, *bounds, bar):
    return claim(words, relation, *bounds, boost=gauge(bar))


def test_a_claim_at_a_boost_says_where_it_stops_holding():
    found = verdict(boosted_claim("injector duty", "below", (85, "%"), bar=0.8))
    assert found.result is Result.HOLDS
    sentence = found.why.partition(". ")[2].partition(" The band")[0]
    spare = re.fullmatch(
        r"Holds at 0\.8 bar gauge with (\d+) points to spare; "
        r"stops holding at (\d\.\d\d?) bar gauge "
        r"\(this claim alone; no boost is proposed here\)\.",
        sentence,
    )
    assert spare, sentence
    ends = [
        verdict(boosted_claim("injector duty", "below", (85, "%"), bar=float(spare[2]) + step))
        for step in (-0.02, 0.02)
    ]
    assert [each.result for each in ends] == [Result.HOLDS, Result.FAILS]


def test_a_claim_that_fails_says_up_to_where_it_would_hold():
    found = verdict(boosted_claim("pump margin", "above", (200, "%"), bar=0.8))
    assert found.result is Result.FAILS
    match = re.search(
        r"Does not hold at 0\.8 bar gauge, missed by \d+ points; "
        r"holds up to (\d\.\d\d?) bar gauge \(this claim alone; no boost is proposed here\)\.",
        found.why,
    )
    assert match, found.why
    assert verdict(
        boosted_claim("pump margin", "above", (200, "%"), bar=float(match[1]) - 0.02)
    ).result is Result.HOLDS  # fmt: skip


def test_a_claim_that_more_boost_helps_says_from_where_it_holds():
    found = verdict(boosted_claim("power", "above", (120, "kW"), bar=0.8))
    assert re.search(
        r"to spare; holds from 0\.\d\d? bar gauge "
        r"\(this claim alone; no boost is proposed here\)\.",
        found.why,
    ), found.why


def test_nobody_is_told_how_much_more_boost_a_claim_would_take():
    found = verdict(boosted_claim("power", "above", (160, "kW"), bar=0.8))
    assert found.result is Result.FAILS
    assert re.search(r"Does not hold at 0\.8 bar gauge, missed by \d+ %\.", found.why), found.why


def test_the_end_is_told_in_the_author_s_own_unit():
    at = quantity(12, "psi", reference="gauge")
    found = verdict(claim("injector duty", "below", (85, "%"), boost=at))
    assert re.search(
        r"Holds at 12 psi gauge with .* stops holding at \d+(\.\d)? psi gauge \(", found.why
    ), found.why


def test_without_a_boost_among_the_conditions_there_is_no_search():
    for found in (
        verdict(claim("injector duty", "below", (85, "%"))),
        verdict(claim("injector duty", "below", (85, "%"), mixture=quantity(0.8, "lambda"))),
    ):
        assert "hold" not in found.why.casefold()


def test_conditions_that_the_car_meets_anyway_change_no_number_read_from_a_map():
    car = mapped(replace(MAP, flow=(0.05, 0.05, 0.4, 0.4)))
    (figures,) = figures_of(Journal(title="A build", place=PLACE, episodes=()), (car,))
    asked = claim("compressor outlet temperature", "below", (200, "degC"), boost=gauge(0.8))
    found = verdict(asked, car).found
    assert found.value == figures.get("compressor_outlet_temperature").value
