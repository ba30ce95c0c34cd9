"""From a state to the base inputs of its figures, topic by topic, in the order of the chain."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.engineering import FUELS
from hoistbook.engineering.fuels import Property
from hoistbook.figures.base import Base, Inputs, Pipe
from hoistbook.figures.defaults import FILLING, RECTANGULAR, spread
from hoistbook.figures.finding import Finder, number
from hoistbook.history.state import Dated, State
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

SPEED_STEP = 100.0
LOWEST_SPEED = 1_000.0
"""Figures are drawn at every full hundred from here to the rev limit, 1/min."""
SINGLE_BOOST_FROM = 0.5
"""A boost given as one pressure is drawn from this share of the rev limit up: below it nobody has
said that the pressure is reached (common practice, no source)."""

GIVE = {
    "engine_speed": "rev limit, as in `settings: {rev limit: 6500 rpm}`",
    "boost": "boost, as in `settings: {boost: 0.8 bar gauge}`; without a charger at work "
    "`settings: {boost: none}`",
    "displacement": "displacement, as in `car: {engine displacement: 1598 cc}`",
    "compression_ratio": "compression ratio, as in `car: {engine compression ratio: 9.5:1}`",
    "vehicle_mass": "mass of the car, as in `car: {mass: 905 kg}`",
    "fuel": "fuel, as in `settings: {fuel: petrol}` or `settings: {fuel: ethanol blend 74 %}`",
    "rated_static_flow": "static flow of the fitted injectors: their part with `kind: injectors` "
    "and `facts: {static flow: 550 cc/min at 3 bar}`",
    "carries": "what {part} carries, as in `facts: {{carries: charge air, after the cooler}}`",
    "rated_pump_flow": "flow of the fitted fuel pump: its part with `kind: fuel pump` and "
    "`facts: {flow: 165 L/h at 4 bar}`",
}
"""What to write where an input is missing that has no default."""


def inputs_of(state: State) -> Inputs:
    """Return what the figures of a state start from."""
    finder = Finder(state)
    _air(finder)
    speeds = _boost(finder)
    _engine(finder, speeds)
    _charge_path(finder)
    _fuel(finder)
    _injectors(finder)
    _pump(finder)
    _mass(finder)
    pipes = _pipes(finder)
    return Inputs(
        speeds=speeds,
        bases=tuple(finder.bases.values()),
        conditions=frozenset(finder.conditions),
        pipes=pipes,
        missing=tuple(finder.missing.items()),
        notes=tuple(finder.notes),
    )


def _air(finder: Finder) -> None:
    for name, key in (
        ("air_pressure", "air pressure"),
        ("air_temperature", "air temperature"),
        ("relative_humidity", "air humidity"),
    ):
        if not finder.from_settings(name, key):
            finder.assume(name)


def _boost(finder: Finder) -> tuple[float, ...]:
    """Put down the boost; return the engine speeds that figures may be drawn over."""
    dated = finder.state.settings.get("boost")
    if dated is not None and isinstance(dated.value, BoostBySpeed):
        finder.conditions.add("boosted")
        return _boost_by_speed(finder, dated.value, dated.episode)
    given = finder.setting("boost")
    pressure = given.value.value if given else None
    if given is not None and isinstance(pressure, Quantity) and pressure.value > 0:
        finder.conditions.add("boosted")
        _single_boost(finder, given, pressure)
        return _speeds(finder, SINGLE_BOOST_FROM)
    if given is not None or not finder.fitted("turbocharger"):
        finder.conditions.add("unboosted")
        finder.assume("boost", "unboosted")
    else:
        finder.conditions.add("boosted")
        finder.lacks("boost", GIVE["boost"])
    return _speeds(finder, 0.0)


def _boost_by_speed(finder: Finder, boost: BoostBySpeed, episode: int) -> tuple[float, ...]:
    """Put down a boost list: straight lines between its speeds, nothing beyond them."""
    speeds = grid(boost.speeds[0], boost.speeds[-1])
    pressures = [each.value for each in boost.pressures]
    stated = [each.half_width for each in boost.pressures if each.half_width is not None]
    finder.keep(
        Base(
            name="boost",
            value=tuple(float(each) for each in np.interp(speeds, boost.speeds, pressures)),
            half_width=max(stated, default=spread("boost", boost.evidence, max(pressures))),
            evidence=boost.evidence,
            origin="settings: boost, by engine speed",
            episode=episode,
            place=boost.place,
            floor=-np.inf,
        )
    )
    return speeds


def _single_boost(finder: Finder, given: Dated[Given], pressure: Quantity) -> None:
    """Put down one boost pressure; an absolute one is taken less the pressure of the air."""
    finder.take("boost", given, "settings: boost")
    if pressure.reference == "absolute":
        air = float(np.max(finder.bases["air_pressure"].value))
        base = finder.bases["boost"]
        origin = f"{base.origin}, absolute, less the pressure of the air"
        finder.keep(replace(base, value=pressure.value - air, origin=origin))
    finder.notes.append(
        (
            "manifold_absolute_pressure",
            "One boost pressure is given for all engine speeds. It is drawn from half the rev "
            "limit up; below that nobody has said that it is reached.",
        )
    )


def _speeds(finder: Finder, share: float) -> tuple[float, ...]:
    """Return the engine speeds up to the rev limit; none when it is not known."""
    dated = finder.setting("rev limit")
    if dated is None or not isinstance(dated.value.value, Quantity):
        finder.lacks("engine_speed", GIVE["engine_speed"])
        return ()
    limit = dated.value.value.value
    return grid(max(LOWEST_SPEED, share * limit), limit)


def grid(lowest: float, highest: float) -> tuple[float, ...]:
    """Return the full hundreds between two engine speeds, and the two themselves, 1/min."""
    first = np.ceil(lowest / SPEED_STEP) * SPEED_STEP
    hundreds = np.arange(first, highest, SPEED_STEP)
    every = np.unique(np.concatenate([[lowest], hundreds, [highest]]))
    return tuple(float(each) for each in every)


def _engine(finder: Finder, speeds: tuple[float, ...]) -> None:
    for name, key in (
        ("displacement", "engine displacement"),
        ("compression_ratio", "engine compression ratio"),
    ):
        if not finder.from_car(name, key):
            finder.lacks(name, GIVE[name])
    if not finder.from_car("volumetric_efficiency", "engine volumetric efficiency"):
        _common_filling(finder, speeds)
    efficiency = "reference_indicated_efficiency"
    if not finder.from_car(efficiency, "engine gross indicated efficiency"):
        finder.assume(efficiency)
    for name in ("revolutions_per_cycle", "friction_scale", "intake_heating", "drivetrain_loss"):
        finder.assume(name)
    if not finder.from_settings("ignition_retard", "ignition retard"):
        finder.assume("ignition_retard", finder.charging)
    turbo = finder.one("turbocharger")
    if not finder.from_part("exhaust_pressure_ratio", turbo, "exhaust pressure ratio"):
        finder.assume("exhaust_pressure_ratio", finder.charging)


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
    turbo = finder.one("turbocharger")
    if not finder.from_part("compressor_efficiency", turbo, "compressor efficiency"):
        finder.assume("compressor_efficiency")
    cooler = finder.one("charge cooler")
    if cooler is None:
        finder.assume("cooler_effectiveness", "uncooled")
    elif not finder.from_part("cooler_effectiveness", cooler, "effectiveness"):
        finder.assume("cooler_effectiveness")
    if cooler is not None and finder.from_condition("rated_cooler_flow", cooler, "pressure loss"):
        finder.conditions.add("loss stated at a flow")
        finder.from_part("rated_cooler_pressure_loss", cooler, "pressure loss")
        finder.assume("rated_charge_density")
        return
    finder.conditions.add("loss stated at no flow")
    if not finder.from_part("charge_path_loss", cooler, "pressure loss"):
        finder.assume("charge_path_loss")


BLEND = re.compile(r"(?P<fuel>ethanol|methanol)\s+blend\s+(?P<share>\d+(?:[.,]\d+)?)\s*%")
FLEX = re.compile(r"ethanol blend", re.IGNORECASE)


def _fuel(finder: Finder) -> None:
    """Put down the fuel's properties; a blend's are worked out from those of its two fuels."""
    words = finder.words("fuel").casefold()
    blend = BLEND.search(words)
    if blend is not None:
        _blend(finder, blend["fuel"], float(blend["share"].replace(",", ".")) / 100)
    elif FLEX.search(words):
        _blend(finder, "ethanol", None)
    elif words.strip() in FUELS:
        finder.conditions.add("one fuel")
        _properties(finder, words.strip(), "")
    else:
        for name in ("fuel_density", "stoichiometric_air_fuel_ratio", "heating_value"):
            finder.lacks(name, GIVE["fuel"])
    if not finder.from_settings("lambda_ratio", "mixture"):
        finder.assume("lambda_ratio", finder.charging)


def _blend(finder: Finder, second: str, share: float | None) -> None:
    finder.conditions.add("blend")
    _properties(finder, "petrol", "first")
    _properties(finder, second, "second")
    given = finder.setting("fuel")
    if share is None or given is None:
        finder.assume("volume_fraction_second")
        return
    stated = Quantity(value=share, unit="%", text=finder.words("fuel"))
    dated = Dated(value=replace(given.value, value=stated), episode=given.episode)
    finder.take("volume_fraction_second", dated, "settings: fuel")


def _properties(finder: Finder, fuel: str, which: str) -> None:
    """Put down density, air-fuel ratio and heating value of one fuel, alone or of a blend."""
    record = FUELS[fuel]
    names = (
        ("fuel_density", record.density),
        (
            "air_fuel_ratio" if which else "stoichiometric_air_fuel_ratio",
            record.stoichiometric_air_fuel_ratio,
        ),
        ("heating_value", record.heating_value),
    )
    given = finder.setting("fuel")
    for name, value in names:
        finder.keep(
            Base(
                name=f"{name}_{which}" if which else name,
                value=value.value,
                half_width=_half_range(value),
                evidence=Evidence.ASSUMED,
                origin=f"{fuel}: what such fuel is made to",
                episode=given.episode if given else 0,
                place=given.value.place if given else None,
                shape=RECTANGULAR,
            )
        )


def _half_range(value: Property) -> float:
    return (value.high - value.low) / 2


def _regulator(finder: Finder) -> None:
    """Put down whether the fuel pressure rises with boost, as it does unless said otherwise."""
    if "fix" not in finder.words("regulator").casefold():
        finder.conditions.add("regulator follows")
        return
    finder.conditions.add("regulator fixed")
    dated = finder.setting("regulator")
    finder.keep(
        Base(
            name="boost",
            subject="regulator",
            value=0.0,
            half_width=0.0,
            evidence=Evidence.STATED,
            origin="settings: regulator, which does not follow the manifold",
            episode=dated.episode if dated else 0,
            place=dated.value.place if dated else None,
        )
    )


def _injectors(finder: Finder) -> None:
    injectors = finder.one("injectors")
    _regulator(finder)
    if not finder.from_settings("base_fuel_pressure", "fuel pressure"):
        finder.assume("base_fuel_pressure")
    if not finder.from_part("rated_static_flow", injectors, "static flow") or injectors is None:
        finder.lacks("rated_static_flow", GIVE["rated_static_flow"])
        return
    if not finder.from_condition("rated_pressure_difference", injectors, "static flow"):
        finder.assume("rated_pressure_difference")
    if not finder.from_part("dead_time", injectors, "dead time"):
        finder.assume("dead_time")
    finder.assume("rated_fluid_density")
    whole = injectors.part.count if injectors.part.kept is None else injectors.part.kept
    finder.keep(
        Base(
            name="injector_count",
            value=float(injectors.pieces_fitted or whole),
            half_width=0.0,
            evidence=Evidence.STATED,
            origin=f"count of {injectors.part.name}",
            episode=injectors.fitted_in or 0,
            place=injectors.part.place,
        )
    )


def _pump(finder: Finder) -> None:
    pump = finder.one("fuel pump")
    if not finder.from_part("rated_pump_flow", pump, "flow") or pump is None:
        finder.lacks("rated_pump_flow", GIVE["rated_pump_flow"])
        return
    if not finder.from_condition("rated_pump_pressure", pump, "flow"):
        finder.assume("rated_pump_pressure")
    finder.assume("fuel_line_loss")
    finder.assume("pump_fade_pressure")


def _mass(finder: Finder) -> None:
    """Put down the mass: the car's, or a reading of it when that is newer."""
    stated = finder.state.car.get("mass")
    read = [each for each in finder.state.readings if each.value.what == "mass"]
    if read and (stated is None or read[-1].episode > stated.episode):
        reading = read[-1].value
        given = Given(value=reading.values[-1], place=reading.place, evidence=Evidence.MEASURED)
        finder.take("vehicle_mass", Dated(value=given, episode=read[-1].episode), "measured: mass")
    elif not finder.from_car("vehicle_mass", "mass"):
        finder.lacks("vehicle_mass", GIVE["vehicle_mass"])


HOT = ("compressor_outlet_pressure", "compressor_outlet_temperature")
COLD = ("manifold_absolute_pressure", "charge_temperature")
CARRIED: Mapping[tuple[str, str], tuple[str, str]] = {
    ("intake air", "boosted"): ("compressor_inlet_pressure", "intake_temperature"),
    ("intake air", "unboosted"): COLD,
    ("charge air", "boosted"): HOT,
    ("charge air, before the cooler", "boosted"): HOT,
    ("charge air, after the cooler", "boosted"): COLD,
}
"""What a pipe carries in an engine boosted or not -> absolute pressure and temperature of it.

Where it is not said on which side of the cooler a pipe stands, it is taken to be the hot one, in
which the air is the faster of the two."""


def _pipes(finder: Finder) -> tuple[Pipe, ...]:
    pipes = []
    for each in (part for kind in ("intake pipe", "pipe", "hose") for part in finder.fitted(kind)):
        carries = each.part.facts.get("carries")
        words = str(carries.value).casefold() if carries else ""
        gas = CARRIED.get((words, finder.charging))
        if carries is None and each.part.kind == "pipe":
            gas = (f"gas in {each.part.id}",) * 2
            finder.lacks(gas[0], GIVE["carries"].format(part=each.part.id))
        if gas is None:
            continue
        if not finder.from_part("pipe_bore", each, "bore", subject=each.part.id):
            finder.lacks(
                f"pipe_bore of {each.part.id}",
                f"bore of {each.part.id}, as in `facts: {{bore: 54 mm}}`",
            )
        pipes.append(Pipe(part=each.part.id, pressure=gas[0], temperature=gas[1]))
    return tuple(pipes)
