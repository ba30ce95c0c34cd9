"""A written site of the sample journal, for tests that change something about it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.helpers.journals import copied, hoistbook


@pytest.fixture(scope="session")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("written")
    copied(folder)
    assert hoistbook("write", folder=folder).status == 0
    return folder


@pytest.fixture
def home(written: Path, tmp_path: Path) -> Path:
    """Return a folder with a written site of the sample journal, to be changed at will."""
    return Path(shutil.copytree(written, tmp_path / "home"))
