"""One episode's file: front matter between two lines of dashes, then prose."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import chain
from typing import Any, TypeVar

from hoistbook.authored import fields
from hoistbook.authored.build_file import read_car, read_settings
from hoistbook.authored.captions import read_captions
from hoistbook.authored.chapters import read_chapters
from hoistbook.authored.claims import read_claim
from hoistbook.authored.context import Context
from hoistbook.authored.done import read_done
from hoistbook.authored.fields import Field, read_table
from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.authored.joins import JoinLine, read_join
from hoistbook.authored.logs import read_log
from hoistbook.authored.measured import read_measured
from hoistbook.authored.nodes import Node, Table, Text
from hoistbook.authored.notes import read_correction, read_decision, read_work
from hoistbook.authored.parts import read_got, read_made
from hoistbook.authored.pictures import inside
from hoistbook.authored.prose import Prose, read_picture, read_prose
from hoistbook.authored.receipts import read_receipt, read_spent
from hoistbook.authored.records import Done, Episode, Log, PowerRun
from hoistbook.problems import Place
from hoistbook.values.slip import Slip

T = TypeVar("T")

DASHES = "---"


@dataclass(frozen=True, slots=True)
class EpisodeFile:
    """An episode as its own file tells it, and what has to wait for the other files."""

    episode: Episode
    """Its joins stand empty until the parts of all files are known."""
    joins: tuple[JoinLine, ...]
    pictures: dict[str, tuple[int, int]]
    logs: dict[str, Log]
    context: Context


def _all_done(node: Node, context: Context) -> tuple[Done, ...]:
    return tuple(chain.from_iterable(fields.many(read_done)(node, context) or ()))


EPISODE: fields.Fields = {
    "episode": Field(fields.whole, "number"),
    "title": Field(fields.text, example="The hot side"),
    "filmed": Field(fields.day),
    "published": Field(fields.day),
    "summary": Field(fields.text),
    "video": Field(fields.link),
    "poster": Field(fields.placed(fields.text)),
    "poster text": Field(fields.text),
    "captions": Field(fields.placed(fields.text)),
    "chapters": Field(read_chapters),
    "bought": Field(fields.many(read_receipt)),
    "got": Field(fields.many(read_got)),
    "spent": Field(fields.many(read_spent)),
    "made": Field(fields.many(read_made)),
    "done": Field(_all_done),
    "car": Field(read_car),
    "settings": Field(read_settings),
    "joins": Field(fields.many(read_join)),
    "measured": Field(fields.many(read_measured)),
    "claims": Field(fields.many(read_claim)),
    "decisions": Field(fields.many(read_decision)),
    "work": Field(fields.many(read_work)),
    "not needed": Field(fields.many(fields.placed(fields.text))),
    "corrections": Field(fields.many(read_correction)),
}


def read_episode(text: str, context: Context) -> EpisodeFile | None:
    """Read one episode's file."""
    split = split_file(text, context)
    if split is None:
        return None
    front, prose, prose_line = split
    node, problems = parse_front_matter(front, context.file, first_line=2)
    context.problems.extend(problems)
    if node is None:
        if not problems:
            _no_title(context)
        return None
    return _episode(node, prose, prose_line, context)


def split_file(text: str, context: Context) -> tuple[str, str, int] | None:
    """Return front matter, prose, and the line on which the prose begins."""
    lines = text.split("\n")
    if not text.strip():
        hint = "begin it with a line ---, `title: ...` and another line ---"
        context.problem("empty-file", "this file is empty", Place(context.file), hint)
        return None
    if lines[0].rstrip() != DASHES:
        hint = "put a line --- above the keys and another below them"
        message = "an episode begins with a line of three dashes"
        context.problem("no-front-matter", message, Place(context.file, 1, 1, lines[0]), hint)
        return None
    ends = (number for number, line in enumerate(lines[1:], 1) if line.rstrip() == DASHES)
    end = next(ends, None)
    if end is None:
        hint = "put a line --- below the last key"
        message = "the keys of this episode have no end"
        context.problem("no-front-matter", message, Place(context.file, 1, 1, lines[0]), hint)
        return None
    return "\n".join(lines[1:end]), "\n".join(lines[end + 1 :]), end + 2


def _no_title(context: Context) -> None:
    place = Place(context.file, 1, 1, DASHES)
    context.problem("missing-key", "an episode needs `title`", place, "as `title: The hot side`")


def _episode(node: Node, prose: str, prose_line: int, context: Context) -> EpisodeFile | None:
    context.episode = _number(node) or number_of_file(context.file)
    values = read_table(node, EPISODE, context, "an episode")
    found = read_prose(prose, prose_line, context)
    if values is None:
        return None
    number = values.pop("number", context.episode)
    if number == 0:
        hint = "the car as bought, in build.yaml, is what stands at 0"
        context.problem("no-number", "episodes are numbered from 1", node.place, hint)
        return None
    if number is None:
        message = "this episode has no number"
        hint = "as `episode: 3`, or begin the folder's name with it: 03-the-hot-side"
        context.problem("no-number", message, node.place, hint)
        return None
    _files(values, context, found)
    joins = values.pop("joins", ())
    episode = Episode(
        **values,
        number=number,
        file=context.file,
        place=node.place,
        prose=prose,
        prose_line=prose_line,
        links=tuple(found.links),
    )
    return EpisodeFile(episode, joins, found.pictures, _logs(episode, context), context)


def _number(node: Node) -> int | None:
    """Return the number an episode gives itself, which its notices carry."""
    given = node.get("episode") if isinstance(node, Table) else None
    written = given.value if isinstance(given, Text) else ""
    return int(written) if written.isascii() and written.isdigit() and len(written) < 5 else None


def number_of_file(file: str) -> int | None:
    """Return the number at the start of an episode's folder or file name."""
    match = re.match(r"(\d{1,4})(?!\d)", file.split("/")[1], re.ASCII)
    return int(match[1]) if match else None


def _files(values: dict[str, Any], context: Context, found: Prose) -> None:
    """Look up the files that the front matter names."""
    if "poster" in values:
        target, place = values.pop("poster")
        path = read_picture(target, place, context, found.pictures)
        values |= {"poster": path} if path else {}
        if path and "poster_text" not in values:
            message = f"`{target}` has no words for those who cannot see it"
            context.notice("no-words", message, place, "write what it shows: `poster text: ...`")
    if "captions" in values:
        target, place = values.pop("captions")
        captions = inside(context.root, context.file, target)
        if isinstance(captions, Slip):
            context.problem(captions.code, captions.message, place, captions.hint)
        else:
            values["captions"] = captions
            values["cues"] = read_captions(captions, context)


def _logs(episode: Episode, context: Context) -> dict[str, Log]:
    """Read the log of every power run."""
    runs = [each for each in episode.measured if isinstance(each, PowerRun)]
    found = {run.log: read_log(run, context) for run in runs}
    return {file: log for file, log in found.items() if log is not None}
