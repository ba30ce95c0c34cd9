"""The demo's written site, a browser, and which of its pages a browser test visits."""

from __future__ import annotations

import re
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from hoistbook.cli import main

REPOSITORY = Path(__file__).resolve().parents[2]
CHROMIUM_OPTIONS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]


@pytest.fixture(scope="session")
def written_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of the demo journal's site, written by the command itself."""
    target = tmp_path_factory.mktemp("demo") / "site"
    main(
        ["write", "--journal", str(REPOSITORY / "content"), "--into", str(target)],
        standalone_mode=False,
    )
    return target


@pytest.fixture(scope="session")
def pages(written_site: Path) -> list[str]:
    """Return every page of the site, by its path."""
    return sorted(
        path.relative_to(written_site).as_posix() for path in written_site.rglob("*.html")
    )


@pytest.fixture(scope="session")
def visited(pages: list[str], request: pytest.FixtureRequest) -> list[str]:
    """Return the pages that browser tests visit: one of each kind, or all with `--all`."""
    if request.config.getoption("--all"):
        return pages
    by_kind: dict[str, str] = {}
    for page in pages:
        by_kind.setdefault(kind_of(page), page)
    return sorted(by_kind.values())


def kind_of(page: str) -> str:
    """Return the kind of a page: its path without the number or name of the one thing it shows."""
    if re.match(r"(episodes|spec)/\d+/", page):
        return page.split("/")[0] + "/N"
    if re.match(r"workings/formulas/[^/]+/", page):
        return "workings/formulas/ONE"
    if re.match(r"(parts|workings)/(?!(chain|formulas|accuracy)/)[^/]+/", page):
        return page.split("/")[0] + "/ONE"
    return page


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Return Debian's Chromium, started once, with a fresh profile."""
    executable = shutil.which("chromium")
    assert executable, "chromium is missing: the test command of README.md installs it"
    with tempfile.TemporaryDirectory(), sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=executable, args=CHROMIUM_OPTIONS)
        yield chromium
        chromium.close()
