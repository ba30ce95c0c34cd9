"""What of a log's cells are readings: neither gaps, nor what cannot be, nor lone spikes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from hoistbook.authored.context import Context
from hoistbook.authored.sheets import Numbers, Sheet
from hoistbook.problems import Place
from hoistbook.values.possible import POSSIBLE

Column = NDArray[np.float64]

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
    columns = {name: _possible(sheet, name, values) for name, values in found.columns.items()}
    pulls = ~(columns[drive] <= 0)
    _tell(sheet, found, {name: np.isnan(each) & pulls for name, each in columns.items()}, context)
    speeds = columns["speed"]
    spikes = {
        name: _spikes(speeds, np.where(pulls, each, np.nan))
        for name, each in columns.items()
        if name not in ("speed", "time")
    }
    _tell_spikes(sheet, found, spikes, context)
    for name, where in spikes.items():
        columns[name][where] = np.nan
    return {name: tuple(each.tolist()) for name, each in columns.items()}


def _possible(sheet: Sheet, name: str, values: Sequence[float]) -> Column:
    """Return a column with a gap where it holds what cannot be."""
    low, high, _ = POSSIBLE.get(sheet.form.columns[name].possible, (-np.inf, np.inf, ""))
    own = np.array(values)
    return np.where((own >= low) & (own <= high), own, np.nan)


def _spikes(speeds: Column, values: Column) -> NDArray[np.intp]:
    """Return the lines of readings that stand out on both sides of them.

    A lone reading that lies off its neighbours by more than all others span, and a fifth of their
    middle beside, is a slip of the sensor: as the highest of a curve it would be its headline.
    """
    known = np.flatnonzero(np.isfinite(speeds) & np.isfinite(values))
    if len(known) <= 2 * BESIDE:
        return known[:0]
    lines = known[np.argsort(speeds[known], kind="stable")]
    ordered = values[lines]
    cut = max(1, int(TRIMMED * len(ordered)))
    low, middle, high = np.partition(ordered, (cut, len(ordered) // 2, -1 - cut))[
        [cut, len(ordered) // 2, -1 - cut]
    ]
    aside = OF_MIDDLE * abs(middle)
    outside = np.flatnonzero((ordered > high + aside) | (ordered < low - aside))
    if len(outside) > max(1, MOST_SPIKES * len(ordered)):
        return known[:0]
    limit = high - low + aside
    return np.sort(lines[[at for at in outside.tolist() if _alone(ordered, at, limit)]])


def _alone(ordered: Column, at: int, limit: float) -> bool:
    """Return whether a reading lies off those on each side of it, both above or both below."""
    sides = (ordered[max(0, at - BESIDE) : at], ordered[at + 1 : at + 1 + BESIDE])
    off = [float(ordered[at] - np.median(side)) for side in sides if len(side)]
    return min(off) > limit or max(off) < -limit


def _tell(
    sheet: Sheet, found: Numbers, lacking: Mapping[str, NDArray[np.bool_]], context: Context
) -> None:
    """Say of how many lines a reading is left out, and what the first of them holds."""
    told, firsts = _told(sheet, found, {name: np.flatnonzero(at) for name, at in lacking.items()})
    if told:
        message = f"lines without a reading, of {len(found.lines)} in this log: {told}"
        hint = (
            "they are left out there; a logger that has each channel in its own time leaves gaps"
        )
        context.notice("no-reading", message, _place(sheet, min(firsts)), hint)


def _tell_spikes(
    sheet: Sheet, found: Numbers, spikes: Mapping[str, NDArray[np.intp]], context: Context
) -> None:
    told, firsts = _told(sheet, found, spikes)
    if told:
        of_all = f"of {len(found.lines)} in this log"
        message = f"lines whose reading stands out alone, {of_all}: {told}"
        hint = "they are left out there as slips of a sensor; if they are none, log the run again"
        context.notice("lone-reading", message, _place(sheet, min(firsts)), hint)


def _told(
    sheet: Sheet, found: Numbers, where: Mapping[str, NDArray[np.intp]]
) -> tuple[str, list[int]]:
    """Return how many there are in each column with the first of them, and the lines of these."""
    told, firsts = [], []
    for name, at in where.items():
        if len(at):
            first = found.lines[int(at[0])]
            cell = sheet.cell(name, first)
            shown = f"`{cell[:40]}`" if cell else "nothing"
            told.append(f"{len(at)} of {name} ({shown} on line {first})")
            firsts.append(first)
    return ", ".join(told), firsts


def _place(sheet: Sheet, line: int) -> Place:
    return Place(sheet.file, line, 1, sheet.lines[line - 1][:200])
