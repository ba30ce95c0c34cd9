"""Receipts, and money that is not a part."""

from __future__ import annotations

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.kinds import systems
from hoistbook.authored.lines import looks_like_money, pieces
from hoistbook.authored.nodes import Items, Node, Table, Text
from hoistbook.authored.parts import read_part
from hoistbook.authored.records import Receipt, Spent
from hoistbook.values.money import Money, parse_money
from hoistbook.values.slip import Slip


def _charged(words: str, context: Context) -> Money | Slip:
    found = parse_money(words, context.numbers, context.currency)
    if isinstance(found, Slip) or found.currency == context.currency:
        return found
    return Slip(
        "charged-currency",
        f"`charged` is what left the account, in {context.currency}, not in {found.currency}",
        f"as {found.amount} {context.currency}; the currency of the journal is set in build.yaml",
    )


charged = fields.typed(_charged)
"""Read what left the account; it is in the currency of the journal."""

RECEIPT: fields.Fields = {
    "from": Field(fields.text, "supplier", example="Turbine shop"),
    "date": Field(fields.day, example="2026-01-20"),
    "number": Field(fields.text),
    "link": Field(fields.link),
    "postage": Field(fields.money),
    "tax": Field(fields.money),
    "discount": Field(fields.money),
    "charged": Field(charged),
    "parts": Field(fields.many(read_part), example="Turbine inlet gasket, 2 off, 6.40 EUR each"),
}

SPENT: fields.Fields = {
    "what": Field(fields.text, example="Decking the head"),
    "to": Field(fields.text),
    "amount": Field(fields.money, example="90 EUR"),
    "date": Field(fields.day),
    "system": Field(fields.one_of(*systems())),
    "charged": Field(charged),
}


def read_receipt(node: Node, context: Context) -> Receipt | None:
    """Read one purchase."""
    if isinstance(node, Text):
        message = "a line stands here; a receipt has a supplier, a day and its parts"
        hint = (
            "write `- from: Shop`, `  date: 2026-01-20` and `  parts:` in lines of their own, and "
            f"under the last of them `    - {node.value}`"
        )
        context.problem("wrong-shape", message, node.place, hint)
        return None
    values = read_table(node, RECEIPT, context, "a receipt")
    if values is None:
        return None
    receipt = Receipt(**values, place=node.place)
    written = node.get("parts") if isinstance(node, Table) else None
    if isinstance(written, Items) and not written.items:
        hint = "money that is not a part stands under `spent`"
        context.problem("no-parts", "this receipt has no part", written.place, hint)
    if receipt.discount is not None and receipt.discount.amount < 0:
        message = "a discount is written as what it takes off, without a minus"
        context.problem("negative-discount", message, node.place, "as `discount: 12 EUR`")
    return receipt


def read_spent(node: Node, context: Context) -> Spent | None:
    """Read money that is not a part: `Decking the head, machine shop, 90 EUR`, or a mapping."""
    if not isinstance(node, Text):
        values = read_table(node, SPENT, context, "money spent")
        return None if values is None else Spent(**values, place=node.place)
    line = fields.text(node, context)
    if line is None:
        return None
    *before, last = pieces(line)
    if not before or not looks_like_money(last.text):
        message = "this line does not end in what was paid"
        hint = f"as `Decking the head, machine shop, 90 {context.currency}`"
        context.problem("no-amount", message, node.place, hint)
        return None
    amount = parse_money(last.text, context.numbers, context.currency)
    if isinstance(amount, Slip):
        context.slip(amount, node, last.offset)
        return None
    names = [piece.text for piece in before]
    to = names.pop() if len(names) > 1 else None
    return Spent(what=", ".join(names), to=to, amount=amount, place=node.place)
