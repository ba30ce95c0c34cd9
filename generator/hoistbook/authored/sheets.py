"""CSV files from elsewhere: commas, semicolons or tabs, points or commas before decimals.

A sheet is the log of a power run or the points of a compressor map. Its columns are found by their
headings or by what an author calls them; a unit stands in the heading or behind the author's name.
"""

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
from hoistbook.authored.fields import Reader
from hoistbook.authored.folder import read_text
from hoistbook.authored.nodes import Node, Table
from hoistbook.problems import Place, Problem, closest
from hoistbook.units import dimension, from_unit, to_unit
from hoistbook.values.plausible import likely_slip
from hoistbook.values.quantity import Quantity, likely, parse_unit

MOST_PROBLEMS = 3
"""Problems of one sheet; a file of another kind would have one on every line."""

LARGEST = 1e15
"""From here on a number is what a logger writes for none, as the largest of its kind, 3.4e38."""

_PLAIN = frozenset("0123456789.+-eE \n")
_GAPS = ("", "-", "--", "---", "nan", "n/a", "#n/a", "null", "none")


@dataclass(frozen=True, slots=True)
class Column:
    """One thing that a sheet may hold."""

    dimension: str
    headings: tuple[str, ...] = ()
    """Headings that are taken for it without being named, beside its own name."""
    bare: str = ""
    """The unit where the heading names none; empty where one is needed."""
    usual: str = ""
    """Where nearly all such values lie, as "300 rpm to 20000 rpm" (common practice, no source)."""
    reference: str = ""
    """`gauge` or `absolute`, where its pressure has to say which."""
    possible: str = ""
    """What of the table of what can be it is; empty where anything goes."""
    beyond: str = ""
    """What to do where such a column lies elsewhere, if not to look at its unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """One sort of sheet."""

    what: str
    """As messages name it: "log"."""
    columns: Mapping[str, Column]
    most_rows: int
    most_bytes: int
    shorten: str
    """What to do with one that has more rows."""


@dataclass(frozen=True, slots=True)
class _Picked:
    """One column of the file and how to read it."""

    index: int
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """What a sheet holds."""

    columns: Mapping[str, tuple[float, ...]]
    """Our name of each column -> its values in SI (speed in 1/min), in file order; gaps NaN."""
    lines: tuple[int, ...]
    """The line of the file on which each row stands."""


class Sheet:
    """One file on the way to numbers."""

    def __init__(self, form: Form, file: str, text: str) -> None:
        self.form = form
        self.file = file
        self.problems: list[Problem] = []
        self.lines = text.split("\n")
        start = next((n for n, line in enumerate(self.lines) if _holds_text(line)), 0)
        self.start = start
        self.delimiter = _delimiter(self.lines[start])
        self.rows = list(csv.reader(self.lines[start:], delimiter=self.delimiter))
        self.headings = [cell.strip() for cell in self.rows[0]] if self.rows else []
        self.picked: dict[str, _Picked] = {}

    def problem(self, code: str, message: str, row: int, hint: str) -> None:
        """Note what is wrong in a row; that of the headings is 0."""
        number = min(self.start + row, len(self.lines) - 1)
        place = Place(self.file, number + 1, 1, self.lines[number][:200])
        self.problems.append(Problem(code, message, place, hint))

    def cell(self, name: str, line: int) -> str:
        """Return what stands in a column on a line of the file."""
        row, index = self.rows[line - 1 - self.start], self.picked[name].index
        return row[index].strip() if index < len(row) else ""

    def wrong_at(self, code: str, message: str, line: int, hint: str) -> None:
        """Note what is wrong on a line of the file."""
        self.problem(code, message, line - 1 - self.start, hint)


def sheet_of(form: Form, file: str, context: Context) -> Sheet | None:
    """Return a file as a sheet, or None after noting why it is none."""
    text, problems = read_text(context.root, file, form.most_bytes)
    context.problems.extend(problems)
    if text is None or problems:
        return None
    if not text.strip():
        hint = "export it again"
        context.problem("empty-log", f"the {form.what} is empty", Place(file), hint)
        return None
    try:
        return Sheet(form, file, text)
    except csv.Error as error:
        place = Place(file)
        context.problem("bad-log", f"this is not a CSV file ({error})", place, "export it again")
        return None


def columns_reader(form: Form) -> Reader[dict[str, str]]:
    """Return what reads which heading of a sheet is which column of ours."""

    def read(node: Node, context: Context) -> dict[str, str] | None:
        if not isinstance(node, Table):
            message = f"columns are written as names and the {form.what}'s headings"
            context.problem("wrong-shape", message, node.place, "as `{speed: RPM in 1/min}`")
            return None
        found = {}
        for entry in node.entries:
            name = entry.key.value
            if name not in form.columns:
                near = closest(name, form.columns)
                hint = f"did you mean `{near}`?" if near else f"one of: {', '.join(form.columns)}"
                message = f"`{name}` is not a column"
                context.problem("unknown-key", message, entry.key.place, hint)
                continue
            heading = fields.text(entry.value, context)
            if heading is not None:
                found[name] = heading
        return found

    return read


def numbers_in(sheet: Sheet, named: Mapping[str, str]) -> Numbers:
    """Return the numbers of a sheet; what is wrong with it is noted in the sheet.

    Parameters
    ----------
    sheet
        The file.
    named
        Our name of a column -> its heading, where the author says so.
    """
    _pick(sheet, named)
    return Numbers(columns={}, lines=()) if sheet.problems else _samples(sheet)


def _holds_text(line: str) -> bool:
    return bool(line.strip()) and not line.startswith("#")


def _delimiter(line: str) -> str:
    bare = re.sub(r'"[^"]*"', "", line)
    return next((sign for sign in ("\t", ";") if sign in bare), ",")


def _pick(sheet: Sheet, named: Mapping[str, str]) -> None:
    """Find each column and its unit: those that the author names, then those known by heading."""
    for name, heading in named.items():
        found = _find(heading, sheet)
        if found is None:
            near = closest(heading.rpartition(" in ")[0] or heading, sheet.headings)
            hint = f"did you mean {near}?" if near else f"it has: {', '.join(sheet.headings)}"
            message = f"the {sheet.form.what} has no column `{heading}` for {name}"
            sheet.problem("unknown-column", message, 0, hint)
            continue
        _take(name, found[0], found[1], sheet)
    taken = {each.index for each in sheet.picked.values()}
    for name, column in sheet.form.columns.items():
        alike = [
            index
            for index, heading in enumerate(sheet.headings)
            if index not in taken and _bare(heading).casefold() in (name, *column.headings)
        ]
        if name in named or not alike:
            continue
        if len(alike) > 1:
            _several(name, [sheet.headings[index] for index in alike], sheet)
            continue
        _take(name, alike[0], "", sheet)
        taken.add(alike[0])


def _several(name: str, headings: Sequence[str], sheet: Sheet) -> None:
    shown = " and ".join(f"`{each}`" for each in headings)
    message = f"several columns of this {sheet.form.what} could be {name}: {shown}"
    hint = f"say which, as `columns: {{{name}: {headings[0]}}}`"
    if len(set(headings)) < len(headings):
        hint = "give one of them another heading in the file"
    sheet.problem("several-columns", message, 0, hint)


def _find(heading: str, sheet: Sheet) -> tuple[int, str] | None:
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


def _take(name: str, index: int, unit: str, sheet: Sheet) -> None:
    column, heading = sheet.form.columns[name], sheet.headings[index]
    written = unit or _unit_in(heading) or column.bare
    known, reference = parse_unit(written)
    if known is None or dimension(known) != column.dimension:
        shown = f"`{written}`, not a unit of {name}" if written else "no unit"
        hint = f"{likely('', (column.dimension,))}; name it: `{name}: {_bare(heading)} in UNIT`"
        sheet.problem("no-unit", f"the column `{heading}` has {shown}", 0, hint)
        return
    if column.reference and reference != column.reference:
        found = f"says {reference}" if reference else "does not say gauge or absolute"
        hint = f"name it: `boost: {_bare(heading)} in {known} gauge`, or `manifold pressure: "
        hint += f"{_bare(heading)} in {known} absolute`"
        message = f"the column `{heading}` {found}; {name} is {column.reference}"
        sheet.problem("gauge-or-absolute", message, 0, hint)
        return
    sheet.picked[name] = _Picked(index, known)


def _samples(sheet: Sheet) -> Numbers:
    form, body = sheet.form, sheet.rows[1:]
    if len(body) > form.most_rows:
        message = f"this {form.what} has over {form.most_rows} lines"
        sheet.problem("large-log", message, 0, form.shorten)
        return Numbers(columns={}, lines=())
    numbers = [
        number
        for number, row in enumerate(body, start=1)
        if row and not row[0].startswith("#") and any(map(str.strip, row))
    ]
    rows = [body[number - 1] for number in numbers]
    cells = {name: _cells(rows, column.index) for name, column in sheet.picked.items()}
    comma = sheet.delimiter != "," and _decimal_comma(cells.values())
    found: dict[str, tuple[float, ...]] = {}
    bad: list[tuple[int, str, str]] = []
    for name, column in sheet.picked.items():
        values, wrong = _numbers(cells[name], comma)
        bad += [(numbers[at], name, cells[name][at]) for at in wrong[:MOST_PROBLEMS]]
        found[name] = tuple(np.asarray(from_unit(values, column.unit)).tolist())
    for number, name, cell in sorted(bad)[:MOST_PROBLEMS]:
        message = f"`{cell.strip()[:40]}` in the column {name} is not a number"
        sheet.problem("bad-number", message, number, _how_to_write(cell.strip()))
    lines = tuple(sheet.start + number + 1 for number in numbers)
    return Numbers(columns=found, lines=lines)


def _how_to_write(cell: str) -> str:
    """Return what to do about a cell that is no number."""
    if re.fullmatch(r"-?\d{1,3}([ ,.'\N{NO-BREAK SPACE}]\d{3})+([.,]\d+)?", cell):
        return "if this is a thousand and more, write it without a mark between the thousands"
    if re.fullmatch(r"-?\d+,\d+", cell):
        return "commas and points stand before decimals in one file: use one of them throughout"
    if re.fullmatch(r"\d+:\d\d(:\d\d([.,]\d+)?)?", cell):
        return "write a time in seconds, or give the column another heading"
    if parse_unit(cell)[0] is not None:
        return "if this line holds the units, put # before it, and write them under `columns`"
    return "correct the file or leave it empty"


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
            return values, np.flatnonzero(np.abs(values) >= LARGEST).tolist()
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
    plain = cell.isascii() and "_" not in cell
    return value if plain and not abs(value) >= LARGEST else None


def look_at(sheet: Sheet, found: Numbers, context: Context) -> None:
    """Say so where the middle of a column lies where such a thing never does."""
    for name, samples in found.columns.items():
        values = np.array(samples)
        values = values[np.isfinite(values)]
        if len(values) == 0:
            continue
        middle, unit = float(np.median(values)), sheet.picked[name].unit
        rounded = float(f"{to_unit(middle, unit):.4g}")
        text = f"{rounded:.15g} {unit.strip('-')}".strip()
        quantity = Quantity(value=middle, unit=unit, text=text)
        usual = sheet.form.columns[name].usual
        slip = likely_slip(f"the middle of the column {name}", quantity, usual)
        if slip is not None:
            hint = sheet.form.columns[name].beyond or slip.hint
            context.notice(slip.code, slip.message, Place(sheet.file), hint)
