"""From a state to the base inputs of its figures, topic by topic, in the order of the chain."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.figures.air_inputs import put_down_air
from hoistbook.figures.base import Base, Inputs
from hoistbook.figures.bench_inputs import put_down_bench
from hoistbook.figures.cooler_inputs import put_down_cooler
from hoistbook.figures.defaults import FILLING
from hoistbook.figures.finding import GIVE, Finder, impossible, impossible_boost, number
from hoistbook.figures.fuel_inputs import put_down_fuel, put_down_injectors, put_down_pump
from hoistbook.figures.map_inputs import put_down_map_air
from hoistbook.figures.oil_inputs import put_down_oil
from hoistbook.figures.pipe_inputs import put_down_pipes, put_down_throats
from hoistbook.figures.road_inputs import put_down_cylinders, put_down_road, ratio_by_dimensions
from hoistbook.figures.spreads import spread
from hoistbook.figures.stretches import between
from hoistbook.history.state import Dated, PartState, State
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

SPEED_STEP = 100.0
LOWEST_SPEED, HIGHEST_SPEED = 1_000.0, 25_000.0
"""Figures are drawn at every full hundred from the lowest to the rev limit, 1/min; a limit beyond
the highest is a slip of the pen (common practice, no source)."""
SINGLE_BOOST_FROM = 0.5
"""A boost given as one pressure is drawn from this share of the rev limit up: below it nobody has
said that the pressure is reached (common practice, no source)."""

ONE_BOOST = (
    "One boost pressure is given for all engine speeds. It is drawn from half the rev limit up; "
    "below that nobody has said that it is reached."
)
FULL_LOAD_FROM = -10e3
"""Boost below which the throttle holds an engine back, gauge [Pa]: a filter and an open throttle
take less (common practice, no source)."""
HELD_BACK = (
    "Nothing is drawn {at}: the boost given there is more than 0.1 bar below nothing, so the "
    "throttle is not open, and the filling of full load must not be carried to part load."
)
TWO_CHARGERS = (
    "A turbocharger and a supercharger together are reckoned as the turbocharger alone: what the "
    "supercharger takes from the crank is not in it. Take the figure as a rough one."
)


def inputs_of(state: State, at: tuple[float, ...] = ()) -> Inputs:
    """Return what the figures of a state start from.

    Parameters
    ----------
    state
        The build as at one episode.
    at
        Engine speeds to draw the figures over, 1/min; without them all that the state gives.
    """
    finder = Finder(state)
    put_down_air(finder)
    speeds = _boost(finder, at)
    _engine(finder, speeds)
    _drive(finder)
    _charge_path(finder)
    put_down_fuel(finder)
    put_down_injectors(finder)
    put_down_pump(finder)
    _mass(finder)
    subjects = (
        *put_down_pipes(finder),
        *put_down_throats(finder),
        *put_down_oil(finder),
        *put_down_road(finder),
        *put_down_bench(finder),
    )
    return Inputs(
        speeds=speeds,
        bases=tuple(finder.bases.values()),
        conditions=frozenset(finder.conditions),
        subjects=subjects,
        missing=tuple(finder.missing.items()),
        notes=tuple(finder.notes),
    )


def _boost(finder: Finder, at: tuple[float, ...]) -> tuple[float, ...]:
    """Put down the boost; return the engine speeds that figures may be drawn over."""
    dated = finder.state.settings.get("boost")
    if dated is not None and isinstance(dated.value, BoostBySpeed):
        finder.conditions.add("boosted")
        return _boost_by_speed(finder, dated.value, dated.episode, at)
    given = finder.setting("boost")
    pressure = given.value.value if given else None
    highest = finder.above_air(pressure) if isinstance(pressure, Quantity) else 0.0
    if given is not None and highest:
        finder.conditions.add("boosted")
        if wanted := impossible_boost(highest):
            finder.lacks("boost", f"{wanted} for settings: boost")
        else:
            finder.take("boost", given, "settings: boost")
        finder.notes.append(("manifold_absolute_pressure", ONE_BOOST))
        return at or _speeds(finder, SINGLE_BOOST_FROM)
    if given is not None or not _charger(finder):
        finder.conditions.add("unboosted")
        finder.assume("boost", "unboosted")
    else:
        finder.conditions.add("boosted")
        finder.lacks("boost", GIVE["boost"])
    return at or _speeds(finder, 0.0)


def _charger(finder: Finder) -> PartState | None:
    return finder.one("turbocharger") or finder.one("supercharger")


def _boost_by_speed(
    finder: Finder, boost: BoostBySpeed, episode: int, at: tuple[float, ...]
) -> tuple[float, ...]:
    """Put down a boost list: straight lines between its speeds, nothing beyond them."""
    if not 0 < boost.speeds[0] <= boost.speeds[-1] <= HIGHEST_SPEED:
        finder.lacks("boost", GIVE["possible speed"].format("boost at an engine speed"))
        finder.lacks("engine_speed", GIVE["possible speed"].format("boost at an engine speed"))
        return ()
    pressures = [each.value for each in boost.pressures]
    own = np.array(grid(boost.speeds[0], boost.speeds[-1]))
    held = np.interp(own, boost.speeds, pressures) < FULL_LOAD_FROM
    speeds = at or tuple(own[~held].tolist())
    each_wanted = (impossible("boost", each) for each in pressures)
    wanted = next(filter(None, each_wanted), "") or impossible_boost(max(0.0, *pressures))
    if wanted or not speeds:
        give = f"{wanted} for settings: boost, by engine speed" if wanted else GIVE["full load"]
        finder.lacks("boost", give)
        return speeds
    stated = [each.half_width for each in boost.pressures if each.half_width is not None]
    values = np.interp(speeds, boost.speeds, pressures)
    finder.keep(
        Base(
            name="boost",
            value=tuple(values.tolist()),
            half_width=max(stated, default=spread("boost", boost.evidence, max(pressures))),
            evidence=boost.evidence,
            origin="settings: boost, by engine speed",
            episode=episode,
            place=boost.place,
            floor=-np.inf,
        )
    )
    manifold = "manifold_absolute_pressure"
    drawn = f"Boost is given from {boost.speeds[0]:,.0f} to {boost.speeds[-1]:,.0f} rpm; nothing "
    finder.notes.append((manifold, f"{drawn}is drawn beyond."))
    if held.any():
        at_which = between(np.flatnonzero(held), own.tolist())
        finder.notes.append((manifold, HELD_BACK.format(at=at_which)))
    return speeds


def _speeds(finder: Finder, share: float) -> tuple[float, ...]:
    """Return the engine speeds up to the rev limit; none when it is not known."""
    dated = finder.setting("rev limit")
    if dated is None or not isinstance(dated.value.value, Quantity):
        finder.lacks("engine_speed", GIVE["engine_speed"])
        return ()
    limit = dated.value.value.value
    if not LOWEST_SPEED < limit <= HIGHEST_SPEED:
        finder.lacks("engine_speed", GIVE["possible speed"].format("rev limit"))
        return ()
    return grid(max(LOWEST_SPEED, share * limit), limit)


def grid(lowest: float, highest: float) -> tuple[float, ...]:
    """Return the full hundreds between two engine speeds, and the two themselves, 1/min."""
    first = np.ceil(lowest / SPEED_STEP) * SPEED_STEP
    hundreds = np.arange(first, highest, SPEED_STEP)
    every = np.unique(np.concatenate([[lowest], hundreds, [highest]]))
    return tuple(float(each) for each in every)


def _engine(finder: Finder, speeds: tuple[float, ...]) -> None:
    put_down_cylinders(finder)
    if not finder.from_car("displacement", "engine displacement"):
        finder.lacks("displacement", GIVE["displacement"])
    if not finder.from_car("compression_ratio", "engine compression ratio"):
        if ratio_by_dimensions(finder):
            finder.conditions.add("ratio by dimensions")
        else:
            finder.lacks("compression_ratio", GIVE["compression_ratio"])
    if not finder.from_car("volumetric_efficiency", "engine volumetric efficiency"):
        _common_filling(finder, speeds)
    efficiency = "reference_indicated_efficiency"
    if not finder.from_car(efficiency, "engine gross indicated efficiency"):
        finder.assume(efficiency)
    for name in ("revolutions_per_cycle", "friction_scale", "drivetrain_loss"):
        finder.assume(name)
    finder.assume("intake_heating", finder.charging)
    if not finder.from_settings("ignition_retard", "ignition retard"):
        finder.assume("ignition_retard", finder.charging)
    turbo = finder.one("turbocharger")
    if not finder.from_part("exhaust_pressure_ratio", turbo, "exhaust pressure ratio"):
        finder.assume("exhaust_pressure_ratio", "driven" if _driven(finder) else finder.charging)


def _drive(finder: Finder) -> None:
    """Say what drives the compressor; an engine without one loses nothing to it."""
    finder.conditions.add("driven" if _driven(finder) else "undriven")
    if _driven(finder):
        finder.assume("drive_efficiency")
    elif finder.fitted("supercharger") and finder.fitted("turbocharger"):
        finder.notes.extend((quantity, TWO_CHARGERS) for quantity in ("power", "torque"))


def _driven(finder: Finder) -> bool:
    """Return whether the crank drives the compressor that gives the boost."""
    turbo, boosted = finder.one("turbocharger"), finder.charging == "boosted"
    return boosted and turbo is None and finder.one("supercharger") is not None


def _common_filling(finder: Finder, speeds: tuple[float, ...]) -> None:
    """Put down the filling of an engine whose own is not known, over engine speed."""
    finder.assume("volumetric_efficiency")
    if not speeds:
        return
    best = finder.bases["volumetric_efficiency"]
    limit = finder.setting("rev limit")
    highest = number(limit.value) if limit else None
    shares, filling = zip(*FILLING, strict=True)
    relative = np.interp(np.array(speeds) / (highest or speeds[-1]), shares, filling)
    values = tuple(float(each) for each in np.asarray(best.value) * relative)
    finder.keep(replace(best, value=values))


def _charge_path(finder: Finder) -> None:
    if finder.charging == "unboosted":
        return
    if not finder.from_part("inlet_loss", finder.one("air filter"), "pressure loss"):
        finder.assume("inlet_loss")
    if not finder.from_part("compressor_efficiency", _charger(finder), "compressor efficiency"):
        finder.assume("compressor_efficiency", "driven" if _driven(finder) else "")
    put_down_map_air(finder)
    put_down_cooler(finder)


def _mass(finder: Finder) -> None:
    """Put down the mass: the car's, or a reading of it when that is newer."""
    stated = finder.state.car.get("mass")
    named = (each for each in finder.state.readings if each.value.what == "mass")
    # A reading in words, as "about as before", has no number.
    read = [each for each in named if each.value.values]
    if read and (stated is None or read[-1].episode > stated.episode):
        reading = read[-1].value
        given = Given(value=reading.values[-1], place=reading.place, evidence=Evidence.MEASURED)
        finder.take("vehicle_mass", Dated(value=given, episode=read[-1].episode), "measured: mass")
    elif not finder.from_car("vehicle_mass", "mass"):
        finder.lacks("vehicle_mass", GIVE["vehicle_mass"])
