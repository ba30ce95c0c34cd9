"""Every class of a theme's style sheet is used, and every class that is used has a style."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).resolve().parents[2]
PAGES = REPOSITORY / "generator/hoistbook/pages"
ATTRIBUTE = re.compile(r'class="([^"]*)"')
IN_SCRIPTS = re.compile(r'(?:classList\.\w+\(|className = |"?class"?: )"([\w-]+)"')
MADE = [PAGES / "prose.py", PAGES / "mathml.py"]
"""Modules that print elements; the classes of a formula's numbers are for the script alone."""


def styled(theme: Path) -> set[str]:
    """Return the classes that the style sheet names."""
    sheet = re.sub(r"/\*.*?\*/", "", (theme / "assets/theme.css").read_text(), flags=re.DOTALL)
    return set(re.findall(r"\.([a-z][\w-]*)", re.sub(r"\{[^{}]*\}", "{}", sheet)))


def attributes(theme: Path) -> list[str]:
    """Return every class attribute that is printed, expressions of its template included."""
    files = [*sorted(theme.glob("*.html")), *MADE]
    return [text for file in files for text in ATTRIBUTE.findall(file.read_text())]


def scripted(theme: Path) -> set[str]:
    scripts = [*theme.glob("assets/*.js"), *PAGES.glob("scripts/*.js")]
    return {name for file in scripts for name in IN_SCRIPTS.findall(file.read_text())}


@pytest.mark.parametrize("name", ["jobsheet", "bare"])
def test_every_class_of_the_style_sheet_is_used(name: str) -> None:
    theme = REPOSITORY / "themes" / name
    used = {word for text in attributes(theme) for word in re.findall(r"[\w-]+", text)}
    assert styled(theme) - used - scripted(theme) == set()


def test_every_class_that_is_used_has_a_style() -> None:
    theme = REPOSITORY / "themes/jobsheet"
    used = {word for text in attributes(theme) for word in re.sub("{+.*?}+", "", text).split()}
    assert (used | scripted(theme)) - styled(theme) == set()
