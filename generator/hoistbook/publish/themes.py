"""Finds the folders that a theme is read from, the journal's own first.

A journal may hold `themes/<name>/` with a few templates or assets of its own; what is not there is
taken from the theme of that name that comes with hoistbook.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from hoistbook.authored.offered import OURS
from hoistbook.problems import Problem

ASSETS = "assets"
"""The folder of a theme whose files are published as they are."""


def theme_folders(journal: Path, name: str) -> tuple[Path, ...]:
    """Return the folders of a theme that exist, in the order in which they are looked through."""
    folders = (journal / "themes" / name, OURS / name)
    return tuple(each for each in folders if each.is_dir())


def leading_out(journal: Path, name: str) -> Iterator[Problem]:
    """Yield each link in a journal's own theme by which a file from outside would be published."""
    folder = journal / "themes" / name
    for file in (folder, *sorted(folder.rglob("*"))):
        if file.is_symlink() and not file.resolve().is_relative_to(journal.resolve()):
            yield Problem(
                "path-outside",
                f"`{file.relative_to(journal).as_posix()}` leads out of the journal",
                hint="put a copy into the journal",
            )


def theme_assets(folders: tuple[Path, ...]) -> dict[str, bytes]:
    """Return the files that a theme publishes as they are, by their path in the site."""
    assets: dict[str, bytes] = {}
    for folder in reversed(folders):
        for file in sorted((folder / ASSETS).rglob("*")):
            if file.is_file():
                assets[file.relative_to(folder).as_posix()] = file.read_bytes()
    return assets
