"""What is kept saves time and nothing else: it is found by all of its inputs or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from hoistbook.publish import cache
from hoistbook.publish.cache import Cache, fingerprint, folder_fingerprint


def entries(folder: Path) -> list[Path]:
    return sorted(folder.iterdir())


def test_where_one_part_ends_and_the_next_begins_counts() -> None:
    assert fingerprint("ab", "c") != fingerprint("a", "bc")
    assert fingerprint("a") == fingerprint(b"a")


def test_a_folder_is_known_by_paths_and_contents_not_by_times(tmp_path: Path) -> None:
    (tmp_path / "episode.md").write_text("one")
    first = folder_fingerprint(tmp_path)
    os.utime(tmp_path / "episode.md", (1, 1))
    assert folder_fingerprint(tmp_path) == first

    (tmp_path / "episode.md").rename(tmp_path / "other.md")
    renamed = folder_fingerprint(tmp_path)
    (tmp_path / "other.md").write_text("two")
    assert len({first, renamed, folder_fingerprint(tmp_path)}) == 3


def test_what_was_made_once_is_not_made_again(tmp_path: Path) -> None:
    kept = Cache(tmp_path / "cache")
    assert kept.remember(lambda: b"first\nmade", "chart", b"data") == b"first\nmade"
    assert kept.remember(lambda: b"made again", "chart", b"data") == b"first\nmade"
    assert kept.remember(lambda: b"of other data", "chart", b"other") == b"of other data"


@pytest.mark.parametrize("damage", [b"", b"no seal", b"0" * 64 + b"\nhalf of wh", b"\xff\n\xff"])
def test_a_damaged_entry_is_made_anew(tmp_path: Path, damage: bytes) -> None:
    kept = Cache(tmp_path)
    kept.remember(lambda: b"whole", "chart")
    (entry,) = entries(tmp_path)
    entry.write_bytes(damage)

    assert kept.remember(lambda: b"anew", "chart") == b"anew"
    assert kept.remember(lambda: b"not needed", "chart") == b"anew"


def test_a_change_of_the_program_makes_all_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept = Cache(tmp_path)
    kept.remember(lambda: b"of the old program", "chart")
    monkeypatch.setattr(cache, "program_fingerprint", lambda: "another")

    assert kept.remember(lambda: b"of the new program", "chart") == b"of the new program"


def test_a_disk_that_refuses_costs_only_time(tmp_path: Path) -> None:
    (tmp_path / "cache").write_text("a file where the folder should be")
    kept = Cache(tmp_path / "cache")

    assert kept.remember(lambda: b"made", "chart") == b"made"


def test_the_program_is_known_by_every_library_that_it_needs() -> None:
    names = {cache._distribution(line).lower() for line in cache.requires("hoistbook") or ()}

    assert {"numpy", "matplotlib", "pyyaml", "jinja2", "currencyconverter"} <= names


def test_the_oldest_entries_are_forgotten_first(tmp_path: Path) -> None:
    kept = Cache(tmp_path)
    for age, name in enumerate(("newest", "middle", "oldest")):
        kept.keep(name, b"x" * 100)
        os.utime(tmp_path / name, (1000 - age, 1000 - age))

    kept.trim(2 * 165)

    assert [each.name for each in entries(tmp_path)] == ["middle", "newest"]
