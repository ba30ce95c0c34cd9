"""Facts of parts, properties of the car and settings: names with a quantity or words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import pairwise
from typing import Any

from hoistbook.authored.context import Context, within
from hoistbook.authored.fields import many, one_of, quantity, text
from hoistbook.authored.kinds import Fact, word_lists
from hoistbook.authored.lines import pieces
from hoistbook.authored.nodes import Items, Node, Table, Text, is_blank, kind_of
from hoistbook.authored.other_words import meant
from hoistbook.authored.records import BoostBySpeed, Given
from hoistbook.problems import NEARLY, closest
from hoistbook.units import units_of
from hoistbook.values.evidence import Evidence
from hoistbook.values.fuel import parse_fuel
from hoistbook.values.plausible import likely_slip
from hoistbook.values.quantity import Quantity, likely, parse_quantity
from hoistbook.values.slip import Slip

WORDS = "words"
BOOST = "boost"
"""The one setting whose mapping is a value of its own, by engine speed."""
SHARE = "share"
"""A part of a whole, 0 to 1: written as 72 % or 0.72."""


def read_part_facts(
    node: Node, context: Context, known: Mapping[str, Fact], what: str
) -> dict[str, Given]:
    """Return the facts of a part; names that its kind does not know are kept as they read."""
    found = {}
    for name, key, value in _entries(node, context, what):
        fact = known.get(name)
        if fact is None:
            near = closest(name, known, cutoff=NEARLY) or _longer(name, known)
            if near:
                message = f"`{name}` is not a fact that {what} is reckoned with"
                context.notice("unknown-fact", message, key.place, f"did you mean `{near}`?")
        given = _as_it_reads(value, context) if fact is None else read_fact(value, context, fact)
        if given is not None:
            found[name] = given
    return found


def _longer(name: str, known: Iterable[str]) -> str | None:
    """Return the only known fact whose name ends in this one: flow for static flow."""
    longer = [each for each in known if each.endswith(f" {name}")]
    return longer[0] if len(longer) == 1 else None


def read_known_facts(
    node: Node, context: Context, known: Mapping[str, Fact], what: str
) -> dict[str, Any]:
    """Return properties that all have to be known; nested mappings are joined by a space."""
    found: dict[str, Any] = {}
    for name, key, value in _entries(node, context, what):
        fact = known.get(name)
        if fact is None:
            near = meant(name, known)
            hint = f"did you mean `{near}`?" if near else f"known are: {', '.join(known)}"
            context.problem("unknown-key", f"`{name}` is not a key of {what}", key.place, hint)
            continue
        given = _SPECIAL.get(name, read_fact)(value, context, fact)
        if given is not None:
            found[name] = given
    return found


def _entries(
    node: Node, context: Context, what: str, above: str = ""
) -> list[tuple[str, Text, Node]]:
    """Return flat name, key and value of each entry."""
    if not isinstance(node, Table):
        message = f"{kind_of(node)}; keys and values tell of {what}"
        context.problem("wrong-shape", message, node.place, "as `mass: 905 kg`")
        return []
    found: list[tuple[str, Text, Node]] = []
    for entry in node.entries:
        name = f"{above} {entry.key.value}".strip()
        if isinstance(entry.value, Table) and name != BOOST:
            found.extend(_entries(entry.value, context, what, name))
        elif not is_blank(entry.value):
            found.append((name, entry.key, entry.value))
    return found


def read_fact(node: Node, context: Context, fact: Fact) -> Given | None:
    """Return one property, typed by its dimension."""
    words = text(node, context)
    if words is None or not isinstance(node, Text):
        return None
    (first, *_) = fact.dimensions
    if first == WORDS:
        return _words(node, words)
    if first in word_lists():
        chosen = one_of(*word_lists()[first])(node, context)
        return Given(value=chosen, place=node.place) if chosen else None
    dimensions = tuple("number" if name == SHARE else name for name in fact.dimensions)
    if SHARE in fact.dimensions:
        dimensions += ("ratio",)
    needed = "gauge or absolute" in dimensions
    dimensions = tuple(name for name in dimensions if name != "gauge or absolute")
    found = parse_quantity(words, dimensions, reference_needed=needed, numbers=context.numbers)
    if isinstance(found, Slip):
        context.slip(_with_usual_unit(found, words, dimensions, fact, context), node)
        return None
    if SHARE in fact.dimensions and found.unit == "-" and found.value > 1.5:
        hint = f"write {words} %" if found.value <= 150 else "as 72 % or 0.72"
        message = f"`{words}` would be {found.value * 100:g} %"
        context.problem("not-a-share", message, node.place, hint)
        return None
    unlikely = likely_slip(fact.name, found, fact.usual)
    if unlikely is not None:
        context.notice(unlikely.code, unlikely.message, node.place, unlikely.hint)
    return given_of(found, node)


def _with_usual_unit(
    slip: Slip, words: str, dimensions: tuple[str, ...], fact: Fact, context: Context
) -> Slip:
    """Return what is wrong, its hint with the unit in which a bare number would be usual."""
    if slip.code != "no-unit":
        return slip
    for unit in (unit for name in dimensions for unit in units_of(name)[:4]):
        found = parse_quantity(f"{words} {unit}", dimensions, numbers=context.numbers)
        if isinstance(found, Quantity) and likely_slip(fact.name, found, fact.usual) is None:
            return replace(slip, hint=likely(words, dimensions, unit))
    return slip


def given_of(found: Quantity, node: Node) -> Given:
    """Return a quantity as a stated property; a bare number is kept as one."""
    bare = found.unit == "-" and found.half_width is None and found.at is None
    evidence = found.evidence or Evidence.STATED
    return Given(value=found.value if bare else found, place=node.place, evidence=evidence)


def _words(node: Text, words: str) -> Given:
    body, comma, last = words.rpartition(",")
    if comma and last.strip() in list(Evidence):
        return Given(value=body.strip(), place=node.place, evidence=Evidence(last.strip()))
    return Given(value=words, place=node.place)


def _as_it_reads(node: Node, context: Context) -> Given | None:
    words = text(node, context)
    if words is None or not isinstance(node, Text):
        return None
    found = parse_quantity(words, numbers=context.numbers)
    if isinstance(found, Slip):
        if found.code in ("two-readings", "decimal-mark"):
            context.slip(found, node)
            return None
        return _words(node, words)
    return given_of(found, node)


def _fuel(node: Node, context: Context, fact: Fact) -> Given | None:
    words = text(node, context)
    if words is None or not isinstance(node, Text):
        return None
    fuel = parse_fuel(words, context.numbers)
    if isinstance(fuel, Slip):
        context.slip(fuel, node)
        return None
    return Given(value=fuel.text, place=node.place, evidence=fuel.evidence)


def _boost(node: Node, context: Context, fact: Fact) -> Given | BoostBySpeed | None:
    if isinstance(node, Items | Table):
        return _boost_by_speed(node, context, fact)
    if node.value == "none":
        return Given(value=node.value, place=node.place)
    return read_fact(node, context, fact)


def _gears(node: Node, context: Context, fact: Fact) -> Given | None:
    """Keep the ratios as one line of words, each proved to be a number."""
    listed = _listed(node)
    if _split_by_comma(listed, context):
        return None
    ratios = many(_gear)(listed, context) or ()
    words = " / ".join(ratio.text for ratio in ratios)
    return Given(value=words, place=node.place) if words else None


def _gear(node: Node, context: Context) -> Quantity | None:
    ratio = quantity("ratio")(node, context)
    if ratio is not None and ratio.value <= 0:
        message = f"`{ratio.text}` is no gear ratio"
        context.problem("bad-number", message, node.place, "more than nothing, as 3.55")
        return None
    return ratio


def _split_by_comma(node: Node, context: Context) -> bool:
    """Tell whether YAML has split `[3,6, 2,1]` at its decimal commas; say so."""
    items = node.items if isinstance(node, Items) and context.numbers == "comma" else ()
    for first, second in pairwise(each for each in items if isinstance(each, Text) and each.plain):
        whole = f"{first.value},{second.value}"
        if first.place.text.startswith(whole, first.place.column - 1):
            message = f"the comma in `{whole}` ends the value inside brackets"
            hint = f'quote each: ["{whole}", ...]'
            place = first.place.moved(len(first.value))
            context.problem("split-by-comma", message, place, hint)
            return True
    return False


def _listed(node: Node) -> Node:
    """Return the numbers of a line, `3.5, 2.1, 1.4` or `3.5 / 2.1 / 1.4`, as a list."""
    if not isinstance(node, Text):
        return node
    written = pieces(node.value.replace(" / ", ", "))
    return Items(
        tuple(Text(piece.text, within(node, piece.offset), plain=node.plain) for piece in written),
        node.place,
    )


def _boost_by_speed(node: Items | Table, context: Context, fact: Fact) -> BoostBySpeed | None:
    """Return boost written as a list, `- 3000 rpm: 0.4 bar gauge`, or as a mapping."""
    rows: list[tuple[float, Quantity]] = []
    items = (
        node.items
        if isinstance(node, Items)
        else [Table((entry,), entry.key.place) for entry in node.entries]
    )
    for item in items:
        row = _boost_row(item, context, fact)
        if row is not None:
            rows.append(row)
    if len(rows) < len(items):
        return None
    speeds = [speed for speed, _ in rows]
    if len(rows) < 2 or speeds != sorted(set(speeds)):
        message = "boost by speed needs two lines or more, slowest first"
        context.problem("boost-list", message, node.place, "as `- 3000 rpm: 0.4 bar gauge`")
        return None
    pressures = tuple(pressure for _, pressure in rows)
    highest = max(pressures, key=lambda each: each.value)
    unlikely = likely_slip(f"the highest {fact.name}", highest, fact.usual)
    if unlikely is not None:
        context.notice(unlikely.code, unlikely.message, node.place, unlikely.hint)
    evidence = next((each.evidence for each in pressures if each.evidence), Evidence.STATED)
    return BoostBySpeed(
        speeds=tuple(speeds), pressures=pressures, place=node.place, evidence=evidence
    )


def _boost_row(item: Node, context: Context, fact: Fact) -> tuple[float, Quantity] | None:
    if not isinstance(item, Table) or len(item.entries) != 1:
        message = "each line of boost by speed is a speed and a pressure"
        context.problem("boost-list", message, item.place, "as `- 3000 rpm: 0.4 bar gauge`")
        return None
    (entry,) = item.entries
    speed = parse_quantity(entry.key.value, ("speed of rotation",), numbers=context.numbers)
    if isinstance(speed, Slip):
        context.slip(speed, entry.key)
        return None
    # Low down there is next to none, which is no slip.
    pressure = read_fact(entry.value, context, replace(fact, usual=""))
    if pressure is None or not isinstance(pressure.value, Quantity):
        return None
    if pressure.value.reference == "absolute":
        message = f"`{pressure.value.text}` counts from vacuum, and boost by speed from the air"
        hint = "write each as its gauge reads it, as `- 3000 rpm: 0.4 bar gauge`"
        context.problem("gauge-or-absolute", message, entry.value.place, hint)
        return None
    return speed.value, pressure.value


def _pressures(node: Node, context: Context, fact: Fact) -> Given | None:
    """Keep pressures as words, `2.0 bar front, 1.8 bar rear`, of which a number has a unit."""
    given = read_fact(node, context, fact)
    if given is None or not isinstance(given.value, str) or not isinstance(node, Text):
        return given
    if given.value[:1].isdigit() and not any(letter.isalpha() for letter in given.value):
        hint = likely(given.value, ("pressure",))
        context.slip(Slip("no-unit", f"`{given.value}` has no unit", hint), node)
        return None
    return given


_SPECIAL = {
    "fuel": _fuel,
    BOOST: _boost,
    "gearing gears": _gears,
    "tyre pressures": _pressures,
}
"""Properties that are neither one quantity nor free words."""
