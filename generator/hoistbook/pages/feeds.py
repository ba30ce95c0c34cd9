"""The feeds (Atom, RFC 4287; JSON Feed 1.1), the sitemap and robots.txt.

Feeds and sitemap need full addresses and are written only for a journal that has one. Every date
in them is one of the journal's own.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from urllib.parse import quote
from xml.etree import ElementTree

from hoistbook.authored.records import Episode
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.pictures import poster_of

_ATOM = "http://www.w3.org/2005/Atom"
_SITEMAP = "http://www.sitemaps.org/schemas/sitemap/0.9"
_VERSION = "https://jsonfeed.org/version/1.1"


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One episode as feeds tell of it."""

    url: str
    title: str
    summary: str
    published: date
    updated: date
    """The day of its last correction, else of its publication."""
    picture: str
    """Full URL; empty without."""


def feed_files(desk: Desk, addresses: Iterable[str]) -> dict[str, bytes]:
    """Return feeds, sitemap and robots.txt: path in the site -> content.

    Parameters
    ----------
    desk
        The journal's material.
    addresses
        Of all pages, for the sitemap.
    """
    base = desk.material.journal.address
    if not base:
        return {links.file_path(links.ROBOTS): b"User-agent: *\nAllow: /\n"}
    items = sorted(_items(desk, base), key=lambda each: each.published, reverse=True)
    sitemap = links.absolute(base, links.SITEMAP)
    return {
        links.file_path(links.ATOM): _atom(desk, base, items),
        links.file_path(links.JSON_FEED): _json_feed(desk, base, items),
        links.file_path(links.SITEMAP): _sitemap(base, addresses, items),
        links.file_path(links.ROBOTS): f"User-agent: *\nAllow: /\nSitemap: {sitemap}\n".encode(),
    }


def _items(desk: Desk, base: str) -> Iterator[Item]:
    """Yield the published episodes."""
    for episode in desk.material.episodes:
        if episode.published is not None:
            corrected = [each.date for each in episode.corrections]
            yield Item(
                url=links.absolute(base, links.episode(episode.number)),
                title=desk.words("episode.page_title", number=episode.number, title=episode.title),
                summary=_summary(desk, episode),
                published=episode.published,
                updated=max([episode.published, *corrected]),
                picture=_picture(desk, base, episode),
            )


def _summary(desk: Desk, episode: Episode) -> str:
    return episode.summary or desk.words(
        "episode.description", title=episode.title, journal=desk.material.journal.title
    )


def _picture(desk: Desk, base: str, episode: Episode) -> str:
    poster = poster_of(desk.material.journal, episode)
    return links.absolute(base, poster.address) if poster else ""


def _moment(day: date) -> str:
    return f"{day.isoformat()}T00:00:00Z"


def _atom(desk: Desk, base: str, items: list[Item]) -> bytes:
    journal = desk.material.journal
    feed = ElementTree.Element("feed", {"xmlns": _ATOM, "xml:lang": journal.language})
    home = links.absolute(base, links.HOME)
    _add(feed, "id", home)
    _add(feed, "title", journal.title)
    if journal.goal:
        _add(feed, "subtitle", journal.goal)
    _add(feed, "updated", _moment(_last_day(desk, items)))
    _add(_add(feed, "author"), "name", journal.author or journal.title)
    _add(feed, "link", rel="alternate", type="text/html", href=home)
    _add(
        feed,
        "link",
        rel="self",
        type="application/atom+xml",
        href=links.absolute(base, links.ATOM),
    )
    _add(feed, "generator", "hoistbook")
    for item in items:
        entry = _add(feed, "entry")
        _add(entry, "id", item.url)
        _add(entry, "title", item.title)
        _add(entry, "published", _moment(item.published))
        _add(entry, "updated", _moment(item.updated))
        _add(entry, "link", rel="alternate", type="text/html", href=item.url)
        _add(entry, "summary", item.summary)
    return _xml(feed)


def _last_day(desk: Desk, items: list[Item]) -> date:
    """Return the last day that the journal knows of, for a feed that has nothing in it yet too."""
    days = [each.updated for each in items]
    filmed = [each.filmed for each in desk.material.episodes if each.filmed]
    return max(days or filmed or [date(1970, 1, 1)])


def _json_feed(desk: Desk, base: str, items: list[Item]) -> bytes:
    journal = desk.material.journal
    feed = {
        "version": _VERSION,
        "title": journal.title,
        "home_page_url": links.absolute(base, links.HOME),
        "feed_url": links.absolute(base, links.JSON_FEED),
        "language": journal.language,
        "authors": [{"name": journal.author or journal.title}],
        "items": [
            {
                "id": each.url,
                "url": each.url,
                "title": each.title,
                "content_text": each.summary,
                "date_published": _moment(each.published),
                "date_modified": _moment(each.updated),
            }
            | ({"image": each.picture} if each.picture else {})
            for each in items
        ],
    }
    return (json.dumps(feed, ensure_ascii=False, indent=1) + "\n").encode()


def _sitemap(base: str, addresses: Iterable[str], items: list[Item]) -> bytes:
    changed = {each.url: each.updated for each in items}
    pages = ElementTree.Element("urlset", {"xmlns": _SITEMAP})
    for address in sorted(addresses):
        url = links.absolute(base, quote(address))
        page = _add(pages, "url")
        _add(page, "loc", url)
        if url in changed:
            _add(page, "lastmod", changed[url].isoformat())
    return _xml(pages)


def _add(
    parent: ElementTree.Element, name: str, text: str | None = None, **attributes: str
) -> ElementTree.Element:
    element = ElementTree.SubElement(parent, name, attributes)
    element.text = text
    return element


def _xml(root: ElementTree.Element) -> bytes:
    ElementTree.indent(root, " ")
    text = ElementTree.tostring(root, encoding="unicode")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{text}\n'.encode()
