"""Logs of power runs: which columns they have, and what makes one complete."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

import numpy as np

from hoistbook.authored.context import Context
from hoistbook.authored.readings import readings
from hoistbook.authored.records import Log, PowerRun
from hoistbook.authored.sheets import (
    Column,
    Form,
    Sheet,
    columns_reader,
    look_at,
    numbers_in,
    sheet_of,
)
from hoistbook.problems import Place
from hoistbook.values.quantity import likely

COLUMNS: Mapping[str, Column] = {
    "time": Column("time", (), "s"),
    "speed": Column(
        "speed of rotation",
        ("engine speed", "rpm", "revs"),
        "rpm",
        "300 rpm to 20000 rpm",
        possible="engine_speed",
    ),
    "torque": Column(
        "torque", ("engine torque", "wheel torque"), "", "5 N m to 3000 N m", possible="torque"
    ),
    "power": Column(
        "power", ("engine power", "wheel power"), "", "1 kW to 2000 kW", possible="power"
    ),
    "boost": Column("pressure", ("boost pressure",), "", "-1 bar to 5 bar", "gauge", "boost"),
    "manifold pressure": Column(
        "pressure",
        ("manifold absolute pressure", "map"),
        "",
        "0.2 bar to 6 bar",
        "absolute",
        "manifold_absolute_pressure",
    ),
    "lambda": Column(
        "ratio",
        (),
        "lambda",
        "0.6 to 1.6",
        possible="lambda_ratio",
        beyond="an air-fuel ratio is no lambda: divide it by the gauge's own, mostly 14.7 or 14.6",
    ),
    "charge temperature": Column(
        "temperature",
        ("intake air temperature",),
        "",
        "-30 degC to 200 degC",
        possible="charge_temperature",
    ),
    "oil temperature": Column("temperature"),
    "coolant temperature": Column("temperature"),
    "oil pressure": Column("pressure"),
    "fuel pressure": Column("pressure"),
    "injector duty": Column("ratio", possible="injector_duty"),
    "injector time": Column(
        "time", ("injector open time", "injection time", "pulse width"), possible="injector_time"
    ),
    "air mass flow": Column(
        "mass flow",
        ("mass air flow", "air flow", "engine air flow"),
        possible="air_mass_flow",
    ),
    "throttle": Column("ratio", ("throttle position",)),
    "road speed": Column("speed"),
    "voltage": Column("voltage", ("battery voltage",)),
}

LOG = Form(
    what="log",
    columns=COLUMNS,
    most_rows=300_000,
    # An hour of a dozen columns, read a hundred times a second.
    most_bytes=64_000_000,
    shorten="cut out the run",
)
ENOUGH_LINES = 2

read_columns = columns_reader(LOG)
"""Reads which heading of the log is which column of ours."""


def read_log(run: PowerRun, context: Context) -> Log | None:
    """Return the log of a power run, or None after noting what is wrong with it."""
    sheet = sheet_of(LOG, run.log, context)
    if sheet is None:
        return None
    found = numbers_in(sheet, run.columns)
    if not sheet.problems:
        _check_complete(sheet, found.columns)
    context.problems.extend(sheet.problems)
    if sheet.problems:
        return None
    look_at(sheet, found, context)
    _tell_unused(sheet, found.columns, context)
    _tell_overrun(run.log, found.columns, context)
    return Log(columns=readings(sheet, found, _drive(found.columns), context))


def _check_complete(sheet: Sheet, columns: Mapping[str, Sequence[float]]) -> None:
    if "speed" not in columns or not ({"torque", "power"} & columns.keys()):
        lacking = "speed" if "speed" not in columns else "torque or power"
        hint = _how_to_name(lacking.split()[0], sheet.headings)
        sheet.problem("no-column", f"no column of this log is known to be {lacking}", 0, hint)
        return
    speeds = np.array(columns["speed"])
    if np.isfinite(speeds).sum() < ENOUGH_LINES:
        sheet.problem("empty-log", "this log holds fewer than two lines", 0, "export it again")
        return
    name = _drive(columns)
    together = np.isfinite(speeds) & (np.array(columns[name]) > 0) & (speeds > 0)
    if not together.any():
        message = f"no line of this log has both an engine speed and a {name} above zero"
        sheet.problem("empty-log", message, 0, "export it again, with both in every line")


def _how_to_name(lacking: str, headings: Sequence[str]) -> str:
    """Return what to write where no column is known to be what is lacking."""
    if len(headings) < 2:
        return "where lines stand above the headings, put # before each of them"
    example = f"`columns: {{{lacking}: HEADING in UNIT}}`"
    return f"say under the power run which it is, as {example}; it has: {', '.join(headings)}"


def _tell_unused(sheet: Sheet, found: Collection[str], context: Context) -> None:
    """Say so where a heading begins like a column of ours and is not taken for it."""
    taken = {each.index for each in sheet.picked.values()}
    for name, column in COLUMNS.items():
        for index, heading in enumerate(sheet.headings):
            like = (f"{each} " for each in (name, *column.headings))
            if name in found or index in taken or not heading.casefold().startswith(tuple(like)):
                continue
            units = likely("", (column.dimension,))
            unit = "UNIT gauge" if column.reference == "gauge" else "UNIT"
            message = f"the column `{heading}` is not used: its heading is not quite `{name}`"
            hint = f"to use it: `columns: {{{name}: {heading} in {unit}}}`; {units}"
            place = Place(sheet.file, sheet.start + 1, 1, sheet.lines[sheet.start][:200])
            context.notice("unused-column", message, place, hint)


def _drive(columns: Mapping[str, Sequence[float]]) -> str:
    """Return which column says what the engine gives; power is believed before torque."""
    return "power" if "power" in columns else "torque"


def _tell_overrun(file: str, columns: Mapping[str, Sequence[float]], context: Context) -> None:
    """Say how many lines are left out because the engine does not pull there."""
    name = _drive(columns)
    overrun = int((np.array(columns[name]) <= 0).sum())
    if overrun:
        of_all = f"{overrun} of {len(columns[name])} lines"
        message = f"left out, since their {name} is nothing or less: {of_all} of this log"
        hint = "the engine does not pull there: the car rolls out, or stands"
        context.notice("overrun", message, Place(file), hint)
