"""Fuels are names, blends among them with a share: petrol, methanol, ethanol blend 74 %."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from hoistbook.problems import closest
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity, parse_quantity
from hoistbook.values.slip import Slip

NAMES = ("petrol", "methanol", "ethanol", "ethanol blend", "methanol blend")


BLENDS = tuple(name for name in NAMES if name.endswith(" blend"))
"""Fuels whose name is followed by a share."""


@dataclass(frozen=True, slots=True)
class Fuel:
    """A fuel by name, and for a blend the volume share of the alcohol in it."""

    name: str
    """One of `NAMES`."""
    text: str
    """As printed: "ethanol blend 74 %"."""
    evidence: Evidence
    share: Quantity | None = None
    """Of a blend, the volume share of its alcohol, 0 to 1; None where the author gives none."""


def parse_fuel(text: str, numbers: str = "point") -> Fuel | Slip:
    """Return the fuel in a text, or what is wrong with it.

    Examples
    --------
    >>> fuel = parse_fuel("ethanol blend 74 %, measured")
    >>> fuel.name, fuel.share.value, fuel.evidence.value
    ('ethanol blend', 0.74, 'measured')
    >>> parse_fuel("petrl").hint
    'did you mean petrol?'
    """
    words = " ".join(text.split())
    body, comma, last = words.rpartition(",")
    evidence = Evidence.STATED
    if comma and last.strip() in list(Evidence):
        words, evidence = body.strip(), Evidence(last.strip())
    if words in NAMES:
        return Fuel(words, words, evidence)
    name = next((each for each in BLENDS if words.startswith(each)), None)
    if name is not None:
        return _blend(name, words, evidence, numbers)
    return Slip("unknown-fuel", f"`{words}` is not a fuel known here", _hint(words))


_OCTANE_NUMBER = re.compile(
    r"(?i)\bron\b|\bmon\b|\baki\b|octane"
    r"|^(?:super|premium|regular|petrol|gasoline|unleaded|normal)\b.*\b(?:8[5-9]|9\d|10\d)\b"
)
"""Petrol by the octane number on the pump: petrol 95, super 98, 91 AKI."""


def _hint(words: str) -> str:
    """Return what to write instead of a fuel's trade name."""
    # What is sold as E85 holds 51 to 83 % of ethanol (ASTM D5798, from memory).
    if re.fullmatch(r"(?i)e ?[5-9]\d", words):
        return "its share differs from pump to pump; write what yours holds: ethanol blend 74 %"
    if _OCTANE_NUMBER.search(words):
        return (
            "write petrol; how near a fuel is to knocking is not worked out here, so the number "
            "of the pump belongs to the prose"
        )
    if re.search(r"(?i)^e ?(5|10)$|unleaded|gasoline", words):
        return "write petrol"
    near = closest(words, NAMES)
    return f"did you mean {near}?" if near else "one of: petrol, methanol, ethanol blend 74 %"


def _blend(name: str, words: str, evidence: Evidence, numbers: str) -> Fuel | Slip:
    written = words.removeprefix(name).strip()
    share = parse_quantity(written, ("ratio",), numbers=numbers)
    if isinstance(share, Slip):
        return replace(share, offset=share.offset + len(words) - len(written))
    if share.unit != "%" or not 0 < share.value <= 1:
        offset = len(words) - len(written)
        return Slip("not-a-share", f"`{written}` is not a share of the whole", "as 74 %", offset)
    return Fuel(name, f"{name} {share.text}", evidence, share)
