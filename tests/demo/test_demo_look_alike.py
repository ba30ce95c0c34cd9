"""The demo's look-alike, end to end: noticed at its episode, gone after it is put right."""

from __future__ import annotations

import re
from html import unescape

import pytest
from click.testing import CliRunner

from hoistbook.cli import main
from tests.demo.conftest import CONTENT

WARNED = "Looks right, do not join: "
ENDS = (
    "Engine block, cast iron oil gallery (Rc 1/8 taper, female) to "
    "Oil feed adapter, 1/8 to dash four block end "
)


def text_of(page: bytes) -> str:
    """Return the words of a page."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page.decode())).split())


def run(*arguments: str) -> str:
    ran = CliRunner().invoke(main, [*arguments, "--journal", str(CONTENT)])
    assert ran.exit_code == 0
    return ran.output


@pytest.mark.parametrize(
    "path", ["episodes/5/index.html", "spec/5/index.html", "changes/from-1/index.html"]
)
def test_every_page_of_its_episode_warns(tree: dict[str, bytes], path: str) -> None:
    if path not in tree:
        path = "changes/index.html"

    page = text_of(tree[path])

    assert WARNED + ENDS in page
    assert "28 or 27 to the inch" in page
    assert "What goes wrong: spiral leak, galled or split casting" in page


def test_both_threads_stand_in_plain_writing_in_the_joins_of_its_episode(
    tree: dict[str, bytes],
) -> None:
    above_the_story = tree["episodes/5/index.html"].partition(b'id="story-heading"')[0]
    joins = text_of(above_the_story).partition("Joins made in this episode")[2]

    row = joins.partition("Engine block, cast iron oil gallery ")[2][:700]
    assert row.startswith(ENDS.partition(" oil gallery ")[2])
    assert re.search(r"\(1/8 NPT, male\) .*looks right, do not join", row)


def test_no_page_as_at_another_episode_warns(tree: dict[str, bytes]) -> None:
    warned = [path for path, page in tree.items() if WARNED.encode()[:-1] in page]

    assert sorted(path for path in warned if path.endswith(".html")) == [
        "changes/index.html",
        "episodes/5/index.html",
        "spec/5/index.html",
    ]


def test_the_parts_after_it_mate_with_paste(tree: dict[str, bytes]) -> None:
    page = text_of(tree["parts/engine-block/index.html"])

    assert "1/8 BSP taper block end mates with sealant" in page
    assert "do not join" not in page


def test_the_drawing_of_the_oil_says_so_from_its_episode_until_the_next(
    tree: dict[str, bytes],
) -> None:
    for narrow in ("", "-narrow"):
        wrong, right = (
            text_of(tree[f"charts/circuit-oil-episode-{number}{narrow}.svg"]) for number in (5, 6)
        )
        assert "looks right, do not join" in wrong
        assert "looks right, do not join" not in right


def test_the_data_have_the_episodes_between_which_it_held(tree: dict[str, bytes]) -> None:
    rows = [row for row in tree["data/joins.csv"].decode().splitlines() if "do not join" in row]

    assert len(rows) == 1
    assert rows[0].startswith('engine-block,oil gallery,"Rc 1/8 taper, female",oil-adapter,')
    assert rows[0].endswith(",5,6")


def test_check_says_it_once_with_its_line_and_how_to_tell() -> None:
    output = run("check")

    assert output.count("looks right, do not join") == 1
    place = output[: output.index("engine-block oil gallery")].splitlines()[-2]
    assert re.search(r"episodes/05-[\w-]+/episode\.md:\d+:\d+$", place)
    assert "- join: engine-block oil gallery to oil-adapter block end" in output
    assert "tell apart: a thread gauge over ten threads: 28 or 27 to the inch" in output


def test_the_terminal_warns_at_its_episode_and_no_longer_after_it() -> None:
    assert "Looks right, do not join" in run("spec", "--episode", "5")
    assert "Looks right, do not join" in run("changes", "4", "5")
    assert "do not join" not in run("spec", "--episode", "6")
    assert "do not join" not in run("changes", "5", "6")
