"""What drives the compressor, and what that costs the engine."""

from __future__ import annotations

from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from tests.figures.states import TURBO_PARTS, boosted, fitted


def blown(*kinds):
    parts = {key: part for key, part in TURBO_PARTS.items() if key != "turbo"}
    return boosted(parts=parts | {kind: fitted(kind, kind) for kind in kinds})


def powers(state):
    return {each.key.quantity: each for each in estimates(inputs_of(state))}


def test_what_a_supercharger_takes_comes_from_the_crank():
    driven, turbine = powers(blown("supercharger")), powers(blown("turbocharger"))
    share = driven["compressor_power"].value / 0.95 / driven["power"].value
    # 10 to 20 % of the engine's power at such a boost (common practice, no source).
    assert 0.10 < share < 0.20
    assert driven["power"].value < turbine["power"].value


def test_two_chargers_say_what_is_not_in_the_figure():
    assert powers(blown("supercharger", "turbocharger"))["power"].notes[1] == (
        "A turbocharger and a supercharger together are reckoned as the turbocharger alone: what "
        "the supercharger takes from the crank is not in it. Take the figure as a rough one."
    )
