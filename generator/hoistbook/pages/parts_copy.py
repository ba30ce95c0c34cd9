"""A parts list to take away: as text, as Markdown and as CSV, for the clipboard and as files.

What became of a part travels with it. Parts that are no longer in the build are left out unless
asked for, and the list says how many. It ends with what it is good for and with the caution.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import astuple, dataclass, fields
from itertools import groupby

from markupsafe import Markup, escape

from hoistbook.authored.kinds import systems
from hoistbook.authored.records import Part
from hoistbook.figures.figure import Figure
from hoistbook.history.state import Outcome, PartState
from hoistbook.pages import links
from hoistbook.pages.csv_table import csv_table
from hoistbook.pages.desk import Desk
from hoistbook.pages.formats import NO_BREAK
from hoistbook.pages.receipts import came_of, count_of
from hoistbook.pages.spec import in_short


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One part of the list; every field is ready to print and may be empty."""

    system: str
    count: str
    name: str
    maker: str
    part_number: str
    came: str
    """"bought new", "bought used", "made here"."""
    ends: str
    price: str
    date: str
    supplier: str
    link: str
    must: str
    """What it had to meet, in the author's words."""
    figures: str
    """Its own figures, each with its limit."""
    became: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Listed:
    """The whole list before it takes a form."""

    title: str
    rows: tuple[tuple[Row, bool], ...]
    """Each with whether it is left out unless asked."""
    left_out: str
    whole: str
    conditions: str
    cautions: tuple[str, ...]


_ALWAYS, _ASKED, _UNASKED = "always", "asked", "unasked"
_Piece = tuple[str, str]
"""A text with its line end, and when it belongs to the list."""


def copies_of(desk: Desk, number: int | None = None, *, on_page: bool = True) -> CopyShown:
    """Return the parts list of an episode, or of the whole journal, in all its forms.

    A list that is too long to stand on a page for the clipboard is in its files alone.
    """
    listed = _listed(desk, number)
    return CopyShown(
        copies=tuple(
            Copy(
                name=desk.words(f"parts_copy.{suffix}"),
                suffix=suffix,
                body=_marked(form(desk, listed)) if on_page else Markup(""),
                file=links.parts_list(number, suffix),
                whole=links.parts_list(number, suffix, whole=True) if listed.left_out else "",
            )
            for suffix, form in _FORMS.items()
            if listed.rows
        ),
        conditions=listed.conditions,
        left_out=listed.left_out,
    )


def parts_in_lines(desk: Desk, number: int) -> list[str]:
    """Return the parts that came in an episode, one line each, with what became of them."""
    rows = (_row(desk, each.part, number) for each in parts_of_episode(desk, number))
    lines = []
    for row in rows:
        came = row.came if row.came != desk.words("came.bought") else ""
        said = [_counted(row), came, row.price, row.supplier, row.became]
        lines.append(", ".join(each for each in said if each))
    return lines


def parts_list_files(desk: Desk) -> dict[str, bytes]:
    """Return the files of all parts lists: path in the site -> content."""
    files = {}
    for number in (None, *desk.episodes):
        listed = _listed(desk, number)
        for suffix, form in _FORMS.items():
            if not listed.rows:
                continue
            pieces = list(form(desk, listed))
            file = links.file_path(links.parts_list(number, suffix))
            files[file] = _chosen(pieces, _UNASKED)
            if listed.left_out:
                file = links.file_path(links.parts_list(number, suffix, whole=True))
                files[file] = _chosen(pieces, _ASKED)
    return files


def parts_of_episode(desk: Desk, number: int) -> tuple[PartState, ...]:
    """Return the parts that came in an episode: bought, got without a receipt, or made."""
    episode = desk.episodes[number]
    came = [part for receipt in episode.bought for part in receipt.parts]
    known = desk.states[desk.last].parts
    return tuple(known[part.id] for part in (*came, *episode.got, *episode.made))


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


def _listed(desk: Desk, number: int | None) -> _Listed:
    words = desk.words
    if number is None:
        parts = tuple(desk.states[desk.last].parts.values())
        title = words("parts_copy.title", title=desk.material.journal.title, episode=desk.last)
        address = links.PARTS
    else:
        parts = parts_of_episode(desk, number)
        title = words(
            "parts_copy.title_episode", title=desk.material.journal.title, episode=number
        )
        address = links.episode(number)
    order = {name: at for at, name in enumerate(systems())}
    ordered = sorted(parts, key=lambda each: order.get(each.part.system or "", len(order)))
    at = desk.last if number is None else number
    rows = tuple((_row(desk, each.part, at), _left_out(desk, each.part)) for each in ordered)
    count = sum(left for _, left in rows)
    return _Listed(
        title=title,
        rows=rows,
        left_out=words("parts_copy.left_out", n=count) if count else "",
        whole=words("parts_copy.whole", n=count) if count else "",
        conditions=conditions_of(desk, at),
        cautions=(
            words("parts_copy.caution"),
            *(f"{each.caution.title}: {each.caution.line}" for each in desk.owed(address)),
        ),
    )


def _left_out(desk: Desk, part: Part) -> bool:
    return desk.fate(part.id).outcome is not Outcome.IN_USE


def conditions_of(desk: Desk, number: int) -> str:
    """Return what the build as at an episode is good for: displacement, boost and fuel."""
    state = desk.states[number]
    given = {
        "displacement": state.car.get("engine displacement"),
        "boost": state.settings.get("boost"),
        "fuel": state.settings.get("fuel"),
    }
    said = [
        desk.words(f"parts_copy.{name}", value=in_short(desk, dated.value))
        for name, dated in given.items()
        if dated is not None
    ]
    return ", ".join(said) or desk.words("parts_copy.no_conditions")


def _row(desk: Desk, part: Part, at: int) -> Row:
    """Return a part as a list has it whose figures and conditions are as at an episode."""
    entry = desk.paid.get(part.id)
    return Row(
        system=desk.system(part.system),
        count=count_of(desk, part) or "1",
        name=part.name,
        maker=part.maker or "",
        part_number=part.part_number or "",
        came=came_of(desk, part),
        ends="; ".join(f"{each.name}: {each.text}" for each in part.ends.values()),
        price=_price(desk, part),
        date=entry.day.isoformat() if entry and entry.day else "",
        supplier=(entry.supplier or "") if entry else "",
        link=part.link or "",
        must=part.must or "",
        figures="; ".join(_figures(desk, part.id, at)),
        became=desk.became(part.id),
    )


def _price(desk: Desk, part: Part) -> str:
    if part.paid is None:
        return ""
    price = desk.formats.money(part.paid)
    if part.count == 1:
        return price
    return desk.words("parts_copy.price_of_all", price=price, count=part.count)


def _figures(desk: Desk, part_id: str, at: int) -> Iterator[str]:
    for figure in desk.listed(at):
        if figure.key.subject != part_id or not isinstance(figure, Figure):
            continue
        said = desk.formats.figure(figure)
        text = f"{desk.titles[figure.key.quantity]} {said.sentence}"
        yield f"{text}, {said.limit} ({said.limit_detail})" if said.limit else text


def _details(desk: Desk, row: Row, link: Callable[[str], str]) -> Iterator[str]:
    """Yield the lines below a part's name."""
    number = f"{desk.words('parts_copy.part_number')} {row.part_number}"
    made = [row.maker, number if row.part_number else "", row.came]
    yield ", ".join(each for each in made if each)
    bought = [row.price, row.supplier, row.date, link(row.link) if row.link else ""]
    yield ", ".join(each for each in bought if each)
    for name in ("ends", "must", "figures", "became"):
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


def _text(desk: Desk, listed: _Listed) -> Iterator[_Piece]:
    yield f"{listed.title}\n", _ALWAYS
    for system, when, rows in _by_system(listed.rows):
        yield f"\n{system.upper()}\n", when
        for row, left in rows:
            lines = [_counted(row), *(f"    {each}" for each in _details(desk, row, str) if each)]
            yield "\n".join(lines) + "\n", _ASKED if left else _ALWAYS
    yield "\n", _ALWAYS
    yield from _closing(desk, listed, "")


def _counted(row: Row) -> str:
    return row.name if row.count == "1" else f"{row.name} ({row.count})"


def _markdown(desk: Desk, listed: _Listed) -> Iterator[_Piece]:
    yield f"# {_plain(listed.title)}\n", _ALWAYS
    for system, when, rows in _by_system(listed.rows):
        yield f"\n## {_plain(system)}\n\n", when
        for row, left in rows:
            details = (_plain(each) for each in _details(desk, row, lambda link: link) if each)
            lines = [f"- **{_plain(_counted(row))}**", *(f"  - {each}" for each in details)]
            yield "\n".join(lines) + "\n", _ASKED if left else _ALWAYS
    yield "\n", _ALWAYS
    yield from _closing(desk, listed, "\n")


_MARKS = re.compile(r"([\\`*_\[\]<>#|~])")


def _plain(text: str) -> str:
    """Return text that Markdown prints as it is; links stay links, for it knows them by sight."""
    words = text.split(" ")
    return " ".join(each if "://" in each else _MARKS.sub(r"\\\1", each) for each in words)


def _closing(desk: Desk, listed: _Listed, between: str) -> Iterator[_Piece]:
    """Yield what every list ends with: how many are left out, the conditions, the caution."""
    if listed.left_out:
        yield f"{listed.left_out}\n{between}", _UNASKED
        yield f"{listed.whole}\n{between}", _ASKED
    conditions = desk.words("parts_copy.conditions", conditions=listed.conditions)
    yield f"{conditions}\n", _ALWAYS
    for caution in listed.cautions:
        yield f"{between}{caution}\n", _ALWAYS


def _csv(desk: Desk, listed: _Listed) -> Iterator[_Piece]:
    names = [each.name for each in fields(Row)]
    header = [desk.words(f"parts_copy.column.{name}") for name in names]
    yield csv_table(header, []).decode(), _ALWAYS
    for row, left in listed.rows:
        yield _csv_line(astuple(row)), _ASKED if left else _ALWAYS
    for text, when in _closing(desk, listed, ""):
        yield _csv_line((text.strip(), *[""] * (len(names) - 1))), when


def _csv_line(cells: tuple[str, ...]) -> str:
    return csv_table([each.replace(NO_BREAK, " ") for each in cells], []).decode()


_FORMS: Mapping[str, Callable[[Desk, _Listed], Iterator[_Piece]]] = {
    "txt": _text,
    "md": _markdown,
    "csv": _csv,
}
