"""Chapters of the video: `4:10 Flanges`."""

from __future__ import annotations

from itertools import pairwise

from hoistbook.authored import fields
from hoistbook.authored.context import Context
from hoistbook.authored.nodes import Items, Node, Table, Text
from hoistbook.authored.records import Chapter
from hoistbook.values.dates import parse_timecode
from hoistbook.values.slip import Slip


def _chapter(words: str, context: Context) -> Chapter | Slip:
    time, _, title = words.partition(" ")
    seconds = parse_timecode(time)
    if isinstance(seconds, Slip):
        return seconds
    if not title.strip():
        return Slip("no-title", "this chapter has no title", f"as `{time} Flanges`")
    return Chapter(seconds=seconds, title=title.strip())


def _line(node: Node, context: Context) -> Chapter | None:
    if isinstance(node, Table) and len(node.entries) == 1:
        (entry,) = node.entries
        if isinstance(entry.value, Text):
            message = "a colon stands behind the time of this chapter"
            hint = f"as `- {entry.key.value} {entry.value.value}`"
            context.problem("wrong-shape", message, node.place, hint)
            return None
    return fields.typed(_chapter)(node, context)


_read = fields.many(fields.placed(_line))


def read_chapters(node: Node, context: Context) -> tuple[Chapter, ...]:
    """Read the chapters, which stand in the order of the video."""
    if isinstance(node, Table):
        node = Items(tuple(Table((each,), each.key.place) for each in node.entries), node.place)
    found = _read(node, context) or ()
    for (before, _), (after, place) in pairwise(found):
        if after.seconds <= before.seconds:
            message = f"the chapter `{after.title}` begins before the one above it"
            context.problem("chapter-order", message, place, "chapters stand in the video's order")
    return tuple(chapter for chapter, _ in found)
