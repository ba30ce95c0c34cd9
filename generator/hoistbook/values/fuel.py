"""Fuels are names, one of them with a share: petrol, methanol, ethanol blend 74 %."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.problems import closest
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity, parse_quantity
from hoistbook.values.slip import Slip

NAMES = ("petrol", "methanol", "ethanol blend")


@dataclass(frozen=True, slots=True)
class Fuel:
    """A fuel by name, and for a blend the volume share of ethanol in it."""

    name: str
    """One of `NAMES`."""
    text: str
    """As printed: "ethanol blend 74 %"."""
    evidence: Evidence
    ethanol: Quantity | None = None
    """Volume share, 0 to 1; None for a blend of which the author gives no share."""


def parse_fuel(text: str, numbers: str = "point") -> Fuel | Slip:
    """Return the fuel in a text, or what is wrong with it.

    Examples
    --------
    >>> fuel = parse_fuel("ethanol blend 74 %, measured")
    >>> fuel.name, fuel.ethanol.value, fuel.evidence.value
    ('ethanol blend', 0.74, 'measured')
    >>> parse_fuel("petrl").hint
    'did you mean petrol?'
    """
    words = " ".join(text.split())
    body, comma, last = words.rpartition(",")
    evidence = Evidence.STATED
    if comma and last.strip() in list(Evidence):
        words, evidence = body.strip(), Evidence(last.strip())
    for name in NAMES:
        rest = words.removeprefix(name).strip()
        if words == name:
            return Fuel(name, words, evidence)
        if name == "ethanol blend" and rest != words:
            share = parse_quantity(rest, ("ratio",), numbers=numbers)
            if isinstance(share, Slip):
                return share
            if not 0 < share.value <= 1:
                return Slip("not-a-share", f"`{rest}` is not a share of the whole", "as 74 %")
            return Fuel(name, words, evidence, share)
    near = closest(words, NAMES)
    hint = f"did you mean {near}?" if near else "one of: petrol, methanol, ethanol blend 74 %"
    return Slip("unknown-fuel", f"`{words}` is not a fuel known here", hint)
