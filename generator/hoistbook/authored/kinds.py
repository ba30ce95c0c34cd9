"""The kinds of parts that the program knows, each with its system and its facts."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, cast

from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.authored.nodes import Items, Node, Table, Text

FILE = "kinds.yaml"

THE_CAR = "car as bought"
"""Stands where a system stands for what the car itself cost and brought."""


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact that a kind of part is known by."""

    name: str
    dimensions: tuple[str, ...]
    """Dimensions that fit; ("words",) for a fact in words."""
    usual: str = ""
    """The range met in practice, as "20 mm to 120 mm"; empty where there is none to name."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One sort of part."""

    name: str
    title: str
    system: str
    facts: Mapping[str, Fact]


@cache
def kinds() -> Mapping[str, Kind]:
    """Return every kind by its name, as `kinds.yaml` lists them."""
    table = _table()["kinds"]
    return {
        name: Kind(
            name,
            row["title"],
            row["system"],
            {fact: _fact(fact, line) for fact, line in row.get("facts", {}).items()},
        )
        for name, row in table.items()
    }


@cache
def car_facts() -> Mapping[str, Fact]:
    """Return what is known of the car itself, by the flat name of each key."""
    return {name: _fact(name, line) for name, line in _table()["car"].items()}


@cache
def setting_facts() -> Mapping[str, Fact]:
    """Return what is adjusted, not fitted."""
    return {name: _fact(name, line) for name, line in _table()["settings"].items()}


@cache
def systems() -> tuple[str, ...]:
    """Return the systems of a car in the order in which pages list them."""
    return tuple(_table()["systems"])


def system_told_by(name: str) -> str | None:
    """Return the system that the words of a part's name tell, None where they leave it open.

    Examples
    --------
    >>> system_told_by("Throttle elbow, 63 mm"), system_told_by("Spark plugs")
    ('induction', 'ignition')
    >>> system_told_by("Fuel pump relay") is None, system_told_by("Silicone hose") is None
    (True, True)
    """
    told: dict[tuple[int, int], str] = {}
    for pattern, system in _clear_words():
        told |= {found.span(): system for found in pattern.finditer(name.casefold())}
    told_apart = {
        system
        for (start, end), system in told.items()
        if not any(a <= start and end <= b and (a, b) != (start, end) for a, b in told)
    }
    return told_apart.pop() if len(told_apart) == 1 and told_apart <= {*systems()} else None


@cache
def _clear_words() -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple(
        (re.compile(rf"(?<![\w-]){re.escape(word)}s?(?![\w-])"), system)
        for system, words in _table()["clear words"].items()
        for word in words
    )


@cache
def word_lists() -> Mapping[str, tuple[str, ...]]:
    """Return the lists of words that some facts choose from, as `medium`."""
    return {name: tuple(words) for name, words in _table()["words"].items()}


@cache
def _table() -> Mapping[str, Any]:
    source = files("hoistbook.authored").joinpath(FILE).read_text(encoding="utf-8")
    # The table is read like an author's file, by the one reader of YAML there is.
    node, problems = parse_front_matter(source, FILE)
    if node is None or problems:
        raise ValueError(f"{FILE} cannot be read: {problems}")
    return cast(Mapping[str, Any], _plain(node))


def _plain(node: Node) -> Any:
    match node:
        case Text():
            return node.value
        case Items():
            return [_plain(item) for item in node.items]
        case Table():
            return {entry.key.value: _plain(entry.value) for entry in node.entries}


def _fact(name: str, line: str) -> Fact:
    dimensions, _, usual = line.partition(",")
    return Fact(name, tuple(word.strip() for word in dimensions.split("|")), usual.strip())
