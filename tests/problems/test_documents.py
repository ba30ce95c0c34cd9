"""The documents beside this file: each case is a title, what an author wrote, and what is said.

A case begins with a heading; behind it stand, between lone dots, the episode's file and the whole
message. `== FILE` begins another file of the journal. What starts no other journal is enough for
build.yaml, so it is left out where it does not matter.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.problems import Notice, Problem, picture

HERE = Path(__file__).parent
CASE = re.compile(r"^## (.+?)\n\.\n(.*?)^\.\n(.*?)^\.$", re.MULTILINE | re.DOTALL)
CASES = [
    pytest.param(*case, id=f"{document.stem}: {case[0]}")
    for document in sorted(HERE.glob("*.md"))
    for case in CASE.findall(document.read_text(encoding="utf-8"))
]


def lay_down(folder: Path, text: str) -> None:
    """Write the files of a case; the first is the episode's."""
    (folder / "build.yaml").write_text("format: 1\ntitle: A car\n")
    named = re.split(r"^== (.+)\n", "== episodes/01-one/episode.md\n" + text, flags=re.MULTILINE)
    for name, content in zip(named[1::2], named[2::2], strict=True):
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(content, encoding="utf-8")


@pytest.mark.parametrize(("title", "written", "said"), CASES)
def test_what_is_said_of_a_mistake_is_what_the_document_shows(
    title: str, written: str, said: str, tmp_path: Path
) -> None:
    lay_down(tmp_path, written)

    read = read_journal(tmp_path)

    told: list[Problem | Notice] = [*read.problems, *read.notices]
    assert "\n\n".join(picture(each) for each in told) + "\n" == said
