"""The list of episodes."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.authored.records import Episode
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class EpisodeRow:
    """An episode as a row of the list."""

    number: int
    title: Link
    date: str
    summary: str
    spent: str
    """In it alone."""
    total: str
    """Spent so far."""
    unpublished: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class EpisodesContext(Sheet):
    """`episodes.html`: all episodes, the first first."""

    rows: tuple[EpisodeRow, ...]


def episodes_page(desk: Desk) -> Page:
    """Return the page that lists the episodes."""
    title = desk.words("episodes.title")
    journal = desk.material.journal
    return Page(
        address=links.EPISODES,
        template="episodes.html",
        title=title,
        description=desk.words("episodes.description", title=journal.title, n=len(desk.episodes)),
        context=EpisodesContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("episodes.lead"),
            rows=tuple(_row(desk, each) for each in desk.material.episodes),
        ),
    )


def _row(desk: Desk, episode: Episode) -> EpisodeRow:
    tally = desk.tallies[episode.number]
    return EpisodeRow(
        number=episode.number,
        title=Link(text=episode.title, address=links.episode(episode.number)),
        date=desk.formats.date(episode.filmed) if episode.filmed else "",
        summary=episode.summary or "",
        spent=desk.home_money(tally.spent_here),
        total=desk.home_money(tally.spent),
        unpublished=episode.published is None,
    )
