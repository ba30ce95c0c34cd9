"""Journals written as an author writes them, for the tests of what follows from them."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from hoistbook.authored.journal import read_journal
from hoistbook.authored.records import Journal

Written = Callable[..., Journal]


@pytest.fixture
def written(tmp_path: Path) -> Written:
    """Return a function that writes episodes (their front matter each) down and reads them.

    A line `---` ends the front matter; prose may follow.
    """

    def write(*episodes: str, build: str = "", rates: str = "", log: str = "") -> Journal:
        (tmp_path / "episodes").mkdir(exist_ok=True)
        (tmp_path / "episodes" / "run.csv").write_text(log, encoding="utf-8")
        head = "format: 1\ntitle: A test journal\n"
        (tmp_path / "build.yaml").write_text(head + textwrap.dedent(build), encoding="utf-8")
        for number, text in enumerate(episodes, start=1):
            matter, _, prose = textwrap.dedent(text).partition("\n---\n")
            whole = f"---\ntitle: Episode {number}\n{matter.strip()}\n---\n{prose}"
            file = tmp_path / "episodes" / f"{number:02}-test.md"
            file.write_text(whole, encoding="utf-8")
        if rates:
            text = "date,currency,rate,source\n" + textwrap.dedent(rates).lstrip()
            (tmp_path / "rates.csv").write_text(text, encoding="utf-8")
        read = read_journal(tmp_path)
        assert read.problems == ()
        assert read.journal is not None
        return read.journal

    return write
