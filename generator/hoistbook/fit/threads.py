"""The thread of an end: its diameter, pitch, flank angle and taper."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from hoistbook.fit.tables import keyed
from hoistbook.values.end import DASH_SIZED, End, EndKind, Gender

METRIC = re.compile(r"M(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)")
UNIFIED = re.compile(r"(?:(\d+)-)?(\d+/\d+)-(\d+)")
DASH_COLUMNS = {
    EndKind.JIC37: "thread_37_industrial",
    EndKind.AERO37: "thread_37_industrial",
    EndKind.SAE45: "thread_45_sae",
    EndKind.ORB: "thread_oring_boss",
}
"""Aerospace and industrial 37 degree flares share the size of the thread, not its class."""
ROWS = {EndKind.NPT: "NPT", EndKind.NPTF: "NPTF", EndKind.RP: "Rp", EndKind.G: "G"}
CLOSE = 0.002
"""Two threads whose pitch and diameter are nearer than this are one; tables round to 0.001 mm."""


@dataclass(frozen=True, slots=True)
class Thread:
    """One screw thread."""

    name: str
    """As the trade writes it: `M10x1`, `NPT-1/8`, `UN-9/16-18`."""
    major: float
    """Outside diameter of the male, of a taper at its gauge plane [mm]."""
    pitch: float
    """[mm]"""
    flank: float
    """Included angle of the flanks [deg]."""
    taper: bool
    """Whether it is cut 1 in 16."""

    @property
    def label(self) -> str:
        """The thread as the trade writes it: `1/8 NPT`, `Rc 1/8`, `9/16-18`, `M10x1`."""
        family, _, size = self.name.partition("-")
        if family in ("NPT", "NPTF"):
            return f"{size} {family}"
        return size if family == "UN" else f"{family} {size}".strip()

    @property
    def said(self) -> str:
        """The thread with its numbers: "1/8 NPT (10.29 mm, 27 to the inch, 60 degrees)"."""
        metric = self.name.startswith("M")
        turns = f"pitch {self.pitch:g} mm" if metric else f"{25.4 / self.pitch:.3g} to the inch"
        return f"{self.label} ({self.major:.2f} mm, {turns}, {self.flank:g} degrees)"

    def same_as(self, other: Thread) -> bool:
        """Tell whether one runs in the other as far as pitch, diameter and flanks go."""
        return (
            abs(self.major - other.major) < CLOSE
            and abs(self.pitch - other.pitch) < CLOSE
            and self.flank == other.flank
        )


@lru_cache(maxsize=4096)
def thread_of(end: End) -> Thread | None:
    """Return the thread of an end, or None where it has none or its size is in no table.

    Examples
    --------
    >>> from hoistbook.values.end_reading import parse_end
    >>> thread_of(parse_end("-6 JIC male"))
    Thread(name='UN-9/16-18', major=14.2875, pitch=1.4111, flank=60.0, taper=False)
    """
    if end.kind in DASH_SIZED:
        row = keyed("dash_sizes", "dash").get(end.size)
        return _unified(row[DASH_COLUMNS[end.kind]]) if row else None
    if end.kind is EndKind.BSPT:
        return _listed(f"{'R' if end.gender is Gender.MALE else 'Rc'}-{end.size}")
    if end.kind in ROWS:
        return _listed(f"{ROWS[end.kind]}-{end.size}")
    return _metric(end.size) or _unified(end.size)


def _listed(name: str) -> Thread | None:
    row = keyed("threads", "id").get(name)
    if row is None:
        return None
    return Thread(
        name=name,
        major=float(row["major_mm"]),
        pitch=float(row["pitch_mm"]),
        flank=float(row["flank_angle_deg"]),
        taper=row["taper"] == "1:16",
    )


def _metric(size: str) -> Thread | None:
    found = METRIC.fullmatch(size)
    if found is None:
        return None
    return Thread(size, float(found[1]), float(found[2]), flank=60.0, taper=False)


def _unified(size: str) -> Thread | None:
    found = UNIFIED.fullmatch(size)
    if found is None:
        return None
    major = float(Fraction(found[2]) + int(found[1] or 0)) * 25.4
    return Thread(f"UN-{size}", round(major, 4), round(25.4 / int(found[3]), 4), 60.0, taper=False)
