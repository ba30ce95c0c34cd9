"""The page of all cautions, in full."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.cautions.caution import Caution, Owed
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
    otherwise: str
    """What is said where no episode calls for it; empty where one does."""


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
            cautions=tuple(_shown(desk, each) for each in cautions),
        ),
        owed=desk.owed(links.CAUTIONS),
    )


def _shown(desk: Desk, caution: Caution) -> CautionShown:
    episodes = _calls(desk, caution.id)
    elsewhere = any(
        _owes(owed, caution.id)
        for address, owed in desk.material.owed.items()
        if address != links.CAUTIONS
    )
    key = "called_elsewhere" if elsewhere else "called_by_nothing"
    return CautionShown(
        id=caution.id,
        title=caution.title,
        text=caution.text,
        episodes=episodes,
        otherwise="" if episodes else desk.words(f"cautions.{key}"),
    )


def _calls(desk: Desk, caution_id: str) -> tuple[Link, ...]:
    return tuple(
        desk.episode(number)
        for number in desk.episodes
        if _owes(desk.owed(links.episode(number)), caution_id)
    )


def _owes(owed: tuple[Owed, ...], caution_id: str) -> bool:
    return any(each.caution.id == caution_id for each in owed)
