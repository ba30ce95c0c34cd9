"""Nothing that is hidden in a photograph is published."""

from __future__ import annotations

import io

import pytest
from PIL import Image

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


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photograph_loses_where_and_with_what_it_was_taken(kind: str) -> None:
    content = photograph(kind)
    assert Image.open(io.BytesIO(content)).getexif()[MAKE] == "a camera"

    published = publishable("episodes/01/bench.jpg", content)

    with Image.open(io.BytesIO(published)) as picture:
        assert dict(picture.getexif()) == {}
        assert picture.format == kind
        assert picture.size == (4, 2)
    assert b"seen by nobody" not in published
    assert publishable("episodes/01/bench.jpg", content) == published


def test_a_photograph_stands_as_the_camera_was_held() -> None:
    published = publishable("bench.jpg", photograph("JPEG", (4, 2), orientation=6))

    assert Image.open(io.BytesIO(published)).size == (2, 4)


def test_a_drawing_is_published_as_it_is() -> None:
    plain = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>'

    assert publishable("poster.svg", plain) == plain
