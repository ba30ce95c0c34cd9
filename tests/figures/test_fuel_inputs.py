"""Base inputs of the fuel side: fuels in words, injectors, pumps."""

import math
from dataclasses import replace

import pytest

from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from hoistbook.units import from_unit
from hoistbook.values.evidence import Evidence
from tests.figures.states import PARTS, fitted, given, quantity, state
from tests.figures.test_inputs import base


@pytest.mark.parametrize(
    ("words", "names"),
    [
        ("petrol", ["stoichiometric_air_fuel_ratio"]),
        ("methanol", ["stoichiometric_air_fuel_ratio"]),
        ("ethanol blend 74 %", ["air_fuel_ratio_first", "air_fuel_ratio_second"]),
        ("Ethanol blend 51,5 %", ["air_fuel_ratio_first", "air_fuel_ratio_second"]),
    ],
)
def test_a_fuel_is_read_in_words(words, names):
    keys = [each.key for each in inputs_of(state(settings={"fuel": given(words)})).bases]
    assert [key for key in keys if "air_fuel_ratio" in key] == names


def test_a_measured_blend_is_known_better_than_a_pump_s():
    measured = given("ethanol blend 74 %", evidence=Evidence.MEASURED)
    known = base(state(settings={"fuel": measured}), "volume_fraction_second")
    unknown = base(state(settings={"fuel": given("ethanol blend")}), "volume_fraction_second")
    assert (known.value, known.half_width) == (0.74, 0.02)
    # ASTM D5798-15 as reproduced by the US DOE AFDC, and the scope of D5798-21; both seen: 51 to
    # 83 % by season and place.
    low, high = unknown.value - unknown.half_width, unknown.value + unknown.half_width
    assert (low, high) == pytest.approx((0.51, 0.83))


@pytest.mark.parametrize("words", ["ethanol blend 74.5 % +- 3 %", "ethanol blend 74,5 % +- 3 %"])
def test_the_band_of_a_blend_s_share_is_the_author_s(words):
    known = base(state(settings={"fuel": given(words)}), "volume_fraction_second")
    assert (known.value, known.half_width) == pytest.approx((0.745, 0.03))


def test_a_methanol_blend_needs_its_share_and_no_pump_sells_it():
    inputs = inputs_of(state(settings={"fuel": given("methanol blend")}))
    assert dict(inputs.missing)["fuel_density"] == (
        "share of the methanol blend, as in `settings: {fuel: methanol blend 20 %}`"
    )
    named = inputs_of(state(settings={"fuel": given("methanol blend 20 %")}))
    assert next(each for each in named.bases if each.key == "heating_value_second").value == (
        20.0e6
    )


def test_the_condition_of_a_stated_flow_comes_along():
    assert base(state(), "rated_pressure_difference").value == from_unit(3, "bar")
    assert base(state(), "rated_pump_pressure").value == from_unit(4, "bar")


def test_a_current_on_the_pump_s_own_sheet_stands_in_for_the_estimate():
    found = base(state(), "pump_current")
    assert (found.value, found.evidence, found.origin) == (9.0, Evidence.STATED, "current of Pump")
    bare = fitted("pump", "fuel pump", {"flow": given(165, "L/h")})
    stated, worked = (
        next(each for each in estimates(inputs_of(of)) if each.key.quantity == "pump_current")
        for of in (state(), state(parts=PARTS | {"pump": bare}))
    )
    assert (stated.value, stated.evidence, stated.formula) == (9.0, Evidence.STATED, "")
    assert (worked.evidence, worked.formula) == (Evidence.ESTIMATED, "pump_current")
    assert stated.notes == ()
    assert len(worked.notes) == 1


def test_pumps_side_by_side_add_their_flows_and_their_currents():
    # At one pressure the flows of pumps in parallel add (White, Fluid Mechanics, section 11.6 of
    # the 7th edition; from memory).
    facts = {"flow": given(165, "L/h"), "current": given(8, "A")}
    pair = fitted("pump", "fuel pump", facts, count=2)
    for_a_friend = replace(pair, part=replace(pair.part, kept=1))
    one, two, bought = (
        state(parts=PARTS | {"pump": each})
        for each in (fitted("pump", "fuel pump", facts), pair, for_a_friend)
    )
    for name in ("rated_pump_flow", "pump_current"):
        single, both = base(one, name), base(two, name)
        assert both.value == 2 * single.value
        assert both.half_width == pytest.approx(2 * single.half_width)
        assert both.origin == f"{single.origin}, 2 of them side by side"
        assert base(bought, name) == single
    margins = [
        next(each for each in estimates(inputs_of(of)) if each.key.quantity == "pump_margin")
        for of in (one, two)
    ]
    assert 1 + margins[1].value == pytest.approx(2 * (1 + margins[0].value))
    assert margins[1].notes[0].startswith("2 pumps side by side: at one pressure their flows add")
    assert not any("side by side" in note for note in margins[0].notes)


def test_an_injector_without_a_condition_is_taken_to_be_rated_at_three_bar():
    bare = fitted("injectors", "injectors", {"static flow": given(340, "cc/min")}, count=4)
    found = base(state(parts=PARTS | {"injectors": bare}), "rated_pressure_difference")
    assert (found.value, found.evidence) == (300e3, Evidence.ASSUMED)


def test_an_absolute_fuel_pressure_becomes_the_gauge_pressure_that_the_chain_takes():
    absolute = state(settings={"fuel pressure": given(399, "kPa", reference="absolute")})
    assert base(absolute, "base_fuel_pressure").value == pytest.approx(300e3)


def test_of_two_fuel_pumps_of_two_lines_it_is_said_which_one_is_reckoned_with():
    lift = {"lift-pump": fitted("lift-pump", "fuel pump", {"flow": given(90, "L/h")}, episode=2)}
    first, both = (
        next(
            each
            for each in estimates(inputs_of(state(parts=PARTS | more)))
            if each.key.quantity == "pump_margin"
        )
        for more in ({}, lift)
    )
    assert both.value == first.value
    assert both.notes == (
        "Lift pump is on the car too: what stands here is what Pump gives alone, for nothing says "
        "how they share the work. Equal pumps side by side are one part with its `count`; one "
        "that only lifts the fuel to another adds nothing.",
    )
    assert first.notes == ()


def pumped(flow):
    return state(parts=PARTS | {"pump": fitted("pump", "fuel pump", {"flow": flow})})


def injected(flow):
    part = fitted("injectors", "injectors", {"static flow": flow}, count=4)
    return state(parts=PARTS | {"injectors": part})


def figure(of, quantity):
    return next(each for each in estimates(inputs_of(of)) if each.key.quantity == quantity)


def test_a_flow_stated_by_mass_is_taken_by_volume():
    # 1 lb = 0.45359237 kg (NIST Handbook 44, appendix C; from memory); of a fluid of 715 kg/m3
    # 52 lb/h are 550 cc/min: a mass taken for a volume had made a duty of 5 % out of one of 64 %.
    by_mass = injected(given(52, "lb/h", at=quantity(3, "bar")))
    known, volume = base(by_mass, "rated_static_flow"), 52 * 0.45359237 / 3600 / 715
    assert known.value == pytest.approx(volume, rel=1e-6)
    assert known.half_width == pytest.approx(volume * math.hypot(0.04, 20 / 715))
    assert known.origin == "static flow of Injectors, by mass, of a fluid of 715 kg/m3"
    assert base(by_mass, "rated_fluid_density").half_width == 0.0
    by_volume = injected(given(549.82, "cc/min", at=quantity(3, "bar")))
    one, other = (figure(of, "injector_duty") for of in (by_mass, by_volume))
    assert one.value == pytest.approx(other.value, rel=1e-3)
    assert one.high - one.low == pytest.approx(other.high - other.low, rel=0.05)


def test_a_pump_s_flow_stated_by_mass_is_taken_by_volume():
    known = base(pumped(given(143, "kg/h", at=quantity(3, "bar"))), "rated_pump_flow")
    assert known.value == pytest.approx(from_unit(200, "L/h"))
    assert known.half_width == pytest.approx(known.value * math.hypot(0.15, 40 / 715))


def test_a_pump_s_flow_may_be_stated_at_its_voltage():
    # 13.5 V had been taken for a pressure of 13.5 Pa: a third of the flow was gone.
    of = pumped(given(165, "L/h", at=quantity(12, "V")))
    voltage, pressure = (base(of, f"rated_pump_{each}") for each in ("voltage", "pressure"))
    assert (voltage.value, voltage.evidence) == (12.0, Evidence.STATED)
    assert (pressure.value, pressure.evidence) == (300e3, Evidence.ASSUMED)


@pytest.mark.parametrize(
    ("of", "quantity_of", "give"),
    [
        (
            injected(given(340, "cc/min", at=quantity(20, "degC"))),
            "injector_duty",
            "static flow of Injectors at a pressure, not at 20 degC",
        ),
        (
            pumped(given(165, "L/h", at=quantity(20, "degC"))),
            "pump_margin",
            "flow of Pump at a pressure, not at 20 degC",
        ),
    ],
)
def test_a_flow_stated_at_what_is_no_pressure_gives_no_number(of, quantity_of, give):
    # 20 degC had been taken for a pressure of 293 Pa, and the duty for a tenth of what it is.
    assert figure(of, quantity_of).give == (give,)


def test_a_cooler_s_loss_at_what_is_no_mass_flow_gives_no_number():
    # 180 L/min had been taken for 3 g/s: a loss of 87 bar, and a charge of 250 degC.
    facts = {"pressure loss": given(9, "kPa", at=quantity(180, "L/min"))}
    more = {
        "turbo": fitted("turbo", "turbocharger"),
        "cooler": fitted("cooler", "charge cooler", facts),
    }
    of = state(settings={"boost": given(0.8, "bar", reference="gauge")}, parts=PARTS | more)
    give = "pressure loss of Cooler at a mass flow, not at 180 L/min"
    assert give in figure(of, "charge_temperature").give
