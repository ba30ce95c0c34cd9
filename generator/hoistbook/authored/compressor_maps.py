"""Compressor maps that an author has as points: flow, pressure ratio, efficiency, shaft speed.

A map holds for air of one pressure and temperature, which differ from maker to maker and move a
flow by up to 8 %: so both have to be given.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.map_points import CompressorMap
from hoistbook.authored.nodes import Node
from hoistbook.authored.pictures import inside
from hoistbook.authored.sheets import (
    MOST_PROBLEMS,
    Column,
    Form,
    Numbers,
    Sheet,
    columns_reader,
    numbers_in,
    sheet_of,
)
from hoistbook.engineering import GLOSSARY
from hoistbook.values.quantity import Quantity
from hoistbook.values.slip import Slip

CHARGERS = ("turbocharger", "supercharger")
"""Kinds of parts that have a map."""

POINTS = Form(
    what="map",
    columns={
        "flow": Column("mass flow", ("corrected flow", "mass flow", "corrected mass flow")),
        "volume flow": Column("volume flow", ("corrected volume flow",)),
        "pressure ratio": Column("ratio", ("ratio",), "-"),
        "efficiency": Column("ratio", ("isentropic efficiency",), "-"),
        "shaft speed": Column("speed of rotation", ("corrected speed", "speed"), "rpm"),
    },
    most_rows=400,
    most_bytes=200_000,
    shorten="every second point will do",
)
FEWEST = 3
"""Points that are the fewest with room between them."""

POSSIBLE = {
    "flow": (1e-3, 5.0, "between 1 g/s and 5 kg/s"),
    "pressure ratio": (1.0, 8.0, "between 1 and 8"),
    "efficiency": (0.2, 0.9, "between 20 and 90 %"),
    "shaft speed": (1e3, 500e3, "between 1,000 and 500,000 rpm"),
}
"""Least and greatest of what a map's column holds (common practice, no source)."""

KEYS: fields.Fields = {
    "points": Field(fields.placed(fields.text), example="compressor.csv"),
    "reference pressure": Field(fields.quantity("pressure"), example="100 kPa"),
    "reference temperature": Field(fields.quantity("temperature"), example="25 degC"),
    "columns": Field(columns_reader(POINTS)),
}


def read_compressor_map(node: Node, context: Context) -> CompressorMap | None:
    """Read the mapping `compressor map` of a part, and the file that it names."""
    values = read_table(node, KEYS, context, "a compressor map")
    if values is None:
        return None
    target, place = values["points"]
    path = inside(context.root, context.file, target)
    if isinstance(path, Slip):
        context.problem(path.code, path.message, place, path.hint)
        return None
    sheet = sheet_of(POINTS, path, context)
    if sheet is None:
        return None
    found = numbers_in(sheet, values.get("columns", {}))
    columns = {} if sheet.problems else _by_mass(found.columns, values)
    if not sheet.problems:
        _check(sheet, Numbers(columns=columns, lines=found.lines))
    context.problems.extend(sheet.problems)
    if sheet.problems:
        return None
    return CompressorMap(
        file=path,
        place=node.place,
        reference_pressure=values["reference_pressure"],
        reference_temperature=values["reference_temperature"],
        flow=columns["flow"],
        pressure_ratio=columns["pressure ratio"],
        efficiency=columns["efficiency"],
        shaft_speed=columns.get("shaft speed", ()),
    )


def _by_mass(
    columns: Mapping[str, tuple[float, ...]], values: Mapping[str, Any]
) -> dict[str, tuple[float, ...]]:
    """Return the columns with a volume flow as the mass of so much air of the reference state."""
    found = dict(columns)
    volumes = found.pop("volume flow", None)
    if volumes is not None and "flow" not in found:
        pressure: Quantity = values["reference_pressure"]
        temperature: Quantity = values["reference_temperature"]
        gas = GLOSSARY["air_gas_constant"].default or 0.0
        density = pressure.value / (gas * temperature.value)
        found["flow"] = tuple(density * volume for volume in volumes)
    return found


def _check(sheet: Sheet, found: Numbers) -> None:
    """Note what keeps points from being a map."""
    for name in ("flow", "pressure ratio", "efficiency"):
        if name not in found.columns:
            hint = f"name it under `columns`; it has: {', '.join(sheet.headings)}"
            sheet.problem("no-column", f"no column of this map is known to be {name}", 0, hint)
    if sheet.problems:
        return
    for line, message, hint in list(_wrong_cells(found))[:MOST_PROBLEMS]:
        sheet.wrong_at("bad-point", message, line, hint)
    if sheet.problems:
        return
    points = np.array([found.columns["flow"], found.columns["pressure ratio"]]).T
    if len(points) < FEWEST or np.linalg.matrix_rank(_scaled(points), tol=1e-3) < 2:
        count = "one point" if len(points) == 1 else f"{len(points)} points"
        which = count if len(points) < FEWEST else f"{count}, all on one line"
        hint = "give three or more that do not lie on one line"
        message = f"this map has {which}: there is no room between them to read it"
        sheet.problem("few-points", message, 0, hint)


def _scaled(points: np.ndarray[Any, np.dtype[np.float64]]) -> Any:
    """Return points about their middle, each axis over its own range."""
    ranges = np.ptp(points, axis=0)
    return (points - points.mean(axis=0)) / np.where(ranges > 0, ranges, 1.0)


def _wrong_cells(found: Numbers) -> Iterator[tuple[int, str, str]]:
    """Yield line, message and hint of what no point of a map can be."""
    first: dict[tuple[float, float], int] = {}
    names = [name for name in POSSIBLE if name in found.columns]
    for row, line in enumerate(found.lines):
        values = {name: found.columns[name][row] for name in names}
        for name, value in values.items():
            low, high, words = POSSIBLE[name]
            if np.isnan(value):
                yield line, f"this point has no {name}", "give it or take the line out"
            elif not low <= value <= high:
                message = f"{value:.4g} in SI units is no {name} of a compressor"
                yield line, message, f"{words}; look at the number and the unit of the column"
        point = (values["flow"], values["pressure ratio"])
        if point in first:
            message = f"this point stands on line {first[point]} already"
            yield line, message, "take one of the two lines out"
        first.setdefault(point, line)
