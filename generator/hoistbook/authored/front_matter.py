"""YAML read in one pass over the C parser's events, values and places together.

All scalars stay text: what `no`, `4:10`, `0123` or `1.10` means is for the record to say. What
would let one line mean another (aliases, anchors, tags, merge keys, duplicate keys) is refused,
and so is nesting that no journal needs.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import cast

import yaml

from hoistbook.authored.nodes import Entry, Items, Node, Table, Text
from hoistbook.authored.traps import (
    DEEPEST,
    FLATTER,
    NOT_READ,
    TOO_DEEP,
    Broken,
    Quoted,
    comma_in_mapping,
    cut_by_comment,
    syntax_problem,
)
from hoistbook.problems import Place, Problem

LONGEST_LINE = 5000
"""Characters; reading a line costs its length at every value that stands in it."""

PRIVATE = "private"


def parse_front_matter(
    text: str, file: str, first_line: int = 1
) -> tuple[Node | None, tuple[Problem, ...]]:
    """Return what a piece of YAML holds and what is wrong with it.

    Parameters
    ----------
    text
        The YAML alone.
    file
        Its file, for the places.
    first_line
        The line of the file on which the text begins.

    Returns
    -------
    node
        None when nothing stands there or the text breaks off.
    problems
        In the order of the lines.
    """
    lines = text.split("\n")
    longest = max(range(len(lines)), key=lambda number: len(lines[number]))
    if len(lines[longest]) > LONGEST_LINE:
        place = Place(file, longest + first_line, LONGEST_LINE, lines[longest])
        message = f"this line is longer than {LONGEST_LINE} characters"
        return None, (Problem("long-line", message, place, f"break it up; {NOT_READ}"),)
    events, error = _events(text)
    page = _Page(_without_private(lines, events), file, first_line)
    page.refuse_indirection(events)
    if error is not None:
        return None, (*page.problems, page.broken_off(error, events))
    body = events[2:-2]
    node = page.node(iter(body)) if body else None
    return node, tuple(sorted(page.problems, key=_by_place))


def _by_place(problem: Problem) -> tuple[int, int]:
    place = problem.place or Place("")
    return place.line, place.column


class _TooMuchError(Exception):
    """More than one journal file may hold: a second document, or nesting without end."""

    def __init__(self, code: str, message: str, hint: str, event: yaml.Event) -> None:
        super().__init__(message)
        self.code, self.message, self.hint, self.event = code, message, hint, event


_Error = yaml.MarkedYAMLError | _TooMuchError


def _events(text: str) -> tuple[list[yaml.Event], _Error | None]:
    """Return the events of one document, and the error at which they break off."""
    events: list[yaml.Event] = []
    depth = 0
    try:
        for event in yaml.parse(text, Loader=yaml.CLoader):
            depth += _step(event)
            if depth > DEEPEST:
                return events, _TooMuchError("too-deep", TOO_DEEP, FLATTER, event)
            if isinstance(event, yaml.DocumentStartEvent) and len(events) > 1:
                hint = "a file holds one set of keys; take out the line of dashes"
                message = "a second document begins here"
                return events, _TooMuchError("second-document", message, hint, event)
            events.append(event)
    except yaml.MarkedYAMLError as error:
        return events, error
    return events, None


def _step(event: yaml.Event) -> int:
    """Return by how many levels an event goes deeper."""
    starts = isinstance(event, yaml.CollectionStartEvent)
    return starts - isinstance(event, yaml.CollectionEndEvent)


def _start(event: yaml.Event) -> yaml.Mark:
    # The C parser marks every event; only the stubs allow for none.
    return cast(yaml.Mark, event.start_mark)


def _end(event: yaml.Event) -> yaml.Mark:
    return cast(yaml.Mark, event.end_mark)


def _without_private(lines: Sequence[str], events: Sequence[yaml.Event]) -> list[str]:
    """Return the lines with every private note blotted out, so that no place carries one."""
    blotted = [_PRIVATE_LINE.sub(_blotted_match, line) for line in lines]
    for index in _keys(events):
        key = events[index]
        if not (isinstance(key, yaml.ScalarEvent) and key.value == PRIVATE):
            continue
        if index + 1 == len(events):
            break
        start, end = _start(events[index + 1]), _end_of_node(events, index + 1)
        for line in range(start.line, min(end.line + 1, len(lines))):
            left = start.column if line == start.line else 0
            right = end.column if line == end.line else len(lines[line])
            blotted[line] = _blot(blotted[line], left, right)
    return blotted


# Where a file breaks off, the key that follows is in no event: its line is known by its look.
_PRIVATE_LINE = re.compile(r"^([\s-]*private\s*:)(.*)$")


def _blotted_match(match: re.Match[str]) -> str:
    return match[1] + _blot(match[2], 0)


def _keys(events: Sequence[yaml.Event]) -> Iterator[int]:
    """Yield the index of each event that is, or begins, a key of a mapping."""
    key_is_next: list[bool | None] = []
    for index, event in enumerate(events):
        if isinstance(event, yaml.CollectionEndEvent):
            key_is_next.pop()
        elif isinstance(event, yaml.NodeEvent):
            if key_is_next and key_is_next[-1] is not None:
                if key_is_next[-1]:
                    yield index
                key_is_next[-1] = not key_is_next[-1]
            if isinstance(event, yaml.CollectionStartEvent):
                key_is_next.append(True if isinstance(event, yaml.MappingStartEvent) else None)


def _blot(line: str, left: int, right: int | None = None) -> str:
    end = len(line) if right is None else right
    return line[:left] + re.sub(r"\S", "*", line[left:end]) + line[end:]


def _end_of_node(events: Sequence[yaml.Event], start: int) -> yaml.Mark:
    depth = 0
    for event in events[start:]:
        depth += _step(event)
        if depth <= 0:
            return _end(event)
    return _end(events[-1])


@dataclass
class _Page:
    """One piece of YAML on the way from events to nodes."""

    lines: Sequence[str]
    file: str
    first_line: int
    problems: list[Problem] = field(default_factory=list)

    def place(self, mark: yaml.Mark) -> Place:
        if mark.line < len(self.lines):
            line, column = mark.line, mark.column
        else:
            line, column = len(self.lines) - 1, len(self.lines[-1])
        return Place(self.file, line + self.first_line, column + 1, self.lines[line])

    def problem(self, code: str, message: str, place: Place, hint: str) -> None:
        self.problems.append(Problem(code, message, place, hint))

    def broken_off(self, error: _Error, events: Sequence[yaml.Event]) -> Problem:
        """Return the problem at which the reading of this file ends."""
        if isinstance(error, _TooMuchError):
            return Problem(error.code, error.message, self.place(_start(error.event)), error.hint)
        at = self.place(error.problem_mark) if error.problem_mark else Place(self.file)
        context = self.place(error.context_mark) if error.context_mark else at
        last = events[-1] if events else None
        before = None
        if isinstance(last, yaml.ScalarEvent) and last.style in ("'", '"'):
            ends = self.place(_start(last)), self.place(_end(last))
            before = Quoted(last.value, last.style, *ends)
        said = ": ".join(word for word in (error.context, error.problem) if word)
        return syntax_problem(Broken(said, at, context, before))

    def refuse_indirection(self, events: Sequence[yaml.Event]) -> None:
        """Refuse whatever lets one line stand for another."""
        for event in events:
            if isinstance(event, yaml.AliasEvent):
                self._refuse(event, "an alias", f"*{event.anchor}", "write the value out")
            elif getattr(event, "anchor", None):
                self._refuse(event, "an anchor", f"&{event.anchor}", "leave it out")  # type: ignore[attr-defined]
            elif getattr(event, "tag", None):
                self._refuse(event, "a tag", event.tag, "leave it out or quote the text")  # type: ignore[attr-defined]

    def _refuse(self, event: yaml.Event, what: str, sign: str, hint: str) -> None:
        message = f"`{sign}` is {what}, which a journal does not use"
        self.problem("indirection", message, self.place(_start(event)), hint)

    def node(self, events: Iterator[yaml.Event]) -> Node:
        """Return the node that begins with the next event."""
        return self._node(next(events), events)

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event]) -> Node:
        if isinstance(event, yaml.MappingStartEvent):
            return self._table(event, events)
        if isinstance(event, yaml.SequenceStartEvent):
            items = []
            while not isinstance(following := next(events), yaml.SequenceEndEvent):
                items.append(self._node(following, events))
            return Items(tuple(items), self.place(_start(event)))
        return self._text(event)

    def _text(self, event: yaml.Event) -> Text:
        place = self.place(_start(event))
        if isinstance(event, yaml.AliasEvent):
            return Text(f"*{event.anchor}", place)
        if not isinstance(event, yaml.ScalarEvent):
            return Text("", place)
        plain = not event.style
        if plain:
            cut = cut_by_comment(event.value, self.place(_end(event)))
            self.problems.extend([cut] if cut else [])
        return Text(event.value or event.tag or "", place, plain)

    def _table(self, start: yaml.Event, events: Iterator[yaml.Event]) -> Table:
        entries: dict[str, Entry] = {}
        previous: Node | None = None
        while not isinstance(event := next(events), yaml.MappingEndEvent):
            key = self._node(event, events)
            value = self.node(events)
            slip = comma_in_mapping(previous, key, value)
            if slip is not None:
                self.problems.append(slip)
                self._rejoin(entries, key)
            elif not isinstance(key, Text):
                self.problem("bad-key", "a key must be words", key.place, "as `name: value`")
            elif key.value == "<<":
                hint = "write the keys out"
                self.problem("indirection", "`<<` merges another mapping", key.place, hint)
            elif key.value in entries:
                first = entries[key.value].key.place.line
                message = f"`{key.value}` stands here for the second time, first on line {first}"
                self.problem("duplicate-key", message, key.place, "keep one of the two")
            else:
                entries[key.value] = Entry(key, value)
            previous = value
        private = entries.pop(PRIVATE, None)
        if private is not None:
            self._check_private(private)
        return Table(tuple(entries.values()), self.place(_start(start)))

    def _rejoin(self, entries: dict[str, Entry], key: Node) -> None:
        """Put a value together again that a comma has split, so that it is read whole."""
        name, entry = next(reversed(entries.items()))
        if isinstance(entry.value, Text) and isinstance(key, Text):
            whole = replace(entry.value, value=f"{entry.value.value},{key.value}")
            entries[name] = replace(entry, value=whole)

    def _check_private(self, entry: Entry) -> None:
        value = entry.value
        if isinstance(value, Text) and value.value.casefold() in ("yes", "true", "no", "false"):
            self.problem(
                "private-is-a-note",
                "`private` holds the note that is not to be published, not a yes or no",
                entry.key.place,
                "as `private: paid in cash`; every other key beside it is published",
            )
