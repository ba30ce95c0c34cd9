"""Nothing hidden in a photograph is published, and no drawing that runs or calls."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from hoistbook.problems import Place, Problem
from hoistbook.publish.pictures import publishable

LATITUDE, MAKE, ORIENTATION = 2, 271, 274
"""Tags of Exif 2.3 (CIPA DC-008), sections 4.6.6 and 4.6.4."""


def photograph(kind: str, size: tuple[int, int] = (4, 2), orientation: int = 1) -> bytes:
    picture = Image.new("RGB", size, (200, 30, 30))
    exif = Image.Exif()
    exif[MAKE] = "a camera"
    exif[ORIENTATION] = orientation
    exif.get_ifd(0x8825)[LATITUDE] = (47.0, 30.0, 0.0)
    out = io.BytesIO()
    picture.save(out, kind, exif=exif, comment=b"seen by nobody")
    return out.getvalue()


def drawing(inside: str, attributes: str = "") -> bytes:
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
        f'xmlns:h="http://www.w3.org/1999/xhtml" {attributes}>{inside}</svg>'
    ).encode()


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photograph_loses_where_and_with_what_it_was_taken(kind: str) -> None:
    content = photograph(kind)
    assert Image.open(io.BytesIO(content)).getexif()[MAKE] == "a camera"

    published = publishable("episodes/01/bench.jpg", content)

    assert isinstance(published, bytes)
    with Image.open(io.BytesIO(published)) as picture:
        assert dict(picture.getexif()) == {}
        assert picture.format == kind
        assert picture.size == (4, 2)
    assert b"seen by nobody" not in published
    assert publishable("episodes/01/bench.jpg", content) == published


def test_a_photograph_stands_as_the_camera_was_held() -> None:
    published = publishable("bench.jpg", photograph("JPEG", (4, 2), orientation=6))

    assert isinstance(published, bytes)
    assert Image.open(io.BytesIO(published)).size == (2, 4)


def test_a_plain_drawing_is_published_as_it_is() -> None:
    plain = drawing(
        '<style>path{fill:url(#g)}</style><defs><linearGradient id="g"/></defs>'
        '<path d="M0 0h1" fill="url(#g)"/><use xlink:href="#g"/>'
    )

    assert publishable("poster.svg", plain) == plain


@pytest.mark.parametrize(
    ("inside", "fault"),
    [
        ("<script>alert(1)</script>", "holds the element script, which does more than draw"),
        ("<foreignObject/>", "holds the element foreignObject, which does more than draw"),
        ("<h:script/>", "holds an element of HTML"),
        ('<g onclick="x()"/>', "runs a script (onclick)"),
        (
            '<image xlink:href="https://other.example/x.png"/>',
            "points outside itself (https://other.example/x.png)",
        ),
        ('<use href="other.svg#a"/>', "points outside itself (other.svg#a)"),
        ('<a href="javascript:x()"/>', "holds the element a, which does more than draw"),
        ("<style>@import 'x.css'</style>", "points outside itself in its style"),
        ("<style>g{fill:url( 'x.svg#a')}</style>", "points outside itself in its style"),
        ('<g style="fill:url(//x/y)"/>', "points outside itself (fill:url(//x/y))"),
        ("<g>", "is not well-formed XML (mismatched tag: line 1, column 128)"),
    ],
)
def test_a_drawing_that_runs_or_calls_is_refused(inside: str, fault: str) -> None:
    assert publishable("episodes/01/poster.svg", drawing(inside)) == Problem(
        "unsafe-picture",
        f"this drawing {fault}",
        Place("episodes/01/poster.svg"),
        "save it as a plain SVG, without scripts, links or linked pictures",
    )


def test_a_drawing_with_entities_is_refused_unread() -> None:
    bomb = b'<!DOCTYPE svg [<!ENTITY a "aaaa">]>' + drawing("<text>&a;</text>")

    refused = publishable("poster.svg", bomb)

    assert isinstance(refused, Problem)
    assert refused.message == "this drawing declares a document type, an entity or a style sheet"


def test_a_file_that_is_no_picture_is_a_problem() -> None:
    refused = publishable("bench.jpg", b"not a picture")

    assert isinstance(refused, Problem)
    assert refused.code == "unreadable-picture"
    assert refused.hint == "save it again as JPEG, PNG or WebP"
