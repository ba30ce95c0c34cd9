"""Notices that files of a journal or a theme have changed, and says so once they have settled."""

from __future__ import annotations

import queue
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path, PurePath

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

SETTLED = 0.15
"""Seconds without a further change after which a change counts: editors write in several steps."""

_OF_EDITORS = ("~", ".swp", ".swx", ".tmp", ".part", ".bak")
_CHANGING = frozenset(("created", "modified", "moved", "deleted"))


def matters(path: str, folder: str) -> bool:
    """Tell whether a change of this file can change the site.

    Parameters
    ----------
    path, folder
        The file that changed, and the watched folder that it lies in.

    Examples
    --------
    >>> matters("content/episodes/01-start/episode.md", "content")
    True
    >>> matters("content/.git/index", "content")
    False
    >>> matters("content/build.yaml~", "content")
    False
    """
    below = PurePath(path).relative_to(folder)
    hidden = any(part.startswith((".", "#")) for part in below.parts)
    return not hidden and not below.name.endswith(_OF_EDITORS) and below.name != "4913"


@contextmanager
def watching(folders: Iterable[Path]) -> Iterator[Iterator[None]]:
    """Give an iterator that yields once after every settled change in these folders."""
    changes: queue.Queue[None] = queue.Queue()
    observer = Observer()
    for folder in folders:
        observer.schedule(_Reporter(changes, str(folder)), str(folder), recursive=True)
    observer.start()
    try:
        yield settled(changes)
    finally:
        observer.stop()
        observer.join()


def settled(changes: queue.Queue[None], quiet: float = SETTLED) -> Iterator[None]:
    """Yield once for every run of changes that is followed by a quiet time [s]."""
    while True:
        changes.get()
        while True:
            time.sleep(quiet)
            if changes.empty():
                break
            while not changes.empty():
                changes.get()
        yield None


class _Reporter(FileSystemEventHandler):
    def __init__(self, changes: queue.Queue[None], folder: str) -> None:
        self._changes = changes
        self._folder = folder

    def on_any_event(self, event: FileSystemEvent) -> None:
        # Reading the files fires events too; only what changes them may start a build.
        if event.is_directory or event.event_type not in _CHANGING:
            return
        paths = [event.src_path, event.dest_path] if event.dest_path else [event.src_path]
        if any(matters(str(path), self._folder) for path in paths):
            self._changes.put(None)
