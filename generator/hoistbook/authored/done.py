"""What was done to parts: one verb and what it was done to."""

from __future__ import annotations

from typing import Any

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.lines import unparted_piece
from hoistbook.authored.nodes import Items, Node, Table, Text
from hoistbook.authored.parts import read_part
from hoistbook.authored.receipts import charged
from hoistbook.authored.records import Done, Part, Verb

DONE: fields.Fields = {
    "instead of": Field(fields.identifier),
    "because": Field(fields.text),
    "for": Field(fields.money, "amount"),
    "to": Field(fields.text),
    "date": Field(fields.day),
    "count": Field(fields.whole),
    "charged": Field(charged),
}

VERBS = tuple(verb.value for verb in Verb)
NEW_PARTS = (Verb.PLANNED, Verb.ORDERED)
"""Verbs under which a part may be written down for the first time."""


def read_done(node: Node, context: Context) -> tuple[Done, ...] | None:
    """Read one entry of `done`; a list of parts gives one record for each."""
    if isinstance(node, Text):
        _without_colon(node, context)
        return None
    values = read_table(node, DONE, context, "an entry of `done`", skip=VERBS)
    if values is None or not isinstance(node, Table):
        return None
    verbs = [entry for entry in node.entries if entry.key.value in VERBS]
    if not verbs and any(entry.key.value not in DONE for entry in node.entries):
        return None
    if len(verbs) != 1:
        several = " and ".join(f"`{entry.key.value}`" for entry in verbs)
        message = (
            f"{several} stand in one entry" if verbs else "this entry does not say what was done"
        )
        place = verbs[1].key.place if verbs else node.place
        hint = "begin an entry with `- ` for each" if verbs else f"one of: {', '.join(VERBS)}"
        context.problem("one-verb", message, place, hint)
        return None
    (entry,) = verbs
    verb = Verb(entry.key.value)
    items = entry.value.items if isinstance(entry.value, Items) else (entry.value,)
    if len(items) > 1 and ("amount" in values or "charged" in values):
        message = "one sum stands here for several parts"
        hint = "write an entry with `for` for each part"
        context.problem("one-sum", message, node.place, hint)
    return tuple(
        done for item in items if (done := _one(verb, item, node, values, context)) is not None
    )


def _without_colon(node: Text, context: Context) -> None:
    """Note an entry that is words, as `fitted turbo`."""
    said = next((verb for verb in VERBS if node.value.startswith(f"{verb} ")), None)
    part = node.value.removeprefix(said or "").strip()
    hint = f"write `{said}: {part}`" if said else f"as `fitted: turbo`; one of: {', '.join(VERBS)}"
    message = "an entry of `done` is what was done, a colon, and the part"
    context.problem("wrong-shape", message, node.place, hint)


def _one(
    verb: Verb, item: Node, node: Table, values: dict[str, Any], context: Context
) -> Done | None:
    if verb in NEW_PARTS and (isinstance(item, Table) or _is_line(item)):
        new: Part | None = read_part(item, context)
        if new is None:
            return None
        return Done(verb=verb, part=new.id, new_part=new, place=item.place, **values)
    if verb in NEW_PARTS and isinstance(item, Text) and (slip := unparted_piece(item.value)):
        context.slip(slip, item)
        return None
    part = fields.identifier(item, context)
    return Done(verb=verb, part=part, place=item.place, **values) if part else None


def _is_line(item: Node) -> bool:
    return isinstance(item, Text) and "," in item.value
