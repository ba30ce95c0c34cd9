"""Themes: templates of the journal's own, what none may drop, and those that cannot be used."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.helpers.journals import changed, hoistbook, tree


def test_a_template_of_the_journals_own_takes_the_place_of_ours(home: Path) -> None:
    own = home / "content/themes/jobsheet"
    own.mkdir(parents=True)
    (own / "episodes.html").write_text(
        '{% extends "base.html" %}{% block content %}<p>My own list</p>{% endblock %}'
    )
    before = tree(home)

    assert hoistbook("write", folder=home).status == 0

    after = tree(home)
    assert b"<p>My own list</p>" in after["episodes/index.html"]
    assert {path for path in after if after[path] != before[path]} == {"episodes/index.html"}


def test_a_theme_cannot_drop_a_caution(home: Path) -> None:
    own = home / "content/themes/jobsheet"
    own.mkdir(parents=True)
    (own / "changes.html").write_text("<!doctype html><title>Changes, and no more</title>")
    before = tree(home)

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.err.startswith(
        'problem: the page /changes/ lacks the caution "Fuel", which it owes as a line\n'
        "  put back what the template changes.html of the theme prints of `owed`\n"
    )
    assert tree(home) == before


def test_a_theme_cannot_put_the_work_before_its_cautions(home: Path) -> None:
    own = home / "content/themes/jobsheet"
    own.mkdir(parents=True)
    (own / "cautions-ahead.html").write_text("{% macro cautions_ahead() %}{% endmacro %}")

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.err.startswith(
        'problem: the page /episodes/1/ lacks the caution "Hot and used oil", '
        "which it owes in full, and as a line before the work\n"
        "  put back what the template episode.html of the theme prints of `owed`\n"
    )


@pytest.mark.parametrize(
    ("template", "told"),
    [
        (
            "<p>\n  {% if %}",
            "tally.html:2:3\n"
            "problem: this template cannot be used: Expected an expression, "
            "got 'end of statement block'\n"
            "      {% if %}\n"
            "      ^\n",
        ),
        (
            "\n{{ page.nothing.at_all }}",
            "tally.html:2:1\n"
            "problem: this template cannot be used: "
            "'hoistbook.pages.tally.TallyContext object' has no attribute 'nothing'\n"
            "    {{ page.nothing.at_all }}\n"
            "    ^\n",
        ),
        (
            "{{ 1 / 0 }}",
            "tally.html:1:1\n"
            "problem: this template cannot be used: division by zero\n"
            "    {{ 1 / 0 }}\n"
            "    ^\n",
        ),
        (
            "<b>\n{{ words('tally.nothing') }}",
            "tally.html:2:1\n"
            "problem: this template cannot be used: "
            "no words for 'tally.nothing' in language 'en'\n"
            "    {{ words('tally.nothing') }}\n"
            "    ^\n",
        ),
        (
            "{% include 'none.html' %}",
            "tally.html:1:1\n"
            "problem: this template cannot be used: there is no template none.html\n"
            "    {% include 'none.html' %}\n"
            "    ^\n",
        ),
    ],
)
def test_a_template_that_cannot_be_used_is_a_problem(home: Path, template: str, told: str) -> None:
    own = home / "content/themes/jobsheet"
    own.mkdir(parents=True)
    (own / "tally.html").write_text(template)

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.err == (
        f"content/themes/jobsheet/{told}"
        "  themes/README.md of hoistbook says what a template is given\n"
        "\n"
        "1 problem, 1 notice; the site stays as it was\n"
    )


def test_a_theme_that_is_not_there_leaves_the_old_site(home: Path) -> None:
    before = tree(home)
    changed(home / "content/build.yaml", "format: 1\n", "format: 1\ntheme: nothing\n")

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.err == (
        "content/build.yaml:3:8\n"
        "problem: there is no theme `nothing`\n"
        "    theme: nothing\n"
        "           ^\n"
        "  there are: bare, jobsheet\n"
        "\n"
        "1 problem, 0 notices; the site stays as it was\n"
    )
    assert tree(home) == before


def test_no_file_from_outside_is_published_through_a_link_in_a_theme(home: Path) -> None:
    assets = home / "content/themes/jobsheet/assets"
    assets.mkdir(parents=True)
    outside = home.parent / "names.txt"
    outside.write_text("not for others")
    (assets / "names.txt").symlink_to(outside)
    before = tree(home)

    ran = hoistbook("write", folder=home)

    assert ran.status == 1
    assert ran.err.startswith(
        "problem: `themes/jobsheet/assets/names.txt` leads out of the journal\n"
        "  put a copy into the journal\n"
    )
    assert tree(home) == before
