"""Logs of power runs: CSV with commas, semicolons or tabs, points or commas before decimals."""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from operator import itemgetter

import numpy as np
from numpy.typing import NDArray

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.folder import read_text
from hoistbook.authored.nodes import Node, Table
from hoistbook.authored.records import Log, PowerRun
from hoistbook.problems import Place, Problem, closest
from hoistbook.units import dimension, from_unit, to_unit
from hoistbook.values.plausible import likely_slip
from hoistbook.values.quantity import Quantity, likely, parse_unit


@dataclass(frozen=True, slots=True)
class Column:
    """One thing that a log may hold."""

    dimension: str
    headings: tuple[str, ...] = ()
    """Headings that are taken for it without being named, beside its own name."""
    bare: str = ""
    """The unit where the heading names none; empty where one is needed."""
    usual: str = ""
    """Where nearly all such values lie, as "300 rpm to 20000 rpm" (common practice, no source)."""


COLUMNS: Mapping[str, Column] = {
    "time": Column("time", (), "s"),
    "speed": Column(
        "speed of rotation", ("engine speed", "rpm", "revs"), "rpm", "300 rpm to 20000 rpm"
    ),
    "torque": Column("torque", ("engine torque", "wheel torque"), "", "5 N m to 3000 N m"),
    "power": Column("power", ("engine power", "wheel power"), "", "1 kW to 2000 kW"),
    "boost": Column("pressure", ("boost pressure",), "", "-1 bar to 5 bar"),
    "manifold pressure": Column(
        "pressure", ("manifold absolute pressure", "map"), "", "0.2 bar to 6 bar"
    ),
    "lambda": Column("ratio", (), "lambda", "0.6 to 1.6"),
    "charge temperature": Column(
        "temperature", ("intake air temperature",), "", "-30 degC to 200 degC"
    ),
    "oil temperature": Column("temperature"),
    "coolant temperature": Column("temperature"),
    "oil pressure": Column("pressure"),
    "fuel pressure": Column("pressure"),
    "injector duty": Column("ratio"),
    "injector time": Column("time", ("injector open time", "injection time", "pulse width")),
    "air mass flow": Column("mass flow", ("mass air flow", "air flow", "engine air flow")),
    "throttle": Column("ratio", ("throttle position",)),
    "road speed": Column("speed"),
    "voltage": Column("voltage", ("battery voltage",)),
}

MOST_ROWS = 300_000
LARGEST_LOG = 64_000_000
"""Bytes of a log: an hour of a dozen columns, read a hundred times a second."""
ENOUGH_LINES = 2
MOST_PROBLEMS = 3
"""Problems of one log; a file of another kind would have one on every line."""

_PLAIN = frozenset("0123456789.+-eE \n")
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
    text, problems = read_text(context.root, run.log, LARGEST_LOG)
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
    if sheet.problems:
        return None
    _look_at(columns, picked, run.log, context)
    return Log(columns=columns)


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
    numbers = [
        number
        for number, row in enumerate(body, start=1)
        if row and not row[0].startswith("#") and any(map(str.strip, row))
    ]
    rows = [body[number - 1] for number in numbers]
    cells = {name: _cells(rows, column.index) for name, column in picked.items()}
    comma = sheet.delimiter != "," and _decimal_comma(cells.values())
    found: dict[str, tuple[float, ...]] = {}
    bad: list[tuple[int, str, str]] = []
    for name, column in picked.items():
        values, wrong = _numbers(cells[name], comma)
        bad += [(numbers[at], name, cells[name][at]) for at in wrong[:MOST_PROBLEMS]]
        found[name] = tuple(np.asarray(from_unit(values, column.unit)).tolist())
    for number, name, cell in sorted(bad)[:MOST_PROBLEMS]:
        message = f"`{cell.strip()[:40]}` in the column {name} is not a number"
        sheet.problem("bad-number", message, number, "correct the file or leave it empty")
    return found


def _cells(rows: Sequence[Sequence[str]], index: int) -> list[str]:
    """Return one column; a row that ends before it has a gap there."""
    try:
        return list(map(itemgetter(index), rows))
    except IndexError:
        return [row[index] if index < len(row) else "" for row in rows]


def _decimal_comma(columns: Collection[Sequence[str]]) -> bool:
    """Return whether the numbers are written with a comma: some have one, and none has a point."""
    text = "".join("".join(cells) for cells in columns)
    return "," in text and "." not in text


def _numbers(cells: Sequence[str], comma: bool) -> tuple[NDArray[np.float64], list[int]]:
    """Return the number in each cell, NaN of a gap, and where the cells are that hold neither."""
    text = "\n".join(cells)
    if comma:
        text = text.replace(",", ".")
    plain = text.split("\n")
    if len(plain) == len(cells) and _PLAIN.issuperset(text):
        try:
            values = np.array(list(map(float, plain)))
        except ValueError:
            pass  # Some cell is a gap or no number: each is looked at alone.
        else:
            return values, np.flatnonzero(np.isinf(values)).tolist()
    read = [_number(cell.replace(",", ".") if comma else cell) for cell in cells]
    wrong = [at for at, value in enumerate(read) if value is None]
    return np.array([math.nan if value is None else value for value in read]), wrong


def _number(cell: str) -> float | None:
    if not cell:
        return math.nan
    try:
        value = float(cell)
    except ValueError:
        return math.nan if cell.strip().casefold() in _GAPS else None
    # Python's own reader of numbers takes more than a log should hold: 1_000, inf, other digits.
    return value if cell.isascii() and "_" not in cell and not math.isinf(value) else None


def _check_complete(sheet: _Sheet, columns: Mapping[str, Sequence[float]]) -> None:
    if "speed" not in columns or not ({"torque", "power"} & columns.keys()):
        lacking = "speed" if "speed" not in columns else "torque or power"
        hint = f"name it under `columns`; it has: {', '.join(sheet.headings)}"
        sheet.problem("no-column", f"no column of this log is known to be {lacking}", 0, hint)
        return
    speeds = np.array(columns["speed"])
    if np.isfinite(speeds).sum() < ENOUGH_LINES:
        sheet.problem("empty-log", "this log holds fewer than two lines", 0, "export it again")
        return
    name = "power" if "power" in columns else "torque"
    together = np.isfinite(speeds) & np.isfinite(np.array(columns[name])) & (speeds > 0)
    if not together.any():
        message = f"no line of this log has both an engine speed above zero and a {name}"
        sheet.problem("empty-log", message, 0, "export it again, with both in every line")


def _look_at(
    columns: Mapping[str, Sequence[float]],
    picked: Mapping[str, _Picked],
    log: str,
    context: Context,
) -> None:
    """Say so where the middle of a column lies where such a thing never does."""
    for name, samples in columns.items():
        values = np.array(samples)
        values = values[np.isfinite(values)]
        if len(values) == 0:
            continue
        middle, unit = float(np.median(values)), picked[name].unit
        text = f"{to_unit(middle, unit):.4g} {unit.strip('-')}".strip()
        quantity = Quantity(value=middle, unit=unit, text=text)
        slip = likely_slip(f"the middle of the column {name}", quantity, COLUMNS[name].usual)
        if slip is not None:
            context.notice(slip.code, slip.message, Place(log), slip.hint)
