"""Finds the folders that a theme is read from, the journal's own first.

A journal may hold `themes/<name>/` with a few templates or assets of its own; what is not there is
taken from the theme of that name that comes with hoistbook.
"""

from __future__ import annotations

from pathlib import Path

from hoistbook.authored.offered import OURS

ASSETS = "assets"
"""The folder of a theme whose files are published as they are."""


def theme_folders(journal: Path, name: str) -> tuple[Path, ...]:
    """Return the folders of a theme that exist, in the order in which they are looked through."""
    folders = (journal / "themes" / name, OURS / name)
    return tuple(each for each in folders if each.is_dir())


def theme_assets(folders: tuple[Path, ...]) -> dict[str, bytes]:
    """Return the files that a theme publishes as they are, by their path in the site."""
    assets: dict[str, bytes] = {}
    for folder in reversed(folders):
        for file in sorted((folder / ASSETS).rglob("*")):
            if file.is_file():
                assets[file.relative_to(folder).as_posix()] = file.read_bytes()
    return assets
