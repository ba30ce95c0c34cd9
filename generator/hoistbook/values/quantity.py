"""A number with its unit, its qualifier and its evidence, as an author writes it."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.values.evidence import Evidence


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity in SI base units, with the words it was written in."""

    value: float
    """In the SI base unit of its dimension (Pa, K, kg/s, m3/s, m, J, W, N m, rad/s never: rpm is 1/min)."""
    unit: str
    """The unit as written, in the canonical spelling that pages print ("bar", "cc/min")."""
    text: str
    """What the author wrote."""
    reference: str | None = None
    """`gauge` or `absolute` for pressures; None elsewhere."""
    half_width: float | None = None
    """Half the 95 % band in SI, where the author gave one ("+- 5 kPa", "+- 3 %")."""
    evidence: Evidence | None = None
    at: Quantity | None = None
    """The condition it holds at: 3 bar in "550 cc/min at 3 bar"."""
