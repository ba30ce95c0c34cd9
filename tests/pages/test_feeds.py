"""Feeds are read by feedparser and lxml, and their dates are the journal's own."""

import json
from dataclasses import replace

import feedparser
from lxml import etree

from hoistbook.pages.desk import desk_of
from hoistbook.pages.feeds import feed_files
from tests.pages.sample import JOURNAL, sample_material

ADDRESSES = ("/", "/episodes/2/", "/parts/pump/")

SITEMAP = """\
<?xml version="1.0" encoding="utf-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
 <url>
  <loc>https://journal.example/hill/</loc>
 </url>
 <url>
  <loc>https://journal.example/hill/episodes/2/</loc>
  <lastmod>2026-01-05</lastmod>
 </url>
 <url>
  <loc>https://journal.example/hill/parts/pump/</loc>
 </url>
</urlset>
"""


def files() -> dict[str, bytes]:
    return feed_files(desk_of(sample_material()), ADDRESSES)


def test_atom_has_an_entry_for_each_published_episode_the_latest_first() -> None:
    feed = feedparser.parse(files()["feed.xml"])
    assert not feed.bozo
    assert feed.version == "atom10"
    assert (feed.feed.title, feed.feed.author) == ("A car for the hill", "The owner")
    assert feed.feed.updated == "2026-01-05T00:00:00Z"
    assert [(each.id, each.published, each.updated) for each in feed.entries] == [
        # The second was corrected on 5 January.
        (
            "https://journal.example/hill/episodes/2/",
            "2025-11-14T00:00:00Z",
            "2026-01-05T00:00:00Z",
        ),
        (
            "https://journal.example/hill/episodes/1/",
            "2025-10-17T00:00:00Z",
            "2025-10-17T00:00:00Z",
        ),
    ]


def test_atom_has_what_rfc_4287_section_4_asks_of_feed_and_entry() -> None:
    space = {"a": "http://www.w3.org/2005/Atom"}
    feed = etree.fromstring(files()["feed.xml"])
    for element in (feed, *feed.findall("a:entry", space)):
        for name in ("id", "title", "updated"):
            assert len(element.findall(f"a:{name}", space)) == 1
        links = element.findall("a:link[@rel='alternate']", space)
        assert [each.get("type") for each in links] == ["text/html"]
    assert feed.findtext("a:author/a:name", namespaces=space) == "The owner"
    (own,) = feed.findall("a:link[@rel='self']", space)
    assert own.get("href") == "https://journal.example/hill/feed.xml"


def test_json_feed_has_the_same_items() -> None:
    feed = json.loads(files()["feed.json"])
    assert feed["version"] == "https://jsonfeed.org/version/1.1"
    assert feed["items"][0] == {
        "id": "https://journal.example/hill/episodes/2/",
        "url": "https://journal.example/hill/episodes/2/",
        "title": "Episode 2: The second pump",
        "content_text": "The first pump ran out, so there is a second.",
        "date_published": "2025-11-14T00:00:00Z",
        "date_modified": "2026-01-05T00:00:00Z",
        "image": "https://journal.example/hill/episodes/2/poster.svg",
    }
    assert len(feed["items"]) == 2


def test_the_sitemap_lists_every_page_and_robots_names_it() -> None:
    made = files()
    assert made["sitemap.xml"].decode() == SITEMAP
    assert made["robots.txt"].decode() == (
        "User-agent: *\nAllow: /\nSitemap: https://journal.example/hill/sitemap.xml\n"
    )


def test_a_journal_without_an_address_has_no_feeds() -> None:
    desk = desk_of(sample_material(replace(JOURNAL, address=None)))
    assert feed_files(desk, ADDRESSES) == {"robots.txt": b"User-agent: *\nAllow: /\n"}


def test_an_unpublished_episode_is_in_no_feed() -> None:
    first, second = JOURNAL.episodes
    journal = replace(JOURNAL, episodes=(first, replace(second, published=None)))
    made = feed_files(desk_of(sample_material(journal)), ADDRESSES)
    assert [each["title"] for each in json.loads(made["feed.json"])["items"]] == [
        "Episode 1: The first pump"
    ]
