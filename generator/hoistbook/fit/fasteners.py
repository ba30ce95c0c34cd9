"""How tight: preload and torque of a bolt by its thread, class and lubrication, with the spread.

The maker's own figure beats every one of these.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from hoistbook.fit.tables import keyed, table
from hoistbook.fit.threads import Thread, thread_of
from hoistbook.values.end import End, EndKind, Gender
from hoistbook.values.end_words import COARSE

SHARE_OF_PROOF = 0.75
"""Of the proof load, for what is taken apart again; common practice, no source."""
SHARE_OF_YIELD = 0.9
"""Of the yield stress that VDI 2230 tightens to."""
LUBRICATIONS = {
    "anti-seize": "anti-seize / moly paste",
    "copper grease": "anti-seize / moly paste",
    "moly": "anti-seize / moly paste",
    "thread lock": "thread-locking compound on steel",
    "oil": "machine/engine oil",
    "zinc flake": "zinc-flake coating",
    "zinc": "zinc plated",
    "cadmium": "cadmium",
    "stainless": "stainless on stainless dry",
    "dry": "plain steel, dry and clean",
}
"""Words for the state of a thread and the row of the nut factors that they mean."""
DRY = "plain steel, dry and clean"
FASTENER = re.compile(
    r"\bM(?P<d>\d+)(?: ?[x×] ?(?P<p>[0-3](?:\.\d+)?))?(?![\d.])"
    r"(?:.*?\b(?P<cls>8\.8|10\.9|12\.9)\b)?",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Tightening:
    """The torque of one fastener in one state, with the preloads that it may come to."""

    thread: str
    property_class: str
    lubrication: str
    """Row of the nut factors."""
    torque: float
    """For the typical nut factor [N m]."""
    lowest: float
    """For the lowest nut factor, the most slippery: above this it may be overloaded [N m]."""
    highest: float
    """For the highest nut factor [N m]."""
    preload: float
    """Aimed at: 75 % of the proof load [N]."""

    @property
    def spread(self) -> tuple[float, float]:
        """The preload that the torque may give, as shares of the one aimed at."""
        return self.torque / self.highest, self.torque / self.lowest


def stress_area(diameter: float, pitch: float) -> float:
    """Return the stress area of a metric thread [mm2].

    Parameters
    ----------
    diameter, pitch : float
        Nominal diameter and pitch [mm].

    Notes
    -----
    A_s = pi/4 (d - 0.9382 P)^2: ISO 898-1.

    Examples
    --------
    >>> round(stress_area(10, 1.5), 1)
    58.0
    """
    return math.pi / 4 * (diameter - 0.9382 * pitch) ** 2


def vdi_preload(diameter: float, pitch: float, yield_stress: float, friction: float) -> float:
    """Return the preload at 90 % of yield with torsion [N].

    Parameters
    ----------
    diameter, pitch : float
        Nominal diameter and pitch [mm].
    yield_stress : float
        0.2 % proof strength [MPa].
    friction : float
        Friction of the thread.

    Notes
    -----
    VDI 2230 (2003), from memory: sigma_red = 0.9 R_p, d_0 = (d_2 + d_3)/2.
    """
    pitch_diameter, minor = diameter - 0.649519 * pitch, diameter - 1.226869 * pitch
    stressed = (pitch_diameter + minor) / 2
    lead = pitch / (math.pi * pitch_diameter)
    torsion = 1.5 * pitch_diameter / stressed * (lead + 1.155 * friction)
    tension = SHARE_OF_YIELD * yield_stress / math.sqrt(1 + 3 * torsion**2)
    return math.pi / 4 * stressed**2 * tension


def vdi_torque(
    preload: float, diameter: float, pitch: float, friction: float, head: float
) -> float:
    """Return the torque for a preload [N m].

    Parameters
    ----------
    preload : float
        [N]
    diameter, pitch : float
        Nominal diameter and pitch [mm].
    friction : float
        Of thread and head.
    head : float
        Mean diameter of the bearing surface under the head [mm].

    Notes
    -----
    T = F (0.16 P + 0.58 d_2 mu + mu D_Km/2): VDI 2230, short form.
    """
    pitch_diameter = diameter - 0.649519 * pitch
    arm = 0.16 * pitch + friction * (0.58 * pitch_diameter + head / 2)
    return preload * arm / 1000


def tightening(thread: Thread, property_class: str, lubrication: str = DRY) -> Tightening | None:
    """Return the torque for a bolt that will be taken apart again.

    Parameters
    ----------
    thread : Thread
        A metric thread.
    property_class : str
        `8.8`, `10.9` or `12.9`; of another class nothing is known.
    lubrication : str
        A row of the nut factors.

    Notes
    -----
    T = K F d, F = 0.75 of the proof load.
    """
    proof = _proof_stress(property_class, thread.major)
    if proof is None:
        return None
    factors = keyed("k_factors", "condition")[lubrication]
    preload = SHARE_OF_PROOF * proof * stress_area(thread.major, thread.pitch)
    arm = preload * thread.major / 1000
    return Tightening(
        thread=thread.name,
        property_class=property_class,
        lubrication=lubrication,
        torque=float(factors["K_typical"]) * arm,
        lowest=float(factors["K_low"]) * arm,
        highest=float(factors["K_high"]) * arm,
        preload=preload,
    )


def _proof_stress(property_class: str, diameter: float) -> float | None:
    return next(
        (
            float(row["proof_stress_MPa"])
            for row in table("property_classes")
            if row["property_class"] == property_class and diameter <= float(row["largest_mm"])
        ),
        None,
    )


def lubrication_of(words: str) -> str:
    """Return the row of the nut factors that words mean; dry where they say nothing.

    Examples
    --------
    >>> lubrication_of("studs with anti-seize"), lubrication_of("clean")
    ('anti-seize / moly paste', 'plain steel, dry and clean')
    """
    said = words.casefold()
    return next((row for word, row in LUBRICATIONS.items() if word in said), DRY)


def fastener_in(words: str) -> tuple[Thread, str | None] | None:
    """Return the metric thread and property class that words name.

    Examples
    --------
    >>> thread, property_class = fastener_in("Stud, M8x1.25, 10.9")
    >>> thread.name, property_class
    ('M8x1.25', '10.9')
    """
    found = FASTENER.search(words)
    if found is None:
        return None
    pitch = found["p"] or COARSE.get(found["d"])
    if pitch is None:
        return None
    size = f"M{found['d']}x{float(pitch):g}"
    thread = thread_of(End(kind=EndKind.METRIC, size=size, gender=Gender.MALE))
    return (thread, found["cls"]) if thread else None
