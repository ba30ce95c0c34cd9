"""Links are relative and end in a file, so that they work from disk."""

import pytest

from hoistbook.figures.figure import Key
from hoistbook.pages import links


@pytest.mark.parametrize(
    ("start", "target", "expected"),
    [
        ("/", "/", "index.html"),
        ("/", "/episodes/3/", "episodes/3/index.html"),
        ("/episodes/3/", "/", "../../index.html"),
        ("/episodes/3/", "/episodes/3/", "index.html"),
        ("/episodes/3/", "/episodes/4/#tally", "../4/index.html#tally"),
        ("/episodes/3/", "/episodes/3/#tally", "#tally"),
        ("/episodes/3/", "/data/parts-episode-3.txt", "../../data/parts-episode-3.txt"),
        ("/episodes/3/", "https://video.example/3", "https://video.example/3"),
        ("/spec/", "#fuel", "#fuel"),
    ],
)
def test_a_link_leads_from_page_to_page(start: str, target: str, expected: str) -> None:
    assert links.relative(start, target) == expected


def test_the_address_of_a_figure_is_its_entry_as_at_an_episode() -> None:
    address = links.figure(Key("pipe_velocity", "pipe-2"), 3)
    assert address == "/workings/pipe_velocity/#pipe-2-episode-3"
    assert links.file_path(address) == "workings/pipe_velocity/index.html"


def test_a_full_address_joins_without_a_double_slash() -> None:
    assert (
        links.absolute("https://a.example/hill/", "/feed.xml") == "https://a.example/hill/feed.xml"
    )
