"""One episode as an author writes it, and what its page owes."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from hoistbook.authored.journal import read_journal
from hoistbook.cautions.caution import Owed
from hoistbook.cautions.rules import owed_by_page
from hoistbook.figures.figure import Figures
from hoistbook.history.fold import fold
from tests.fit.ends import join_verdicts

Pages = dict[str, tuple[Owed, ...]]
Written = Callable[..., Pages]


@pytest.fixture
def owed(tmp_path: Path) -> Written:
    """Return a function that writes episodes down and returns what every page owes."""

    def write(*episodes: str, prose: str = "", parts: str = "") -> Pages:
        (tmp_path / "episodes").mkdir()
        log = "speed [rpm],torque [N m]\n2000,90\n3000,100\n4000,95\n"
        (tmp_path / "episodes" / "run.csv").write_text(log, encoding="utf-8")
        build = f"format: 1\ntitle: A test journal\nparts: [{parts}]\n"
        (tmp_path / "build.yaml").write_text(build, encoding="utf-8")
        for number, matter in enumerate(episodes, start=1):
            text = f"---\ntitle: An episode\n{textwrap.dedent(matter).strip()}\n---\n{prose}\n"
            file = tmp_path / "episodes" / f"{number:02}-test.md"
            file.write_text(text, encoding="utf-8")
        read = read_journal(tmp_path)
        assert read.problems == ()
        assert read.journal is not None
        folded = fold(read.journal)
        assert folded.problems == ()
        figures = [Figures(episode=state.episode, figures=()) for state in folded.states]
        joins = [join_verdicts(state) for state in folded.states]
        return owed_by_page(read.journal, folded.states, figures, joins)

    return write
