"""Wire and fuse for a load, with the voltage that the wire loses."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from hoistbook.engineering.pump import voltage_drop
from hoistbook.fit.tables import table

BLADE_FUSES = (2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40)
"""Ratings of blade fuses [A]: DIN 72581, as cited by a page on fuse colours."""
HEADROOM = 0.75
"""A fuse carries this share of its rating for good; common practice, no source."""
PARTICULAR = 0.03
"""Of the supply, for pumps and control units; common practice, no source, as is the next."""
OTHERS = 0.05
SAME_AREA = 0.01
"""Two cross-sections are one within this [mm2]."""


@dataclass(frozen=True, slots=True)
class Known:
    """A number with its band, as far as anybody says it."""

    value: float
    low: float
    high: float
    assumed: bool = False


LENGTH = Known(4.0, 2.0, 6.0, assumed=True)
"""Of a wire from battery to load in a small car, one way [m]; common practice, no source."""
SUPPLY = Known(12.5, 12.0, 14.4, assumed=True)
"""Between a battery at rest and an alternator that charges it [V]; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Wire:
    """A row of the table of wires."""

    label: str
    """Cross-section as sold: `2.5 mm2`."""
    area: float
    """[mm2]"""
    resistance: float
    """Highest that IEC 60228 allows where it is known, else that of ideal copper [ohm/m]."""
    carries: float
    """By the cautious one of two sources [A]."""
    largest_fuse: float
    """[A]"""

    def lost(self, current: float, length: float) -> float:
        """Return the voltage lost out and back [V].

        Parameters
        ----------
        current : float
            [A]
        length : float
            One way [m].

        Examples
        --------
        >>> round(wire_of(2.5).lost(10, 4), 3)
        0.638
        """
        # The resistivity is what the resistance of the standard amounts to.
        area = self.area * 1e-6
        lost: float = voltage_drop(
            wire_current=current,
            copper_resistivity=self.resistance * area,
            cable_length=length,
            cable_area=area,
        )
        return lost


@cache
def wires() -> tuple[Wire, ...]:
    """Return the metric wires of which the current is known, the thinnest first."""
    return tuple(
        Wire(
            label=row["label"],
            area=float(row["area_mm2"]),
            resistance=float(row["R20_mohm_per_m_published_max"] or row["R20_mohm_per_m_ideal"])
            / 1000,
            carries=float(row["amps_conservative"]),
            largest_fuse=float(row["max_fuse_A"] or row["amps_conservative"]),
        )
        for row in table("wires")
        if row["kind"] == "metric" and row["amps_conservative"]
    )


def wire_of(area: float) -> Wire | None:
    """Return the wire of a cross-section [mm2], or None where the table has none."""
    return next((each for each in wires() if abs(each.area - area) < SAME_AREA), None)


def wire_for(
    current: float, length: float, supply: float = SUPPLY.value, *, limit: float = OTHERS
) -> Wire | None:
    """Return the thinnest wire that carries a load within a loss and has a fuse that holds it.

    Parameters
    ----------
    current : float
        Of the load [A].
    length : float
        One way [m].
    supply : float
        [V]
    limit : float
        Largest share of the supply that may be lost.
    """
    return next(
        (
            each
            for each in wires()
            if each.carries >= current
            and fuse_for(current, each.largest_fuse)
            and each.lost(current, length) <= limit * supply
        ),
        None,
    )


def fuse_for(current: float, cable: float) -> float | None:
    """Return the smallest blade fuse that holds a load and protects its cable [A].

    Parameters
    ----------
    current : float
        Of the load [A].
    cable : float
        What the cable carries [A].
    """
    fitting = (each for each in BLADE_FUSES if current / HEADROOM <= each <= cable)
    return next(fitting, None)
