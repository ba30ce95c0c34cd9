"""Wire and fuse for a load, with the voltage that the wire loses."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.fit.tables import table

BLADE_FUSES = (2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40)
"""Ratings of blade fuses [A]: DIN 72581, as cited by a page on fuse colours."""
HEADROOM = 0.75
"""A fuse carries this share of its rating for good; common practice, no source."""
PARTICULAR = 0.03
"""Of the supply, for pumps and control units; common practice, no source, as is the next."""
OTHERS = 0.05


@dataclass(frozen=True, slots=True)
class WireChoice:
    """A wire and a fuse for one load."""

    label: str
    """Cross-section as sold: `2.5 mm2`."""
    drop: float
    """Voltage lost, out and back [V]."""
    share: float
    """Of the supply."""
    fuse: float | None
    """Rating of the fuse [A]; None where none is both large and small enough."""


def voltage_drop(length: float, current: float, resistance: float) -> float:
    """Return the voltage lost in a wire out and back [V].

    Parameters
    ----------
    length : float
        One way [m].
    current : float
        [A]
    resistance : float
        [ohm/m]

    Notes
    -----
    dV = 2 L I R.

    Examples
    --------
    >>> round(voltage_drop(4, 10, 0.00798), 3)
    0.638
    """
    return 2 * length * current * resistance


def wire_for(
    current: float, length: float, supply: float = 12.5, *, limit: float = OTHERS
) -> WireChoice | None:
    """Return the thinnest wire that carries a load within a loss, and its fuse.

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
    for row in table("wires"):
        if row["kind"] != "metric" or not row["amps_conservative"]:
            continue
        resistance = float(row["R20_mohm_per_m_published_max"] or row["R20_mohm_per_m_ideal"])
        drop = voltage_drop(length, current, resistance / 1000)
        carried = float(row["amps_conservative"]) >= current
        fuse = fuse_for(current, float(row["max_fuse_A"] or row["amps_conservative"]))
        if carried and fuse and drop <= limit * supply:
            return WireChoice(row["label"], drop, drop / supply, fuse)
    return None


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
