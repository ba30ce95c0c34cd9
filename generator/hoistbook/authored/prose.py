"""The prose of an episode: its links and pictures, and what it must not hold."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from urllib.parse import unquote, urlsplit

from markdown_it import MarkdownIt
from markdown_it.token import Token

from hoistbook.authored.context import Context
from hoistbook.authored.pictures import inside, read_size
from hoistbook.authored.records import ProseLink
from hoistbook.problems import Place, closest
from hoistbook.values.slip import Slip

LINKS = ("part", "figure", "episode")
"""Our own schemes of a link; `chart` is one of a picture."""

WEB = ("http", "https", "mailto")


MOST = 2000
"""Links and pictures of one episode; more is not prose."""

_LEADS = ("link_open", "image")


@dataclass(slots=True)
class Prose:
    """What the prose refers to."""

    links: list[ProseLink] = field(default_factory=list)
    pictures: dict[str, tuple[int, int]] = field(default_factory=dict)
    """Path relative to the journal's folder -> width and height in pixels."""


def markdown() -> MarkdownIt:
    """Return the Markdown of the prose: CommonMark and tables."""
    return MarkdownIt("commonmark", {"html": True}).enable("table")


def read_prose(prose: str, first_line: int, context: Context) -> Prose:
    """Return what the prose refers to, and note what it must not hold.

    Parameters
    ----------
    prose
        CommonMark with tables.
    first_line
        The line of the file on which it begins.
    context
        The file.
    """
    reader = markdown()
    # Every link is to become a token: what is wrong with it is said here, not passed over.
    reader.validateLink = lambda url: True  # type: ignore[method-assign]
    found = Prose()
    lines = prose.split("\n")
    tokens = reader.parse(prose)
    if sum(child.type in _LEADS for token in tokens for child in token.children or ()) > MOST:
        message = f"this prose has more than {MOST} links and pictures"
        context.problem("too-long", message, Place(context.file, first_line), "write less")
        return found
    for token in tokens:
        finder = _Finder(lines, token, first_line, context.file)
        if token.type == "html_block":
            _html(token.content, finder, context)
        _unread(token, finder, context)
        for index in range(len(token.children or ())):
            _inline(token, index, finder, context, found)
    return found


@dataclass(slots=True)
class _Finder:
    """Finds the places of what stands in one block; inline tokens know none of their own."""

    lines: Sequence[str]
    block: Token
    first_line: int
    file: str
    line: int = -1
    column: int = 0
    lost: bool = False

    def place(self, wanted: str) -> Place:
        """Return the place of the next such text in the block."""
        start, end = self.block.map or (0, 1)
        if self.line < 0:
            self.line = start
        for line in range(self.line, 0 if self.lost else min(end, len(self.lines))):
            column = self.lines[line].find(wanted, self.column if line == self.line else 0)
            if column >= 0:
                self.line, self.column = line, column + len(wanted)
                return self._at(line, column)
        # A link that is written in another way than it reads stands for all that follow it.
        self.lost = True
        return self._at(start, 0)

    def _at(self, line: int, column: int) -> Place:
        text = self.lines[line] if line < len(self.lines) else ""
        return Place(self.file, line + self.first_line, column + 1, text)


_NOT_A_LINK = re.compile(
    r"(?P<picture>!)?\[(?P<words>[^\[\]]*)\]"
    r"\((?=(?(picture)|(?:part|figure|episode|chart):))(?P<target>[^()<>\s]+(?: [^()<>\"'\s]+)+)\)"
)
"""A picture, or a link of ours, whose address has spaces: Markdown prints it as it stands."""


def _unread(block: Token, finder: _Finder, context: Context) -> None:
    """Say so where what was meant as a picture or a link stands on the page as it was typed."""
    words = "".join(each.content for each in block.children or () if each.type == "text")
    for match in _NOT_A_LINK.finditer(words):
        message = "an address with a space in it is no link: these signs are printed as they stand"
        sign = match["picture"] or ""
        hint = f"put it between < and >: {sign}[{match['words']}](<{match['target']}>)"
        if not sign:
            hint = f"as [{match['words']}]({match['target'].replace(' ', '-')})"
        # A finder goes forward only, and what is found here comes before or after real links.
        own = replace(finder)
        context.notice("not-a-link", message, own.place(match["target"]), hint)


def _html(content: str, finder: _Finder, context: Context) -> None:
    start = content.strip().split("\n")[0][:40]
    place = finder.place(start[:10])
    hint = "write it in Markdown, or put a backslash before the `<`"
    context.problem("raw-html", f"`{start}` is HTML, which the prose does not hold", place, hint)


def _inline(block: Token, index: int, finder: _Finder, context: Context, found: Prose) -> None:
    children = block.children or []
    token = children[index]
    if token.type == "html_inline" and not token.content.startswith("</"):
        _html(token.content, finder, context)
    elif token.type == "image":
        _picture(token, finder, context, found)
    elif token.type == "link_open":
        target = unquote(str(token.attrGet("href") or ""))
        place = finder.place(target)
        link = _link(target, _text_after(children, index), place, context)
        if link is not None:
            found.links.append(link)


def _text_after(children: Sequence[Token], start: int) -> str:
    words = []
    for token in children[start + 1 :]:
        if token.type == "link_close":
            break
        words.append(token.content)
    return " ".join("".join(words).split())


def _link(target: str, text: str, place: Place, context: Context) -> ProseLink | None:
    scheme, colon, rest = target.partition(":")
    if not text:
        message = "this link has no text of its own"
        context.problem("empty-link", message, place, "as `[the turbo](part:turbo)`")
    if scheme in LINKS and rest:
        return ProseLink(kind=scheme, target=rest, text=text, place=place)
    if scheme in WEB and _is_web(target):
        return None
    own = ", ".join(f"{name}:" for name in LINKS)
    near = closest(scheme, (*LINKS, *WEB)) if colon else None
    if scheme == "chart":
        hint = f"a chart is placed with an exclamation mark before it: ![{text}]({target})"
    elif near and near != scheme:
        hint = f"did you mean {near}:?"
    else:
        hint = f"links begin with https:, mailto:, {own}"
    message = f"`{target}` is not an address that a link may lead to"
    context.problem("bad-link", message, place, hint)
    return None


def _is_web(target: str) -> bool:
    try:
        parts = urlsplit(target)
    except ValueError:
        return False
    return bool(parts.path if parts.scheme == "mailto" else parts.netloc)


def _picture(token: Token, finder: _Finder, context: Context, found: Prose) -> None:
    target = unquote(str(token.attrGet("src") or ""))
    place = finder.place(target)
    if target.startswith("chart:"):
        chart = target.removeprefix("chart:")
        found.links.append(ProseLink(kind="chart", target=chart, text=token.content, place=place))
        return
    if not token.content.strip():
        message = f"`{target}` has no words for those who cannot see it"
        hint = f"write what it shows: ![the flange before welding]({target})"
        context.notice("no-words", message, place, hint)
    read_picture(target, place, context, found.pictures)


def read_picture(
    target: str, place: Place, context: Context, pictures: dict[str, tuple[int, int]]
) -> str | None:
    """Return the path of a picture relative to the journal's folder, and keep its size."""
    path = inside(context.root, context.file, target)
    if not isinstance(path, Slip) and path in pictures:
        return path
    size = path if isinstance(path, Slip) else read_size(context.root / path)
    if isinstance(size, Slip):
        context.problem(size.code, size.message, place, size.hint)
    elif isinstance(path, str):
        pictures[path] = size
        return path
    return None
