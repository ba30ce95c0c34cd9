"""The front matter as it was written: texts, lists and mappings, each with its place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from hoistbook.problems import Place


@dataclass(frozen=True, slots=True)
class Text:
    """A scalar; always the text that was written, never a guess at its type."""

    value: str
    place: Place
    plain: bool = True
    """False where quotes or a block sign say where the text begins and ends."""


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    items: tuple[Node, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and its value."""

    key: Text
    value: Node


@dataclass(frozen=True, slots=True)
class Table:
    """A mapping, in the order in which it was written."""

    entries: tuple[Entry, ...]
    place: Place

    def get(self, key: str) -> Node | None:
        """Return the value of a key, or None."""
        return next((entry.value for entry in self.entries if entry.key.value == key), None)


Node: TypeAlias = Text | Items | Table


def kind_of(node: Node) -> str:
    """Say what stands there, for a message."""
    return {
        Text: "a text stands here",
        Items: "a list stands here",
        Table: "keys and values stand here",
    }[type(node)]


def is_blank(node: Node) -> bool:
    """Tell whether a key was written without a value."""
    return isinstance(node, Text) and node.plain and not node.value
