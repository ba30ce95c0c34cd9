"""The demo is published with the bare theme too: the contract of themes holds for all pages."""

from __future__ import annotations

import shutil
from pathlib import Path

from hoistbook.pipeline import build
from tests.demo.conftest import CONTENT


def test_the_bare_theme_publishes_the_whole_demo(tmp_path: Path) -> None:
    journal = Path(shutil.copytree(CONTENT, tmp_path / "content"))
    settings = journal / "build.yaml"
    said = settings.read_text("utf-8")
    settings.write_text(said.replace("theme: jobsheet", "theme: bare"), "utf-8")

    built = build(journal)

    assert settings.read_text("utf-8") != said
    assert [each.message for each in built.problems] == []
    assert built.tree is not None
    assert b"assets/theme.js" not in built.tree["index.html"]
