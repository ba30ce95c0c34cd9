"""What is printed off a terminal is plain, whole and always the same."""

from __future__ import annotations

import io
from pathlib import Path

from rich.console import Console

from hoistbook.console import Screen
from hoistbook.problems import Notice, Place, Problem


def printed(*, terminal: bool = False) -> tuple[Screen, io.StringIO]:
    out = io.StringIO()
    console = Console(
        file=out, force_terminal=terminal, width=60, highlight=False, color_system=None
    )
    return Screen(console, console), out


def test_a_problem_shows_the_line_the_place_and_what_to_write() -> None:
    screen, out = printed()
    problem = Problem(
        "unknown-key",
        "`pid` is not a key of a part",
        Place("episodes/03-hot-side/episode.md", 14, 9, "        pid: 640 EUR"),
        "did you mean `paid`?",
    )

    screen.problems([problem, Problem("no-journal", "there is no build.yaml")], Path("content"))

    assert out.getvalue() == (
        "content/episodes/03-hot-side/episode.md:14:9\n"
        "problem: `pid` is not a key of a part\n"
        "            pid: 640 EUR\n"
        "            ^\n"
        "  did you mean `paid`?\n"
        "\n"
        "problem: there is no build.yaml\n"
        "\n"
    )


def test_what_an_author_writes_is_never_read_as_markup() -> None:
    screen, out = printed(terminal=True)

    screen.notices([Notice("claim", "[bold]see[/bold] :smile: [link=x]")], Path())

    assert out.getvalue() == "notice: [bold]see[/bold] :smile: [link=x]\n\n"


def test_a_table_is_plain_and_never_cut_off_a_terminal() -> None:
    screen, out = printed()

    screen.table(
        ["System", ">Spent"],
        [
            ["fuel", "1,204.50 EUR"],
            ["a name much longer than the width of that paper roll", "9 EUR"],
        ],
    )

    assert out.getvalue() == (
        "System                                                       Spent\n"
        "fuel                                                  1,204.50 EUR\n"
        "a name much longer than the width of that paper roll         9 EUR\n"
    )


def test_a_caret_stands_under_its_column_after_a_tab() -> None:
    screen, out = printed()

    screen.problems([Problem("tab", "a tab", Place("build.yaml", 2, 2, "\tcar:"))], Path())

    assert out.getvalue().splitlines()[2:4] == ["     car:", "     ^"]
