"""What else to know of a join; a note never makes a verdict better."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from hoistbook.fit.hose_rules import FUELS, LOW_PRESSURE_CLASSES
from hoistbook.fit.tables import sourced, table
from hoistbook.fit.verdict import CLOSING, Fit, Service
from hoistbook.values.end import THREADED, End, Medium

HOT_FUEL = 80.0
"""Above this a fuel line is near something that is too hot for it [degC]; a judgement."""


MATERIALS: tuple[tuple[str, str], ...] = (
    ("FKM (fluoroelastomer)", r"\bfkm\b|\bfluoro(?:elastomer|rubber)\b"),
    ("NBR (nitrile)", r"\bnbr\b|\bnitrile\b"),
    ("neoprene (CR)", r"\bneoprene\b|\bcr\b"),
    ("polyurethane", r"\bpolyurethane\b|\bpu\b"),
    ("silicone", r"\bsilicone\b"),
    ("EPDM", r"\bepdm\b"),
    ("PTFE", r"\bptfe\b"),
    ("nylon (polyamide)", r"\bnylon\b|\bpolyamide\b|\bpa ?1[12]\b"),
    ("POM (acetal)", r"\bpom\b|\bacetal\b"),
    ("aluminium, hard anodised or nickel plated", r"\banodi[sz]ed\b|\bnickel plated\b"),
    ("aluminium, bare", r"\balumini?um\b"),
    ("zinc / galvanised, terne, lead", r"\bzinc\b|\bgalvani[sz]ed\b|\bterne\b"),
    ("brass", r"\bbrass\b"),
    ("stainless steel", r"\bstainless\b"),
    ("carbon steel", r"\bsteel\b"),
    ("cork, natural rubber, leather, PVC", r"\bcork\b|\bnatural rubber\b|\bleather\b|\bpvc\b"),
)
"""Rows of the table of materials for ethanol, and the words that mean each; the first is taken."""
LINERS = {**dict.fromkeys(LOW_PRESSURE_CLASSES, "NBR (nitrile)"), "PTFE": "PTFE"}
"""What a hose of a class is usually lined with; of R6 to R8 common practice, no source."""


def ethanol_note(item: str) -> str:
    """Return what the sources say of a material in fuel with ethanol, their conflict included.

    Examples
    --------
    >>> ethanol_note("neoprene (CR)")  # doctest: +ELLIPSIS
    'ethanol and neoprene (CR): sources conflict: as nitrile (published: ...)'
    """
    (row,) = (
        each
        for each in table("hoses_media")
        if each["table"] == "ethanol_material" and each["item"] == item
    )
    said = "; ".join(text for text in (row["value"], row["note"]) if text)
    said = said.replace("CONFLICT:", "sources conflict:")
    return f"ethanol and {item}: {said} ({sourced(row['provenance'])})"


def _wetted(end: End) -> Iterator[str]:
    """Yield the rows of what fuel touches at an end."""
    liner = LINERS.get(end.spec or "")
    if liner:
        yield liner
    said = (end.material or "").casefold()
    named = (item for item, words in MATERIALS if said and re.search(words, said))
    yield from (item for item in (next(named, None),) if item)


def with_notes(found: Fit, one: End, other: End, service: Service) -> Fit:
    """Return a verdict with what else is to be said of the two ends."""
    notes = tuple(_notes(found, one, other, service))
    return replace(found, notes=(*found.notes, *notes)) if notes else found


def _notes(found: Fit, one: End, other: End, service: Service) -> Iterator[str]:
    ends = (one, other)
    if service.medium is Medium.ETHANOL:
        yield from dict.fromkeys(ethanol_note(item) for each in ends for item in _wetted(each))
    if all(each.material == "stainless steel" and each.kind in THREADED for each in ends):
        yield "stainless steel on stainless steel galls: lubricate it"
    if service.medium in FUELS and (service.temperature or 0) > HOT_FUEL:
        yield "fuel near the exhaust: move it away, or shield and sleeve it"
    media = {each.medium for each in ends if each.medium} - FUELS
    if len(media) > 1 and found.verdict in CLOSING:
        yield f"one end is for {' and the other for '.join(sorted(media))}"
