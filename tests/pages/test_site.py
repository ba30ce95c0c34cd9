"""All pages together."""

from __future__ import annotations

from hoistbook.pages.site import site_pages
from tests.pages.sample import sample_material

PAGES = site_pages(sample_material())


def test_addresses_and_titles_are_each_page_s_own() -> None:
    assert len({each.address for each in PAGES}) == len(PAGES)
    assert len({each.title for each in PAGES}) == len(PAGES)


def test_every_page_of_the_navigation_is_there() -> None:
    addresses = {each.address for each in PAGES}
    assert addresses >= {
        "/",
        "/episodes/",
        "/parts/",
        "/next/",
        "/spec/",
        "/tally/",
        "/workings/",
        "/changes/",
        "/cautions/",
        "/index-a-z/",
    }


def test_every_description_says_enough_and_not_too_much() -> None:
    lengths = {each.address: len(each.description) for each in PAGES}
    assert {at: n for at, n in lengths.items() if not 20 <= n <= 320} == {}
