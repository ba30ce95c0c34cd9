"""Logs of power runs: CSV with commas, semicolons or tabs, points or commas before decimals."""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.folder import read_text
from hoistbook.authored.nodes import Node, Table
from hoistbook.authored.records import Log, PowerRun
from hoistbook.problems import Place, Problem, closest
from hoistbook.units import dimension, from_unit
from hoistbook.values.quantity import likely, parse_unit


@dataclass(frozen=True, slots=True)
class Column:
    """One thing that a log may hold."""

    dimension: str
    headings: tuple[str, ...] = ()
    """Headings that are taken for it without being named, beside its own name."""
    bare: str = ""
    """The unit where the heading names none; empty where one is needed."""


COLUMNS: Mapping[str, Column] = {
    "time": Column("time", (), "s"),
    "speed": Column("speed of rotation", ("engine speed", "rpm", "revs"), "rpm"),
    "torque": Column("torque", ("engine torque", "wheel torque")),
    "power": Column("power", ("engine power", "wheel power")),
    "boost": Column("pressure", ("boost pressure",)),
    "manifold pressure": Column("pressure", ("manifold absolute pressure", "map")),
    "lambda": Column("ratio", (), "lambda"),
    "charge temperature": Column("temperature", ("intake air temperature",)),
    "oil temperature": Column("temperature"),
    "coolant temperature": Column("temperature"),
    "oil pressure": Column("pressure"),
    "fuel pressure": Column("pressure"),
    "injector duty": Column("ratio"),
    "throttle": Column("ratio", ("throttle position",)),
    "road speed": Column("speed"),
    "voltage": Column("voltage", ("battery voltage",)),
}

MOST_ROWS = 100_000
MOST_PROBLEMS = 3
"""Problems of one log; a file of another kind would have one on every line."""

_GAPS = ("", "-", "nan", "n/a", "null")


def read_columns(node: Node, context: Context) -> dict[str, str] | None:
    """Read which heading of the log is which column of ours."""
    if not isinstance(node, Table):
        message = "columns are written as names and the log's headings"
        context.problem("wrong-shape", message, node.place, "as `{speed: RPM in 1/min}`")
        return None
    found = {}
    for entry in node.entries:
        name = entry.key.value
        if name not in COLUMNS:
            near = closest(name, COLUMNS)
            hint = f"did you mean `{near}`?" if near else f"one of: {', '.join(COLUMNS)}"
            context.problem("unknown-key", f"`{name}` is not a column", entry.key.place, hint)
            continue
        heading = fields.text(entry.value, context)
        if heading is not None:
            found[name] = heading
    return found


@dataclass(frozen=True, slots=True)
class _Picked:
    """One column of the file and how to read it."""

    index: int
    unit: str


class _Sheet:
    """One log on the way to numbers."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.lines = text.split("\n")
        start = next((n for n, line in enumerate(self.lines) if _holds_text(line)), 0)
        self.start = start
        self.delimiter = _delimiter(self.lines[start])
        self.rows = list(csv.reader(self.lines[start:], delimiter=self.delimiter))
        self.headings = [cell.strip() for cell in self.rows[0]] if self.rows else []

    def problem(self, code: str, message: str, row: int, hint: str, column: int = 1) -> None:
        number = min(self.start + row, len(self.lines) - 1)
        place = Place(self.file, number + 1, column, self.lines[number][:200])
        self.problems.append(Problem(code, message, place, hint))


def _holds_text(line: str) -> bool:
    return bool(line.strip()) and not line.startswith("#")


def _delimiter(line: str) -> str:
    bare = re.sub(r'"[^"]*"', "", line)
    return next((sign for sign in ("\t", ";") if sign in bare), ",")


def read_log(run: PowerRun, context: Context) -> Log | None:
    """Return the log of a power run, or None after noting what is wrong with it."""
    text, problems = read_text(context.root, run.log)
    context.problems.extend(problems)
    if text is None or problems:
        return None
    try:
        sheet = _Sheet(run.log, text)
    except csv.Error as error:
        place = Place(run.log)
        context.problem("bad-log", f"this is not a CSV file ({error})", place, "export it again")
        return None
    picked = _pick(sheet, run)
    columns = _samples(sheet, picked) if not sheet.problems else {}
    if not sheet.problems:
        _check_complete(sheet, columns)
    context.problems.extend(sheet.problems)
    return None if sheet.problems else Log(columns=columns)


def _pick(sheet: _Sheet, run: PowerRun) -> dict[str, _Picked]:
    """Find each column and its unit: those that the author names, then those known by heading."""
    picked: dict[str, _Picked] = {}
    for name, heading in run.columns.items():
        found = _find(heading, sheet)
        if found is None:
            near = closest(heading.rpartition(" in ")[0] or heading, sheet.headings)
            hint = f"did you mean {near}?" if near else f"it has: {', '.join(sheet.headings)}"
            message = f"the log has no column `{heading}` for {name}"
            sheet.problem("unknown-column", message, 0, hint)
            continue
        _take(name, found[0], found[1], sheet, picked)
    taken = {each.index for each in picked.values()}
    for name, column in COLUMNS.items():
        for index, heading in enumerate(sheet.headings):
            bare = _bare(heading).casefold()
            if name not in run.columns and index not in taken and bare in (name, *column.headings):
                _take(name, index, "", sheet, picked)
                taken.add(index)
    return picked


def _find(heading: str, sheet: _Sheet) -> tuple[int, str] | None:
    """Return the index of a heading, and the unit where the author adds one: `RPM in 1/min`."""
    folded = [each.casefold() for each in sheet.headings]
    bare = [_bare(each).casefold() for each in sheet.headings]
    wanted, _, unit = heading.rpartition(" in ")
    for text, its_unit in ((heading, ""), (wanted, unit)):
        for names in (folded, bare):
            if text and names.count(text.casefold()) == 1:
                return names.index(text.casefold()), its_unit
    return None


def _bare(heading: str) -> str:
    """Return a heading without the unit in brackets."""
    return re.sub(r"\s*[\[(][^\])]*[\])]\s*$", "", heading).strip()


def _unit_in(heading: str) -> str:
    match = re.search(r"[\[(]([^\])]*)[\])]\s*$", heading)
    return match[1].strip() if match else ""


def _take(name: str, index: int, unit: str, sheet: _Sheet, picked: dict[str, _Picked]) -> None:
    column, heading = COLUMNS[name], sheet.headings[index]
    written = unit or _unit_in(heading) or column.bare
    known, reference = parse_unit(written)
    if known is None or dimension(known) != column.dimension:
        shown = f"`{written}`, not a unit of {name}" if written else "no unit"
        hint = f"{likely('', (column.dimension,))}; name it: `{name}: {_bare(heading)} in UNIT`"
        sheet.problem("no-unit", f"the column `{heading}` has {shown}", 0, hint)
        return
    if name in ("boost", "manifold pressure"):
        wanted = "gauge" if name == "boost" else "absolute"
        if reference != wanted:
            found = f"says {reference}" if reference else "does not say gauge or absolute"
            hint = f"name it: `boost: {_bare(heading)} in {known} gauge`, or `manifold pressure: "
            hint += f"{_bare(heading)} in {known} absolute`"
            message = f"the column `{heading}` {found}; {name} is {wanted}"
            sheet.problem("gauge-or-absolute", message, 0, hint)
            return
    picked[name] = _Picked(index, known)


def _samples(sheet: _Sheet, picked: Mapping[str, _Picked]) -> dict[str, tuple[float, ...]]:
    body = sheet.rows[1:]
    if len(body) > MOST_ROWS:
        sheet.problem("large-log", f"this log has over {MOST_ROWS} lines", 0, "cut out the run")
        return {}
    comma = sheet.delimiter != "," and _decimal_comma(body)
    found: dict[str, list[float]] = {name: [] for name in picked}
    for number, row in enumerate(body, start=1):
        if not any(cell.strip() for cell in row) or row[0].startswith("#"):
            continue
        for name, column in picked.items():
            cell = row[column.index].strip() if column.index < len(row) else ""
            value = _number(cell, comma)
            if value is None:
                message = f"`{cell[:40]}` in the column {name} is not a number"
                sheet.problem("bad-number", message, number, "correct the file or leave it empty")
                if len(sheet.problems) >= MOST_PROBLEMS:
                    return {}
                value = math.nan
            found[name].append(from_unit(value, column.unit))
    return {name: tuple(values) for name, values in found.items()}


def _decimal_comma(rows: Sequence[Sequence[str]]) -> bool:
    cells = [cell for row in rows[:50] for cell in row]
    return any("," in cell for cell in cells) and not any("." in cell for cell in cells)


def _number(cell: str, comma: bool) -> float | None:
    if cell.casefold() in _GAPS:
        return math.nan
    plain = cell.replace(",", ".") if comma else cell
    if not re.fullmatch(r"[-+]?(\d{1,15}(\.\d*)?|\.\d+)([eE][-+]?\d{1,2})?", plain, re.ASCII):
        return None
    return float(plain)


def _check_complete(sheet: _Sheet, columns: Mapping[str, Sequence[float]]) -> None:
    if "speed" not in columns or not ({"torque", "power"} & columns.keys()):
        lacking = "speed" if "speed" not in columns else "torque or power"
        hint = f"name it under `columns`; it has: {', '.join(sheet.headings)}"
        sheet.problem("no-column", f"no column of this log is known to be {lacking}", 0, hint)
    elif sum(math.isfinite(value) for value in columns["speed"]) < 2:
        sheet.problem("empty-log", "this log holds fewer than two lines", 0, "export it again")
