"""The kinds of parts that the program knows, each with its system and its facts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, cast

from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.authored.nodes import Items, Node, Table, Text

FILE = "kinds.yaml"


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
