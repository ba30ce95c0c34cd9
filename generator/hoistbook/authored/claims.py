"""Claims: sentences with a number that the program verifies."""

from __future__ import annotations

import re

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.kinds import car_facts, setting_facts
from hoistbook.authored.lines import pieces
from hoistbook.authored.nodes import Node, Text
from hoistbook.authored.records import Claim
from hoistbook.problems import closest
from hoistbook.values.number import NUMBER
from hoistbook.values.quantity import Quantity, parse_quantity
from hoistbook.values.slip import Slip

EXAMPLE = "injector duty below 85 % at boost 0.8 bar gauge"

_CLAIM = re.compile(
    r"(?P<figure>.+?)\s+(?P<relation>below|above|between)\s+(?P<bounds>.+?)"
    r"(?:\s+at\s+(?P<at>.+))?"
)


_RELATIONS = dict.fromkeys(("over", "more than", "greater than", ">"), "above") | dict.fromkeys(
    ("under", "less than", "lower than", "<"), "below"
)
_OTHER = re.compile(rf"(?<=\s)(?:{'|'.join(_RELATIONS)})(?=\s)")
"""What is written for `above` and `below`."""


def read_claim(node: Node, context: Context) -> Claim | None:
    """Read one claim."""
    line = fields.text(node, context)
    if line is None or not isinstance(node, Text):
        return None
    match = _CLAIM.fullmatch(line)
    if match is None:
        message = "this claim has no `below`, `above` or `between` and a number"
        other = _OTHER.search(line)
        hint = EXAMPLE
        if other:
            hint = f"{line[: other.start()]}{_RELATIONS[other[0]]}{line[other.end() :]}"
        context.problem("bad-claim", message, node.place, f"as `{hint}`")
        return None
    bounds = _bounds(match, node, context)
    conditions = _conditions(match, node, context)
    if bounds is None or conditions is None:
        return None
    return Claim(
        text=line,
        place=node.place,
        quantity=match["figure"],
        relation=match["relation"],
        bounds=bounds,
        conditions=conditions,
    )


def _bounds(match: re.Match[str], node: Text, context: Context) -> tuple[Quantity, ...] | None:
    texts = [match["bounds"]]
    if match["relation"] == "between":
        texts = match["bounds"].split(" and ")
        if len(texts) != 2:
            message = "`between` needs two numbers with `and`"
            context.problem(
                "bad-claim", message, node.place, "as `power between 95 kW and 110 kW`"
            )
            return None
    # "between 95 and 110 kW": the unit stands once and holds for both.
    unit = re.sub(rf"^{NUMBER}", "", texts[-1])
    full = [f"{text}{unit}" if re.fullmatch(NUMBER, text) else text for text in texts]
    found = [parse_quantity(text, numbers=context.numbers) for text in full]
    for text, bound in zip(texts, found, strict=True):
        if isinstance(bound, Slip):
            context.slip(bound, node, match.string.index(text, match.start("bounds")))
            return None
    bounds = tuple(bound for bound in found if isinstance(bound, Quantity))
    return tuple(sorted(bounds, key=lambda bound: bound.value))


def _conditions(match: re.Match[str], node: Text, context: Context) -> dict[str, Quantity] | None:
    """Read `boost 0.8 bar gauge, air temperature 30 degC`: settings and what they are set to."""
    found: dict[str, Quantity] = {}
    known = {**car_facts(), **setting_facts()}
    for piece in pieces(match["at"] or ""):
        offset = match.start("at") + piece.offset
        named = re.match(r"(?P<name>[^\d+-]+?)\s+(?=(?:lambda\s)?[-+\d])", piece.text)
        name = named["name"].strip() if named else piece.text
        fact = known.get(name)
        if named is None or fact is None:
            near = closest(name, known)
            hint = f"did you mean {near}?" if near else f"as `{EXAMPLE}`"
            slip = Slip("unknown-setting", f"`{name}` is not a setting", hint, offset)
            context.slip(slip, node)
            return None
        dimensions = tuple(
            "ratio" if each in ("share", "number") else each
            for each in fact.dimensions
            if each != "gauge or absolute"
        )
        value = parse_quantity(
            piece.text[named.end() :],
            dimensions,
            reference_needed="gauge or absolute" in fact.dimensions,
            numbers=context.numbers,
        )
        if isinstance(value, Slip):
            context.slip(value, node, offset + named.end())
            return None
        found[name] = value
    return found
