"""Power runs as the figures learn from them: what was read at which engine speed, and of what."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from hoistbook.authored.records import Journal, Log, PowerRun
from hoistbook.engineering.injectors import injector_cycle_time
from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.boost_slips import boost_slip
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.finding import FLOORS, impossible
from hoistbook.figures.inputs import FULL_LOAD_FROM, inputs_of
from hoistbook.figures.power_runs import (
    Binned,
    binned,
    measured_power,
    measured_torque,
    place_of,
    pulling,
    scaled,
)
from hoistbook.figures.referred import Referred, air_bases, referred
from hoistbook.figures.spreads import spread
from hoistbook.history.state import Dated, State
from hoistbook.values.evidence import Evidence
from hoistbook.values.slip import Slip

AIR = ("air_pressure", "air_temperature", "relative_humidity")
"""Inputs that are of one day only."""

LOGGED = {
    "boost": "boost",
    "lambda": "lambda_ratio",
    "charge temperature": "charge_temperature",
}
"""Column of a log -> the input that it replaces."""

ENOUGH = 3
"""Engine speeds that are enough for a comparison."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class KnownRun:
    """A power run with what its log holds by engine speed, and the state that it measured."""

    episode: int
    run: PowerRun
    state: State
    power: Binned
    """Power as observed [W], where it was measured."""
    torque: Binned
    """Torque as observed there [N m]."""
    stated: Binned
    """Power as the log has it [W]."""
    referred: Referred
    """What its power standards have to do with it."""
    inputs: Mapping[str, Binned]
    """Inputs of the chain that were logged, by glossary key; SI."""
    results: Mapping[str, Binned]
    """Results of the chain that were logged, by glossary key; SI. Power is one of them."""
    boost_slip: Slip | None = None
    """Why the boost of the log is left out, where it cannot be what its column says."""
    held_back: tuple[float, ...] = ()
    """Engine speeds at which the throttle was not open [1/min]: of full load they tell nothing."""

    @property
    def name(self) -> str:
        """Return how sentences name it."""
        return f"the run of episode {self.episode}"

    @property
    def day(self) -> str:
        """Return what sets its samples apart from those of other days."""
        return f" of {self.run.log}"


def known_runs(journal: Journal, states: Sequence[State]) -> tuple[KnownRun | None, ...]:
    """Return every run of the last state, None in the place of one whose log gives no power."""
    by_episode = {state.episode: state for state in states}
    runs = states[-1].runs if states else ()
    return tuple(_known(dated, journal, by_episode) for dated in runs)


def up_to(runs: Sequence[KnownRun | None], state: State) -> tuple[KnownRun, ...]:
    """Return the runs that a state has seen, oldest first: what came later tells it nothing."""
    return tuple(run for run in runs[: len(state.runs)] if run is not None)


def _known(
    dated: Dated[PowerRun], journal: Journal, by_episode: Mapping[int, State]
) -> KnownRun | None:
    written = journal.logs.get(dated.value.log)
    log = pulling(written) if written is not None else None
    state = state_of(dated, by_episode)
    power = measured_power(log) if log is not None else {}
    if log is None or state is None or not power:
        return None
    quantity = "power" if place_of(dated.value) == "crank" else "wheel_power"
    own = inputs_of(state)
    boosted = "boosted" in own.conditions
    standards = referred(dated.value, state, journal.power_standard, boosted=boosted)
    stated, torque = power, measured_torque(log)
    power, torque = (scaled(each, 1 / standards.taken_out) for each in (power, torque))
    bases = {base.key: base for base in own.bases} | air_bases(dated.value)
    logged = _logged_inputs(log, bases)
    slip = _slip_of(logged, log, bases)
    if slip is not None:
        del logged["boost"]
    inputs, held_back = _at_full_load(logged)
    return KnownRun(
        episode=dated.episode,
        run=dated.value,
        state=state,
        power=power,
        torque=torque,
        stated=stated,
        referred=standards,
        inputs=inputs,
        results={quantity: power} | _logged_results(log),
        boost_slip=slip,
        held_back=held_back,
    )


def state_of(run: Dated[PowerRun], by_episode: Mapping[int, State]) -> State | None:
    """Return the state that a run measured: that of its episode, or of the one before."""
    if not run.value.before_work:
        return by_episode.get(run.episode)
    earlier = [number for number in by_episode if number < run.episode]
    return by_episode[max(earlier)] if earlier else None


def _logged_inputs(log: Log, bases: Mapping[str, Base]) -> dict[str, Binned]:
    """Return the logged inputs; an absolute manifold pressure is boost over the air of the run.

    What cannot be, as a boost of 80 bar or a lambda of 3, is a slip of units or a dead sensor: no
    number is worked out from it, and reading the log has said so.
    """
    found = {name: binned(log, column) for column, name in LOGGED.items()}
    absolute = binned(log, "manifold pressure")
    air = bases.get("air_pressure")
    if absolute and air and not found["boost"]:
        pressure = float(np.max(air.value))
        found["boost"] = {speed: value - pressure for speed, value in absolute.items()}
    possible = {
        name: {speed: value for speed, value in values.items() if not impossible(name, value)}
        for name, values in found.items()
    }
    return {name: values for name, values in possible.items() if values}


def _slip_of(logged: Mapping[str, Binned], log: Log, bases: Mapping[str, Base]) -> Slip | None:
    """Return why the boost of a log cannot be what its column says, by what was set."""
    if "boost" not in logged or not {"boost", "air_pressure"} <= bases.keys():
        return None
    asked, air = (float(np.max(bases[key].value)) for key in ("boost", "air_pressure"))
    absolute = not binned(log, "boost")
    return boost_slip(max(logged["boost"].values()), asked, air, absolute=absolute)


def _at_full_load(
    inputs: Mapping[str, Binned],
) -> tuple[Mapping[str, Binned], tuple[float, ...]]:
    """Return logged inputs without the boost of part load, and the engine speeds of that.

    Where a log has a boost, a speed that is left without one is none of the run's common speeds,
    so that the filling of part load is not learnt from.
    """
    boost = inputs.get("boost", {})
    held_back = tuple(speed for speed, value in boost.items() if value < FULL_LOAD_FROM)
    if not held_back:
        return inputs, ()
    kept = {speed: value for speed, value in boost.items() if speed not in held_back}
    return {**inputs, "boost": kept}, held_back


def _logged_results(log: Log) -> dict[str, Binned]:
    """Return what a log has of air and fuel; an injector's open time is a share of its cycle."""
    revolutions = DEFAULTS["revolutions_per_cycle"].value
    duty = binned(log, "injector duty") or {
        speed: open_time
        / injector_cycle_time(revolutions_per_cycle=revolutions, engine_speed=speed)
        for speed, open_time in binned(log, "injector time").items()
    }
    found = {"engine_air_flow": binned(log, "air mass flow"), "injector_duty": duty}
    return {name: values for name, values in found.items() if values}


def at_the_run(known: KnownRun, every: float = 0.0) -> Inputs:
    """Return the inputs as they were at a run.

    The air is the run's; boost, mixture and charge temperature are those of its log where it has
    them. The engine speeds are those at which the run and all of these are known, of which
    multiples of `every` are enough where there are three of them.
    """
    speeds = common_speeds(known, inputs_of(known.state))
    some = tuple(speed for speed in speeds if every and speed % every == 0)
    speeds = some if len(some) >= ENOUGH else speeds
    measured = air_bases(known.run) | {
        name: _logged(name, [curve[speed] for speed in speeds], known)
        for name, curve in known.inputs.items()
    }
    own = inputs_of(known.state, at=speeds)
    bases = [base for base in own.bases if base.key not in measured]
    return replace(own, speeds=speeds, bases=(*bases, *measured.values()))


def apart(inputs: Inputs, known: KnownRun, shared: Collection[str]) -> Inputs:
    """Return inputs of a run of which only the shared ones are drawn as in other states."""
    return replace(
        inputs,
        bases=tuple(
            base if base.key in shared else replace(base, of_day=known.day)
            for base in inputs.bases
        ),
    )


def common_speeds(known: KnownRun, inputs: Inputs) -> tuple[float, ...]:
    """Return the run's engine speeds at which boost and all that was logged are known."""
    boost_known = "boost" in known.inputs or "unboosted" in inputs.conditions
    if not boost_known and not inputs.speeds:
        return ()
    return tuple(
        speed
        for speed in known.power
        if all(speed in curve for curve in known.inputs.values())
        and (boost_known or inputs.speeds[0] <= speed <= inputs.speeds[-1])
    )


def _logged(name: str, values: list[float], known: KnownRun) -> Base:
    """Return an input as the run's log has it over engine speed."""
    return Base(
        name=name,
        value=tuple(values),
        half_width=spread(name, Evidence.MEASURED, max(values, default=0.0)),
        evidence=Evidence.MEASURED,
        origin=f"the log of {known.name}",
        episode=known.episode,
        place=known.run.place,
        of_day=known.day,
        floor=FLOORS.get(name, 0.0),
    )
