"""Figures beside the way to power, each against something outside the program."""

import math

import fluids
import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI

from hoistbook.authored.records import Journal
from hoistbook.compare.claims import key_of
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Figure, Key, LimitState, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates, figures_of
from hoistbook.units import from_unit, to_unit
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


def found(of_state, name, subject="engine"):
    return next(
        each
        for each in estimates(inputs_of(of_state))
        if (each.key.quantity, each.key.subject) == (name, subject)
    )


def at_power(of_state, *names):
    """Return central values of the chain at the engine speed of highest power."""
    worked = work_out(inputs_of(of_state), sampled=False)
    line = int(np.argmax(worked.values["power"][:, 0]))
    return [
        float(each[min(line, len(each) - 1), 0])
        for each in (worked.values[name] for name in names)
    ]


PIPE = {
    "bore": given(47.8, "mm", half_width=0),
    "length": given(0.9, "m", half_width=0),
    "carries": given("charge air, after the cooler"),
    "bends": given(2),
    "bend radius ratio": given(1.5),
    "roughness": given(0.0015, "mm"),
    "end losses": given(1.0),
}


def test_the_loss_of_a_pipe_is_that_of_a_library():
    car = boosted(parts=TURBO_PARTS | {"cold": fitted("cold", "pipe", PIPE)})
    flow, pressure, temperature = at_power(
        car, "engine_air_flow", "manifold_absolute_pressure", "charge_temperature"
    )
    bore, length = 0.0478, 0.9
    density = PropsSI("D", "P", pressure, "T", temperature, "Air")
    viscosity = PropsSI("V", "P", pressure, "T", temperature, "Air")
    velocity = flow / density / (math.pi * bore**2 / 4)
    reynolds = density * velocity * bore / viscosity
    friction = fluids.friction_factor(Re=reynolds, eD=1.5e-6 / bore)
    bend = fluids.fittings.bend_rounded(
        Di=bore, angle=90, bend_diameters=1.5, fd=friction, Re=reynolds
    )
    theirs = fluids.dP_from_K(friction * length / bore + 2 * bend + 1.0, rho=density, V=velocity)
    # Haaland against Colebrook 2 %, the ideal gas 0.2 %, the bend 3 %.
    assert found(car, "pipe_pressure_loss", "cold").value == pytest.approx(theirs, rel=0.03)


def test_where_nobody_counts_bends_the_band_is_wide_and_says_why():
    sparse = {name: PIPE[name] for name in ("bore", "length", "carries")}
    car = boosted(parts=TURBO_PARTS | {"cold": fitted("cold", "pipe", sparse)})
    loss = found(car, "pipe_pressure_loss", "cold")
    assert loss.high > 2.5 * loss.low
    assert loss.budget[0].name == "end_loss_coefficients"


def test_a_pipe_without_a_length_says_what_to_give():
    bare = {name: PIPE[name] for name in ("bore", "carries")}
    car = boosted(parts=TURBO_PARTS | {"cold": fitted("cold", "pipe", bare)})
    assert found(car, "pipe_pressure_loss", "cold").give == (
        "length of cold, as in `facts: {length: 0.9 m}`",
    )
    assert isinstance(found(car, "pipe_velocity", "cold"), Figure)


def test_the_volume_that_boost_fills_is_the_sum_of_what_stands_between():
    # 47.8 mm of 0.9 m hold 1.6 L, cooler and plenum as they say.
    volume = found(boosted(), "charge_volume")
    assert to_unit(volume.value, "L") == pytest.approx(1.615 + 4.5 + 3.0, rel=0.001)
    fill = found(boosted(), "fill_time")
    flow, temperature = at_power(boosted(), "engine_air_flow", "charge_temperature")
    mass = volume.value * 80e3 / (287.05 * temperature)
    assert fill.value == pytest.approx(mass / flow, rel=0.02)
    assert "Nothing follows from this on when boost comes" in fill.notes[0]
    assert not [
        each for each in estimates(inputs_of(state())) if each.key.quantity == "charge_volume"
    ]


def test_the_band_of_the_volume_is_that_of_bores_and_lengths():
    exact = {
        "cooler": fitted("cooler", "charge cooler", {"volume": given(4.5, "L", half_width=0)}),
        "plenum": fitted("plenum", "intake manifold", {"volume": given(3, "L", half_width=0)}),
    }
    volume = found(boosted(parts=TURBO_PARTS | exact), "charge_volume")
    # GUM 5.1.6: a stated bore is good to 3 % and counts twice, a stated length to 5 %.
    half = 1.615e-3 * math.hypot(2 * 0.03, 0.05)
    assert (volume.high - volume.low) / 2 == pytest.approx(half, rel=0.02)


def test_a_throttle_body_under_boost_chokes_at_the_state_of_the_charge():
    body = {"body": fitted("body", "throttle body", {"bore": given(50, "mm")})}
    car = boosted(parts=TURBO_PARTS | body)
    pressure, temperature = at_power(car, "manifold_absolute_pressure", "charge_temperature")
    # White, Fluid Mechanics, eq. 9.46 for air (from memory): 0.0404 A p0 / sqrt(T0).
    free = 0.040415 * math.pi * 0.05**2 / 4 * pressure / math.sqrt(temperature)
    assert found(car, "choked_flow", "body").value == pytest.approx(0.92 * free, rel=0.001)


def test_a_restrictor_chokes_where_the_isentropic_relations_of_a_library_say():
    # 32 mm at 101.3 kPa and 25 degC: 191 g/s with nothing lost (computed with Python).
    car = state(
        settings={
            "air pressure": given(101.3, "kPa", half_width=0),
            "air temperature": given(15, "degC", half_width=0),
        },
        parts=PARTS | {"ring": fitted("ring", "restrictor", {"bore": given(32, "mm")})},
    )
    choked = found(car, "choked_flow", "ring")
    assert choked.low < 0.191 < choked.high * 1.02
    assert choked.value == pytest.approx(0.191 * 0.92, rel=0.005)
    share = found(car, "throat_share", "ring")
    (flow,) = at_power(car, "engine_air_flow")
    assert share.value == pytest.approx(flow / choked.value)
    assert share.limit.state is LimitState.WITHIN
    narrow = {"ring": fitted("ring", "restrictor", {"bore": given(20, "mm")})}
    assert found(boosted(parts=TURBO_PARTS | narrow), "throat_share", "ring").limit.state is (
        LimitState.OVER
    )


@pytest.mark.parametrize("quantity", ["engine_air_flow", "power", "torque", "wheel_power"])
def test_of_a_power_that_a_restrictor_does_not_let_through_it_is_said_from_which_speed(quantity):
    def notes(bore):
        ring = {"ring": fitted("ring", "restrictor", {"bore": given(bore, "mm")})}
        return found(boosted(parts=TURBO_PARTS | ring), quantity, "engine").notes

    # White, Fluid Mechanics, eq. 9.46 for air (from memory): 0.0404 A p0 / sqrt(T0), of which a
    # throat passes 0.92; the air under the bonnet is 10 K warmer than that outside, at 99 kPa.
    passes = 0.92 * 0.040415 * math.pi * 0.026**2 / 4 * 99e3 / math.sqrt(298.15)
    air = found(boosted(), "engine_air_flow", "engine").curve
    first = next(
        speed for speed, flow in zip(air.speeds, air.values, strict=True) if flow > passes
    )
    assert notes(26)[-1] == (
        f"Out of reach between {first:,.0f} and 6,300 rpm: that takes more air than passes the "
        "bore of Ring, which chokes before. How much less the engine makes with it is not worked "
        "out here."
    )
    assert 3200 < first < 6300
    assert "Out of reach" not in " ".join(notes(40))


def test_the_heat_to_the_coolant_is_a_range_of_the_fuel_s_energy():
    # Heywood 1988, table 12.1 (from memory): 17 to 26 % of the fuel's energy at full power.
    heat = found(boosted(), "coolant_heat")
    fuel, value = at_power(boosted(), "fuel_flow", "heating_value")
    assert heat.low / (fuel * value) < 0.19
    assert heat.high / (fuel * value) > 0.24
    flow = found(boosted(), "coolant_flow")
    # 80 kW and 8 K are 163 L/min of half water, half glycol (CoolProp 8.0.0).
    assert to_unit(flow.value, "L/min") == pytest.approx(
        162.84 * to_unit(heat.value, "kW") / 80, rel=0.01
    )


def test_the_heat_to_the_oil_is_a_range_of_the_fuel_s_energy_together_with_the_surfaces():
    # Heywood 1988, table 12.1 (from memory): 3 to 10 % for what is neither work, coolant nor
    # exhaust: oil, where it has a cooler of its own, and the engine's surfaces.
    heat = found(boosted(), "oil_and_surface_heat")
    fuel, value = at_power(boosted(), "fuel_flow", "heating_value")
    assert 0.03 < heat.low / (fuel * value) < 0.035
    assert 0.095 < heat.high / (fuel * value) < 0.115
    assert heat.value == pytest.approx(0.065 * fuel * value, rel=0.01)
    # Together with the coolant it holds a published balance at full load: 27.5 % (as quoted).
    coolant = found(boosted(), "coolant_heat")
    assert coolant.low + heat.low < 0.275 * fuel * value < coolant.high + heat.high


def test_the_oil_of_a_feed_goes_by_its_restrictor_and_the_pressure_that_was_read():
    facts = {"restrictor": given(1.0, "mm")}
    car = boosted(parts=TURBO_PARTS | {"feed": fitted("feed", "oil feed", facts)})
    # 1.0 mm at 3.5 bar, C_d 0.65, 830 kg/m3: 0.89 L/min (computed with Python).
    assert to_unit(found(car, "oil_feed_flow", "feed").value, "L/min") == pytest.approx(
        0.8895, rel=0.002
    )
    bare = boosted(parts=TURBO_PARTS | {"feed": fitted("feed", "oil feed")})
    assert found(bare, "oil_feed_flow", "feed").give == (
        "restrictor of feed, as in `facts: {restrictor: 1.2 mm}`; without one nothing can be said",
    )


def test_a_drain_carries_less_than_torricelli_allows():
    facts = {
        "bore": given(15, "mm"),
        "length": given(0.35, "m"),
        "drop": given(0.3, "m"),
    }
    car = boosted(parts=TURBO_PARTS | {"drain": fitted("drain", "oil drain", facts)})
    drain = found(car, "drain_flow_limit", "drain")
    free = math.pi * 0.015**2 / 4 * math.sqrt(2 * 9.80665 * 0.3)
    assert 0.4 * free < drain.value < 0.9 * free
    assert "froth" in drain.notes[0]


def test_the_road_speed_in_a_gear_is_that_of_the_circumference_on_the_road():
    # 195/50 R15 is listed with 576 mm and a rolling circumference of 1756 mm (ETRTO convention of
    # 3.05 diameters, from memory).
    car = state(car=CAR | {"tyres": given("195/50 R15")})
    third = found(car, "road_speed", "gear-3")
    assert to_unit(third.value, "km/h") == pytest.approx(
        6300 * 1.7568 / (1.31 * 3.94) * 60 / 1000, rel=0.001
    )
    assert third.low < third.value < third.high
    gears = [each for each in estimates(inputs_of(car)) if each.key.quantity == "road_speed"]
    assert [each.key.subject for each in gears] == [f"gear-{n}" for n in range(1, 6)]
    speeds = [each.value for each in gears]
    assert speeds == sorted(speeds)


def test_tyres_that_are_fitted_with_their_size_go_before_the_car_s():
    tyres = {"tyres": fitted("tyres", "tyres", {"size": given("205/50 R16")})}
    # ISO 4000-1: 205/50 R16 is 611.4 mm.
    worked = work_out(inputs_of(state(parts=PARTS | tyres)), sampled=False)
    assert worked.values["tyre_diameter"][0, 0] == pytest.approx(0.6114, abs=1e-6)


def test_without_gears_or_tyres_one_figure_says_what_to_give():
    bare = {key: CAR[key] for key in CAR if not key.startswith(("gearing", "tyres"))}
    missing = [
        each for each in estimates(inputs_of(state(car=bare))) if each.key.quantity == "road_speed"
    ]
    (one,) = missing
    assert isinstance(one, Missing)
    assert one.give == (
        "size of the tyres, as in `car: {tyres: 185/60 R14}`",
        "ratios of the gears, as in `car: {gearing: {gears: [3.5, 1.95, 1.3]}}`",
        "final drive, as in `car: {gearing: {final drive: 3.94}}`",
    )


def test_the_quarter_mile_is_a_range_that_holds_every_published_rule():
    # Hale 5.825 s and 234 mile/h, Huntington 6.290 and 224, Fox 6.269 and 230 (as quoted).
    time, speed = (found(boosted(), name) for name in ("quarter_mile_time", "trap_speed"))
    (power,) = at_power(boosted(), "power")
    pounds = to_unit(920 + 80, "lb")
    ratio = (pounds / to_unit(power, "hp")) ** (1 / 3)
    for rule, end in ((5.825, 234), (6.290, 224), (6.269, 230)):
        assert time.low < rule * ratio < time.high
        assert speed.low < from_unit(end, "mph") / ratio < speed.high
    assert "closed course" in time.notes[0]


def test_the_compression_ratio_from_dimensions_takes_the_place_of_one_that_nobody_states():
    # Heywood 1988, equation 2.1 (from memory): swept 399.7, clearance 35 + 6.45 + 1.93 + 4 cm3.
    ratio = (399.72 + 47.385) / 47.385
    by_dimensions = found(state(), "compression_ratio_of_volumes")
    assert by_dimensions.value == pytest.approx(ratio, rel=0.001)
    assert "no boost, timing or fuel is safe" in by_dimensions.notes[0]
    unstated = {key: CAR[key] for key in CAR if key != "engine compression ratio"}
    worked = work_out(inputs_of(state(car=unstated)), sampled=False)
    assert worked.values["compression_ratio"][0, 0] == pytest.approx(ratio, rel=0.001)
    unknown = {key: unstated[key] for key in unstated if key != "engine dish volume"}
    assert isinstance(found(state(car=unknown), "power"), Missing)


def test_the_trapped_ratio_is_less_and_moves_with_the_closing_of_the_inlet():
    late = state(car=CAR | {"engine inlet closes": given(70, "deg")})
    assert (
        found(late, "trapped_compression_ratio").value
        < found(state(), "trapped_compression_ratio").value
        < 9.4
    )


def test_the_torque_of_a_bolt_carries_the_scatter_of_its_lubrication():
    facts = {
        "thread": given("M8x1.25"),
        "property class": given("8.8"),
        "lubrication": given("dry"),
    }
    car = state(parts=PARTS | {"bolts": fitted("bolts", "bolts", facts)})
    torque = found(car, "tightening_torque", "bolts")
    # Shigley, eq. 8-27 and 8-31: 0.2 · 0.75 · 580 MPa · 36.6 mm2 · 8 mm.
    assert torque.value == pytest.approx(0.2 * 0.75 * 580e6 * 36.6e-6 * 8e-3, rel=0.005)
    assert torque.high / torque.value > 1.3
    assert torque.notes == ("The figure of the maker of the bolt or of the car beats this one.",)


def test_a_wire_loses_what_ohm_says():
    pump = fitted(
        "pump",
        "fuel pump",
        {
            "flow": given(165, "L/h", at=quantity(4, "bar")),
            "current": given(10, "A"),
            "wire": given(2.5, "mm2"),
            "wire length": given(4, "m"),
            "voltage": given(13.0, "V"),
        },
    )
    drop = found(state(parts=PARTS | {"pump": pump}), "voltage_drop", "pump")
    # IEC 60228, class 5: 7.98 mohm/m for 2.5 mm2, out and back.
    assert drop.value == pytest.approx(10 * 2 * 4 * 7.98e-3, rel=0.001)
    share = found(state(parts=PARTS | {"pump": pump}), "voltage_drop_share", "pump")
    assert share.value == pytest.approx(drop.value / 13.0)
    assert share.limit.state is LimitState.NEAR
    # A current and a length that are stated have the band of what is stated: 5 % each, and the
    # root of the sum of their squares for the product (GUM, JCGM 100:2008, 5.1.6).
    both = math.hypot(0.05, 0.05)
    assert (drop.high - drop.low) / 2 == pytest.approx(drop.value * both, rel=0.05)


def test_a_claim_may_name_what_stands_beside_the_power():
    book = Journal(title="x", place=PLACE, episodes=())
    (figures,) = figures_of(book, (boosted(),))
    assert key_of("road speed of gear 3", figures) == Key("road_speed", "gear-3")
    assert key_of("pressure loss in hot-pipe", figures) == Key("pipe_pressure_loss", "hot-pipe")
    assert key_of("heat to the coolant", figures) == Key("coolant_heat")
    assert key_of("quarter-mile time", figures) == Key("quarter_mile_time")


def test_nothing_that_is_offered_says_what_is_safe():
    for each in estimates(inputs_of(boosted())):
        words = " ".join(each.notes if isinstance(each, Figure) else each.give).casefold()
        assert "knock-safe" not in words
        assert "is safe" not in words or "no boost, timing or fuel is safe" in words


def test_throttle_bodies_side_by_side_pass_together_what_each_passes():
    # Continuity: equal throats in parallel pass as much as one of all their area (White, Fluid
    # Mechanics, section 3.3; from memory). The whole engine's air had been held against one.
    one, four = (
        boosted(parts=TURBO_PARTS | {"tb": fitted("tb", "throttle body", facts, count=count)})
        for count in (1, 4)
        for facts in ({"bore": given(34, "mm")},)
    )
    single, both = (found(car, "choked_flow", "tb") for car in (one, four))
    assert both.value == pytest.approx(4 * single.value)
    assert found(one, "throat_share", "tb").value == pytest.approx(
        4 * found(four, "throat_share", "tb").value
    )
