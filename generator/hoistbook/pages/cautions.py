"""The page of all cautions, in full."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.cautions.caution import Owed
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionShown:
    """A caution and the episodes whose work calls for it."""

    id: str
    title: str
    text: tuple[str, ...]
    episodes: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionsContext(Sheet):
    """`cautions.html`: every caution of the journal, each under its id as an anchor."""

    cautions: tuple[CautionShown, ...]


def cautions_page(desk: Desk) -> Page:
    """Return the page of all cautions."""
    title = desk.words("cautions.title")
    cautions = desk.material.cautions
    return Page(
        address=links.CAUTIONS,
        template="cautions.html",
        title=title,
        description=desk.words("cautions.description", title=desk.material.journal.title),
        context=CautionsContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("cautions.lead"),
            contents=tuple(Link(text=each.title, address=f"#{each.id}") for each in cautions),
            cautions=tuple(
                CautionShown(
                    id=each.id, title=each.title, text=each.text, episodes=_calls(desk, each.id)
                )
                for each in cautions
            ),
        ),
        owed=desk.owed(links.CAUTIONS),
    )


def _calls(desk: Desk, caution_id: str) -> tuple[Link, ...]:
    return tuple(
        desk.episode(number)
        for number in desk.episodes
        if _owes(desk.owed(links.episode(number)), caution_id)
    )


def _owes(owed: tuple[Owed, ...], caution_id: str) -> bool:
    return any(each.caution.id == caution_id for each in owed)
