"""Structured data in the vocabulary of schema.org, whole."""

from dataclasses import replace

from hoistbook.pages.desk import desk_of
from hoistbook.pages.page import Page
from hoistbook.pages.structured import structured_of
from tests.pages.sample import JOURNAL, sample_material

BASE = "https://journal.example/hill"


def page(address: str, title: str) -> Page:
    return Page(address=address, template="", title=title, description="What it is.", context=None)


def step(position: int, name: str, address: str) -> dict[str, object]:
    return {"@type": "ListItem", "position": position, "name": name, "item": address}


def test_an_episode_says_where_it_stands_what_it_is_and_which_video_it_goes_with() -> None:
    desk = desk_of(sample_material())
    assert structured_of(desk, page("/episodes/2/", "Episode 2: The second pump")) == {
        "@context": "https://schema.org",
        "@graph": [
            {
                "@type": "BreadcrumbList",
                "itemListElement": [
                    step(1, "A car for the hill", f"{BASE}/"),
                    step(2, "Episodes", f"{BASE}/episodes/"),
                    step(3, "Episode 2: The second pump", f"{BASE}/episodes/2/"),
                ],
            },
            {
                "@type": "Article",
                "headline": "The second pump",
                "description": "What it is.",
                "inLanguage": "en",
                "url": f"{BASE}/episodes/2/",
                "datePublished": "2025-11-14",
                "dateModified": "2026-01-05",
                "author": {"@type": "Person", "name": "The owner"},
            },
            {
                "@type": "VideoObject",
                "name": "The second pump",
                "description": "What it is.",
                "url": "https://video.example/watch?v=2",
                "thumbnailUrl": f"{BASE}/episodes/2/poster.svg",
                "uploadDate": "2025-11-14",
            },
        ],
    }


def test_a_journal_without_an_address_has_relative_ones() -> None:
    desk = desk_of(sample_material(replace(JOURNAL, address=None)))
    assert structured_of(desk, page("/tally/", "Tally")) == {
        "@context": "https://schema.org",
        "@graph": [
            {
                "@type": "BreadcrumbList",
                "itemListElement": [
                    step(1, "A car for the hill", "../index.html"),
                    step(2, "Tally", "index.html"),
                ],
            }
        ],
    }


def test_the_first_page_is_the_site() -> None:
    assert structured_of(desk_of(sample_material()), page("/", "A car for the hill")) == {
        "@context": "https://schema.org",
        "@type": "WebSite",
        "name": "A car for the hill",
        "url": f"{BASE}/",
        "inLanguage": "en",
        "description": "What it is.",
        "author": {"@type": "Person", "name": "The owner"},
    }
