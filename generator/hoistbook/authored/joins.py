"""Joins: `turbo oil in to feed-hose end`, resolved once every part of the journal is known."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.nodes import Node, Text
from hoistbook.authored.records import Episode, Join, JoinEnd, Part
from hoistbook.problems import Place, closest
from hoistbook.values.slip import Slip

EXAMPLE = "turbo oil in to feed-hose end"

FORM = f"PART END to PART END, as `{EXAMPLE}`"


LONGEST = 200
"""Characters of a join."""
METRIC_THREAD = re.compile(r"\bM\d", re.IGNORECASE)


def _join_line(words: str, context: Context) -> str | Slip:
    if len(words) > LONGEST:
        return Slip("too-long", f"this join is longer than {LONGEST} characters", FORM)
    return words if " to " in words else Slip("no-join", "a join puts two ends together", FORM)


_line = fields.typed(_join_line)

JOIN: fields.Fields = {
    "join": Field(fields.placed(_line), "line", example=EXAMPLE),
    "sealed with": Field(fields.text),
    "bolts": Field(fields.text),
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
        line = _line(node, context)
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


@dataclass(frozen=True, slots=True)
class Known:
    """What a join may name: parts by id or by a name that only one of them has, and their ends."""

    parts: Mapping[str, str]
    """Id, or name in small letters -> id."""
    ends: Mapping[str, Mapping[str, str]]
    """Id -> end in small letters -> end as written with the part."""


def known_in(episodes: Iterable[Episode]) -> Known:
    """Return what joins may name once every episode has been read."""
    names: dict[str, set[str]] = {}
    ends: dict[str, dict[str, str]] = {}
    for part in chain.from_iterable(map(parts_of, episodes)):
        names.setdefault(part.name.casefold(), set()).add(part.id)
        ends.setdefault(part.id, {}).update({name.casefold(): name for name in part.ends})
    unique = {name: ids.pop() for name, ids in names.items() if len(ids) == 1}
    return Known(unique | {id_: id_ for id_ in ends}, ends)


def resolve(line: JoinLine, known: Known, context: Context) -> Join | None:
    """Return the join that a line means, or None after noting what it does not say.

    Parameters
    ----------
    line
        The join as written.
    known
        What joins may name.
    context
        The file.
    """
    halves = _halves(line.line, known)
    if halves is None:
        _unresolved(line, known, context)
        return None
    _check_bolts(line, known, context)
    ends = [_end(part, name, line, known, context) for part, name in halves]
    if ends[0] is None or ends[1] is None:
        return None
    return Join(a=ends[0], b=ends[1], place=line.place, **line.values)


def _check_bolts(line: JoinLine, known: Known, context: Context) -> None:
    bolts: str = line.values.get("bolts") or ""
    named = bolts.partition(",")[0].strip()
    if named and named not in known.ends and not METRIC_THREAD.search(bolts):
        near = closest(named, known.ends)
        hint = f"did you mean `{near}`?" if near else "as `turbine-studs` or `M8x1.25 10.9, dry`"
        said = f"`{named}` is neither a part nor a metric thread"
        context.notice("unknown-bolts", said, line.place, hint)


def _halves(line: str, known: Known) -> list[tuple[str, str]] | None:
    """Split at the ` to ` that has a part on both sides; the longest ids win."""
    pieces = line.split(" to ")
    found = []
    for cut in range(1, len(pieces)):
        sides = (" to ".join(pieces[:cut]), " to ".join(pieces[cut:]))
        halves = [half for side in sides if (half := _part_and_end(side, known)) is not None]
        if len(halves) == 2:
            found.append(halves)
    return max(found, key=lambda halves: sum(len(id_) for id_, _ in halves), default=None)


def _part_and_end(side: str, known: Known) -> tuple[str, str] | None:
    words = side.split()
    for count in range(len(words), 0, -1):
        beginning = " ".join(words[:count])
        id_ = known.parts.get(beginning) or known.parts.get(beginning.casefold())
        if id_ is not None:
            return id_, " ".join(words[count:])
    return None


def _end(part: str, name: str, line: JoinLine, known: Known, context: Context) -> JoinEnd | None:
    ends = known.ends[part]
    if name:
        # An end that nobody wrote down may be joined; whether it mates is for others to say.
        near = closest(name, ends)
        if ends and near and name.casefold() not in ends:
            message = f"no end `{name}` is written down with `{part}`"
            context.notice("unknown-end", message, line.place, f"did you mean `{ends[near]}`?")
        return JoinEnd(part=part, end=ends.get(name.casefold(), name))
    if len(ends) == 1:
        return JoinEnd(part=part, end=next(iter(ends.values())))
    listed = ", ".join(f"{part} {end}" for end in ends.values())
    message = f"this join does not say which end of `{part}`"
    hint = f"one of: {listed}" if listed else f"as `{EXAMPLE}`; ends are written with the part"
    context.problem("no-end", message, line.place, hint)
    return None


def _unresolved(line: JoinLine, known: Known, context: Context) -> None:
    for side in line.line.split(" to "):
        if _part_and_end(side, known) is None:
            (word, *_) = side.split() or [side]
            near = closest(word, known.ends)
            hint = f"did you mean `{near}`?" if near else FORM
            context.problem("unknown-part", f"no part is called `{word}`", line.place, hint)
            return
