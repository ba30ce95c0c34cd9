"""The whole chain against a cycle simulation: an engine that is run without boost, then boosted.

`plain_runs.csv` holds, for each boosted case at best torque of the simulation's own table, the
same engine at the same speed without boost: 95 kPa and 310 K in the manifold, exhaust pressure
1.1 times that of the air, simulated by `tests/engineering/cycle/simulation.py`. The simulation
(its header says after what) is no measurement: it shows that what is learnt without boost may be
carried to boost, not that either is true.
"""

import csv
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import MappingProxyType

import numpy as np
import pytest

from hoistbook.authored.records import PowerRun
from hoistbook.engineering import FORMULAS
from hoistbook.figures import finding
from hoistbook.figures.base import Base
from hoistbook.figures.chain import work_out
from hoistbook.figures.defaults import DEFAULTS, Default
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import at_the_run, known_runs
from hoistbook.figures.learning import calibrated
from hoistbook.history.state import Dated
from hoistbook.values.evidence import Evidence
from tests.engineering.cycle.simulation import Point, simulate
from tests.figures.runs import journal, log
from tests.figures.states import PARTS, PLACE, fitted, given, state

HERE = Path(__file__).parent
CASES = HERE.parent / "engineering" / "cycle" / "cases.csv"
AIR, WARM = 100e3, 310.0
FUELS = {"petrol": "petrol", "E10": "ethanol blend 10 %", "E85_70": "ethanol blend 70 %"}
OF_SIMULATION = {
    # Friction after Barnes and Moss as it stands, and the back-pressure of the plain runs.
    "friction_scale": Default(1.0, 0.01, "as simulated"),
    "exhaust_pressure_ratio, unboosted": Default(1.1, 0.001, "as simulated"),
}


def table(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@cache
def pairs():
    """Return each boosted case at best torque with the plain run of the same engine."""
    plain = {row["case"]: row for row in table(HERE / "plain_runs.csv")}
    return [
        ({key: value if key == "fuel" else float(value) for key, value in case.items()},
         {key: float(value) for key, value in plain[case["case"]].items()})
        for case in table(CASES)
        if case["case"] in plain and float(case["ignition_retard_deg"]) == 0
    ]  # fmt: skip


def friction(speed):
    return FORMULAS["friction_mean_effective_pressure"](engine_speed=speed)


def engine(case, **more):
    return state(
        car={
            "engine displacement": given(case["displacement_L"] * 1e3, "cc", half_width=1e-9),
            "engine compression ratio": given(case["compression_ratio"]),
        },
        settings={
            "fuel": given(FUELS[case["fuel"]]),
            "mixture": given(case["lambda_ratio"]),
            "ignition retard": given(case["ignition_retard_deg"], "deg", half_width=1e-4),
            "rev limit": given(7500, "rpm"),
            "air pressure": given(AIR, "Pa", half_width=10),
            "air temperature": given(300, "K", half_width=0.1),
            "air humidity": given(0, "%", half_width=0),
        }
        | more.pop("settings", {}),
        **more,
    )


def plain_run(case, plain):
    """Return the plain engine with a run whose log is what the simulation gives."""
    speed = round(case["engine_speed_per_min"], -2)
    gross = plain["gross_mean_pressure_bar"] - plain["pumping_mean_pressure_bar"]
    pressure = gross * 1e5 - friction(speed)
    run = PowerRun(log="run.csv", at="crank", power_standard="none", place=PLACE)
    columns = {
        "speed": [speed],
        "torque": [pressure * case["displacement_L"] * 1e-3 / (4 * np.pi)],
        "boost": [95e3 - AIR],
        "charge_temperature": [WARM],
    }
    car = engine(case, episode=2, runs=[Dated(value=run, episode=2)])
    (known,) = known_runs(journal(log(**columns)), (car,))
    return known


def boosted_engine(case):
    """Return the engine of a case with its turbocharger."""
    turbo = fitted(
        "turbo",
        "turbocharger",
        {"exhaust pressure ratio": given(case["exhaust_pressure_ratio"])},
    )
    parts = {"turbo": turbo, "plenum": PARTS["plenum"]}
    boost = given(case["manifold_absolute_pressure_kPa"] * 1e3 - AIR, "Pa", reference="gauge")
    return engine(case, episode=4, settings={"boost": boost}, parts=parts)


def boosted_inputs(case):
    """Return the inputs of a boosted case, its charge temperature given."""
    charge = Base(
        name="charge_temperature",
        value=case["charge_temperature_K"],
        half_width=1.0,
        evidence=Evidence.MEASURED,
        origin="as simulated",
    )
    own = inputs_of(boosted_engine(case), at=(round(case["engine_speed_per_min"], -2),))
    return replace(own, bases=(*own.bases, charge))


def central(inputs):
    worked = work_out(inputs, sampled=False)
    return {name: float(values[-1, 0]) for name, values in worked.values.items()}


def brake(values, share_of_air=1.0):
    """Return the chain's brake mean effective pressure [bar], with another share of its air."""
    friction_and_pumping = (
        values["friction_mean_effective_pressure"] + values["pumping_mean_effective_pressure"]
    )
    gross = values["brake_mean_effective_pressure"] + friction_and_pumping
    return (gross * share_of_air - friction_and_pumping) / 1e5


@pytest.fixture(scope="module")
def errors():
    """Return relative errors of brake mean pressure: learnt, untaught, by brake efficiency."""
    found = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(finding, "DEFAULTS", MappingProxyType({**DEFAULTS, **OF_SIMULATION}))
        for case, plain in pairs():
            known = plain_run(case, plain)
            run = central(calibrated(at_the_run(known), known.state, [known]))
            boosted = calibrated(boosted_inputs(case), boosted_engine(case), [known])
            values = central(boosted)
            # The simulation is not about filling: its trapped air is given to every model.
            air = case["trapped_air_mg"] / plain["trapped_air_mg"]
            share = air / (values["engine_air_flow"] / run["engine_air_flow"])
            truth = case["brake_mean_pressure_bar"]
            found.append((brake(values, share) / truth - 1, brake(run) * air / truth - 1))
    return np.array(found)


def test_there_are_enough_cases_for_a_verdict(errors):
    assert len(errors) == 34


def test_what_is_learnt_without_boost_holds_with_boost(errors):
    # The simulation's own bands for a model of this kind: mean 2 %, none beyond 5 %.
    assert abs(errors[:, 0].mean()) < 0.02
    assert np.abs(errors[:, 0]).max() < 0.05


def test_a_constant_brake_efficiency_would_fail_the_same_bands(errors):
    assert errors[:, 1].mean() < -0.05
    assert np.abs(errors[:, 1]).max() > 0.15


@pytest.mark.parametrize("number", [0, 20])
def test_the_plain_runs_are_still_what_the_simulation_gives(number):
    case, plain = pairs()[number]
    outcome = simulate(
        Point(
            compression_ratio=case["compression_ratio"],
            manifold_pressure=95e3,
            charge_temperature=WARM,
            lambda_ratio=case["lambda_ratio"],
            speed=case["engine_speed_per_min"],
            displacement=case["displacement_L"] * 1e-3,
            exhaust_ratio=1.1,
            fuel=case["fuel"],
        )
    )
    assert outcome.trapped_air * 1e6 == pytest.approx(plain["trapped_air_mg"], rel=0.005)
    assert outcome.gross_mean_pressure / 1e5 == pytest.approx(
        plain["gross_mean_pressure_bar"], rel=0.005
    )


BASE = {
    "compression_ratio": 9.5,
    "manifold_absolute_pressure_kPa": 200.0,
    "charge_temperature_K": 325.0,
    "lambda_ratio": 0.88,
    "fuel": "petrol",
    "engine_speed_per_min": 5000.0,
    "displacement_L": 0.5,
    "exhaust_pressure_ratio": 1.3,
    "ignition_retard_deg": 0.0,
}


@cache
def simulated(**changed):
    """Return brake mean pressure [bar] and trapped air [kg] around a boosted point."""
    case = BASE | changed
    outcome = simulate(
        Point(
            compression_ratio=case["compression_ratio"],
            manifold_pressure=case["manifold_absolute_pressure_kPa"] * 1e3,
            charge_temperature=case["charge_temperature_K"],
            lambda_ratio=case["lambda_ratio"],
            speed=case["engine_speed_per_min"],
            displacement=case["displacement_L"] * 1e-3,
            exhaust_ratio=case["exhaust_pressure_ratio"],
            fuel=case["fuel"],
            retard=case["ignition_retard_deg"],
        )
    )
    losses = outcome.pumping_mean_pressure + friction(case["engine_speed_per_min"])
    return (outcome.gross_mean_pressure - losses) / 1e5, outcome.trapped_air


@pytest.mark.parametrize(
    ("changed", "tolerance"),
    [
        # Common practice, no source: a trend is right that is so within 1.5 % of power. Of fuel
        # and speed the simulation itself finds 2 to 4 % more efficiency, which a mean-value model
        # leaves out.
        ({"lambda_ratio": 0.80}, 0.015),
        ({"ignition_retard_deg": 10.0}, 0.015),
        ({"compression_ratio": 10.5}, 0.015),
        ({"exhaust_pressure_ratio": 1.5}, 0.015),
        ({"charge_temperature_K": 350.0}, 0.015),
        ({"manifold_absolute_pressure_kPa": 150.0}, 0.015),
        ({"fuel": "E85_70"}, 0.03),
        ({"engine_speed_per_min": 3000.0}, 0.05),
    ],
)
def test_one_change_at_a_time_moves_the_chain_as_the_simulation(monkeypatch, changed, tolerance):
    monkeypatch.setattr(finding, "DEFAULTS", MappingProxyType({**DEFAULTS, **OF_SIMULATION}))
    (base, air), (after, more_air) = simulated(), simulated(**changed)
    ours, theirs = chain_at(BASE), chain_at(BASE | changed)
    # Filling at equal trapped air: what a cycle takes, not what flows by in a second.
    per_cycle = (
        theirs["engine_air_flow"]
        / ours["engine_air_flow"]
        * (BASE["engine_speed_per_min"] / (BASE | changed)["engine_speed_per_min"])
    )
    ratio = brake(theirs, more_air / air / per_cycle) / brake(ours)
    assert ratio == pytest.approx(after / base, abs=tolerance)
    assert abs(after / base - 1) > 0.01 or tolerance > 0.02


def chain_at(case):
    return central(boosted_inputs(case))
