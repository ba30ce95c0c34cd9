"""A problem's picture: where, what, the line with a caret under the place, what to write."""

from __future__ import annotations

from hoistbook.problems import Notice, Place, Problem, closest, picture


def test_a_problem_is_drawn_whole() -> None:
    place = Place("episodes/03-hot-side/episode.md", 14, 9, "        pid: 640 EUR")
    problem = Problem("unknown-key", "`pid` is not a key of a part", place, "did you mean `paid`?")

    assert picture(problem, "content") == (
        "content/episodes/03-hot-side/episode.md:14:9\n"
        "problem: `pid` is not a key of a part\n"
        "            pid: 640 EUR\n"
        "            ^\n"
        "  did you mean `paid`?"
    )


def test_what_has_no_place_or_hint_is_drawn_without() -> None:
    assert picture(Problem("no-journal", "there is no build.yaml")) == (
        "problem: there is no build.yaml"
    )
    assert picture(Notice("empty", "nothing stands here", Place("a.md", 1, 1, "  "))) == (
        "a.md:1:1\nnotice: nothing stands here"
    )


def test_of_a_long_line_the_part_around_the_place_is_drawn() -> None:
    start = Problem("x", "m", Place("a.md", 1, 3, "ab" + "c" * 200))
    middle = Problem("x", "m", Place("a.md", 1, 101, "a" * 100 + "B" + "c" * 100))

    assert picture(start).split("\n")[2:] == ["    ab" + "c" * 88 + "…", "      ^"]
    assert picture(middle).split("\n")[2:] == [
        "    …" + "a" * 60 + "B" + "c" * 29 + "…",
        "    " + " " * 61 + "^",
    ]


def test_the_caret_stands_right_below_wide_and_combining_letters() -> None:
    wide = Problem("x", "m", Place("a.md", 1, 4, "ターボ!"))
    combined = Problem("x", "m", Place("a.md", 1, 3, "e\N{COMBINING ACUTE ACCENT}!"))

    assert picture(wide).split("\n")[3] == "    " + " " * 6 + "^"
    assert picture(combined).split("\n")[3] == "    " + " ^"


def test_a_place_moves_along_its_line() -> None:
    place = Place("a.md", 2, 3, "title: One").moved(4)

    assert (place.column, str(place)) == (7, "a.md:2:7")


def test_the_closest_word_is_near_or_none() -> None:
    assert closest("piad", ["paid", "list"]) == "paid"
    assert closest("colour", ["paid", "list"]) is None
    assert closest("stone", ["tonne"], cutoff=0.9) is None
