"""What was measured: power runs with their logs, and single readings."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.kinds import car_facts
from hoistbook.authored.lines import Piece, pieces
from hoistbook.authored.logs import read_columns
from hoistbook.authored.nodes import Entry, Items, Node, Table, Text
from hoistbook.authored.pictures import inside
from hoistbook.authored.records import PowerRun, Reading
from hoistbook.authored.standards import run_standard
from hoistbook.problems import closest
from hoistbook.values.evidence import Evidence
from hoistbook.values.plausible import likely_slip
from hoistbook.values.quantity import Quantity, parse_quantity, spaced
from hoistbook.values.slip import Slip

POWER_RUN = "power run"
WHEN = ("before", "after")

MEASURED: fields.Fields = {
    "when": Field(fields.one_of(*WHEN)),
    "note": Field(fields.text),
}
"""Keys beside the one that names what was measured."""

# The last word of a reading's name tells its dimension, and with two names what is usual.
_DIMENSIONS = {
    "pressure": "pressure",
    "compression": "pressure",
    "temperature": "temperature",
    "mass": "mass",
    "voltage": "voltage",
    "time": "time",
}
_USUAL = {"compression": "4 bar to 25 bar"}


RUN: fields.Fields = {
    "log": Field(fields.placed(fields.text), example="run-7.csv"),
    "at": Field(fields.one_of("wheels", "crank"), example="wheels"),
    "power standard": Field(run_standard),
    "pressure": Field(fields.quantity("pressure")),
    "temperature": Field(fields.quantity("temperature")),
    "humidity": Field(fields.quantity("ratio")),
    "columns": Field(read_columns),
    "device": Field(fields.text),
    "note": Field(fields.text),
    "when": Field(fields.one_of(*WHEN)),
}


# With or without spaces where a number stands on either side; `3/8 in` is one number.
_SLASH = re.compile(r"\s/\s|(?<=\d)/(?=\d+[.,]\d)|(?<=[.,]\d)/(?=\d)|(?<=\d\d)/(?=\d\d)")


@dataclass(frozen=True, slots=True)
class Run:
    """A power run, and the node that named its log."""

    run: PowerRun
    log: Text


def read_measured(node: Node, context: Context) -> PowerRun | Reading | None:
    """Read one entry of `measured`."""
    if not isinstance(node, Table):
        message = "a measurement is written as what was measured and its value"
        context.problem("wrong-shape", message, node.place, "as `- compression: 12.1 / 12.3 bar`")
        return None
    named = [entry for entry in node.entries if entry.key.value not in MEASURED]
    beside = Table(tuple(entry for entry in node.entries if entry not in named), node.place)
    values = read_table(beside, MEASURED, context, "a measurement") or {}
    if len(named) != 1:
        message = "one entry holds one measurement"
        place = named[1].key.place if named else node.place
        context.problem("one-reading", message, place, "begin an entry with `- ` for each")
        return None
    before = values.pop("when", None) == "before"
    (entry,) = named
    if entry.key.value == POWER_RUN:
        return _run(entry.value, values, before, context)
    near = closest(entry.key.value, (POWER_RUN,))
    if near and not isinstance(entry.value, Text):
        hint = f"did you mean `{near}`?"
        context.problem("unknown-key", f"`{entry.key.value}` is no reading", entry.key.place, hint)
        return None
    return _reading(entry, values, before, context)


def _run(node: Node, beside: dict[str, Any], before: bool, context: Context) -> PowerRun | None:
    values = read_table(node, RUN, context, "a power run")
    if values is None:
        return None
    before = before or values.pop("when", None) == "before"
    target, place = values.pop("log")
    path = inside(context.root, context.file, target)
    if isinstance(path, Slip):
        context.problem(path.code, path.message, place, path.hint)
        return None
    standard = values.pop("power_standard", "none")
    return PowerRun(
        **(beside | values), log=path, power_standard=standard, place=place, before_work=before
    )


def _reading(
    entry: Entry, beside: dict[str, Any], before: bool, context: Context
) -> Reading | None:
    what = " ".join(entry.key.value.split())
    values: list[Quantity] = []
    texts = []
    for item in entry.value.items if isinstance(entry.value, Items) else (entry.value,):
        words = fields.text(item, context)
        if words is None or not isinstance(item, Text):
            return None
        texts.append(words)
        found = _quantities(what, words, item, context)
        if found is None:
            return None
        values.extend(found)
    return Reading(
        **beside,
        what=what,
        values=tuple(values),
        place=entry.value.place,
        before_work=before,
        text=spaced(", ".join(texts)),
    )


def _quantities(what: str, words: str, node: Text, context: Context) -> list[Quantity] | None:
    """Read `12.1 / 12.3 / 12.0 bar`: the last unit holds for all that have none."""
    if not any(letter.isdigit() for letter in words):
        return []
    parts = _split(words)
    evidence = Evidence.MEASURED
    if len(parts) > 1 and parts[-1].text in list(Evidence):
        evidence = Evidence(parts.pop().text)
    dimension = _DIMENSIONS.get(what.split()[-1])
    wanted = (dimension,) if dimension else ()
    last = parse_quantity(parts[-1].text, wanted, numbers=context.numbers)
    if isinstance(last, Slip):
        if re.search(r"\d\s+\d", parts[-1].text):
            last = replace(last, hint="put a slash between the values: 12.1 / 12.3 bar", offset=0)
        context.slip(last, node, parts[-1].offset)
        return None
    found = []
    for part in parts:
        text = part.text
        if part is not parts[-1] and text.replace(",", "").replace(".", "").isdigit():
            text = f"{text} {last.unit}".strip(" -")
        value = parse_quantity(text, wanted, numbers=context.numbers)
        if isinstance(value, Slip):
            context.slip(value, node, part.offset)
            return None
        found.append(replace(value, evidence=value.evidence or evidence))
    _look_at(what, found, node, context)
    return found


def _split(words: str) -> list[Piece]:
    found: list[Piece] = []
    start = 0
    for slash in [*_SLASH.finditer(words), None]:
        part = words[start : slash.start() if slash else len(words)]
        found.extend(Piece(each.text, start + each.offset) for each in pieces(part))
        start = slash.end() if slash else len(words)
    return found


def _look_at(what: str, values: list[Quantity], node: Text, context: Context) -> None:
    """Say so where a value looks like a slip; the others of its line share its unit."""
    usual = car_facts()["mass"].usual if what == "mass" else _USUAL.get(what, "")
    slips = (likely_slip(what, value, usual) for value in values)
    unlikely = next((slip for slip in slips if slip is not None), None)
    if unlikely is not None:
        context.notice(unlikely.code, unlikely.message, node.place, unlikely.hint)
