"""A site with a link to nothing or a request to another host does not go out."""

from __future__ import annotations

import pytest

from hoistbook.problems import Problem
from hoistbook.publish.checks import site_problems

HEAD = '<html lang="en"><meta name="generator" content="hoistbook">'


def site(home: str, css: str = "") -> dict[str, bytes]:
    return {
        "index.html": f"{HEAD}{home}".encode(),
        "parts/turbo/index.html": b'<h1 id="facts">Turbo</h1><a href="../../index.html">Home</a>',
        "assets/site.css": css.encode(),
        "a b.txt": b"",
    }


@pytest.mark.parametrize(
    "home",
    [
        '<a href="parts/turbo/index.html#facts">turbo</a>',
        '<h2 id="r&amp;d">x</h2><a href="#r&amp;d">x</a>',
        '<a href="a%20b.txt">x</a>',
        '<a href="https://other.example/">told to go there</a>',
        '<link rel="canonical" href="https://journal.example/">',
        '<link rel="stylesheet" href="assets/site.css">',
        '<img src="data:image/png;base64,AA" alt="">',
        "<p>written: &lt;img src=&#34;https://other.example/x.png&#34;&gt;</p>",
    ],
)
def test_good_references_pass(home: str) -> None:
    assert site_problems(site(home)) == ()


NOTHING = "leads to nothing"
OTHER = "it asks another host for"
HOST = "//other.example"


@pytest.mark.parametrize(
    ("home", "code", "what"),
    [
        ('<a href="parts/x.html">', "lost-link", f"its link parts/x.html {NOTHING}"),
        ('<a href="parts/turbo/">', "lost-link", f"its link parts/turbo/ {NOTHING}"),
        (
            '<a href="parts/turbo/index.html#ends">',
            "lost-link",
            "nothing on parts/turbo/index.html is named ends",
        ),
        ('<a href="#top">', "lost-link", "nothing on index.html is named top"),
        ('<a href="/a b.txt">', "rooted-link", "its link /a b.txt fails under a sub-path"),
        (f'<img\nsrc="{HOST}/x.png" alt="">', "outside-request", f"{OTHER} {HOST}/x.png"),
        (f'<img srcset="{HOST}/x.png 2x" alt="">', "outside-request", f"{OTHER} {HOST}/x.png"),
        (f'<link rel="stylesheet" href="{HOST}/x">', "outside-request", f"{OTHER} {HOST}/x"),
        (f'<video poster="{HOST}/p.jpg">', "outside-request", f"{OTHER} {HOST}/p.jpg"),
        ('<img src="https://a.example">', "outside-request", f"{OTHER} https://a.example"),
    ],
)
def test_bad_references_are_problems(home: str, code: str, what: str) -> None:
    assert site_problems(site(home)) == (
        Problem(code, f"the page index.html cannot be published: {what}"),
    )


@pytest.mark.parametrize("css", ["a{b:url(https://x/y)}", "@import '//x/y.css';"])
def test_a_style_that_calls_another_host_is_a_problem(css: str) -> None:
    assert [each.code for each in site_problems(site("", css))] == ["outside-request"]


def test_a_home_page_without_our_mark_is_a_problem() -> None:
    tree = site("") | {"index.html": b"<p>A theme that forgot it</p>"}

    assert site_problems(tree) == (
        Problem(
            "no-mark",
            "the page index.html cannot be published: "
            'it lacks <meta name="generator" content="hoistbook">',
        ),
    )
