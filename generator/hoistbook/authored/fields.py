"""Small declarative readers: a table of fields says which keys a mapping has and how each is read.

A reader takes a node and the file's context and returns a value, or None after it has noted what
is wrong; so one record's mistake never hides another's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Any, TypeVar
from urllib.parse import urlsplit

from hoistbook.authored.context import Context
from hoistbook.authored.lines import hours_in
from hoistbook.authored.nodes import Entry, Items, Node, Table, Text, is_blank, kind_of
from hoistbook.authored.other_words import meant
from hoistbook.authored.traps import quoted
from hoistbook.problems import Place, closest
from hoistbook.values.dates import parse_date
from hoistbook.values.money import Money, parse_currency, parse_money
from hoistbook.values.name import to_id
from hoistbook.values.quantity import Quantity, parse_quantity
from hoistbook.values.slip import Slip

T = TypeVar("T")
Reader = Callable[[Node, Context], T | None]

LONGEST_LINE = 2000
"""Characters of one value; prose belongs below the front matter."""


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a record."""

    read: Reader[Any]
    into: str = ""
    """The record's own name for it; the key with underscores when empty."""
    example: str = ""
    """A line to show when a required key is missing; empty for keys that may be left out."""


Fields = dict[str, Field]


def read_table(
    node: Node, fields: Fields, context: Context, what: str, skip: Iterable[str] = ()
) -> dict[str, Any] | None:
    """Return the values of a mapping by the record's own names, or None when it cannot be read.

    Parameters
    ----------
    node
        The mapping.
    fields
        Its keys.
    context
        The file.
    what
        What the mapping describes, as "a receipt".
    skip
        Further keys that are known and read elsewhere.
    """
    if not isinstance(node, Table):
        example = next(iter(fields))
        context.problem(
            "wrong-shape",
            f"{kind_of(node)}; {what} is written as keys and values",
            node.place,
            f"as `{example}: ...`; its keys: {', '.join(fields)}",
        )
        return None
    values: dict[str, Any] = {}
    misspelt: set[str | None] = set()
    known = [*fields, *skip]
    for entry in node.entries:
        found = fields.get(entry.key.value)
        if found is None:
            if entry.key.value not in known:
                misspelt.add(unknown_key(entry, known, context, what))
        elif not is_blank(entry.value):
            value = found.read(entry.value, context)
            if value is not None:
                values[found.into or entry.key.value.replace(" ", "_")] = value
    lacking = [
        key
        for key, wanted in fields.items()
        if wanted.example and (wanted.into or key.replace(" ", "_")) not in values
    ]
    for key in _unsaid(node, lacking, misspelt):
        hint = f"as `{key}: {fields[key].example}`"
        context.problem("missing-key", f"{what} needs `{key}`", node.place, hint)
    return None if lacking else values


def _unsaid(node: Table, lacking: Iterable[str], misspelt: set[str | None]) -> Iterator[str]:
    """Yield the required keys of whose lack nothing has been said yet."""
    # A text with a colon in it has become one key: that says all there is to say.
    if len(node.entries) == 1 and None in misspelt:
        return
    for key in lacking:
        given = node.get(key)
        if key not in misspelt and (given is None or is_blank(given)):
            yield key


def unknown_key(entry: Entry, known: Iterable[str], context: Context, what: str) -> str | None:
    """Note a key that a record does not have; return the one that was probably meant."""
    key = entry.key.value
    near = meant(key, known)
    listed = f"keys that {what} has: {', '.join(known)}"
    if is_blank(entry.value) and "{" in entry.key.place.text:
        listed = f"between braces a comma ends a value: quote a text that holds one; {listed}"
    elif isinstance(entry.value, Text) and (" " in key or key[:1].isupper()):
        line = quoted(f"{key}: {entry.value.value}")
        listed = f"if this is one text, quote it: {line}; {listed}"
    context.problem(
        "unknown-key",
        f"`{key}` is not a key of {what}",
        entry.key.place,
        f"did you mean `{near}`?" if near else listed,
    )
    return near


def text(node: Node, context: Context) -> str | None:
    """Read words."""
    if not isinstance(node, Text):
        hint = "write one text"
        if isinstance(node, Table) and len(node.entries) == 1:
            (entry,) = node.entries
            if isinstance(entry.value, Text):
                hint = f"quote the text: {quoted(_as_written(entry, node.place))}"
        message = f"{kind_of(node)}, not a text"
        context.problem("wrong-shape", message, node.place, hint)
        return None
    words = " ".join(node.value.split())
    if len(words) > LONGEST_LINE:
        message = f"this text is longer than {LONGEST_LINE} characters"
        context.problem("too-long", message, node.place, "move it below the front matter")
        return None
    if not words:
        context.problem("empty", "this text is empty", node.place, "write it or leave the key out")
        return None
    return words


def _as_written(entry: Entry, start: Place) -> str:
    """Return the text of which YAML has made a key: `Power: 98 kW`, or `{hot}`."""
    if isinstance(entry.value, Text) and entry.value.value:
        return f"{entry.key.value}: {entry.value.value}"
    in_braces = start.text.startswith("{", start.column - 1)
    return f"{{{entry.key.value}}}" if in_braces else f"{entry.key.value}:"


def typed(parse: Callable[[str, Context], T | Slip]) -> Reader[T]:
    """Make a reader of a parser."""

    def read(node: Node, context: Context) -> T | None:
        words = text(node, context)
        if words is None or not isinstance(node, Text):
            return None
        value = parse(words, context)
        if isinstance(value, Slip):
            context.slip(value, node)
            return None
        return value

    return read


def _whole(words: str, context: Context) -> int | Slip:
    if words.isascii() and words.isdigit() and len(words) <= 6:
        return int(words)
    return Slip("bad-number", f"`{words}` is not a whole number", "as 4")


def _hours(words: str, context: Context) -> float | Slip:
    clock = hours_in(words, context.numbers)
    if clock is not None:
        return clock
    found = parse_quantity(words.removesuffix(","), ("number", "time"), numbers=context.numbers)
    if isinstance(found, Slip):
        return found
    hours = found.value if found.unit == "-" else found.value / 3600
    if hours < 0:
        return Slip("bad-number", "hours cannot be less than none", "as 2.5 h")
    return hours


def _link(words: str, context: Context) -> str | Slip:
    hint = "as https://journal.example/page"
    if any(letter.isspace() or ord(letter) < 33 for letter in words):
        return Slip("bad-link", "a web address has no spaces", hint)
    try:
        parts = urlsplit(words)
    except ValueError:
        return Slip("bad-link", f"`{words}` is not a web address", hint)
    if parts.scheme not in ("http", "https") or not parts.netloc:
        return Slip("bad-link", f"`{words}` is not a web address", hint)
    return words


def _id(words: str, context: Context) -> str | Slip:
    made = to_id(words)
    if made:
        return made
    return Slip("bad-id", f"`{words}` has no letter or digit to make an id of", "as `turbo`")


day: Reader[date] = typed(lambda words, _: parse_date(words))
money: Reader[Money] = typed(
    lambda words, context: parse_money(words, context.numbers, context.currency)
)
currency: Reader[str] = typed(lambda words, _: parse_currency(words))
whole: Reader[int] = typed(_whole)
hours: Reader[float] = typed(_hours)
link: Reader[str] = typed(_link)
identifier: Reader[str] = typed(_id)


def quantity(*dimensions: str, reference_needed: bool = False) -> Reader[Quantity]:
    """Return a reader of quantities of these dimensions."""
    return typed(
        lambda words, context: parse_quantity(
            words, dimensions, reference_needed=reference_needed, numbers=context.numbers
        )
    )


def one_of(*words: str) -> Reader[str]:
    """Return a reader of one word out of a few."""

    def parse(found: str, context: Context) -> str | Slip:
        if found in words:
            return found
        near = closest(found, words)
        between = "; " if any("," in word for word in words) else ", "
        hint = f"did you mean {near}?" if near else f"one of: {between.join(words)}"
        return Slip("unknown-word", f"`{found}` is not known here", hint)

    return typed(parse)


def many(read: Reader[T]) -> Reader[tuple[T, ...]]:
    """Return a reader of a list; one item may stand alone."""

    def read_all(node: Node, context: Context) -> tuple[T, ...]:
        nodes = node.items if isinstance(node, Items) else (node,)
        found = []
        for item in nodes:
            if is_blank(item):
                message = "an entry of this list is empty"
                context.problem("empty", message, item.place, "write it or take it out")
                continue
            value = read(item, context)
            if value is not None:
                found.append(value)
        return tuple(found)

    return read_all


def placed(read: Reader[T]) -> Reader[tuple[T, Place]]:
    """Return a reader that keeps the place beside the value."""

    def read_placed(node: Node, context: Context) -> tuple[T, Place] | None:
        value = read(node, context)
        return None if value is None else (value, node.place)

    return read_placed
