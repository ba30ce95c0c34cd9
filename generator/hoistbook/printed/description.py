"""The text for the description box below a video: plain text, links in full, cautions included."""

from __future__ import annotations

from collections.abc import Iterator

from hoistbook.authored.records import Episode
from hoistbook.figures.figure import Figure
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.parts_copy import parts_in_lines
from hoistbook.pages.video import clock


def description(desk: Desk, episode: Episode) -> str:
    """Return the description of an episode's video."""
    return "\n\n".join("\n".join(each) for each in _paragraphs(desk, episode) if each) + "\n"


def _paragraphs(desk: Desk, episode: Episode) -> Iterator[list[str]]:
    yield [episode.title]
    yield [episode.summary] if episode.summary else []
    yield _page(desk, episode)
    yield _chapters(episode)
    yield _cost(desk, episode)
    yield _headed("Parts that came", parts_in_lines(desk, episode.number))
    yield _moved(desk, episode)
    yield _cautions(desk, episode)


def _page(desk: Desk, episode: Episode) -> list[str]:
    base = desk.material.journal.address
    if not base:
        return []
    address = links.absolute(base, links.episode(episode.number))
    return [f"Parts list, cost, workings and cautions: {address}"]


def _chapters(episode: Episode) -> list[str]:
    return [f"{clock(each.seconds)} {each.title}" for each in episode.chapters]


def _cost(desk: Desk, episode: Episode) -> list[str]:
    tally = desk.tallies[episode.number]
    here, total = desk.home_money(tally.spent_here), desk.home_money(tally.spent)
    return [f"Spent in this episode {here}, on the whole build so far {total}"]


def _moved(desk: Desk, episode: Episode) -> list[str]:
    """Return the figures of the engine that the episode changed."""
    changed = [
        each
        for each in desk.listed(episode.number)
        if isinstance(each, Figure)
        and each.episode == episode.number
        and each.key.subject == "engine"
    ]
    lines = [_figure(desk, each) for each in changed]
    return _headed("Figures that this episode changed", lines)


def _figure(desk: Desk, figure: Figure) -> str:
    """Return a figure as it may be quoted: with band, evidence and, of a power, its standard."""
    title, text = desk.titles[figure.key.quantity], desk.formats.figure(figure)
    name = f"{title}, {text.headline}" if text.headline else title
    return f"{name}: {text.sentence}."


def _cautions(desk: Desk, episode: Episode) -> list[str]:
    owed = desk.owed(links.episode(episode.number))
    return _headed("Cautions", [f"{each.caution.title}: {each.caution.line}" for each in owed])


def _headed(heading: str, lines: list[str]) -> list[str]:
    """Return a paragraph with its heading, or none where there is nothing below it."""
    return [heading, *lines] if lines else []
