"""The charge cooler in the figures: by its core's size, by a point, by one number."""

import ht
import numpy as np
import pytest

from hoistbook.figures.chain import SWEEPS, work_out
from hoistbook.figures.figure import Figure
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from tests.figures.states import TURBO_PARTS, boosted, fitted, given, quantity

CORE = {
    "core width": given(550, "mm"),
    "core height": given(180, "mm"),
    "core depth": given(65, "mm"),
}
POINT = {"effectiveness": given(68, "%", half_width=0.08, at=quantity(120, "g/s"))}


def cooled(facts, boost=0.8):
    return boosted(boost, parts=TURBO_PARTS | {"cooler": fitted("cooler", "charge cooler", facts)})


@pytest.mark.parametrize("facts", [CORE, POINT])
def test_the_charge_leaves_as_cold_as_effectiveness_and_transfer_units_have_it(facts):
    # The approximate closed form of the library ht 1.2.0, both fluids unmixed.
    values = work_out(inputs_of(cooled(facts)), SWEEPS + 8, sampled=False).values
    at = -1
    charge, cooling, conductance = (
        float(values[name][min(at, len(values[name]) - 1), 0])
        for name in ("charge_capacity_rate", "cooling_capacity_rate", "heat_conductance")
    )
    least, most = sorted((charge, cooling))
    expected = ht.effectiveness_from_NTU(
        conductance / least, least / most, subtype="crossflow approximate"
    )
    assert values["cooler_effectiveness"][at, 0] == pytest.approx(expected, rel=1e-6)
    hot, cold = values["compressor_outlet_temperature"][at, 0], values["air_temperature"][0, 0]
    left = hot - expected * least / charge * (hot - cold)
    assert values["charge_temperature"][at, 0] == pytest.approx(left, rel=1e-6)


def test_at_the_flow_of_a_stated_point_the_effectiveness_is_the_stated_one():
    worked = work_out(inputs_of(cooled(POINT)))
    flows = worked.values["engine_air_flow"][:, 0]
    read = np.interp(0.120, flows, worked.values["cooler_effectiveness"][:, 0])
    assert read == pytest.approx(0.68, abs=0.002)
    ends = np.quantile(
        worked.values["cooler_effectiveness"][np.argmin(abs(flows - 0.12))], (0.025, 0.975)
    )
    # As stated 60 to 76 %, and a little wider for the cooling air.
    assert 0.55 < ends[0] < 0.62
    assert 0.72 < ends[1] < 0.80


def test_a_core_s_size_alone_makes_it_as_effective_as_such_cores_are():
    figures = {each.key.quantity: each for each in estimates(inputs_of(cooled(CORE)))}
    effectiveness = figures["cooler_effectiveness"]
    assert isinstance(effectiveness, Figure)
    # 0.60 to 0.80 in motion (common practice, no source), and the band holds both.
    assert 0.6 < effectiveness.value < 0.8
    assert effectiveness.low < 0.60
    assert effectiveness.high > 0.74


def test_the_more_air_the_less_effective_and_the_greater_the_core_the_more():
    usual, more = (work_out(inputs_of(cooled(CORE, boost)), sampled=False) for boost in (0.5, 1.0))
    greater = work_out(inputs_of(cooled(CORE | {"core height": given(250, "mm")})), sampled=False)
    small, same, large = (
        each.values["cooler_effectiveness"][-1, 0] for each in (more, usual, greater)
    )
    assert small < same < large


def test_sweeps_are_enough_with_a_core_too():
    inputs = inputs_of(cooled(CORE | {"pressure loss": given(6, "kPa", at=quantity(100, "g/s"))}))
    usual, more = work_out(inputs), work_out(inputs, SWEEPS + 1)
    for name in usual.steps:
        assert np.allclose(more.values[name], usual.values[name], rtol=1e-3, atol=0), name
        assert np.allclose(more.values[name][:, 0], usual.values[name][:, 0], rtol=3e-5), name


@pytest.mark.parametrize(
    ("facts", "wanted"),
    [
        (
            {"effectiveness": given(130, "%", at=quantity(120, "g/s"))},
            "a number up to 100 % for effectiveness of Cooler",
        ),
        (
            CORE | {"core height": given(0, "mm")},
            "a number above zero for core height of Cooler",
        ),
    ],
)
def test_a_slip_gives_no_charge_temperature(facts, wanted):
    figures = {each.key.quantity: each for each in estimates(inputs_of(cooled(facts)))}
    assert wanted in figures["charge_temperature"].give


def test_one_number_without_a_flow_stays_one_number():
    values = work_out(inputs_of(cooled({"effectiveness": given(0.7)})), sampled=False).values
    assert values["cooler_effectiveness"].tolist() == [[0.7]]
    assert "transfer_units" not in values


def test_a_ratio_with_the_cooler_s_loss_alone_says_that_the_pipes_are_not_in_it():
    # 6 kPa in a cooler and 3 in its pipes are common practice, no source: 0.03 at a ratio of 2.
    def notes(loss):
        cooler = fitted("cooler", "charge cooler", {"pressure loss": loss})
        found = estimates(inputs_of(boosted(parts=TURBO_PARTS | {"cooler": cooler})))
        return next(each for each in found if each.key.quantity == "pressure_ratio").notes

    at_a_flow, at_none = given(6, "kPa", at=quantity(120, "g/s")), given(6, "kPa")
    assert [
        any("what the pipes lose" in note for note in notes(loss)) for loss in (at_a_flow, at_none)
    ] == [True, False]
