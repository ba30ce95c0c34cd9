"""Changes that matter start a build, once they have settled; others do not."""

from __future__ import annotations

import queue
import threading
from pathlib import Path

import pytest

from hoistbook.preview.watch import matters, settled, watching


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        ("/j/content/build.yaml", True),
        ("/j/content/episodes/03-hot-side/episode.md", True),
        ("/j/content/episodes/03-hot-side/run.csv", True),
        ("/j/content/themes/jobsheet/home.html", True),
        ("/j/content/.git/index", False),
        ("/j/content/episodes/.#episode.md", False),
        ("/j/content/episodes/#episode.md#", False),
        ("/j/content/episodes/.episode.md.swp", False),
        ("/j/content/episodes/episode.md~", False),
        ("/j/content/episodes/4913", False),
    ],
)
def test_only_files_of_the_author_matter(path: str, expected: bool) -> None:
    assert matters(path, "/j/content") is expected


def test_a_run_of_changes_counts_once() -> None:
    changes: queue.Queue[None] = queue.Queue()
    for _ in range(20):
        changes.put(None)
    runs = settled(changes, quiet=0.01)

    next(runs)

    assert changes.empty()


def test_a_saved_file_is_noticed_and_a_read_one_is_not(tmp_path: Path) -> None:
    file = tmp_path / "episode.md"
    file.write_text("one")
    noticed = threading.Event()

    def wait(changes: object) -> None:
        next(iter(changes))  # type: ignore[call-overload]
        noticed.set()

    with watching([tmp_path]) as changes:
        threading.Thread(target=wait, args=(changes,), daemon=True).start()
        file.read_text()
        assert not noticed.wait(0.5)
        file.write_text("two")
        assert noticed.wait(10)
