"""States of journals written as an author writes them."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from hoistbook.authored.journal import read_journal
from hoistbook.history.fold import fold
from hoistbook.history.state import State

States = Callable[..., tuple[State, ...]]


@pytest.fixture
def states(tmp_path: Path) -> States:
    """Return a function that writes episodes (their front matter each) down and folds them."""

    def write(*episodes: str, build: str = "") -> tuple[State, ...]:
        (tmp_path / "episodes").mkdir(exist_ok=True)
        head = "format: 1\ntitle: A test journal\n"
        (tmp_path / "build.yaml").write_text(head + textwrap.dedent(build), encoding="utf-8")
        for number, text in enumerate(episodes, start=1):
            whole = f"---\ntitle: Episode {number}\n{textwrap.dedent(text).strip()}\n---\n"
            file = tmp_path / "episodes" / f"{number:02}-test.md"
            file.write_text(whole, encoding="utf-8")
        read = read_journal(tmp_path)
        assert read.problems == ()
        assert read.journal is not None
        folded = fold(read.journal)
        assert folded.problems == ()
        return folded.states

    return write
