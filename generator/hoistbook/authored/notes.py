"""Decisions, hours of work and corrections: what an author notes down beside the parts."""

from __future__ import annotations

import re

from hoistbook.authored import fields
from hoistbook.authored.context import Context, within
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.lines import Piece, hours_in, pieces
from hoistbook.authored.nodes import Node, Text
from hoistbook.authored.records import Correction, Decision, Work
from hoistbook.values.dates import parse_date
from hoistbook.values.slip import Slip

DECISION: fields.Fields = {
    "question": Field(fields.text, example="Which cooler core?"),
    "chose": Field(fields.text, example="the wide one"),
    "over": Field(fields.many(fields.text)),
    "because": Field(fields.text),
}

WORK: fields.Fields = {
    "what": Field(fields.text, example="Weld the drain bung into the sump"),
    "hours": Field(fields.hours),
}

CORRECTION_LINE = "as `2026-05-01, injector flow 550 not 500 cc/min, misread the label`"

CORRECTION: fields.Fields = {
    "date": Field(fields.day, example="2026-05-01"),
    "text": Field(fields.text, example="injector flow 550 not 500 cc/min, misread the label"),
}


def read_decision(node: Node, context: Context) -> Decision | None:
    """Read a choice and its reason."""
    values = read_table(node, DECISION, context, "a decision")
    return None if values is None else Decision(**values, place=node.place)


def read_work(node: Node, context: Context) -> Work | None:
    """Read `Weld the drain bung into the sump, 2.5 h`, or a mapping."""
    if not isinstance(node, Text):
        values = read_table(node, WORK, context, "a piece of work")
        return None if values is None else Work(**values, place=node.place)
    line = fields.text(node, context)
    if line is None or not pieces(line):
        return None
    *before, last = pieces(line)
    hours = hours_in(last.text, context.numbers)
    if hours is None or not before:
        _tell_uncounted(line, last, node, context)
        return Work(what=line, place=node.place)
    if isinstance(hours, Slip):
        context.slip(hours, node, last.offset)
        return None
    what = line[: before[-1].offset + len(before[-1].text)]
    return Work(what=what, hours=hours, place=node.place)


_HOURS_LAST = re.compile(r"(?:.*\s)?(\d[\d.,]*)\s*(h|hrs?|hours?)?\.?", re.ASCII)


def _tell_uncounted(line: str, last: Piece, node: Text, context: Context) -> None:
    """Say so where a piece of work ends in its hours and they are not read as such."""
    match = _HOURS_LAST.fullmatch(last.text)
    if match is None or not (match[2] or (match.start(1) == 0 and last.offset)):
        return
    what = line[: last.offset + match.start(1)].rstrip(" ,")
    message = f"`{last.text[match.start(1) :]}` at the end of this work counts as no hours"
    hint = f"as `{what}, {match[1]} h`" if what else "say what was done, a comma, then the hours"
    context.notice("no-hours", message, within(node, last.offset + match.start(1)), hint)


def read_correction(node: Node, context: Context) -> Correction | None:
    """Read `2026-05-01, injector flow 550 not 500 cc/min`, or a mapping."""
    if not isinstance(node, Text):
        values = read_table(node, CORRECTION, context, "a correction")
        return None if values is None else Correction(**values, place=node.place)
    line = fields.text(node, context)
    if line is None:
        return None
    written, _, text = line.partition(",")
    day = parse_date(written.strip())
    if isinstance(day, Slip):
        if not any(letter.isdigit() for letter in written[:1]):
            message = "a correction begins with the day on which it was made"
            day = Slip(day.code, message, CORRECTION_LINE)
        context.slip(day, node)
        return None
    if not text.strip():
        message = "this correction does not say what was put right"
        context.problem("empty", message, node.place, CORRECTION_LINE)
        return None
    return Correction(date=day, text=text.strip(), place=node.place)
