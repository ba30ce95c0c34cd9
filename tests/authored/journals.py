"""Small journals, laid down from a mapping of paths to texts."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from hoistbook.authored import read_journal
from hoistbook.authored.records import Episode, Journal
from hoistbook.problems import picture

BUILD = "format: 1\ntitle: A car\n"
FIRST = "episodes/01-one/episode.md"


def lay_down(folder: Path, files: Mapping[str, str | bytes]) -> None:
    """Write files; build.yaml is the smallest there can be where none is given."""
    for name, content in {"build.yaml": BUILD, **files}.items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content.encode() if isinstance(content, str) else content)


def journal_of(folder: Path, files: Mapping[str, str | bytes]) -> Journal:
    """Return the journal in these files, which must be without problems."""
    lay_down(folder, files)
    read = read_journal(folder)
    assert read.journal is not None, "\n".join(map(picture, read.problems))
    return read.journal


def episode_of(folder: Path, keys: str, *, prose: str = "", **files: str) -> Episode:
    """Return the one episode that has these keys."""
    text = f"---\ntitle: One\n{keys}\n---\n{prose}"
    others = {f"episodes/01-one/{name.replace('__', '.')}": each for name, each in files.items()}
    (episode,) = journal_of(folder, {FIRST: text, **others}).episodes
    return episode


def messages(folder: Path, files: Mapping[str, str | bytes]) -> list[str]:
    """Return what is wrong with these files, each as file:line:column and message."""
    lay_down(folder, files)
    return [f"{each.place}: {each.message}" for each in read_journal(folder).problems]
