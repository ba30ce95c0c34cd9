"""Looking over a rendered page for the cautions that it owes."""

from __future__ import annotations

from collections.abc import Iterable
from html.parser import HTMLParser

from hoistbook.cautions.caution import Owed

UNSEEN = ("script", "style", "template", "noscript", "title")
WORK = ("work", "joins", "story")
"""Ids of the sections of a page that describe work."""
_WORK_BEGINS = tuple(("id", name) for name in WORK)
VOID = ("area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source")


def check_page(html_text: str, owed: Iterable[Owed]) -> tuple[Owed, ...]:
    """Return the cautions that a page owes and does not carry.

    A caution owed in full is carried when its title and every paragraph of its text can be read
    on the page, one owed as a line when that line can be; one owed ahead of the work when its
    line can be read before the first section that describes work. What is hidden is not carried.
    """
    ahead, seen = visible_text(html_text)
    return tuple(
        each
        for each in owed
        if not all(part in seen for part in texts_of(each))
        or (each.ahead and each.caution.line not in ahead)
    )


def texts_of(owed: Owed) -> tuple[str, ...]:
    """Return the texts of which a page must carry every one."""
    caution = owed.caution
    return (caution.title, *caution.text) if owed.full else (caution.line,)


def visible_text(html_text: str) -> tuple[str, str]:
    """Return the text of a page that a reader can see: that ahead of its work, and all of it.

    White space is made single.
    """
    reader = _VisibleText()
    reader.feed(html_text)
    reader.close()
    return _joined(reader.pieces[: reader.work_begins]), _joined(reader.pieces)


def _joined(pieces: Iterable[str]) -> str:
    return " ".join("".join(pieces).split())


class _VisibleText(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.pieces: list[str] = []
        self.unseen: list[str] = []
        """The unseen element that is open, and what is open inside it."""
        self.work_begins: int | None = None
        """How many pieces stand ahead of the work; None while none was met."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in VOID:
            return
        if self.work_begins is None and any(each in attrs for each in _WORK_BEGINS):
            self.work_begins = len(self.pieces)
        hidden = tag in UNSEEN or any(name == "hidden" for name, _ in attrs)
        if self.unseen or hidden:
            self.unseen.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in self.unseen:
            while self.unseen.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        if not self.unseen:
            self.pieces.append(data)
