"""The video beside an episode: poster, chapters and transcript; nothing of its host is loaded."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import parse_qsl, urlencode, urlsplit, urlunsplit

from hoistbook.authored.records import Episode, Journal
from hoistbook.pages import links
from hoistbook.pages.pictures import poster_of
from hoistbook.pages.shown import Picture


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A point in the video: a chapter or a caption."""

    time: str
    """"4:10"."""
    text: str
    address: str
    """Of the video at that time; empty without a video."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Video:
    """The video that an episode stands beside."""

    address: str
    """Empty where only chapters or captions are there so far."""
    host: str
    """"video.example"."""
    poster: Picture | None
    chapters: tuple[Mark, ...]
    transcript: tuple[Mark, ...]
    captions: str
    """Address of the captions as WebVTT; empty without."""


def video_of(journal: Journal, episode: Episode) -> Video | None:
    """Return what an episode has of its video, None where it has nothing."""
    if not (episode.video or episode.chapters or episode.cues):
        return None
    address = episode.video or ""
    return Video(
        address=address,
        host=urlsplit(address).hostname or "",
        poster=poster_of(journal, episode),
        chapters=tuple(_mark(address, each.seconds, each.title) for each in episode.chapters),
        transcript=tuple(_mark(address, int(each.start), each.text) for each in episode.cues),
        captions=links.captions(episode.number) if episode.cues else "",
    )


def _mark(address: str, seconds: int, text: str) -> Mark:
    return Mark(
        time=clock(seconds),
        text=" ".join(text.split()),
        address=_at(address, seconds) if address else "",
    )


def clock(seconds: int) -> str:
    """Return a time of a video as it is read on its clock.

    Examples
    --------
    >>> clock(250), clock(3661)
    ('4:10', '1:01:01')
    """
    minutes, rest = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"


def _at(address: str, seconds: int) -> str:
    """Return a video's address at a time: `t` in seconds, which the usual hosts understand."""
    parts = urlsplit(address)
    query = [pair for pair in parse_qsl(parts.query, keep_blank_values=True) if pair[0] != "t"]
    return urlunsplit(parts._replace(query=urlencode([*query, ("t", str(seconds))])))
