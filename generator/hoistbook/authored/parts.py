"""Part entries: one line for a part, or a mapping where it matters."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.compressor_maps import CHARGERS, read_compressor_map
from hoistbook.authored.context import Context
from hoistbook.authored.facts import read_part_facts
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.kinds import Fact, kinds, system_told_by, systems
from hoistbook.authored.lines import (
    Piece,
    hours_in,
    pieces,
)
from hoistbook.authored.nodes import Items, Node, Table, Text
from hoistbook.authored.other_words import meant
from hoistbook.authored.part_lines import (
    Origin,
    count_of,
    made_id,
    parse_origin,
    parse_price,
    part_of_line,
)
from hoistbook.authored.records import Came, End, Part, PieceUsed
from hoistbook.problems import closest
from hoistbook.values.name import to_id
from hoistbook.values.slip import Slip

CAR = "car"
"""Stands for the car itself, as in `sold: car`; no part is called so."""


def _origin(words: str, context: Context) -> Origin | Slip:
    found = parse_origin(words)
    if found is not None:
        return found
    known = [came.value for came in Came if came not in (Came.WITH, Came.MADE)]
    near = closest(words, known)
    hint = f"did you mean {near}?" if near else f"one of: {', '.join(known)}, with ID"
    return Slip("unknown-origin", f"`{words}` does not say how the part came", hint)


def _kind(words: str, context: Context) -> str | Slip:
    if words in kinds():
        return words
    near = meant(words, kinds())
    if near:
        return Slip("unknown-kind", f"`{words}` is not a kind of part", f"did you mean {near}?")
    return words


def read_ends(node: Node, context: Context) -> dict[str, End] | None:
    """Read the ends of a part: a name and the end as spoken."""
    if not isinstance(node, Table):
        message = "ends are written as names and what they are"
        context.problem("wrong-shape", message, node.place, "as `outlet: 51 mm spigot, beaded`")
        return None
    found = {}
    for entry in node.entries:
        words = fields.text(entry.value, context)
        if words is not None:
            name = " ".join(entry.key.value.split())
            found[name] = End(name=name, text=words, place=entry.value.place)
    return found


def _table(node: Node, context: Context) -> Table | None:
    if isinstance(node, Table):
        return node
    message = "facts are written as names and values"
    context.problem(
        "wrong-shape", message, node.place, "as `facts: {turbine housing ratio: 0.49}`"
    )
    return None


_price = fields.typed(parse_price)
_system = fields.one_of(*systems())

ITEM: fields.Fields = {
    "part": Field(fields.identifier, "id"),
    "name": Field(fields.text),
    "kind": Field(fields.typed(_kind)),
    "system": Field(_system),
    "facts": Field(_table),
    "ends": Field(read_ends),
    "compressor map": Field(read_compressor_map),
    "note": Field(fields.text),
}
"""Keys of every part, bought or made."""

PART: fields.Fields = ITEM | {
    "count": Field(fields.typed(count_of)),
    "kept": Field(fields.whole),
    "maker": Field(fields.text),
    "part number": Field(fields.text),
    "paid": Field(_price),
    "list": Field(_price),
    "came": Field(fields.typed(_origin), "origin"),
    "link": Field(fields.link),
    "must": Field(fields.text),
    "good until": Field(fields.day),
}


def read_part(node: Node, context: Context) -> Part | None:
    """Read one part entry, a line or a mapping."""
    if isinstance(node, Text):
        return part_of_line(node, context)
    values = read_table(node, PART, context, "a part")
    if values is None or not _named(values, node, context, "a part"):
        return None
    count = values.get("count", 1)
    kept = values.get("kept")
    if kept is not None and kept > count:
        message = f"{kept} kept of {count} is more than there are"
        context.problem("kept-too-many", message, node.place, f"`kept` is at most {count}")
        return None
    origin = values.pop("origin", Origin(Came.BOUGHT))
    paid, listed = values.pop("paid", None), values.pop("list", None)
    return Part(
        **values,
        place=node.place,
        paid=paid.of(count) if paid else None,
        list_price=listed.of(count) if listed else None,
        came=origin.came,
        came_with=origin.came_with,
    )


def _named(values: dict[str, Any], node: Node, context: Context, what: str) -> bool:
    """Complete id, name, system and facts of a part; return whether it has a name."""
    name, id_ = values.get("name"), values.get("id")
    if name is None and id_ is None:
        if not _is_split_line(node):
            message = f"{what} needs a name"
            context.problem("missing-key", message, node.place, "as `name: Turbine inlet gasket`")
        return False
    if id_ is None:
        id_ = made_id(str(name), node, context)
        if not id_:
            return False
    if id_ == CAR:
        message = f"`{CAR}` stands for the car itself"
        context.problem("bad-id", message, node.place, "give the part another id")
        return False
    values["id"] = id_
    values["name"] = name or id_.replace("-", " ").capitalize()
    kind = kinds().get(values.get("kind", ""))
    if kind is None and "kind" in values:
        message = f"`{values['kind']}` is no kind that anything is worked out from"
        hint = "as turbocharger, injectors or pipe; `kind` may be left out"
        written = node.get("kind") if isinstance(node, Table) else None
        context.notice("unknown-kind", message, written.place if written else node.place, hint)
    if "system" not in values:
        values["system"] = kind.system if kind else system_told_by(values["name"])
    if "compressor_map" in values and values.get("kind") not in CHARGERS:
        message = "nothing reads the map of a part that compresses no air"
        hint = f"its `kind` is one of: {', '.join(CHARGERS)}"
        context.notice("idle-map", message, values["compressor_map"].place, hint)
    facts = values.pop("facts", None)
    if facts is not None:
        known: Mapping[str, Fact] = kind.facts if kind else {}
        what = f"the kind {kind.name}" if kind else "a part without a known kind"
        values["facts"] = read_part_facts(facts, context, known, what)
    return True


def _is_split_line(node: Node) -> bool:
    """Tell whether a line was meant and a colon has made a key of its beginning."""
    return isinstance(node, Table) and [entry.key.value in PART for entry in node.entries] == [
        False
    ]


def read_got(node: Node, context: Context) -> Part | None:
    """Read a part that came without a receipt, and so has to say how it came."""
    before = len(context.problems)
    part = read_part(node, context)
    if part is None or len(context.problems) > before:
        return part
    if part.came not in (Came.OWNED, Came.GIVEN, Came.FREE, Came.WITH):
        context.problem(
            "how-it-came",
            f"`{part.id}` stands under `got` and does not say how it came without a receipt",
            node.place,
            "one of: given, already owned, supplied free, with ID; what was bought stands on a "
            "receipt under `bought`",
        )
    return part


def read_part_of_car(node: Node, context: Context) -> Part | None:
    """Read a part that was on the car as bought."""
    part = read_part(node, context)
    if part is None or part.came is not Came.BOUGHT:
        return part
    return replace(part, came=Came.WITH)


def read_pieces_used(node: Node, context: Context) -> tuple[PieceUsed, ...]:
    """Read `4 off bend-48, flange-head`, or a list of such pieces."""
    found = []
    for item in node.items if isinstance(node, Items) else (node,):
        line = fields.text(item, context)
        if line is None or not isinstance(item, Text):
            continue
        for piece in pieces(line):
            match = re.fullmatch(r"(?:(\d{1,4}) off )?(.+)", piece.text, re.ASCII)
            used = to_id(match[2]) if match else ""
            if match is None or not used:
                slip = Slip("bad-id", f"`{piece.text}` names no part", "as `4 off bend-48`")
                context.slip(slip, item, piece.offset)
                continue
            found.append(PieceUsed(part=used, count=int(match[1] or 1), place=item.place))
    return tuple(found)


MADE: fields.Fields = ITEM | {
    "from": Field(read_pieces_used, "made_from"),
    "hours": Field(fields.hours),
}


def read_made(node: Node, context: Context) -> Part | None:
    """Read a part that the author made, and what it was made from; `Bracket, 2 h` will do."""
    if isinstance(node, Text):
        return _made_line(node, context)
    values = read_table(node, MADE, context, "a part that was made")
    if values is None or not _named(values, node, context, "a part that was made"):
        return None
    return Part(**values, place=node.place, came=Came.MADE)


def _made_line(node: Text, context: Context) -> Part | None:
    line = fields.text(node, context)
    if line is None:
        return None
    *before, last = pieces(line) or [Piece(line, 0)]
    hours = hours_in(last.text, context.numbers) if before else None
    if isinstance(hours, Slip):
        context.slip(hours, node, last.offset)
        return None
    name = line if hours is None else ", ".join(piece.text for piece in before)
    named: dict[str, Any] = {"name": name}
    if not _named(named, node, context, "a part that was made"):
        return None
    return Part(**named, hours=hours, place=node.place, came=Came.MADE)
