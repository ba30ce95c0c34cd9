"""Watching shows after every change what a clean build shows, and writes what write writes."""

from __future__ import annotations

import socket
import threading
import time
import urllib.request
from pathlib import Path

import pytest

from hoistbook.pipeline import Built, build, silent
from hoistbook.preview.serve import listen
from hoistbook.preview.session import Session
from hoistbook.publish.swap import read_tree
from hoistbook.writing import Written, write
from tests.helpers.journals import changed, copied

FIRST = "episodes/01-as-bought/episode.md"


class Watched:
    """A session over a copy of the sample journal, and what it reported."""

    def __init__(self, folder: Path) -> None:
        self.journal = copied(folder)
        self.target = folder / "output/site"
        self.reports: list[Built | Written | Exception] = []
        self.session = Session(self.journal, self.target, self.reports.append)


@pytest.fixture
def watched(tmp_path: Path) -> Watched:
    return Watched(tmp_path)


def free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return int(taken.getsockname()[1])


def test_after_a_change_the_same_is_shown_and_written_as_by_a_clean_build(
    watched: Watched, tmp_path: Path
) -> None:
    watched.session.renew()
    changed(watched.journal / FIRST, "summary: What there is.", "summary: What there was.")

    watched.session.renew()

    clean = build(watched.journal, unpublished=True).tree
    assert watched.session.shown.tree == clean
    write(watched.journal, tmp_path / "clean/site", silent)
    assert read_tree(watched.target) == read_tree(tmp_path / "clean/site")


def test_unpublished_episodes_are_shown_and_not_written(watched: Watched) -> None:
    watched.session.renew()

    assert "episodes/3/index.html" in watched.session.shown.tree
    assert not (watched.target / "episodes/3").exists()


def test_a_problem_is_reported_and_the_last_good_site_stays(watched: Watched) -> None:
    watched.session.renew()
    shown, written = dict(watched.session.shown.tree), read_tree(watched.target)
    changed(watched.journal / FIRST, "8.50 GBP", "8.50")

    watched.session.renew()

    last = watched.reports[-1]
    assert isinstance(last, Built)
    assert len(last.problems) == 1
    assert watched.session.shown.tree == shown
    assert read_tree(watched.target) == written


def test_a_problem_is_shown_in_the_place_of_every_page_and_goes_when_it_is_mended(
    watched: Watched,
) -> None:
    changed(watched.journal / FIRST, "fitted: oil-filter", "fitted: <b>oil-filter")

    watched.session.renew()

    page = watched.session.shown.problems
    assert page is not None
    assert page.decode().partition("<h1>")[2].partition("</main>")[0] == (
        "1 problem</h1>\n"
        "<p>The written site stays as it was. The page that you asked for is shown here as soon "
        "as this is put right.</p>\n"
        f'<pre tabindex="0">{watched.journal}/{FIRST}:23:13\n'
        "problem: no part is called `b-oil-filter`\n"
        "      - fitted: &lt;b&gt;oil-filter\n"
        "                ^\n"
        "  did you mean `oil-filter`?</pre>\n"
    )
    assert not watched.target.exists()

    changed(watched.journal / FIRST, "<b>oil-filter", "oil-filter")
    watched.session.renew()

    assert watched.session.shown.problems is None
    assert "index.html" in read_tree(watched.target)


def test_before_there_is_a_site_a_page_says_what_is_waited_for(watched: Watched) -> None:
    assert b"The site is being worked out." in watched.session.shown.tree["index.html"]


def test_a_fault_ends_nothing(watched: Watched, monkeypatch: pytest.MonkeyPatch) -> None:
    full = OSError(28, "No space left on device")

    def refuse(*_: object) -> None:
        raise full

    monkeypatch.setattr("hoistbook.preview.session.write", refuse)

    watched.session.keep_renewing(iter([None]))

    assert watched.reports.count(full) == 2
    assert "episodes/1/index.html" in watched.session.shown.tree


def test_a_port_that_is_taken_is_said_so(watched: Watched) -> None:
    with listen(0) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(OSError, match="port") as refusal:
            watched.session.run(port)

    assert str(refusal.value) == f"port {port} cannot be used; name another with --port"


def test_watch_shows_a_change_without_being_asked(watched: Watched) -> None:
    port = free_port()
    threading.Thread(target=watched.session.run, args=(port,), daemon=True).start()

    def page() -> str:
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/episodes/1/") as answer:
                return str(answer.read().decode())
        except OSError:
            return ""

    def waited_for(text: str) -> bool:
        for _ in range(1200):
            if text in page():
                return True
            time.sleep(0.05)
        return False

    assert waited_for("What there is.")
    changed(watched.journal / FIRST, "summary: What there is.", "summary: What there was.")
    assert waited_for("What there was.")
