"""The journal as data: the same facts as the pages, each table as CSV and as JSON.

Values stand in the units that the pages print, with the unit in a column or in a column's name
("1" for a pure number), each to the digits that its band carries.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from decimal import Decimal

from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.digits import place, place_of_band, rounded
from hoistbook.figures.figure import AS_RUN, Curve, Figure
from hoistbook.history.state import own_count
from hoistbook.pages import links
from hoistbook.pages.change_rows import change_rows
from hoistbook.pages.csv_table import Cell, Table, csv_table
from hoistbook.pages.desk import Desk
from hoistbook.pages.joins_data import joins_table
from hoistbook.pages.parts_copy import parts_list_files
from hoistbook.pages.receipts import came_of

EXACT_DIGITS = 4
"""Significant digits of a number that has no band."""


def data_files(desk: Desk) -> dict[str, bytes]:
    """Return every data file of the site, parts lists included: path -> content."""
    files = parts_list_files(desk)
    for name, make in _TABLES.items():
        table = make(desk)
        path = links.file_path(f"{links.DATA}{name}")
        files[f"{path}.csv"] = csv_table(
            table.columns, [[_text(cell) for cell in row] for row in table.rows]
        )
        files[f"{path}.json"] = _json(desk, name, table)
    return files


def _text(cell: Cell) -> str:
    return "" if cell is None else str(cell)


def _json(desk: Desk, name: str, table: Table) -> bytes:
    data = {
        "journal": desk.material.journal.title,
        "as at episode": desk.last,
        "note": desk.words("data.note"),
        name: [dict(zip(table.columns, row, strict=True)) for row in table.rows],
    }
    return (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode()


def _day(day: date | None) -> str | None:
    return day.isoformat() if day else None


def _banded(desk: Desk, value: float, low: float, high: float, quantity: str) -> tuple[Cell, ...]:
    """Return an SI value and its band in the journal's unit, no finer than the band allows."""
    middle, bottom, top = (desk.formats.in_unit(each, quantity) for each in (value, low, high))
    at = place_of_band(bottom, top) if top > bottom else place(middle, EXACT_DIGITS)
    return tuple(_cell(rounded(each, at)) for each in (middle, bottom, top))


def _cell(number: Decimal) -> Cell:
    """Return a number for JSON and CSV, with a decimal point only where it has decimals."""
    return int(number) if number.as_tuple().exponent == 0 else float(number)


def _episodes(desk: Desk) -> Table:
    return Table(
        columns=("episode", "title", "filmed", "published", "video", f"spent in {desk.currency}"),
        rows=tuple(
            (
                each.number,
                each.title,
                _day(each.filmed),
                _day(each.published),
                each.video,
                str(desk.tallies[each.number].spent),
            )
            for each in desk.material.episodes
        ),
    )


def _tally(desk: Desk) -> Table:
    columns = (
        "episode",
        "until episode",
        "date",
        "what",
        "part",
        "kind",
        "stage",
        "supplier",
        "system",
        "amount",
        "currency",
        f"amount in {desk.currency}",
        "of which postage, tax and discount",
        f"list price in {desk.currency}",
        "rate",
    )
    return Table(
        columns=columns,
        rows=tuple(
            (
                each.episode,
                each.until,
                _day(each.day),
                each.label,
                each.part,
                each.kind,
                each.stage,
                each.supplier,
                each.system,
                str(each.amount.amount),
                each.amount.currency,
                str(each.home),
                str(each.postage),
                None if each.list_home is None else str(each.list_home),
                each.rate,
            )
            for each in desk.material.ledger.entries
        ),
    )


def _parts(desk: Desk) -> Table:
    columns = (
        "part",
        "name",
        "kind",
        "system",
        "count",
        "maker",
        "part number",
        "came",
        "ends",
        "had to meet",
        "status",
        "from episode",
        "until episode",
        "what became of it",
    )
    return Table(
        columns=columns,
        rows=tuple(
            (
                state.part.id,
                state.part.name,
                state.part.kind,
                state.part.system,
                own_count(state.part),
                state.part.maker,
                state.part.part_number,
                came_of(desk, state.part),
                "; ".join(f"{each.name}: {each.text}" for each in state.part.ends.values()),
                state.part.must,
                desk.word("status", state.status),
                state.known_in,
                desk.fate(state.part.id).episode if desk.fate(state.part.id).dropped else None,
                desk.became(state.part.id),
            )
            for state in desk.states[desk.last].parts.values()
        ),
    )


def _figures(desk: Desk) -> Table:
    """Return each figure once for every episode that changed it."""
    found = {
        (each.key, each.episode): each
        for figures in desk.figures.values()
        for each in figures.figures
        if isinstance(each, Figure)
    }
    columns = (
        "quantity",
        "subject",
        "from episode",
        "value",
        "low",
        "high",
        "unit",
        "evidence",
        "power standard",
        "which",
        "formula",
        "limit",
    )
    return Table(
        columns=columns,
        rows=tuple(
            (
                each.key.quantity,
                each.key.subject,
                each.episode,
                *_banded(desk, each.value, each.low, each.high, each.key.quantity),
                desk.formats.unit(each.key.quantity).replace("-", "1"),
                desk.word("evidence", each.evidence),
                each.power_standard or None,
                each.headline,
                each.formula,
                desk.word("limit", each.limit.state) if each.limit else None,
            )
            for each in found.values()
        ),
    )


def _changes(desk: Desk) -> Table:
    return Table(
        columns=("episode", "subject", "change", "before", "after", "because"),
        rows=tuple(
            (number, change.subject, row.kind, row.before, row.after, row.because)
            for number, changes in desk.changes.items()
            for change, row in zip(
                changes, change_rows(desk, changes, desk.before(number)), strict=True
            )
        ),
    )


def _power_runs(desk: Desk) -> Table:
    unit = desk.formats.unit("power")
    columns = (
        "episode",
        "at",
        "power standard",
        "line",
        f"engine speed in {desk.formats.unit('engine_speed')}",
        f"power in {unit}",
        "low",
        "high",
    )
    return Table(
        columns=columns,
        rows=tuple(
            (
                each.episode,
                each.run.at,
                each.referred.left_in if curve is each.measured else AS_RUN,
                line,
                *_point(desk, curve, at),
            )
            for each in desk.material.comparisons
            for line, curve in _lines(each)
            for at in range(len(curve.speeds))
        ),
    )


def _lines(comparison: Comparison) -> Iterator[tuple[str, Curve]]:
    lines = {
        "measured": comparison.measured,
        "estimated before the run": comparison.said_then,
        "estimated for the run's own boost, air and mixture": comparison.same_conditions,
    }
    for line, curve in lines.items():
        if curve is not None:
            yield line, curve


def _point(desk: Desk, curve: Curve, at: int) -> tuple[Cell, ...]:
    power = _banded(desk, curve.values[at], curve.low[at], curve.high[at], "power")
    return _cell(rounded(curve.speeds[at], 0)), *power


_TABLES: Mapping[str, Callable[[Desk], Table]] = {
    "episodes": _episodes,
    "tally": _tally,
    "parts": _parts,
    "figures": _figures,
    "changes": _changes,
    "joins": joins_table,
    "power-runs": _power_runs,
}
"""By the name of their files."""
