"""What of a log's cells are readings: neither gaps, nor what cannot be, nor lone spikes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hoistbook.authored.context import Context
from hoistbook.authored.sheets import Numbers, Sheet
from hoistbook.problems import Place
from hoistbook.values.possible import POSSIBLE

Column = NDArray[np.float64]
Lines = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Told:
    """How it is said that readings are left out."""

    code: str
    what: str
    hint: str


GAPS = Told(
    "no-reading",
    "lines without a reading",
    "they are left out there; a logger that has each channel in its own time leaves gaps",
)
BEYOND = Told(
    "impossible-reading",
    "readings that cannot be",
    "they are left out; look at the unit of the column, and at what the logger writes for none",
)
ALONE = Told(
    "lone-reading",
    "readings that stand out alone",
    "they are left out as slips of a sensor; if they are none, log the run again",
)

BESIDE = 4
"""Readings on either side, by engine speed, from which a spike stands out."""
TRIMMED = 0.05
"""Share of readings at either end that does not count to what a column spans."""
OF_MIDDLE = 0.2
"""Share of its middle by which a reading may lie off too (common practice, no source)."""
MOST_SPIKES = 0.01
"""Share of the lines from which on readings that stand out are no lone spikes."""


def readings(
    sheet: Sheet, found: Numbers, drive: str, context: Context
) -> dict[str, tuple[float, ...]]:
    """Return the columns of a log with a gap wherever they hold no reading, and say so once.

    Parameters
    ----------
    sheet
        The file.
    found
        Its numbers.
    drive
        The column that says what the engine gives; what is left out where it does not pull is
        not told.
    context
        Takes the notices.
    """
    given = {name: np.array(values) for name, values in found.columns.items()}
    columns = {name: _possible(sheet, name, values) for name, values in given.items()}
    pulls = ~(columns[drive] <= 0)
    lacking = {name: np.isnan(each) & pulls for name, each in columns.items()}
    gaps = {name: np.isnan(given[name]) & at for name, at in lacking.items()}
    _tell(sheet, found, gaps, GAPS, context)
    beyond = {name: ~gaps[name] & at for name, at in lacking.items()}
    _tell(sheet, found, beyond, BEYOND, context)
    speeds = columns["speed"]
    spikes = {
        name: _spikes(speeds, np.where(pulls, each, np.nan))
        for name, each in columns.items()
        if name not in ("speed", "time")
    }
    _tell(sheet, found, spikes, ALONE, context)
    for name, where in spikes.items():
        columns[name][where] = np.nan
    return {name: tuple(each.tolist()) for name, each in columns.items()}


def _possible(sheet: Sheet, name: str, values: Column) -> Column:
    """Return a column with a gap where it holds what cannot be."""
    low, high, _ = POSSIBLE.get(sheet.form.columns[name].possible, (-np.inf, np.inf, ""))
    return np.where((values >= low) & (values <= high), values, np.nan)


def _spikes(speeds: Column, values: Column) -> Lines:
    """Return at which lines a reading stands out from those on both sides of it.

    A lone reading that lies off its neighbours by more than all others span, and a fifth of their
    middle beside, is a slip of the sensor: as the highest of a curve it would be its headline.
    """
    found = np.zeros(len(values), dtype=bool)
    known = np.flatnonzero(np.isfinite(speeds) & np.isfinite(values))
    if len(known) <= 2 * BESIDE:
        return found
    lines = known[np.argsort(speeds[known], kind="stable")]
    ordered = values[lines]
    cut = max(1, int(TRIMMED * len(ordered)))
    low, middle, high = np.partition(ordered, (cut, len(ordered) // 2, -1 - cut))[
        [cut, len(ordered) // 2, -1 - cut]
    ]
    aside = OF_MIDDLE * abs(middle)
    outside = np.flatnonzero((ordered > high + aside) | (ordered < low - aside))
    if len(outside) > max(1, MOST_SPIKES * len(ordered)):
        return found
    limit = high - low + aside
    found[lines[[at for at in outside.tolist() if _alone(ordered, at, limit)]]] = True
    return found


def _alone(ordered: Column, at: int, limit: float) -> bool:
    """Return whether a reading lies off those on each side of it, both above or both below."""
    sides = (ordered[max(0, at - BESIDE) : at], ordered[at + 1 : at + 1 + BESIDE])
    off = [float(ordered[at] - np.median(side)) for side in sides if len(side)]
    return min(off) > limit or max(off) < -limit


def _tell(
    sheet: Sheet, found: Numbers, where: Mapping[str, Lines], told: Told, context: Context
) -> None:
    """Say how many readings are left out in each column, and what the first of them is."""
    said, firsts = [], []
    for name, at in where.items():
        if at.any():
            first = found.lines[int(np.argmax(at))]
            cell = sheet.cell(name, first)
            shown = f"`{cell[:40]}`" if cell else "nothing"
            said.append(f"{int(at.sum())} of {name} ({shown} on line {first})")
            firsts.append(first)
    if said:
        message = f"{told.what}, of {len(found.lines)} lines in this log: {', '.join(said)}"
        place = Place(sheet.file, min(firsts), 1, sheet.lines[min(firsts) - 1][:200])
        context.notice(told.code, message, place, told.hint)
