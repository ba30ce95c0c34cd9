"""What each join must carry: medium, pressure and temperature, from settings and figures."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.authored.records import BoostBySpeed, Join
from hoistbook.figures.figure import Figure, Figures
from hoistbook.figures.finding import impossible_boost
from hoistbook.fit.flows import PASCAL_PER_BAR, Flow
from hoistbook.fit.joins import JoinKey, JoinVerdict, judged
from hoistbook.fit.piping import Piping, piping_of
from hoistbook.fit.verdict import Service
from hoistbook.history.state import State, Status
from hoistbook.units import to_unit
from hoistbook.values.end import Medium
from hoistbook.values.quantity import Quantity

CHARGERS = ("turbocharger", "supercharger")
ALCOHOLS = ("ethanol", "methanol")


def judged_joins(state: State, figures: Figures) -> tuple[JoinVerdict, ...]:
    """Return the verdict on every join of a state, under what it must carry."""
    piping = piping_of(state)
    return judged(piping, services_of(piping, figures))


def services_of(piping: Piping, figures: Figures) -> dict[JoinKey, Service]:
    """Return what every join must carry, as far as anything says it.

    Parameters
    ----------
    piping : Piping
        The ends of a state.
    figures : Figures
        Its figures.
    """
    services = flow_services(piping.state, figures)
    hot = _temperature(figures, "compressor_outlet_temperature")
    uncooled = _before_the_cooler(piping)
    found = {}
    for dated in piping.state.joins:
        join = dated.value
        flow = piping.flow_in(join)
        if flow in services:
            service = services[flow]
            if (join.a, join.b) in uncooled:
                service = replace(service, temperature=hot)
            if flow is Flow.OIL and _drains(piping.state, join):
                service = replace(service, pressure=0.0)
            found[join.a, join.b] = service
    return found


def flow_services(state: State, figures: Figures) -> dict[Flow, Service]:
    """Return what each flow asks of a join: gauge pressure [bar] and temperature [degC]."""
    boost = _boost(state)
    charge = Service(Medium.AIR, boost, _temperature(figures, "charge_temperature"))
    return {
        Flow.INTAKE_AIR: Service(Medium.AIR, 0.0),
        Flow.CHARGE_AIR: charge,
        Flow.BOOST_SIGNAL: Service(Medium.AIR, boost),
        Flow.OIL: Service(Medium.OIL, _measured(state, "oil pressure")),
        Flow.COOLANT: Service(Medium.COOLANT, _cap(state)),
        Flow.FUEL: Service(_fuel(state), _rail_pressure(state, boost)),
    }


def _drains(state: State, join: Join) -> bool:
    """Tell whether a join only lets oil fall back into the sump."""
    return any(
        "drain" in each.end.casefold() or _kind(state, each.part) in ("oil drain", "sump")
        for each in (join.a, join.b)
    )


def _before_the_cooler(piping: Piping) -> set[JoinKey]:
    """Return the joins of charge air between the compressor and the cooler, or all without one."""
    beside: dict[str, list[Join]] = {}
    for dated in piping.state.joins:
        if piping.flow_in(dated.value) is Flow.CHARGE_AIR:
            for part in {dated.value.a.part: None, dated.value.b.part: None}:
                beside.setdefault(part, []).append(dated.value)
    found: set[JoinKey] = set()
    waiting = [part for part in beside if _kind(piping.state, part) in CHARGERS]
    for part in waiting:
        for join in beside[part] if _kind(piping.state, part) != "charge cooler" else ():
            if (join.a, join.b) not in found:
                found.add((join.a, join.b))
                waiting += (join.a.part, join.b.part)
    return found


def _kind(state: State, part: str) -> str | None:
    return state.parts[part].part.kind


def _temperature(figures: Figures, quantity: str) -> float | None:
    figure = figures.get(quantity)
    return round(to_unit(figure.value, "degC")) if isinstance(figure, Figure) else None


def _boost(state: State) -> float | None:
    """Return the highest boost that is set [bar gauge]: 0 for none, None where it cannot be."""
    dated = state.settings.get("boost")
    if dated is None:
        return None
    if isinstance(dated.value, BoostBySpeed):
        highest = max(each.value for each in dated.value.pressures)
    elif isinstance(value := dated.value.value, Quantity):
        air = _setting(state, "air pressure") if value.reference == "absolute" else 0.0
        if air is None:
            return None
        highest = value.value - air
    else:
        return 0.0
    return None if impossible_boost(highest) else round(highest / PASCAL_PER_BAR, 3)


def _setting(state: State, name: str) -> float | None:
    dated = state.settings.get(name)
    if dated is None or isinstance(dated.value, BoostBySpeed):
        return None
    value = dated.value.value
    return value.value if isinstance(value, Quantity) else None


def _words(state: State, name: str) -> str:
    dated = state.settings.get(name)
    if dated is None or isinstance(dated.value, BoostBySpeed):
        return ""
    value = dated.value.value
    return value.text if isinstance(value, Quantity) else str(value)


def _fuel(state: State) -> Medium:
    return Medium.ETHANOL if _words(state, "fuel").startswith(ALCOHOLS) else Medium.PETROL


def _rail_pressure(state: State, boost: float | None) -> float | None:
    base = _setting(state, "fuel pressure")
    if base is None:
        return None
    fixed = "fix" in _words(state, "regulator").casefold()
    return round(base / PASCAL_PER_BAR + (0.0 if fixed else boost or 0.0), 3)


def _measured(state: State, what: str) -> float | None:
    """Return the highest reading of a pressure so far [bar]."""
    values = [
        each.value
        for dated in state.readings
        if dated.value.what == what
        for each in dated.value.values
    ]
    return round(max(values) / PASCAL_PER_BAR, 3) if values else None


def _cap(state: State) -> float | None:
    """Return at what gauge pressure the radiator cap opens [bar]."""
    for each in state.parts.values():
        given = each.part.facts.get("opens at")
        fitted = each.status is Status.FITTED and each.part.kind == "radiator cap"
        if fitted and given is not None and isinstance(given.value, Quantity):
            return round(given.value.value / PASCAL_PER_BAR, 3)
    return None
