"""Rule R5: a hose on a pipe, by its size, its class, what flows in it and at what pressure."""

from __future__ import annotations

from collections.abc import Callable

from hoistbook.fit.verdict import Fit, Service, Verdict
from hoistbook.values.end import End, EndKind, Medium, number

FUELS = {Medium.PETROL, Medium.ETHANOL}
LOOSEST = 0.6
"""A hose may be so much wider than its pipe [mm]; admits every trade label (45 on 44.45).
Common practice, no source, as are the next three."""
TIGHTEST = 0.03
"""A hose may be so much narrower than its pipe, as a share of the pipe."""
REDUCER_LOOSE = 2.0
"""Above this no clamp closes the gap [mm]."""
REDUCER_TIGHT = 0.06
UNBEADED = 0.3
"""A pipe end without a bead holds a hose up to this gauge pressure [bar]."""
LOW_PRESSURE_CLASSES = {"30R6", "30R7", "30R8"}
"""Low-pressure fuel hoses: section titles of SAE J30 JUN1998."""
LOW_PRESSURE = 1.0
"""What a low-pressure fuel hose may hold [bar]; a judgement, no source."""
FILL_AND_VENT = "30R11"
"""Low-permeation fill and vent hose, of no pressure: section titles of SAE J30 JUN1998."""
FEED_CLASSES = {"30R12", "30R13", "30R14"}
"""Fuel hoses of which no source here says the working pressure."""
CLASS_PRESSURES = {"30R9": 6.9}
"""Working pressures [bar]; 100 psi, from memory of SAE J30."""
SILICONE_TEMPERATURE = 175.0
"""Class A of SAE J20-2022 [degC]."""
IN_TANK = "30R10"
BRAKE_CLASS = "J1401"
WIDE = 30.0
"""From this on a rubber hose or duct need not hold boost [mm]; common practice, no source."""
OIL_OR_COOLANT = {Medium.OIL, Medium.COOLANT}

Rule = Callable[[End, End, Service], Fit | None]
"""Looks at pipe, hose and service; None where it has nothing to say."""


def hose_fit(pipe: End, hose: End, service: Service) -> Fit:
    """Return the verdict on a hose pushed over a pipe end.

    Parameters
    ----------
    pipe : End
        Spigot, barb or tube.
    hose : End
        Hose or silicone hose.
    service : Service
        What it must carry.
    """
    for rule in (_other_size, _medium, _class, _lining, _immersed, _pressure, _heat, _bead, _snug):
        found = rule(pipe, hose, service)
        if found is not None:
            return found
    need = "" if pipe.kind is EndKind.BARB else ", behind the bead" if pipe.bead else ""
    return Fit(
        verdict=Verdict.MATES,
        rule="R5",
        why=f"{number(hose.diameter)} mm hose on {number(pipe.diameter)} mm, with a clamp{need}",
    )


def _gap(pipe: End, hose: End) -> float:
    """Return by how much the hose is wider than the pipe [mm]."""
    return (hose.diameter or 0.0) - (pipe.diameter or 0.0)


def _no(why: str, goes_wrong: str, tell_apart: str = "read the print on the hose") -> Fit:
    return Fit(
        verdict=Verdict.LOOKS_RIGHT,
        rule="R5",
        why=why,
        goes_wrong=goes_wrong,
        tell_apart=tell_apart,
    )


def _ask(why: str, measure: str) -> Fit:
    return Fit(verdict=Verdict.UNKNOWN, rule="R0", why=why, measure=measure)


def _other_size(pipe: End, hose: End, service: Service) -> Fit | None:
    gap, outside = _gap(pipe, hose), pipe.diameter or 0.0
    if -REDUCER_TIGHT * outside <= gap <= REDUCER_LOOSE:
        return None
    sizes = f"{number(outside)} mm to {number(hose.diameter)} mm"
    return Fit(
        verdict=Verdict.NEEDS_ADAPTER,
        rule="R5",
        why=f"the hose is {abs(gap):.1f} mm too {'wide' if gap > 0 else 'narrow'}",
        adapter=f"a reducer, {sizes}",
    )


def _medium(pipe: End, hose: End, service: Service) -> Fit | None:
    medium, spec = service.medium, hose.spec or ""
    if medium is None:
        return _ask(
            "what flows through the hose is not said", "no gauge: say what flows, as coolant"
        )
    if medium is Medium.EXHAUST:
        return _no("no hose carries exhaust gas", "it burns", "look where the pipe comes from")
    if medium is Medium.BRAKE_FLUID:
        return _no(
            f"brakes take hoses made to {BRAKE_CLASS}, crimped into their fittings, and no other: "
            "none is pushed on and held by a clamp",
            "it swells, bursts or comes off under the pedal",
            "look at its end: a brake hose ends in a crimped fitting with a thread or a banjo",
        )
    if spec == BRAKE_CLASS and medium is not Medium.AIR:
        return _no(
            f"{BRAKE_CLASS} is brake hose, not for {medium}",
            "its lining is made for brake fluid: petrol and oil swell it",
        )
    if hose.kind is EndKind.SILICONE and medium in FUELS | {Medium.OIL}:
        return _no(f"silicone does not hold {medium}", "it swells, sweats and comes off")
    if spec.startswith("20R") and medium is not Medium.COOLANT:
        return _no(
            f"{spec} is coolant hose, not for {medium}", "it softens from inside and bursts"
        )
    if spec.startswith("30R") and medium is Medium.COOLANT:
        return _no(
            f"{spec} is fuel and oil hose, not for coolant",
            "hot glycol hardens it and it cracks",
        )
    if hose.medium not in (None, medium) and not {hose.medium, medium} <= FUELS:
        return _no(f"the hose is for {hose.medium}, not for {medium}", "it softens or bursts")
    return None


def _class(pipe: End, hose: End, service: Service) -> Fit | None:
    """Return that nobody says what a hose is made for."""
    medium, spec = service.medium, hose.spec
    if medium in FUELS and not spec:
        return _ask("the class of the fuel hose is not said", "no gauge: read its print, as 30R9")
    made_for_it = spec or hose.medium is medium or hose.kind is EndKind.SILICONE
    if medium in OIL_OR_COOLANT and not made_for_it:
        return _ask(
            "what the hose is made for is not said", f"no gauge: read its print; say for {medium}"
        )
    return None


def _lining(pipe: End, hose: End, service: Service) -> Fit | None:
    """Return that a stiff, slippery hose holds in fittings of its own only."""
    if hose.spec != "PTFE":
        return None
    return Fit(
        verdict=Verdict.NEEDS_ADAPTER,
        rule="R5",
        why="a PTFE hose is stiff and slippery: no clamp holds it on a pipe",
        adapter="a fitting made for PTFE hose, crimped or with its olive",
    )


def _immersed(pipe: End, hose: End, service: Service) -> Fit | None:
    if not (pipe.submerged or hose.submerged) or hose.spec == IN_TANK:
        return None
    if not hose.spec:
        return _ask("the class of the hose in the tank is not said", "no gauge: read its print")
    return _no(
        f"in the tank only {IN_TANK} lasts, not {hose.spec}",
        "it swells and hardens from outside and comes off under fuel",
    )


def _pressure(pipe: End, hose: End, service: Service) -> Fit | None:
    fuel = service.medium in FUELS
    low = fuel and hose.spec in {*LOW_PRESSURE_CLASSES, FILL_AND_VENT}
    if hose.highest_pressure is None and _of_unknown_strength(hose, service, fuel=fuel):
        return _ask(
            "what pressure the hose holds is not said",
            "no gauge: read its print or its seller's sheet; say up to 5 bar",
        )
    limits = [
        limit
        for limit in (
            LOW_PRESSURE if low else None,
            CLASS_PRESSURES.get(hose.spec or ""),
            hose.highest_pressure,
        )
        if limit is not None
    ]
    if not limits:
        return None
    if service.pressure is None:
        return (
            _ask("the pressure in the hose is not known", "a pressure gauge, or say at 4 bar")
            if low
            else None
        )
    if service.pressure <= min(limits):
        return None
    what = f"{hose.spec} is low-pressure hose" if low else f"the hose holds {min(limits):g} bar"
    return _no(f"{what}, and {service.pressure:g} bar flow through it", "it bursts or comes off")


def _of_unknown_strength(hose: End, service: Service, *, fuel: bool) -> bool:
    """Tell whether a hose is under a pressure that nobody says it holds."""
    pressure = service.pressure or 0.0
    if fuel:
        return hose.spec in FEED_CLASSES and pressure > LOW_PRESSURE
    duct = hose.kind is EndKind.HOSE and (hose.diameter or 0.0) >= WIDE
    return duct and service.medium is Medium.AIR and pressure > UNBEADED


def _heat(pipe: End, hose: End, service: Service) -> Fit | None:
    limits = [
        limit
        for limit in (
            SILICONE_TEMPERATURE if hose.kind is EndKind.SILICONE else None,
            hose.highest_temperature,
        )
        if limit is not None
    ]
    if not limits or service.temperature is None or service.temperature <= min(limits):
        return None
    return _no(
        f"the hose lasts to {min(limits):g} °C, and it gets {service.temperature:g} °C here",
        "it hardens, cracks and comes off",
    )


def _bead(pipe: End, hose: End, service: Service) -> Fit | None:
    if pipe.kind is EndKind.BARB or pipe.bead:
        return None
    if service.pressure is not None and service.pressure <= UNBEADED:
        return None
    if pipe.bead is None or service.pressure is None:
        missing = "whether the pipe end has a bead" if pipe.bead is None else "the pressure"
        return _ask(f"{missing} is not said", "no gauge: look for the rolled ring, and say beaded")
    return _no(
        f"a plain end blows off at {service.pressure:g} bar",
        "the hose comes off under load",
        "look for the rolled ring",
    )


def _snug(pipe: End, hose: End, service: Service) -> Fit | None:
    gap, outside = _gap(pipe, hose), pipe.diameter or 0.0
    if -TIGHTEST * outside - ROUNDING <= gap <= LOOSEST + ROUNDING:
        return None
    loose = gap > 0
    return _no(
        f"the hose is {abs(gap):.1f} mm too {'wide' if loose else 'narrow'}",
        "the clamp puckers it and it leaks" if loose else "it is cut when it is forced on",
        "a caliper over the pipe and inside the hose",
    )


ROUNDING = 1e-9
"""Sizes are decimal fractions; their differences are not."""
