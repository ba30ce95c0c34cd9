"""Captions of the video: WebVTT (W3C) and SRT, reduced to times and plain text."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from hoistbook.authored.context import Context
from hoistbook.authored.folder import read_text
from hoistbook.authored.records import Cue
from hoistbook.problems import Place

_TIME = r"(?:(\d{1,3}):)?(\d{2}):(\d{2})[.,](\d{3})"
_TIMING = re.compile(rf"\s*{_TIME}\s+-->\s+{_TIME}(?:\s.*)?", re.ASCII)
_HEADERS = ("WEBVTT", "NOTE", "STYLE", "REGION")

MOST_CUES = 20_000
MOST_PROBLEMS = 3


def read_captions(file: str, context: Context) -> tuple[Cue, ...]:
    """Return the captions of a file, and note what cannot be read.

    Parameters
    ----------
    file
        Its path relative to the journal's folder.
    context
        The episode's file.
    """
    text, problems = read_text(context.root, file)
    context.problems.extend(problems)
    if text is None or problems:
        return ()
    cues: list[Cue] = []
    faults = 0
    for line, block in _blocks(text):
        cue = _cue(line, block, file, context)
        faults += cue is None
        if cue is not None:
            cues.append(cue)
        if faults >= MOST_PROBLEMS or len(cues) > MOST_CUES:
            break
    if not cues and not faults:
        hint = "export them again as WebVTT or SRT"
        context.problem("empty-file", "this file holds no captions", Place(file), hint)
    return tuple(sorted(cues, key=lambda cue: cue.start))


def _blocks(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield the captions' blocks, each with the number of its first line."""
    block: list[str] = []
    for number, line in enumerate([*text.split("\n"), ""], start=1):
        if line.strip():
            block.append(line)
        elif block:
            if not block[0].startswith(_HEADERS):
                yield number - len(block), block
            block = []


def _cue(line: int, block: list[str], file: str, context: Context) -> Cue | None:
    at = next((index for index, text in enumerate(block[:2]) if "-->" in text), None)
    match = _TIMING.fullmatch(block[at]) if at is not None else None
    if at is None or match is None:
        clocks = (index for index, text in enumerate(block[:2]) if re.search(r"\d:\d\d", text))
        index = next(clocks, 0) if at is None else at
        message = "no time of a caption can be read here"
        hint = "as 00:00:01.000 --> 00:00:05.500, the text below, an empty line between captions"
        place = Place(file, line + index, 1, block[index])
        context.problem("bad-caption", message, place, hint)
        return None
    numbers = [int(group or 0) for group in match.groups()]
    start, end = (
        hours * 3600 + minutes * 60 + seconds + thousandths / 1000
        for hours, minutes, seconds, thousandths in (numbers[:4], numbers[4:])
    )
    if end <= start:
        place = Place(file, line + at, 1, block[at])
        message = "this caption ends before it begins"
        hint = "its two times stand the wrong way round, or one of them is mistyped"
        context.problem("bad-caption", message, place, hint)
        return None
    return Cue(start=start, end=end, text=_plain(block[at + 1 :]))


def _plain(lines: list[str]) -> str:
    """Return the text without marks of its look, entities read."""
    bare = re.sub(r"<[^<>]*>|\{\\[^{}]*\}", "", " ".join(lines))
    return " ".join(html.unescape(bare).split())
