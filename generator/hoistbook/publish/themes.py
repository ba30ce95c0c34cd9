"""Finds the folders that a theme is read from, the journal's own first.

A journal may hold `themes/<name>/` with a few templates or assets of its own; what is not there is
taken from the theme of that name that comes with hoistbook.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from hoistbook.authored.records import Journal
from hoistbook.pages.words import LANGUAGES
from hoistbook.problems import Problem

_PACKAGE = Path(__file__).parents[1]
# The wheel carries the themes inside the package; a clone keeps them at its top.
OURS = next(
    each for each in (_PACKAGE / "themes", _PACKAGE.parents[1] / "themes") if each.is_dir()
)

ASSETS = "assets"
"""The folder of a theme whose files are published as they are."""


def theme_folders(journal: Path, name: str) -> tuple[Path, ...]:
    """Return the folders of a theme that exist, in the order in which they are looked through."""
    folders = (journal / "themes" / name, OURS / name)
    return tuple(each for each in folders if each.is_dir())


def known_themes(journal: Path) -> tuple[str, ...]:
    """Return the names of all themes that a journal may use."""
    folders = [each for each in (journal / "themes", OURS) if each.is_dir()]
    return tuple(
        sorted({theme.name for each in folders for theme in each.iterdir() if theme.is_dir()})
    )


def not_there(journal: Journal, folder: Path) -> Iterator[Problem]:
    """Yield what build.yaml asks for that this program does not have: a language, a theme."""
    asked = (
        ("language", journal.language.partition("-")[0], LANGUAGES),
        ("theme", journal.theme, known_themes(folder)),
    )
    for key, name, known in asked:
        if name not in known:
            yield Problem(
                f"unknown-{key}",
                f"there is no {key} {name}",
                journal.place,
                f"write `{key}:` as {' or '.join(known)}",
            )


def theme_assets(folders: tuple[Path, ...]) -> dict[str, bytes]:
    """Return the files that a theme publishes as they are, by their path in the site."""
    assets: dict[str, bytes] = {}
    for folder in reversed(folders):
        for file in sorted((folder / ASSETS).rglob("*")):
            if file.is_file():
                assets[file.relative_to(folder).as_posix()] = file.read_bytes()
    return assets
