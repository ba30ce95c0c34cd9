"""Words that people use for ours; a hint names ours, because no letters are in common."""

from __future__ import annotations

from collections.abc import Iterable

from hoistbook.problems import closest

OURS = {
    "afr": ("mixture",),
    "brand": ("maker",),
    "cause": ("because",),
    "cost": ("paid", "amount"),
    "damaged": ("broke",),
    "date": ("filmed",),
    "delivery": ("postage",),
    "description": ("summary", "note"),
    "duration": ("hours",),
    "ecu": ("engine control unit",),
    "headers": ("exhaust manifold",),
    "id": ("part",),
    "image": ("poster",),
    "installed": ("fitted",),
    "intercooler": ("charge cooler",),
    "manufacturer": ("maker",),
    "model": ("part number",),
    "muffler": ("silencer",),
    "paid": ("amount",),
    "picture": ("poster",),
    "price": ("paid", "amount", "for"),
    "qty": ("count",),
    "quantity": ("count",),
    "reason": ("because",),
    "redline": ("rev limit",),
    "refunded": ("sent back",),
    "removed": ("took off",),
    "replaced": ("instead of",),
    "replaces": ("instead of",),
    "returned": ("sent back",),
    "seller": ("from", "to"),
    "shipping": ("postage",),
    "shop": ("from", "to"),
    "supplier": ("from", "to"),
    "time": ("hours",),
    "tires": ("tyres",),
    "turbo": ("turbocharger",),
    "url": ("link", "video"),
    "vat": ("tax",),
    "weight": ("mass",),
    "why": ("because",),
}
"""Word -> words of ours that it may stand for, the likeliest first."""


def meant(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that was probably meant: nearly the same, or another word for it.

    Examples
    --------
    >>> meant("price", ["part", "paid"]), meant("pid", ["part", "paid"])
    ('paid', 'paid')
    """
    names = tuple(known)
    folded = word.casefold()
    ours = next((name for name in OURS.get(folded, ()) if name in names), None)
    return ours or closest(folded, names)
