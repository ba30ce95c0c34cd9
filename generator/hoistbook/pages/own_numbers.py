"""A reader's own numbers: what the browser needs to work a printed working out again.

The script of the site carries the formulas, printed from their own syntax trees, and the table of
the chain; a page carries the inputs that its workings start from, each at one engine speed. What
comes of interpolation, as filling and boost between two speeds, is an input there and held fixed.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from importlib import resources

import numpy as np

from hoistbook.engineering.formula import FORMULAS
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Base, Inputs, keyed
from hoistbook.figures.catalogue import CATALOGUE, LOOP_FIRST, LOOP_LAST, LOOP_START
from hoistbook.figures.chain import SWEEPS, bound_to, upstream
from hoistbook.figures.defaults import NORMAL
from hoistbook.figures.draws import LOW_POINT, SAMPLES, WIDTHS_PER_DEVIATION
from hoistbook.figures.finding import MAY_BE_NOTHING
from hoistbook.figures.limits import AT_MOST, THRESHOLDS
from hoistbook.figures.row import Row
from hoistbook.figures.variants import at_one_speed
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formats import Formats
from hoistbook.pages.formulas import short_words
from hoistbook.pages.javascript import inputs_of, javascript

_SCRIPTS = resources.files("hoistbook.pages") / "scripts"
_PIECES = ("chain", "sheet", "carry")
SPEED = "engine_speed"

Json = dict[str, object]


@dataclass(slots=True)
class Chains:
    """The chains of one page, each once, by the number that its workings name."""

    listed: list[Json] = field(default_factory=list)

    def number(self, inputs: Inputs, speed: float | None, names: Sequence[str] = ()) -> int:
        """Return the number of the chain that leads to the names at an engine speed.

        Parameters
        ----------
        inputs
            What the chain starts from.
        speed
            Engine speed [1/min], one of the inputs' own; None for what does not change with it.
        names
            What is to be worked out; without any, all that there is.
        """
        chain = _chain(at_one_speed(inputs, speed), names)
        if chain not in self.listed:
            self.listed.append(chain)
        return self.listed.index(chain)


def _chain(inputs: Inputs, names: Sequence[str]) -> Json:
    """Return the inputs as the script takes them, without those that no name rests on."""
    needed = upstream(inputs, names) if names else None
    bases = [base for base in inputs.bases if needed is None or base.key in needed]
    rows = [_base(base) for base in bases]
    if inputs.speeds and (needed is None or SPEED in needed):
        rows.append({"name": SPEED, "value": inputs.speeds[0], "half": 0})
    kept = next((base.learnt.kept for base in bases if base.learnt), None)
    chain: Json = {
        "bases": rows,
        "conditions": sorted(inputs.conditions),
        "subjects": [
            {"kind": each.kind, "of": keyed("", each.name), "binds": bound_to(each, inputs)}
            for each in inputs.subjects
            if needed is None or any(name.endswith(f" of {each.name}") for name in needed)
        ],
    }
    return chain if kept is None else chain | {"kept": _as_text(kept)}


def _base(base: Base) -> Json:
    """Return one input; what is the script's default is left out, for pages must stay light."""
    value = base.value if isinstance(base.value, float) else float(np.atleast_1d(base.value)[0])
    row: Json = {"name": base.key, "value": value, "half": base.half_width}
    if base.shape != NORMAL:
        row["shape"] = base.shape
    if base.floor != 0:
        row["floor"] = base.floor if math.isfinite(base.floor) else None
    if math.isfinite(base.ceiling):
        row["ceiling"] = base.ceiling
    if base.of_day:
        row["day"] = base.of_day
    if base.learnt is not None:
        row |= {"drawn": base.learnt.half_width, "shift": base.learnt.shift}
    return row


def _as_text(kept: bytes) -> str:
    """Return how often each sample was kept, one character for each."""
    counts = np.bincount(np.frombuffer(kept, dtype=np.uint16), minlength=SAMPLES)
    return "".join(chr(48 + count) for count in counts)


def script_files(desk: Desk) -> dict[str, bytes]:
    """Return the script of the site: formulas and table of its chain, and what works with them."""
    pieces = [
        '"use strict";\n(() => {',
        f"const formulas = {{\n{''.join(_formulas())}}};",
        f"const table = {json.dumps(_table(desk), ensure_ascii=False, sort_keys=True)};",
        *((_SCRIPTS / f"{name}.js").read_text(encoding="utf-8") for name in _PIECES),
        "globalThis.hoistbook = Object.freeze({formulas, table, workOut, bandOf, sheets});",
        "})();\n",
    ]
    return {links.file_path(links.OWN_NUMBERS): "\n".join(pieces).encode()}


def _formulas() -> Iterator[str]:
    for name in sorted({row.formula for row in CATALOGUE}):
        yield f"{name}: {javascript(FORMULAS[name])},\n"


def _table(desk: Desk) -> Json:
    return {
        "rows": [_row(row) for row in CATALOGUE],
        "loop_first": LOOP_FIRST,
        "loop_last": LOOP_LAST,
        "loop_start": LOOP_START,
        "sweeps": SWEEPS,
        "samples": SAMPLES,
        "low": LOW_POINT,
        "widths": WIDTHS_PER_DEVIATION,
        "may_be_nothing": MAY_BE_NOTHING,
        "limits": {
            quantity: {
                "sign": 1 if each.side == AT_MOST else -1,
                "at": each.at,
                "near": each.near,
            }
            for quantity, each in THRESHOLDS.items()
        },
        "quantities": _quantities(desk.formats),
        "words": _words(desk),
        **desk.formats.separators,
    }


def _row(row: Row) -> Json:
    formula = FORMULAS[row.formula]
    return {
        "quantity": row.quantity,
        "formula": row.formula,
        "takes": inputs_of(formula),
        "binds": dict(row.binds),
        "only": sorted(row.only),
        "per": row.per,
        "valid": {key: list(ends) for key, ends in formula.valid.items()},
    }


def _quantities(formats: Formats) -> Mapping[str, Json]:
    """Return how each quantity of the chain is called and printed, on the page and in formulas."""
    used = {row.quantity for row in CATALOGUE} | {
        parameter for row in CATALOGUE for parameter in inputs_of(FORMULAS[row.formula])
    }
    return {
        key: {
            "words": short_words(key),
            "digits": GLOSSARY[key].digits,
            "page": formats.unit_pieces(key),
            "formula": formats.unit_pieces(key, in_formula=True),
        }
        for key in sorted(used)
    }


_OWN = (
    "above_zero",
    "at_least",
    "at_most",
    "back",
    "by_yours",
    "impossible",
    "in_range",
    "label",
    "no_number",
    "no_such_number",
    "of",
    "this_is_yours",
    "which",
    "yours",
)


def _words(desk: Desk) -> Mapping[str, str]:
    """Return the words of the script; it puts in the names itself."""
    text = desk.words.text
    shared = {
        "between": text("figure.band"),
        "banded": text("figures.band"),
        "in_cell": text("workings.banded"),
        "within": text("limit.within"),
        "near": text("limit.near_its_limit"),
        "over": text("limit.over_its_limit"),
    }
    return shared | {key: text(f"own.{key}") for key in _OWN}
