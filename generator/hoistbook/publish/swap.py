"""Puts a written site in the place of the one that stands, so that there is always a whole one.

The new site is laid down beside the old one and the two are exchanged by two renames, because a
folder that holds files cannot be replaced by one. A writer that was stopped between the renames
leaves the old site under another name; the next writer puts it back before it does anything else.

What begins with a dot is none of ours, as the `.git` of a branch that pages are published from: it
moves along from the old site into the new one.
"""

from __future__ import annotations

import fcntl
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO

MARK = b'<meta name="generator" content="hoistbook"'
"""Stands in the home page of every site of ours; a folder without it is not ours to replace."""


class WriteError(Exception):
    """The site could not be put in place; the one that stood there still stands."""


def _beside(target: Path, word: str) -> Path:
    return target.with_name(f".{target.name}.{word}")


@contextmanager
def only_writer(target: Path) -> Iterator[None]:
    """Hold the site against every other writer, and put right what a stopped one left behind.

    Raises
    ------
    WriteError
        When another writer is at work on the same site, or nothing can be written there.
    """
    with _lock(target) as lock:
        try:
            # The kernel lets go of the lock when its holder dies, however it dies.
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            raise WriteError(f"another hoistbook is writing {target} at this moment") from None
        recover(target)
        yield


def _lock(target: Path) -> TextIO:
    """Return the open lock beside a site, with the folder that both lie in."""
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        return _beside(target, "lock").open("w")
    except OSError as error:
        why = error.strerror or "unknown reason"
        raise WriteError(
            f"nothing can be written to {target.parent} ({why}): "
            "name a folder of your own with --into"
        ) from None


def recover(target: Path) -> None:
    """Put back the site that a stopped writer had moved aside, and clear away the rest."""
    previous = _beside(target, "previous")
    if previous.exists() and not target.exists():
        previous.rename(target)
    if previous.exists():
        _keep_what_is_not_ours(previous, target)
    for left in (previous, _beside(target, "staged")):
        if left.exists():
            shutil.rmtree(left)


def write_tree(tree: Mapping[str, bytes], target: Path) -> bool:
    """Write a whole site in the place of the one that stands.

    The caller holds `only_writer`.

    Returns
    -------
    bool
        Whether anything was written; False when the same site stands there already.

    Raises
    ------
    WriteError
        When the target holds something that hoistbook did not write.
    OSError
        When the disk refuses; the old site still stands.
    """
    if stands(tree, target):
        return False
    _refuse_strangers(target)
    staged = _beside(target, "staged")
    try:
        _lay_down(tree, staged)
        _exchange(staged, target)
    except BaseException:
        shutil.rmtree(staged, ignore_errors=True)
        raise
    return True


def read_tree(target: Path) -> dict[str, bytes]:
    """Read a site back from the disk, path by path."""
    return {
        file.relative_to(target).as_posix(): file.read_bytes()
        for entry in sorted(target.iterdir())
        if _is_ours(entry)
        for file in (entry, *sorted(entry.rglob("*")))
        if file.is_file()
    }


def _is_ours(entry: Path) -> bool:
    return not entry.name.startswith(".")


def stands(tree: Mapping[str, bytes], target: Path) -> bool:
    """Tell whether exactly this site stands at the target."""
    return target.is_dir() and read_tree(target) == dict(tree)


def _refuse_strangers(target: Path) -> None:
    if not target.exists() or (target.is_dir() and not any(map(_is_ours, target.iterdir()))):
        return
    home = target / "index.html"
    if not home.is_file() or MARK not in home.read_bytes():
        raise WriteError(
            f"{target} holds something that hoistbook did not write, so it is left alone: "
            "name an empty or a new folder with --into"
        )


def _lay_down(tree: Mapping[str, bytes], folder: Path) -> None:
    for path, content in tree.items():
        file = folder / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content)


def _exchange(staged: Path, target: Path) -> None:
    previous = _beside(target, "previous")
    had_one = target.exists()
    if had_one:
        target.rename(previous)
    try:
        staged.rename(target)
    except BaseException:
        if had_one:
            previous.rename(target)
        raise
    if had_one:
        _keep_what_is_not_ours(previous, target)
        shutil.rmtree(previous)


def _keep_what_is_not_ours(previous: Path, target: Path) -> None:
    for entry in sorted(previous.iterdir()):
        if not _is_ours(entry):
            entry.rename(target / entry.name)
