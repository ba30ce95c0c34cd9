"""Values of the record in words, for changes and fates."""

from __future__ import annotations

from hoistbook.authored.records import BoostBySpeed, Given, Join
from hoistbook.values.quantity import Quantity


def value_words(value: Given | BoostBySpeed) -> str:
    """Return what was set, as its author wrote it.

    Examples
    --------
    >>> from hoistbook.problems import Place
    >>> value_words(Given(value=2.0, place=Place("episode.md")))
    '2'
    """
    if isinstance(value, BoostBySpeed):
        steps = zip(value.pressures, value.speeds, strict=True)
        return ", ".join(f"{pressure.text} at {speed:g} rpm" for pressure, speed in steps)
    if isinstance(value.value, Quantity):
        return value.value.text
    if isinstance(value.value, float):
        return f"{value.value:g}"
    return value.value


def join_words(join: Join) -> str:
    """Return a join as one line."""
    return f"{join.a.part} {join.a.end} to {join.b.part} {join.b.end}"
