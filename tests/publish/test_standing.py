"""A site is not written twice from the same inputs, unless it is no longer whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoistbook.problems import Notice, Place
from hoistbook.publish.cache import Cache
from hoistbook.publish.standing import inputs_fingerprint, recall_site, remember_site

TREE = {"index.html": b"home", "a/index.html": b"a", "a-b/index.html": b"a-b"}
NOTICES = (
    Notice("claim", "it does not hold", Place("e.md", 3, 4, "- it"), "because", 2),
    Notice("no-price", "turbo has no price"),
)


@pytest.fixture
def target(tmp_path: Path) -> Path:
    for path, content in TREE.items():
        file = tmp_path / "site" / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content)
    remember_site(Cache(tmp_path / "cache"), "inputs", TREE, NOTICES)
    return tmp_path / "site"


def recalled(target: Path, inputs: str = "inputs") -> tuple[Notice, ...] | None:
    return recall_site(Cache(target.parent / "cache"), inputs, target)


def test_the_site_that_stands_is_known_again_with_its_notices(target: Path) -> None:
    assert recalled(target) == NOTICES


def test_other_inputs_are_another_site(target: Path) -> None:
    assert recalled(target, "other inputs") is None


def test_a_site_that_was_touched_is_not_believed(target: Path) -> None:
    (target / "a/index.html").write_bytes(b"touched")
    assert recalled(target) is None


def test_a_site_with_a_file_too_many_is_not_believed(target: Path) -> None:
    (target / "a/extra.html").write_bytes(b"")
    assert recalled(target) is None


def test_a_site_that_is_gone_is_not_believed(target: Path) -> None:
    target.rename(target.with_name("moved"))
    assert recalled(target) is None


def test_every_file_of_the_journal_counts(tmp_path: Path) -> None:
    journal = tmp_path / "content"
    (journal / "episodes").mkdir(parents=True)
    (journal / "episodes/01.md").write_text("one")
    first = inputs_fingerprint(journal)
    assert inputs_fingerprint(journal) == first

    (journal / "episodes/01.md").write_text("two")
    assert inputs_fingerprint(journal) != first
