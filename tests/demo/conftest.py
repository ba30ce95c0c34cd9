"""The demo journal, read and worked out once for all its tests."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoistbook.authored import read_journal
from hoistbook.authored.records import Journal
from hoistbook.pages.page import Material
from hoistbook.pipeline import build, work_out

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="session")
def journal() -> Journal:
    """Return the demo journal with its unpublished episode."""
    read = read_journal(CONTENT)
    assert read.problems == ()
    assert read.journal is not None
    return read.journal


@pytest.fixture(scope="session")
def material() -> Material:
    """Return everything that is worked out from the demo journal."""
    worked = work_out(CONTENT, unpublished=True)
    assert worked.problems == ()
    assert worked.material is not None
    return worked.material


@pytest.fixture(scope="session")
def tree() -> dict[str, bytes]:
    """Return the demo's published files by path."""
    built = build(CONTENT)
    assert built.problems == ()
    assert built.tree is not None
    return built.tree
