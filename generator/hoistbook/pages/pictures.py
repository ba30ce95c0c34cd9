"""Where the pictures of an episode stand in the site, and how they are shown."""

from __future__ import annotations

import posixpath
from collections.abc import Mapping

from hoistbook.authored.records import Episode, Journal
from hoistbook.pages import links
from hoistbook.pages.shown import Picture


def picture_of(journal: Journal, episode: Episode, name: str, text: str) -> Picture | None:
    """Return a picture by the path that the episode gives, None where there is none."""
    folder = posixpath.dirname(episode.file)
    size = journal.pictures.get(posixpath.normpath(posixpath.join(folder, name)))
    if size is None:
        return None
    return Picture(
        address=links.episode_file(episode.number, posixpath.normpath(name)),
        width=size[0],
        height=size[1],
        text=text,
    )


def pictures_of(journal: Journal, episode: Episode) -> Mapping[str, Picture]:
    """Return every picture that stands beside an episode, by its path from there."""
    folder = posixpath.dirname(episode.file)
    names = (posixpath.relpath(path, folder) for path in journal.pictures)
    shown = {name: picture_of(journal, episode, name, "") for name in names if name[:2] != ".."}
    return {name: picture for name, picture in shown.items() if picture is not None}


def poster_of(journal: Journal, episode: Episode) -> Picture | None:
    """Return the picture that stands for an episode's video."""
    if episode.poster is None:
        return None
    name = posixpath.relpath(episode.poster, posixpath.dirname(episode.file))
    return picture_of(journal, episode, name, episode.poster_text or episode.title)
