"""What a page says of itself to machines: JSON-LD in the vocabulary of schema.org."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hoistbook.authored.records import Episode
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.page import Page
from hoistbook.pages.pictures import poster_of

_CONTEXT = "https://schema.org"

_Node = dict[str, object]


def structured_of(desk: Desk, page: Page) -> Mapping[str, object] | None:
    """Return the structured data of a page, None where there is nothing to say.

    An address is full where the journal has one of its own, and relative to the page elsewhere.
    """
    if page.address == links.HOME:
        return {"@context": _CONTEXT, **_site(desk, page)}
    nodes = [_trail(desk, page), *_of_episode(desk, page)]
    return {"@context": _CONTEXT, "@graph": nodes}


def _url(desk: Desk, page: Page, address: str) -> str:
    base = desk.material.journal.address
    return links.absolute(base, address) if base else links.relative(page.address, address)


def _author(desk: Desk) -> _Node:
    journal = desk.material.journal
    return {"@type": "Person", "name": journal.author or journal.title}


def _site(desk: Desk, page: Page) -> _Node:
    journal = desk.material.journal
    return {
        "@type": "WebSite",
        "name": journal.title,
        "url": _url(desk, page, links.HOME),
        "inLanguage": journal.language,
        "description": page.description,
        "author": _author(desk),
    }


def _trail(desk: Desk, page: Page) -> _Node:
    """Return the way from the first page to this one."""
    steps = [(desk.material.journal.title, links.HOME)]
    parent = "/" + page.address.strip("/").partition("/")[0] + "/"
    if parent != page.address:
        steps.append((desk.words(f"navigation.{_LISTS[parent]}"), parent))
    steps.append((page.title, page.address))
    return {
        "@type": "BreadcrumbList",
        "itemListElement": [
            {
                "@type": "ListItem",
                "position": position,
                "name": name,
                "item": _url(desk, page, address),
            }
            for position, (name, address) in enumerate(steps, 1)
        ],
    }


_LISTS = {
    links.EPISODES: "episodes",
    links.PARTS: "parts",
    links.SPEC: "spec",
    links.TALLY: "tally",
    links.CHANGES: "changes",
    links.SYSTEMS: "parts",
    links.CIRCUITS: "circuits",
    links.WORKINGS: "workings",
}
"""Pages that have pages below them, by their name in the navigation."""


def _of_episode(desk: Desk, page: Page) -> Iterator[_Node]:
    numbers = [each for each in desk.episodes if links.episode(each) == page.address]
    for episode in (desk.episodes[each] for each in numbers):
        day = episode.published or episode.filmed
        if day is None:
            continue
        corrected = [each.date for each in episode.corrections]
        yield {
            "@type": "Article",
            "headline": episode.title,
            "description": page.description,
            "inLanguage": desk.material.journal.language,
            "url": _url(desk, page, page.address),
            "datePublished": day.isoformat(),
            "dateModified": max([day, *corrected]).isoformat(),
            "author": _author(desk),
        }
        yield from _video(desk, page, episode)


def _video(desk: Desk, page: Page, episode: Episode) -> Iterator[_Node]:
    poster = poster_of(desk.material.journal, episode)
    if episode.video and episode.published and poster:
        yield {
            "@type": "VideoObject",
            "name": episode.title,
            "description": page.description,
            "url": episode.video,
            "thumbnailUrl": _url(desk, page, poster.address),
            "uploadDate": episode.published.isoformat(),
        }
