"""How tight: preload and torque of a bolt by its thread, class and lubrication, with the spread.

The maker's own figure beats every one of these.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from hoistbook.engineering.fasteners import (
    preload_of_proof_stress,
    stress_area,
    torque_of_nut_factor,
)
from hoistbook.fit.tables import Row, keyed, table
from hoistbook.fit.threads import Thread, thread_of
from hoistbook.values.end import End, EndKind, Gender
from hoistbook.values.end_words import COARSE

SHARE_OF_PROOF = 0.75
"""Of the proof load, for what is taken apart again; common practice, no source."""
LUBRICATIONS = {
    r"anti.?seize|copper (?:grease|paste)|assembly paste|\bmoly": "anti-seize / moly paste",
    r"thread.?lock": "thread-locking compound on steel",
    r"\boiled\b|\b(?:in|with|engine|machine|drop of) oil\b": "machine/engine oil",
    r"\bzinc.flake\b": "zinc-flake coating",
    r"\bzinc\b|\bgalvani[sz]ed\b": "zinc plated",
    r"\bcadmium\b": "cadmium",
    r"\bstainless\b": "stainless on stainless dry",
    r"\bdry\b": "plain steel, dry and clean",
}
"""Words for the state of a thread and the row of the nut factors that they mean; "oil" alone says
where a bolt is, not what is on it."""
DRY = "plain steel, dry and clean"
FASTENER = re.compile(r"\bM(?P<d>\d+)(?: ?[x×] ?(?P<p>[0-3](?:\.\d+)?))?(?![\d.])", re.IGNORECASE)
HOLLOW = re.compile(r"\b(?:banjo|hollow|drilled)\b", re.IGNORECASE)
BORE = re.compile(
    r"\b(?P<a>\d+(?:\.\d+)?) ?mm bore\b|\bbore (?P<b>\d+(?:\.\d+)?) ?mm\b", re.IGNORECASE
)
"""Of a hollow bolt: what is drilled out of its section."""
CLASS = re.compile(r"(?<![\d.])(?:8\.8|10\.9|12\.9)(?![\d.])")


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
    source: str
    """Of the nut factors and of the proof stress."""
    bore: float = 0.0
    """Of a hollow bolt [mm]."""

    @property
    def state(self) -> str:
        """The bolt in words: "M8x1.25, 10.9, anti-seize / moly paste"."""
        drilled = f", {self.bore:g} mm bore" if self.bore else ""
        return f"{self.thread}, {self.property_class}, {self.lubrication}{drilled}"

    @property
    def aimed(self) -> str:
        """The torque with the two digits that a nut factor bears: "22 N m", "410 N m"."""
        return f"{float(f'{self.torque:.2g}'):g} N m"

    @property
    def spread(self) -> tuple[float, float]:
        """The preload that the torque may give, as shares of the one aimed at."""
        return self.torque / self.highest, self.torque / self.lowest


@dataclass(frozen=True, slots=True)
class Bolting:
    """Bolts as words name them, with their torque where a table has their class."""

    thread: str
    tightening: Tightening | None
    """Of a hollow bolt that of what its bore leaves; None where its bore is not said."""
    hollow: bool = False

    @property
    def solid(self) -> Tightening | None:
        """The torque of a bolt that is not drilled; of a hollow one none is aimed at."""
        return None if self.hollow else self.tightening


def held_to(made: Tightening) -> str:
    """Return the torque of a bolt in words, with what the state of its thread makes of it."""
    low, high = made.spread
    return (
        f"{made.state}: {made.aimed}; that gives {low:.0%} to {high:.0%} of the preload aimed at"
    )


def bolting_in(words: str) -> Bolting | None:
    """Return the bolts that words name, or None where they name no metric thread.

    Examples
    --------
    >>> found = bolting_in("Stud M8x1.25, 10.9, anti-seize")
    >>> found.thread, found.tightening.lubrication, round(found.tightening.torque, 1)
    ('M8x1.25', 'anti-seize / moly paste', 21.9)
    """
    found = fastener_in(words)
    if found is None:
        return None
    thread, property_class = found
    drilled = BORE.search(words)
    bore = float(drilled["a"] or drilled["b"]) if drilled else 0.0
    hollow = bool(drilled or HOLLOW.search(words))
    known = property_class is not None and bool(bore) is hollow
    state = lubrication_of(words)
    made = tightening(thread, property_class or "", state, bore) if known else None
    return Bolting(thread.name, made, hollow)


def tightening(
    thread: Thread, property_class: str, lubrication: str = DRY, bore: float = 0.0
) -> Tightening | None:
    """Return the torque for a bolt that will be taken apart again.

    Parameters
    ----------
    thread : Thread
        A metric thread.
    property_class : str
        `8.8`, `10.9` or `12.9`; of another class nothing is known.
    lubrication : str
        A row of the nut factors.
    bore : float
        Of a hollow bolt [mm].

    Notes
    -----
    T = K F d, F = 0.75 of the proof load; a bore is taken off the stress area.
    """
    stress = _stresses(property_class, thread.major)
    if stress is None:
        return None
    diameter, pitch = thread.major / 1000, thread.pitch / 1000
    section = stress_area(thread_diameter=diameter, thread_pitch=pitch)
    left = section - math.pi / 4 * (bore / 1000) ** 2
    if left <= 0:
        return None
    preload = preload_of_proof_stress(
        proof_share=SHARE_OF_PROOF,
        proof_stress=float(stress["proof_stress_MPa"]) * 1e6,
        stress_area=left,
    )
    factors = keyed("k_factors", "condition")[lubrication]
    torque, lowest, highest = (
        torque_of_nut_factor(
            nut_factor=float(factors[column]), assembly_preload=preload, thread_diameter=diameter
        )
        for column in ("K_typical", "K_low", "K_high")
    )
    return Tightening(
        thread=thread.name,
        property_class=property_class,
        lubrication=lubrication,
        torque=torque,
        lowest=lowest,
        highest=highest,
        preload=preload,
        source=f"nut factor {factors['provenance']}; proof stress {stress['provenance']}",
        bore=bore,
    )


def _stresses(property_class: str, diameter: float) -> Row | None:
    return next(
        (
            row
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
    return next((row for words, row in LUBRICATIONS.items() if re.search(words, said)), DRY)


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
    marked = CLASS.search(words)
    return (thread, marked[0] if marked else None) if thread else None
