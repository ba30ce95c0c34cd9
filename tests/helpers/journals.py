"""Journals for the tests of whole commands, and the commands run as a user runs them."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from hoistbook.publish.swap import read_tree

SAMPLE = Path(__file__).resolve().parents[1] / "journeys/sample_journal"
"""Two published episodes and an unpublished one, a picture, captions, two currencies."""


@dataclass(frozen=True)
class Ran:
    """What a command printed and how it ended."""

    status: int
    out: str
    err: str


def copied(folder: Path) -> Path:
    """Return a copy of the sample journal as `content` in a folder."""
    journal = folder / "content"
    shutil.copytree(SAMPLE, journal)
    return journal


def changed(file: Path, old: str, new: str) -> None:
    """Change a text in a file of a journal; it must be there once."""
    text = file.read_text()
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file.name}"
    file.write_text(text.replace(old, new))


def tree(home: Path) -> dict[str, bytes]:
    """Return the site that stands in a folder, path by path."""
    return read_tree(home / "output/site")


def hoistbook(*arguments: str, folder: Path, environment: Mapping[str, str] | None = None) -> Ran:
    """Run the command in a folder, in a process of its own."""
    ran = subprocess.run(
        [Path(sys.executable).with_name("hoistbook"), *arguments],
        cwd=folder,
        env=os.environ | dict(environment or {}),
        capture_output=True,
        text=True,
        check=False,
    )
    return Ran(ran.returncode, ran.stdout, ran.stderr)
