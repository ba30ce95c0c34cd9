"""The files of a journal: which there are, and their text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from hoistbook.problems import Notice, Place, Problem

LARGEST = 2_000_000
"""Bytes of a text file; five hundred pages."""

BUILD_FILE = "build.yaml"

_PACKED = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"\x1f\x8b")
"""How files of spreadsheets begin, new and old, and other packed ones."""

_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]")


def read_text(
    root: Path, file: str, largest: int = LARGEST
) -> tuple[str | None, tuple[Problem, ...]]:
    """Return the text of a file with plain line ends, or None and what is wrong with it."""
    path = root / file
    place = Place(file)
    try:
        if not path.resolve().is_relative_to(root.resolve()):
            message = "this file lies outside the journal"
            return None, (Problem("path-outside", message, place, "put a copy into the journal"),)
        if not path.is_file():
            message, hint = f"there is no file {file} here", "name the folder that holds it"
            return None, (Problem("missing-file", message, place, hint),)
        if path.stat().st_size > largest:
            message = f"this file is larger than {largest // 1_000_000} MB"
            return None, (Problem("large-file", message, place, "split it up"),)
        raw = path.read_bytes()
    except OSError as error:
        message = f"this file cannot be read ({error.strerror or 'unknown reason'})"
        return None, (Problem("unreadable", message, place, "look at its name and its rights"),)
    return decode(raw, file)


def decode(raw: bytes, file: str) -> tuple[str | None, tuple[Problem, ...]]:
    """Return the text in a file's bytes, or None and what is wrong with them."""
    if raw.startswith(_PACKED):
        message, hint = "this is a spreadsheet or an archive, not text", "export it as text, a CSV"
        return None, (Problem("not-text", message, Place(file), hint),)
    try:
        text = raw.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        message, hint = "this byte is not UTF-8", "save the file with the encoding UTF-8"
        return None, (Problem("not-utf-8", message, _byte(raw, error.start, file), hint),)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return text, tuple(_control(text, file))


def _byte(raw: bytes, index: int, file: str) -> Place:
    """Return the place of a byte."""
    before = raw[:index].decode("utf-8").removeprefix("\ufeff")
    lines = before.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    rest = re.split(rb"[\r\n]", raw[index:], maxsplit=1)[0].decode("utf-8", "replace")
    return Place(file, len(lines), len(lines[-1]) + 1, lines[-1] + rest)


def _control(text: str, file: str) -> Iterator[Problem]:
    if not _CONTROL.search(text):
        return
    for number, line in enumerate(text.split("\n"), start=1):
        match = _CONTROL.search(line)
        if match:
            shown = _CONTROL.sub("\ufffd", line)
            place = Place(file, number, match.start() + 1, shown)
            message = f"a character that cannot be seen stands here (U+{ord(match[0]):04X})"
            yield Problem("control-character", message, place, "take it out")


def episode_files(root: Path) -> tuple[tuple[str, ...], tuple[Notice, ...]]:
    """Return the episodes' files, sorted, and notices about folders that hold none."""
    folder = root / "episodes"
    found, notices = [], []
    for entry in sorted(folder.iterdir() if folder.is_dir() else (), key=lambda path: path.name):
        if entry.name.startswith((".", "_")):
            continue
        if entry.is_dir():
            if (entry / "episode.md").is_file():
                found.append(f"episodes/{entry.name}/episode.md")
            else:
                message = f"episodes/{entry.name}/ holds no episode.md and was passed over"
                notices.append(Notice("no-episode", message, Place(f"episodes/{entry.name}")))
        elif entry.suffix == ".md":
            found.append(f"episodes/{entry.name}")
    return tuple(found), (*notices, *_astray(root))


def _astray(root: Path) -> Iterator[Notice]:
    """Yield a notice for each file beside `episodes` that looks like one of an episode."""
    names = sorted(path.name for path in root.glob("*.md") if re.match(r"\d+\D", path.name))
    for name in names:
        message = f"{name} lies beside the folder episodes and was passed over"
        yield Notice("no-episode", message, Place(name), "move it into episodes/")


def near_name(folder: Path, wanted: str, others: Sequence[str] = ()) -> str | None:
    """Return the file or folder that lies there under a name a little unlike the wanted one."""
    near = (wanted.casefold(), *others)
    names = sorted(path.name for path in folder.iterdir()) if folder.is_dir() else []
    return next((name for name in names if name != wanted and name.casefold() in near), None)
