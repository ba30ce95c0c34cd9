"""A drawing that acts or reaches out is refused; a plain one says how large it is."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from hoistbook.authored.pictures import ORIENTATION, read_size
from hoistbook.values.slip import Slip


def drawing(inside: str) -> str:
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
        'xmlns:h="http://www.w3.org/1999/xhtml" xmlns:e="http://editor.example/" '
        f'viewBox="0 0 4 3">{inside}</svg>'
    )


def read(folder: Path, text: str) -> tuple[int, int] | Slip:
    (folder / "a.svg").write_text(text)
    return read_size(folder / "a.svg")


def test_a_plain_drawing_passes(tmp_path: Path) -> None:
    plain = drawing(
        '<metadata><e:note e:by="x"/></metadata><style>path{fill:url(#g)}</style>'
        '<defs><linearGradient id="g"/></defs><path d="M0 0h1" fill="url( \'#g\')"/>'
        '<use xlink:href="#g"/><image href="data:image/png;base64,AA"/>'
    )

    assert read(tmp_path, plain) == (4, 3)


@pytest.mark.parametrize(
    ("inside", "holds"),
    [
        ("<script>alert(1)</script>", "<script>"),
        ("<foreignObject/>", "<foreignObject>"),
        ("<h:script/>", "<script>"),
        ('<set attributeName="href" to="javascript:x()"/>', "<set>"),
        ('<a href="#x"/>', "<a>"),
        ('<g onclick="x()"/>', "the attribute onclick"),
        (
            '<image xlink:href="https://other.example/x.png"/>',
            "a link to https://other.example/x.png",
        ),
        ('<use href="other.svg#a"/>', "a link to other.svg#a"),
        ("<style>@import 'x.css'</style>", "a style that loads a file"),
        ("<style>g{fill:url( 'x.svg#a')}</style>", "a style that loads a file"),
        ('<g style="fill:url(//x/y)"/>', "a style that loads a file"),
    ],
)
def test_a_drawing_that_acts_or_reaches_out_is_refused(
    tmp_path: Path, inside: str, holds: str
) -> None:
    assert read(tmp_path, drawing(inside)) == Slip(
        "unsafe-picture", f"`a.svg` holds {holds}", "save it as a plain drawing"
    )


@pytest.mark.parametrize(
    ("before", "holds"),
    [
        ('<!DOCTYPE svg [<!ENTITY a "aaaa">]>', "a document type"),
        ('<?xml-stylesheet href="x.css"?>', "a style sheet"),
    ],
)
def test_what_stands_before_a_drawing_is_refused_unread(
    tmp_path: Path, before: str, holds: str
) -> None:
    found = read(tmp_path, before + drawing(""))

    assert isinstance(found, Slip)
    assert found.message == f"`a.svg` holds {holds}"


def test_a_photograph_is_as_large_as_it_is_shown(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[ORIENTATION] = 6
    out = io.BytesIO()
    Image.new("RGB", (40, 30)).save(out, "JPEG", exif=exif)
    (tmp_path / "upright.jpg").write_bytes(out.getvalue())

    assert read_size(tmp_path / "upright.jpg") == (30, 40)
