"""Reads the handbook: reference values of the formulas, each with its source."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from hoistbook.engineering import FORMULAS, GLOSSARY
from hoistbook.engineering.maths import Value
from hoistbook.units import from_unit, scale

FOLDER = Path(__file__).parent / "handbook"


@dataclass(frozen=True, kw_only=True)
class Case:
    """One reference value and the way to it."""

    name: str
    formulas: tuple[str, ...]
    """Called one after the other; each finds its inputs among what is given and worked out."""
    result: str
    """Glossary key of the value that is compared."""
    given: dict[str, float]
    """SI values by glossary key."""
    expected: float
    tolerance: float
    """Half-width in SI."""
    source: str

    def worked(self, given: dict[str, Value] | None = None) -> dict[str, Value]:
        """Return all values, given and worked out; `given` stands in for the case's own."""
        values: dict[str, Value] = dict(self.given if given is None else given)
        for name in self.formulas:
            formula = FORMULAS[name]
            known = {key: values[key] for key in formula.parameters if key in values}
            values[formula.result] = formula(**known)
        return values


def _si(text: str) -> float:
    number, _, unit = text.partition(" ")
    return float(from_unit(float(number), unit))


def _size(text: str) -> float:
    number, _, unit = text.partition(" ")
    return float(number) * scale(unit)


def _cases(group: dict[str, Any], file: str) -> list[Case]:
    formulas = tuple(group.get("formulas", ()))
    cases = []
    for number, row in enumerate(group["cases"], start=1):
        given = group.get("given", {}) | row
        expected = _si(given.pop("expected"))
        cases.append(
            Case(
                name=f"{file}: {group['what']} ({number})",
                formulas=formulas,
                result=group["result"] if "result" in group else FORMULAS[formulas[-1]].result,
                given={key: _si(text) for key, text in given.items()},
                expected=expected,
                tolerance=_tolerance(group, expected),
                source=group["source"],
            )
        )
    return cases


def _tolerance(group: dict[str, Any], expected: float) -> float:
    if "absolute tolerance" in group:
        return _size(group["absolute tolerance"])
    return abs(expected) * _size(group["relative tolerance"])


def read_cases() -> list[Case]:
    """Return every case of the handbook, file by file."""
    return [
        case
        for path in sorted(FOLDER.glob("*.yaml"))
        for group in yaml.safe_load(path.read_text("utf-8"))
        for case in _cases(group, path.stem)
    ]


def constant(key: str) -> float:
    """Return the value of a physical constant."""
    value = GLOSSARY[key].default
    assert value is not None, f"{key} is no constant"
    return value
