"""A compressor map in the figures: the line of the car on it, and the efficiency read from it."""

from dataclasses import replace

import numpy as np
import pytest

from hoistbook.authored.map_points import CompressorMap
from hoistbook.figures import map_inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Figure
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.map_inputs import on_map, with_map
from hoistbook.figures.stage import estimates
from hoistbook.history.state import Status
from hoistbook.values.evidence import Evidence
from tests.figures.states import PLACE, TURBO_PARTS, boosted, fitted, quantity

# Invented: a plane, so that what is read between the points is known beforehand.
FLOWS = (0.05, 0.05, 0.13, 0.13)
RATIOS = (1.5, 2.5, 1.5, 2.5)


def plane(flow: float, ratio: float) -> float:
    return 0.5 + 1.2 * flow + 0.04 * ratio


MAP = CompressorMap(
    file="episodes/03-turbo/map.csv",
    place=PLACE,
    reference_pressure=quantity(100, "kPa"),
    reference_temperature=quantity(25, "degC"),
    flow=FLOWS,
    pressure_ratio=RATIOS,
    efficiency=tuple(map(plane, FLOWS, RATIOS)),
)


def mapped(known=MAP, **more):
    turbo = TURBO_PARTS["turbo"]
    part = replace(turbo.part, compressor_map=known)
    return boosted(parts=TURBO_PARTS | {"turbo": replace(turbo, part=part, **more)})


def efficiency(inputs):
    return next(base for base in inputs.bases if base.name == "compressor_efficiency")


def test_within_the_points_the_efficiency_is_that_of_the_map_and_beyond_them_the_given_one():
    car = mapped()
    inputs = with_map(inputs_of(car), car)
    line = on_map(inputs, MAP)
    assert {each.place for each in line} == {"within", "right"}
    for each, value in zip(line, efficiency(inputs).value, strict=True):
        read = plane(each.flow, each.ratio) if each.place == "within" else 0.70
        assert value == pytest.approx(read, abs=1e-6)
    base = efficiency(inputs)
    assert base.evidence is Evidence.STATED
    assert base.half_width == 0.04
    assert base.origin == (
        "compressor map of Turbo, between its points; outside of them, compressor efficiency of "
        "Turbo"
    )


def test_once_more_changes_nothing(monkeypatch):
    car = mapped()
    three = efficiency(with_map(inputs_of(car), car)).value
    monkeypatch.setattr(map_inputs, "TURNS", 6)
    assert efficiency(with_map(inputs_of(car), car)).value == pytest.approx(three, abs=1e-5)


def test_the_line_is_that_of_the_figures_and_is_referred_to_the_air_of_the_map():
    car = mapped()
    inputs = with_map(inputs_of(car), car)
    figures = {each.key.quantity: each for each in estimates(inputs) if isinstance(each, Figure)}
    values = work_out(inputs, sampled=False).values
    flow, temperature, pressure = (
        values[name][:, 0]
        for name in ("engine_air_flow", "intake_temperature", "compressor_inlet_pressure")
    )
    # Corrected flow as SAE J1826 has it (from memory), the map at 100 kPa and 25 degC.
    wanted = flow * np.sqrt(temperature / 298.15) / (pressure / 100e3)
    assert figures["corrected_flow"].curve.values == pytest.approx(wanted.tolist())
    assert [each.flow for each in on_map(inputs, MAP)] == pytest.approx(wanted.tolist())


def test_where_the_line_leaves_the_points_is_said_and_nothing_else_of_what_lies_there():
    car = mapped()
    figures = estimates(with_map(inputs_of(car), car))
    (flow,) = (each for each in figures if each.key.quantity == "corrected_flow")
    assert flow.notes == (
        "From 3,150 to 4,600 rpm the line of this car lies within the map's points, and the "
        "efficiency is read between them.",
        "From 4,700 to 6,300 rpm it lies right of the outermost points given: outside the map's "
        "points, and nothing is read there.",
    )


def test_a_map_that_the_car_never_meets_leaves_the_efficiency_as_it_was():
    car = mapped(replace(MAP, flow=tuple(10 * each for each in FLOWS)))
    inputs = with_map(inputs_of(car), car)
    assert efficiency(inputs) == efficiency(inputs_of(car))
    assert inputs.notes[-1] == (
        "corrected_flow",
        "From 3,150 to 6,300 rpm it lies left of the outermost points given: outside the map's "
        "points, and nothing is read there.",
    )


def test_without_a_map_there_is_no_corrected_flow_and_not_a_word_of_what_a_map_shows():
    car = boosted()
    assert with_map(inputs_of(car), car) == inputs_of(car)
    figures = estimates(inputs_of(car))
    assert "corrected_flow" not in {each.key.quantity for each in figures}
    said = " ".join(note for each in figures if isinstance(each, Figure) for note in each.notes)
    assert "surge" not in said
    assert "chok" not in said


def test_the_map_of_a_turbocharger_that_is_not_on_the_car_is_not_read():
    car = mapped(status=Status.ON_HAND)
    assert with_map(inputs_of(car), car) == inputs_of(car)


def test_the_map_of_one_compressor_is_not_read_for_two():
    one = mapped()
    turbo = one.parts["turbo"]
    twin = replace(turbo, part=replace(turbo.part, count=2))
    pair = boosted(parts=one.parts | {"turbo": twin})
    behind = boosted(parts=one.parts | {"blower": fitted("blower", "supercharger")})
    for car in (pair, behind):
        found = {each.key.quantity: each for each in estimates(with_map(inputs_of(car), car))}
        assert "corrected_flow" not in found
        assert found["compressor_outlet_temperature"].notes == (
            "2 compressors are on the car. A map is of one: how they share the air or the "
            "pressure is not known here, and so no map is read.",
        )
    found = {each.key.quantity: each for each in estimates(with_map(inputs_of(one), one))}
    assert found["compressor_outlet_temperature"].notes == ()
