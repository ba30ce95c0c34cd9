"""Looking over a rendered page for the cautions that it owes."""

from __future__ import annotations

import html
import re
from collections.abc import Iterable

from hoistbook.cautions.caution import Owed

UNSEEN = ("script", "style", "template", "noscript", "title")
WORK = ("work", "joins", "story")
"""Ids of the sections of a page that describe work."""
_WORK_BEGINS = re.compile(rf"""\sid=["']?(?:{"|".join(WORK)})(?=["'\s]|$)""")
_TAG = re.compile(
    r"""<!--.*?-->|<![a-zA-Z][^>]*>|<(/?)([a-zA-Z][a-zA-Z0-9]*)((?:[^<>"']|"[^"]*"|'[^']*')*)>""",
    re.DOTALL,
)
_QUOTED = re.compile(r""""[^"]*"|'[^']*'""")
_HIDDEN = re.compile(r"\shidden(?=[\s=/]|$)")
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

    White space is made single. A parser of the library took a second for the demo.
    """
    pieces: list[str] = []
    # The unseen element that is open, and what is open inside it.
    unseen: list[str] = []
    work_begins: int | None = None
    end = 0
    for tag in _TAG.finditer(html_text):
        if not unseen:
            pieces.append(html_text[end : tag.start()])
        end = tag.end()
        closing, name, attributes = tag[1], (tag[2] or "").lower(), tag[3] or ""
        if closing:
            _close(name, unseen)
        elif name and name not in VOID:
            if work_begins is None and _WORK_BEGINS.search(attributes):
                work_begins = len(pieces)
            if unseen or name in UNSEEN or _is_hidden(attributes):
                unseen.append(name)
    if not unseen:
        pieces.append(html_text[end:])
    return _joined(pieces[:work_begins]), _joined(pieces)


def _close(name: str, unseen: list[str]) -> None:
    if name in unseen:
        while unseen.pop() != name:
            pass


def _is_hidden(attributes: str) -> bool:
    return "hidden" in attributes and bool(_HIDDEN.search(_QUOTED.sub("", attributes)))


def _joined(pieces: Iterable[str]) -> str:
    return " ".join(html.unescape("".join(pieces)).split())
