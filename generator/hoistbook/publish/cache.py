"""Keeps what was worked out before under the fingerprint of all that it was worked out from.

What is kept never changes what is written: an entry is found only by the whole of its inputs, and
one that is damaged is worked out anew.
"""

from __future__ import annotations

import hashlib
import platform
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache
from importlib.metadata import requires, version
from pathlib import Path
from typing import TypeAlias

from hoistbook.publish.apart import made_apart

Call: TypeAlias = tuple[Callable[[], bytes], *tuple[str | bytes, ...]]
"""What makes something, and all that it makes it from."""

LARGEST_READ = 32 * 1024 * 1024
"""Bytes; a larger file beside an episode is raw footage, known by its size and time instead."""
LARGEST_CACHE = 64 * 1024 * 1024
"""Bytes that all entries together may take."""


def fingerprint(*parts: str | bytes) -> str:
    """Return one name for a sequence of inputs; each part counts by itself."""
    digest = hashlib.sha256()
    for part in parts:
        content = part.encode() if isinstance(part, str) else part
        digest.update(len(content).to_bytes(8, "big"))
        digest.update(content)
    return digest.hexdigest()


def folder_fingerprint(folder: Path) -> str:
    """Return one name for all files of a folder, by their paths and contents."""
    if not folder.is_dir():
        return fingerprint()
    return fingerprint(*_contents(folder))


def _contents(folder: Path) -> Iterable[str | bytes]:
    for file in sorted(folder.rglob("*")):
        if not file.is_file() or "__pycache__" in file.parts:
            continue
        yield file.relative_to(folder).as_posix()
        seen = file.stat()
        if seen.st_size > LARGEST_READ:
            yield f"{seen.st_size} {seen.st_mtime_ns}"
        else:
            yield file.read_bytes()


@cache
def program_fingerprint() -> str:
    """Return one name for the program itself: its source, Python and its libraries."""
    own = Path(__file__).parents[1]
    needed = sorted(_distribution(line) for line in requires("hoistbook") or ())
    libraries = [f"{name} {version(name)}" for name in needed if name]
    return fingerprint(folder_fingerprint(own), platform.python_version(), *libraries)


def _distribution(requirement: str) -> str:
    """Return the name in a requirement, empty for one that belongs to an extra."""
    if "extra ==" in requirement:
        return ""
    return requirement.split(";")[0].split(">")[0].split("=")[0].split("<")[0].strip()


class Cache:
    """Entries on disk, one file each, named by fingerprint; without a folder it keeps nothing."""

    def __init__(self, folder: Path | None) -> None:
        self._folder = folder

    def remember(self, make: Callable[[], bytes], *inputs: str | bytes) -> bytes:
        """Return what `make` makes from these inputs, from the disk where it was made before."""
        with self.remembering({"": (make, *inputs)}) as made:
            return made()[""]

    @contextmanager
    def remembering(self, calls: Mapping[str, Call]) -> Iterator[Callable[[], dict[str, bytes]]]:
        """Yield what returns all that these calls make; what is new is made in the meantime."""
        names = {key: self._name(*inputs) for key, (_, *inputs) in calls.items()}
        kept = {key: self.read(name) for key, name in names.items()}
        new = [key for key, content in kept.items() if content is None]
        with made_apart([calls[key][0] for key in new]) as made:

            def all_made() -> dict[str, bytes]:
                found = dict(zip(new, made(), strict=True))
                for key, content in found.items():
                    self.keep(names[key], content)
                return {key: found[key] if old is None else old for key, old in kept.items()}

            yield all_made

    def _name(self, *inputs: str | bytes) -> str:
        return fingerprint(program_fingerprint(), *inputs) if self._folder else ""

    def read(self, name: str) -> bytes | None:
        """Return an entry, None when there is none or when it is damaged."""
        if self._folder is None:
            return None
        try:
            seal, content = (self._folder / name).read_bytes().split(b"\n", 1)
        except (OSError, ValueError):
            return None
        return content if seal == fingerprint(content).encode() else None

    def keep(self, name: str, content: bytes) -> None:
        """Keep an entry; a disk that refuses costs only the time to work it out again."""
        if self._folder is None:
            return
        part = self._folder / f"{name}.part"
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            part.write_bytes(fingerprint(content).encode() + b"\n" + content)
            part.replace(self._folder / name)
        except OSError:
            return

    def trim(self, largest: int = LARGEST_CACHE) -> None:
        """Forget the entries kept longest ago until no more than so many bytes are left."""
        if self._folder is None or not self._folder.is_dir():
            return
        entries = [(file.stat(), file) for file in self._folder.iterdir()]
        entries.sort(key=lambda entry: entry[0].st_mtime_ns, reverse=True)
        total = 0
        for seen, file in entries:
            total += seen.st_size
            if total > largest:
                file.unlink(missing_ok=True)


NO_CACHE = Cache(None)
