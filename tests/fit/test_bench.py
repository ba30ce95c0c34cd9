"""What the bench wants beside the joins: bolts with their torque, loads with wire and fuse."""

from __future__ import annotations

import pytest

from hoistbook.fit.bench import Bolt, Load, bolts_of, loads_of, screwed_in
from hoistbook.fit.wiring import LENGTH, SUPPLY, Known
from tests.fit.conftest import States

PUMP = """
got:
  - {{part: pump, kind: fuel pump, came: given, facts: {{{facts}}}}}
done:
  - fitted: pump
"""


def pump(states: States, facts: str) -> Load:
    (found,) = loads_of(states(PUMP.format(facts=facts))[-1])
    return found


def test_a_load_is_served_over_the_whole_of_what_is_assumed(states: States) -> None:
    found = pump(states, "current: 10 A")

    assert (found.length, found.supply) == (LENGTH, SUPPLY)
    assert (found.length.assumed, found.supply.assumed) == (True, True)
    # 2 x 6 m x 10 A x R <= 3 % of 12.0 V: R <= 3.0 mohm/m; IEC 60228 gives 3.30 to 6 mm2 and 1.91
    # to 10 mm2, and the table no value to the 8 mm2 between them but that of ideal copper, 2.155.
    assert found.wanted is not None
    assert found.wanted.label == "8 mm2"
    assert found.fuse == 15


def test_what_the_author_says_takes_the_place_of_what_is_assumed(states: States) -> None:
    found = pump(states, "current: 7.5 A +- 1 A, wire length: 3 m, voltage: 13.8 V, wire: 4 mm2")

    assert found.current == Known(7.5, 6.5, 8.5)
    assert found.length == Known(3.0, 3.0, 3.0)
    assert found.supply == Known(13.8, 13.8, 13.8)
    assert found.wanted is not None
    assert found.laid is not None
    # 2 x 3 m x 8.5 A x 7.98 mohm/m = 0.407 V, and 3 % of 13.8 V are 0.414 V.
    assert (found.wanted.label, found.laid.label, found.fuse) == ("2.5 mm2", "4 mm2", 15)
    # 2 x 3 m x 7.5 A x 4.95 mohm/m (IEC 60228, class 5, plain copper) = 0.223 V.
    lost = found.lost(found.laid)
    assert (lost.value, lost.low, lost.high) == pytest.approx((0.223, 0.193, 0.252), abs=5e-4)
    assert found.serves(found.laid)


def test_a_wire_that_is_laid_too_thin_does_not_serve(states: States) -> None:
    found = pump(states, "current: 10 A, wire length: 4 m, wire: 2.5 mm2")

    # 2 x 4 m x 10 A x 7.98 mohm/m = 0.638 V: 5.3 % of 12.0 V, and a pump bears 3 %.
    assert found.laid is not None
    assert found.lost(found.laid).value == pytest.approx(0.638, abs=5e-4)
    assert not found.serves(found.laid)


@pytest.mark.parametrize(
    ("said", "serves"),
    [
        # 2 x 2.2 m x 10 A x 7.98 mohm/m = 0.351 V of the 0.36 V that are 3 % of 12.0 V.
        ("current: 10 A, wire length: 2.2 m", True),
        # 0.383 V: 3 % of a battery that is charged, 14.4 V, would bear it.
        ("current: 10 A, wire length: 2.4 m", False),
        # The table lets the wire carry 20 A.
        ("current: 18 A +- 2 A, wire length: 0.5 m", True),
        ("current: 19 A +- 2 A, wire length: 0.5 m", False),
    ],
)
def test_a_wire_serves_at_the_worst_end_of_every_band(
    states: States, said: str, serves: bool
) -> None:
    found = pump(states, f"{said}, wire: 2.5 mm2")

    assert found.laid is not None
    assert found.serves(found.laid) is serves


def test_a_number_that_cannot_be_is_not_taken_for_one(states: States) -> None:
    found = pump(states, "current: -5 A, wire length: 0 m, voltage: 0 V, wire: 0 mm2")

    assert (found.current, found.length, found.supply) == (None, LENGTH, SUPPLY)
    assert (found.wanted, found.laid, found.fuse) == (None, None, None)


def test_a_band_wider_than_its_number_ends_at_nothing(states: States) -> None:
    assert pump(states, "current: 10 A, wire length: 4 m +- 8 m").length.low == 0.0


def test_a_load_of_which_no_current_is_said_is_listed_without_a_wire(states: States) -> None:
    found = pump(states, "flow: 95 L/h at 4 bar")

    assert (found.current, found.wanted, found.fuse) == (None, None, None)


def test_a_pump_on_a_belt_and_a_source_of_current_are_no_loads(states: States) -> None:
    state = states(
        """
        got:
          - {part: pump, kind: coolant pump, came: given}
          - {part: relay, kind: relay, came: given, facts: {current: 30 A}}
          - {part: wideband, came: given, facts: {current: 3 A}}
        done:
          - fitted: [pump, relay, wideband]
        """
    )[-1]

    assert [each.part for each in loads_of(state)] == ["wideband"]


def test_what_was_replaced_or_broke_is_no_load(states: States) -> None:
    state = states(
        PUMP.format(facts="current: 5 A"),
        """
        got:
          - {part: pump-2, kind: fuel pump, came: given, facts: {current: 9 A}}
        done:
          - {fitted: pump-2, instead of: pump}
        """,
    )[-1]

    assert [each.part for each in loads_of(state)] == ["pump-2"]


STUDS = """
got:
  - part: studs
    name: Exhaust stud M8 x 40
    kind: bolts
    came: given
    facts: {facts}
"""


def studs(states: States, facts: str) -> Bolt:
    (found,) = bolts_of(states(STUDS.format(facts=facts))[-1])
    return found


def test_a_stud_has_the_torque_of_its_class_and_of_what_is_on_it(states: States) -> None:
    found = studs(states, '{property class: "10.9", lubrication: copper grease, torque: 20 N m}')

    made = found.bolting.tightening
    assert made is not None
    # 0.75 x 830 MPa (EN ISO 898-1:2013) x 36.6 mm2 = 22.8 kN; K 0.12 (0.09 to 0.16): 22 N m.
    assert (made.thread, made.property_class) == ("M8x1.25", "10.9")
    assert made.lubrication == "anti-seize / moly paste"
    assert made.torque == pytest.approx(21.9, abs=0.05)
    assert made.spread == pytest.approx((0.12 / 0.16, 0.12 / 0.09))
    assert found.said == 20


def test_a_stud_of_no_class_is_listed_without_a_torque(states: States) -> None:
    found = studs(states, "{}")

    assert (found.bolting.thread, found.bolting.tightening) == ("M8x1.25", None)


def test_a_banjo_bolt_is_listed_without_the_torque_of_a_solid_one(states: States) -> None:
    found = studs(states, '{thread: M12x1.5, property class: "8.8", bore: 6 mm}')

    assert (found.bolting.hollow, found.bolting.solid) == (True, None)
    assert found.bolting.tightening is not None
    # Stress area 88.1 mm2 (ISO 898-1) less 28.3 mm2; 0.75 x 580 MPa; nut factor 0.20.
    assert found.bolting.tightening.torque == pytest.approx(62.4, abs=0.2)


def test_plugs_and_sensors_have_the_torque_of_their_thread(states: States) -> None:
    state = states(
        """
        got:
          - {part: plugs, kind: spark plugs, came: given, facts: {thread: M14x1.25}}
          - {part: others, kind: spark plugs, came: given, facts: {thread: M16x1.5}}
          - {part: wideband, kind: lambda sensor, came: given, name: "Wideband sensor, M18x1.5"}
          - {part: silent, kind: lambda sensor, came: given}
        """
    )[-1]

    found = screwed_in(state)

    assert [(each.part, each.thread) for each in found] == [
        ("plugs", "M14x1.25"),
        ("wideband", "M18x1.5"),
    ]
    # Tables of two makers each, from memory; both metals, as none is said, the softer first.
    assert found[0].made.how.startswith("aluminium 20 to 30 N m (sources conflict, 25 to 30 and")
    assert found[1].made.how == (
        "steel 35 to 60 N m (sources conflict, 40 to 60 and 35 to 45: begin with the lower); the "
        "paste that comes on its thread, none on its tip"
    )
