"""Whatever happens to a writer, the site that stands is the old one or the new one, whole."""

from __future__ import annotations

import errno
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from hoistbook.publish import swap

HOME = b'<html lang="en"><meta name="generator" content="hoistbook"><title>A</title>'
OLD = {"index.html": HOME, "a/index.html": b"old a", "gone.txt": b"only in the old one"}
NEW = {"index.html": HOME + b"new", "a/index.html": b"new a", "b/c.txt": b"only in the new one"}

KILLED_WRITER = """
import os, sys
from pathlib import Path
from hoistbook.publish import swap
last, target = int(sys.argv[1]), Path(sys.argv[2])
new = eval(sys.argv[3])
seen = 0
def count(event, arguments):
    global seen
    if event in ("open", "os.rename", "os.remove", "os.mkdir", "os.rmdir"):
        if seen == last:
            os._exit(9)
        seen += 1
sys.addaudithook(count)
with swap.only_writer(target):
    swap.write_tree(new, target)
"""
"""Dies, without a chance to clean up, before its n-th touch of the disk."""


def write(tree: dict[str, bytes], target: Path) -> bool:
    with swap.only_writer(target):
        return swap.write_tree(tree, target)


def beside(target: Path) -> list[str]:
    return sorted(each.name for each in target.parent.iterdir())


@pytest.fixture
def target(tmp_path: Path) -> Path:
    target = tmp_path / "site"
    write(OLD, target)
    return target


def killed_writers(target: Path) -> Iterator[int]:
    """Kill a writer before every one of its steps; end when one lives to the end."""
    for step in range(200):
        command = [sys.executable, "-c", KILLED_WRITER, str(step), str(target), repr(NEW)]
        answer = subprocess.run(command, capture_output=True, text=True, check=False)
        if answer.returncode == 0:
            return
        assert answer.returncode == 9, answer.stderr
        yield step
    pytest.fail("the writer never came to its end")


def test_a_new_site_takes_the_place_of_the_old_one_and_leaves_nothing_behind(target: Path) -> None:
    assert write(NEW, target)

    assert swap.read_tree(target) == NEW
    assert beside(target) == [".site.lock", "site"]


def test_the_same_site_is_not_written_twice(target: Path) -> None:
    before = {file: file.stat().st_mtime_ns for file in target.rglob("*")}

    assert not write(OLD, target)

    assert {file: file.stat().st_mtime_ns for file in target.rglob("*")} == before


def test_what_begins_with_a_dot_stays_where_it_is(target: Path) -> None:
    (target / ".git").mkdir()
    (target / ".git/HEAD").write_text("ref: refs/heads/pages")
    (target / ".nojekyll").touch()

    assert not write(OLD, target)
    assert write(NEW, target)

    assert swap.read_tree(target) == NEW
    assert (target / ".git/HEAD").read_text() == "ref: refs/heads/pages"
    assert (target / ".nojekyll").is_file()


def test_a_new_working_copy_takes_its_first_site(tmp_path: Path) -> None:
    target = tmp_path / "pages"
    (target / ".git").mkdir(parents=True)

    assert write(NEW, target)
    assert (target / ".git").is_dir()


def test_a_writer_killed_at_any_step_leaves_the_old_or_the_new_site_whole(target: Path) -> None:
    (target / ".git").mkdir()
    (target / ".git/HEAD").touch()
    found = []
    for _ in killed_writers(target):
        swap.recover(target)
        standing = swap.read_tree(target)
        assert standing in (OLD, NEW)
        assert (target / ".git/HEAD").is_file()
        assert beside(target) == [".site.lock", "site"]
        found.append(standing == NEW)
        write(OLD, target)

    assert found == sorted(found), "once the new site stands it stays"
    assert {False, True} == set(found), "kills fell on both sides of the exchange"


def test_a_full_disk_leaves_the_old_site(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.write_bytes

    def full(file: Path, content: bytes) -> int:
        if file.name == "c.txt":
            raise OSError(errno.ENOSPC, "No space left on device", str(file))
        return real(file, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space left on device"):
        write(NEW, target)

    assert swap.read_tree(target) == OLD
    assert beside(target) == [".site.lock", "site"]


def test_an_exchange_that_fails_halfway_is_rolled_back(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = Path.rename

    def refuse(source: Path, goal: Path) -> Path:
        if source.name == ".site.staged":
            raise PermissionError(errno.EACCES, "Permission denied", str(goal))
        return real(source, goal)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(PermissionError):
        write(NEW, target)

    assert swap.read_tree(target) == OLD
    assert beside(target) == [".site.lock", "site"]


def test_a_second_writer_is_sent_away(target: Path) -> None:
    with (
        swap.only_writer(target),
        pytest.raises(swap.WriteError) as refusal,
        swap.only_writer(target),
    ):
        pass

    assert str(refusal.value) == f"another hoistbook is writing {target} at this moment"


def test_a_folder_of_somebody_elses_is_left_alone(tmp_path: Path) -> None:
    target = tmp_path / "photographs"
    target.mkdir()
    (target / "index.html").write_text("<title>My pictures</title>")

    with pytest.raises(swap.WriteError) as refusal:
        write(NEW, target)

    assert str(refusal.value) == (
        f"{target} holds something that hoistbook did not write, so it is left alone: "
        "name an empty or a new folder with --into"
    )
    assert (target / "index.html").read_text() == "<title>My pictures</title>"
