"""What else to know of a join; a note never makes a verdict better."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hoistbook.fit.hose_rules import FUELS, LOW_PRESSURE_CLASSES
from hoistbook.fit.verdict import CLOSING, Fit, Service
from hoistbook.values.end import THREADED, End, Medium

HOT_FUEL = 80.0
"""Above this a fuel line is near something that is too hot for it [degC]; a judgement."""


def with_notes(found: Fit, one: End, other: End, service: Service) -> Fit:
    """Return a verdict with what else is to be said of the two ends."""
    notes = tuple(_notes(found, one, other, service))
    return replace(found, notes=(*found.notes, *notes)) if notes else found


def _notes(found: Fit, one: End, other: End, service: Service) -> Iterator[str]:
    ends = (one, other)
    if service.medium is Medium.ETHANOL and any(each.material == "aluminium" for each in ends):
        yield (
            "bare aluminium: pitting was found at 100 °C in blends with 10 to 20 % ethanol and "
            "grows with its share (Fuel 90, 2011); cold tests show little. Anodise or plate it"
        )
    if service.medium is Medium.ETHANOL and any(
        each.spec in LOW_PRESSURE_CLASSES for each in ends
    ):
        yield (
            "nitrile and ethanol: sources conflict. A laboratory study sees it shrink and harden "
            "on drying, a guide to E85 lists it as resistant; renew it and watch it"
        )
    if all(each.material == "stainless steel" and each.kind in THREADED for each in ends):
        yield "stainless steel on stainless steel galls: lubricate it"
    if service.medium in FUELS and (service.temperature or 0) > HOT_FUEL:
        yield "fuel near the exhaust: move it away, or shield and sleeve it"
    media = {each.medium for each in ends if each.medium} - FUELS
    if len(media) > 1 and found.verdict in CLOSING:
        yield f"one end is for {' and the other for '.join(sorted(media))}"
