"""A parts list to take away: as text, as Markdown and as CSV, for the clipboard and as files.

What became of a part travels with it. Parts that are no longer in the build are left out unless
asked for, and the list says how many. As text it ends with what it costs, what it is good for and
the cautions; as CSV it is a table alone, whose rows carry all of these.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import astuple, dataclass, fields
from itertools import groupby

from markupsafe import Markup, escape

from hoistbook.pages import links
from hoistbook.pages.csv_table import csv_table
from hoistbook.pages.desk import Desk
from hoistbook.pages.formats import NO_BREAK
from hoistbook.pages.parts_listed import (
    Listed,
    ListOf,
    Row,
    cost_of,
    filed_systems,
    listed,
    parts_of_episode,
    price_in_words,
    row_of,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Copy:
    """The list in one form."""

    name: str
    """"Text", "Markdown", "CSV"."""
    suffix: str
    body: Markup
    """The list for the clipboard: pieces of text, of which some carry `data-when`, being for a
    list with (`asked`) or without (`unasked`) the parts that are left out. Empty for a list that
    is too long for a page."""
    file: str
    """Address of the same as a file, parts left out."""
    whole: str
    """Address of the file with all parts; empty where none is left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyShown:
    """A parts list to take away."""

    copies: tuple[Copy, ...]
    """Empty when there is no part to list."""
    conditions: str
    """What it is good for: "displacement 1,598 cc, boost 0.8 bar gauge, fuel petrol"."""
    left_out: str
    """How many parts are left out and why; empty for none."""


_ALWAYS, _ASKED, _UNASKED = "always", "asked", "unasked"
_Piece = tuple[str, str]
"""A text with its line end, and when it belongs to the list."""


def copies_of(desk: Desk, of: ListOf = None, *, on_page: bool = True) -> CopyShown:
    """Return the parts list of an episode, a system or the whole journal, in all its forms.

    A list that is too long to stand on a page for the clipboard is in its files alone.
    """
    made = listed(desk, of)
    return CopyShown(
        copies=tuple(
            Copy(
                name=desk.words(f"parts_copy.{suffix}"),
                suffix=suffix,
                body=_marked(form(desk, made)) if on_page else Markup(""),
                file=links.parts_list(of, suffix),
                whole=links.parts_list(of, suffix, whole=True) if made.left_out else "",
            )
            for suffix, form in _FORMS.items()
            if made.rows
        ),
        conditions=made.conditions,
        left_out=made.left_out,
    )


def parts_in_lines(desk: Desk, number: int) -> list[str]:
    """Return the parts that came in an episode, one line each, with what became of them."""
    rows = (row_of(desk, each.part, number) for each in parts_of_episode(desk, number))
    lines = []
    for row in rows:
        came = row.came if row.came != desk.words("came.bought") else ""
        said = [_counted(desk, row), came, price_in_words(desk, row), row.supplier, row.became]
        lines.append(", ".join(each for each in said if each))
    return lines


def parts_list_files(desk: Desk) -> dict[str, bytes]:
    """Return the files of all parts lists: path in the site -> content."""
    files = {}
    for of in (None, *desk.episodes, *filed_systems(desk)):
        made = listed(desk, of)
        for suffix, form in _FORMS.items():
            if not made.rows:
                continue
            pieces = list(form(desk, made))
            file = links.file_path(links.parts_list(of, suffix))
            files[file] = _chosen(pieces, _UNASKED)
            if made.left_out:
                file = links.file_path(links.parts_list(of, suffix, whole=True))
                files[file] = _chosen(pieces, _ASKED)
    return files


def _marked(pieces: Iterable[_Piece]) -> Markup:
    body = Markup("")
    for written, when in pieces:
        # The clipboard has line ends of its own; HTML knows none but this.
        text = written.replace("\r\n", "\n")
        if when == _ALWAYS:
            body += escape(text)
        else:
            body += Markup('<span data-when="{}">{}</span>').format(when, text)
    return body


def _chosen(pieces: Iterable[_Piece], asked: str) -> bytes:
    return "".join(text for text, when in pieces if when in (_ALWAYS, asked)).encode()


def _details(desk: Desk, row: Row, link: Callable[[str], str]) -> Iterator[str]:
    """Yield the lines below a part's name."""
    number = f"{desk.words('parts_copy.part_number')} {row.part_number}"
    made = [row.maker, number if row.part_number else "", row.came]
    yield ", ".join(each for each in made if each)
    bought = [
        price_in_words(desk, row),
        row.supplier,
        row.date,
        link(row.link) if row.link else "",
    ]
    yield ", ".join(each for each in bought if each)
    for name in ("facts", "ends", "must", "figures", "became"):
        value = getattr(row, name)
        if value:
            yield f"{desk.words(f'parts_copy.{name}')}: {value}"


def _by_system(
    rows: Iterable[tuple[Row, bool]],
) -> Iterator[tuple[str, str, tuple[tuple[Row, bool], ...]]]:
    """Yield each system with when its heading is needed, and its rows."""
    for system, members in groupby(rows, key=lambda each: each[0].system):
        of_system = tuple(members)
        only_left_out = all(left for _, left in of_system)
        yield system, _ASKED if only_left_out else _ALWAYS, of_system


def _text(desk: Desk, made: Listed) -> Iterator[_Piece]:
    yield f"{made.title}\n", _ALWAYS
    for system, when, rows in _by_system(made.rows):
        yield f"\n{system.upper()}\n", when
        for row, left in rows:
            lines = [
                _counted(desk, row),
                *(f"    {each}" for each in _details(desk, row, str) if each),
            ]
            yield "\n".join(lines) + "\n", _ASKED if left else _ALWAYS
    yield "\n", _ALWAYS
    yield from _closing(desk, made, "")


def _counted(desk: Desk, row: Row) -> str:
    if row.count == 1:
        return row.name
    return f"{row.name} ({desk.words('part.number_off', count=row.count)})"


def _markdown(desk: Desk, made: Listed) -> Iterator[_Piece]:
    yield f"# {_plain(made.title)}\n", _ALWAYS
    for system, when, rows in _by_system(made.rows):
        yield f"\n## {_plain(system)}\n\n", when
        for row, left in rows:
            details = (_plain(each) for each in _details(desk, row, lambda link: link) if each)
            lines = [f"- **{_plain(_counted(desk, row))}**", *(f"  - {each}" for each in details)]
            yield "\n".join(lines) + "\n", _ASKED if left else _ALWAYS
    yield "\n", _ALWAYS
    yield from _closing(desk, made, "\n")


_MARKS = re.compile(r"([\\`*_\[\]<>#|~])")


def _plain(text: str) -> str:
    """Return text that Markdown prints as it is; links stay links, for it knows them by sight."""
    words = text.split(" ")
    return " ".join(each if "://" in each else _MARKS.sub(r"\\\1", each) for each in words)


def _closing(desk: Desk, made: Listed, between: str) -> Iterator[_Piece]:
    """Yield what a list ends with: what is left out, the cost, the conditions, the cautions."""
    every = [row for row, _ in made.rows]
    kept = [row for row, left in made.rows if not left]
    for rows, when, said in ((kept, _UNASKED, made.left_out), (every, _ASKED, made.whole)):
        for line in (said, cost_of(desk, rows)):
            if line:
                yield f"{line}\n{between}", when
    conditions = desk.words("parts_copy.conditions", conditions=made.conditions)
    yield f"{conditions}\n", _ALWAYS
    for caution in made.cautions:
        yield f"{between}{caution}\n", _ALWAYS


def _csv(desk: Desk, made: Listed) -> Iterator[_Piece]:
    """Yield a table and nothing but: a spreadsheet would sort any other line among the parts."""
    names = [each.name for each in fields(Row)]
    header = [desk.words(f"parts_copy.column.{each}", currency=desk.currency) for each in names]
    yield csv_table(header, []).decode(), _ALWAYS
    for row, left in made.rows:
        cells = ("" if each is None else str(each) for each in astuple(row))
        line = csv_table([each.replace(NO_BREAK, " ") for each in cells], []).decode()
        yield line, _ASKED if left else _ALWAYS


_FORMS: Mapping[str, Callable[[Desk, Listed], Iterator[_Piece]]] = {
    "txt": _text,
    "md": _markdown,
    "csv": _csv,
}
