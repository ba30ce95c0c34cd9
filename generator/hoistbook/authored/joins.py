"""Joins: `turbo oil in to feed-hose end`, resolved once every part of the journal is known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.nodes import Node, Text
from hoistbook.authored.records import Episode, Join, JoinEnd, Part
from hoistbook.problems import Place, closest

EXAMPLE = "turbo oil in to feed-hose end"

JOIN: fields.Fields = {
    "join": Field(fields.placed(fields.text), "line", example=EXAMPLE),
    "sealed with": Field(fields.text),
    "torque": Field(fields.quantity("torque")),
    "knowingly": Field(fields.text),
    "note": Field(fields.text),
}


@dataclass(frozen=True, slots=True)
class JoinLine:
    """A join as written, before its parts are known."""

    line: str
    place: Place
    """Of the line itself."""
    values: dict[str, Any]


def read_join(node: Node, context: Context) -> JoinLine | None:
    """Read one join, a line or a mapping."""
    if isinstance(node, Text):
        line = fields.text(node, context)
        return None if line is None else JoinLine(line, node.place, {})
    values = read_table(node, JOIN, context, "a join")
    if values is None:
        return None
    line, place = values.pop("line")
    return JoinLine(line, place, values)


def parts_of(episode: Episode) -> Iterator[Part]:
    """Yield every part that an episode writes down."""
    for receipt in episode.bought:
        yield from receipt.parts
    yield from episode.got
    yield from episode.made
    yield from (done.new_part for done in episode.done if done.new_part is not None)


def resolve(line: JoinLine, parts: Mapping[str, Part], context: Context) -> Join | None:
    """Return the join that a line means, or None after noting what it does not say.

    Parameters
    ----------
    line
        The join as written.
    parts
        Every part of the journal by its id.
    context
        The file.
    """
    halves = _halves(line.line, parts)
    if halves is None:
        _unresolved(line, parts, context)
        return None
    ends = [_end(part, name, line, parts, context) for part, name in halves]
    if ends[0] is None or ends[1] is None:
        return None
    return Join(a=ends[0], b=ends[1], place=line.place, **line.values)


def _halves(line: str, parts: Mapping[str, Part]) -> list[tuple[str, str]] | None:
    """Split at the ` to ` that has a part on both sides; the longest ids win."""
    best: list[tuple[str, str]] | None = None
    pieces = line.split(" to ")
    for cut in range(1, len(pieces)):
        sides = [" to ".join(pieces[:cut]), " to ".join(pieces[cut:])]
        found = [half for side in sides if (half := _part_and_end(side, parts)) is not None]
        longer = best is None or sum(len(id_) for id_, _ in found) > sum(
            len(id_) for id_, _ in best
        )
        if len(found) == 2 and longer:
            best = found
    return best


def _part_and_end(side: str, parts: Mapping[str, Part]) -> tuple[str, str] | None:
    words = side.split()
    for count in range(len(words), 0, -1):
        # An id is one word; a longer beginning can only be a part's name.
        beginning = " ".join(words[:count])
        if beginning in parts:
            return beginning, " ".join(words[count:])
        named = [
            part.id for part in parts.values() if part.name.casefold() == beginning.casefold()
        ]
        if len(named) == 1:
            return named[0], " ".join(words[count:])
    return None


def _end(
    part: str, name: str, line: JoinLine, parts: Mapping[str, Part], context: Context
) -> JoinEnd | None:
    ends = parts[part].ends
    known = {each.casefold(): each for each in ends}
    if not name and len(ends) == 1:
        return JoinEnd(part=part, end=next(iter(ends)))
    if not name:
        listed = ", ".join(f"{part} {end}" for end in ends)
        message = f"this join does not say which end of `{part}`"
        hint = f"one of: {listed}" if listed else f"as `{EXAMPLE}`; ends are written with the part"
        context.problem("no-end", message, line.place, hint)
        return None
    if name.casefold() in known:
        return JoinEnd(part=part, end=known[name.casefold()])
    # An end that nobody wrote down may be joined; whether it mates is for later stages to say.
    return JoinEnd(part=part, end=name)


def _unresolved(line: JoinLine, parts: Mapping[str, Part], context: Context) -> None:
    if " to " not in line.line:
        message = "a join puts two ends together"
        context.problem("no-join", message, line.place, f"PART END to PART END, as `{EXAMPLE}`")
        return
    for side in line.line.split(" to "):
        if _part_and_end(side, parts) is None:
            word = side.split()[0] if side.split() else side
            near = closest(word, parts)
            message = f"no part is called `{word}`"
            hint = f"did you mean `{near}`?" if near else f"PART END to PART END, as `{EXAMPLE}`"
            context.problem("unknown-part", message, line.place, hint)
            return
