"""The verdict on any two ends: `fit(a, b)`, symmetric, and never without an answer."""

from __future__ import annotations

from functools import lru_cache

from hoistbook.fit.flange_rules import bolted_fit, tube_fit, turbine_fit, vband_fit
from hoistbook.fit.hose_rules import hose_fit
from hoistbook.fit.notes import with_notes
from hoistbook.fit.thread_rules import threads_fit
from hoistbook.fit.verdict import NOTHING_SAID, Fit, Service, Verdict
from hoistbook.values.end import HOSES, THREADED, End, EndKind, Medium
from hoistbook.values.end_asks import Ask

HOSE_GOES_ON = {EndKind.SPIGOT, EndKind.BARB, EndKind.TUBE}
FLANGES = {EndKind.TURBINE, EndKind.FLANGE}


@lru_cache(maxsize=65536)
def fit(a: End, b: End, service: Service = NOTHING_SAID) -> Fit:
    """Return the verdict on two ends.

    Parameters
    ----------
    a, b : End
        The ends, in any order.
    service : Service
        What the join must carry; what the ends say of it themselves is added.

    Examples
    --------
    >>> from hoistbook.values.end_reading import parse_end
    >>> found = fit(parse_end("1/8 NPT male"), parse_end("1/8 BSPT female"))
    >>> print(found.verdict, found.rule, sep="; ")
    looks right, do not join; R2
    """
    one, other = sorted((a, b), key=_order)
    service = served(one, other, service)
    return with_notes(_decided(one, other, service), one, other, service)


def _order(end: End) -> tuple[object, ...]:
    """Return what puts two ends in one order, whichever was named first."""
    return (
        end.kind or "",
        end.gender or "",
        end.size,
        end.diameter or 0.0,
        *(each or "" for each in (end.spoken, end.seat, end.medium, end.spec, end.profile)),
        *(each is None or each for each in (end.bead, end.divided, end.submerged)),
        *(end.material or "", end.pressure or 0.0, end.temperature or 0.0, end.unclear),
    )


def served(one: End, other: End, service: Service) -> Service:
    """Return the service with what the ends say themselves; of two numbers the higher stands."""
    # What a hose is made for says less of what flows than the pipe that it goes on.
    ends = sorted((one, other), key=lambda end: end.kind in HOSES)
    media = [each for each in (service.medium, *(end.medium for end in ends)) if each]
    pressures = [p for p in (service.pressure, one.pressure, other.pressure) if p is not None]
    heats = [t for t in (service.temperature, one.temperature, other.temperature) if t is not None]
    ethanol = Medium.ETHANOL in media and set(media) <= {Medium.ETHANOL, Medium.PETROL}
    return Service(
        medium=Medium.ETHANOL if ethanol else next(iter(media), None),
        pressure=max(pressures, default=None),
        temperature=max(heats, default=None),
    )


def _decided(one: End, other: End, service: Service) -> Fit:
    unclear = next((each for each in (one, other) if each.unclear or each.kind is None), None)
    if unclear is not None:
        return Fit(
            verdict=Verdict.UNKNOWN,
            rule="R0",
            why=unclear.unclear or Ask.KIND.missing,
            measure=unclear.measure or Ask.KIND.measure,
        )
    kinds = {one.kind, other.kind}
    if kinds <= THREADED:
        return threads_fit(one, other)
    for each, facing in ((one, other), (other, one)):
        if each.kind in HOSE_GOES_ON and facing.kind in HOSES:
            return hose_fit(each, facing, service)
        if each.kind is EndKind.TUBE and facing.kind is EndKind.COMPRESSION:
            return tube_fit(each, facing)
    if kinds == {EndKind.VBAND}:
        return vband_fit(one, other)
    if kinds == {EndKind.TURBINE}:
        return turbine_fit(one, other)
    if kinds <= FLANGES:
        return bolted_fit(one, other)
    return _nothing_alike(one, other)


def _nothing_alike(one: End, other: End) -> Fit:
    """Return the verdict on two ends of different sorts, or on two halves that are alike."""
    if {one.kind, other.kind} <= HOSES:
        adapter = "a joiner, beaded at both ends"
    elif {one.kind, other.kind} <= HOSE_GOES_ON:
        adapter = "a hose over both and two clamps"
    else:
        adapter = f"a fitting from {one.full} to {other.full}"
    why = f"{one.kind} and {other.kind} do not go together"
    return Fit(verdict=Verdict.NEEDS_ADAPTER, rule="R1", why=why, adapter=adapter)
