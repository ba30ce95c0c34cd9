"""Makes a picture of the journal fit to publish: nothing hidden in it, nothing that runs or calls.

A photograph loses what the camera wrote beside the pixels, the place above all. A drawing is
refused when it holds a script or points outside itself.
"""

from __future__ import annotations

import io
import re
from pathlib import Path
from xml.etree import ElementTree

from PIL import Image, ImageOps, UnidentifiedImageError

from hoistbook.problems import Place, Problem

_SVG = "{http://www.w3.org/2000/svg}"
_HTML = "{http://www.w3.org/1999/xhtml}"
_DRAWN = frozenset(
    """
    svg g path rect circle ellipse line polyline polygon text tspan textPath defs use symbol
    title desc linearGradient radialGradient stop clipPath mask pattern marker style metadata
    image filter feBlend feColorMatrix feComposite feFlood feGaussianBlur feMerge feMergeNode
    feOffset feTurbulence switch
    """.split()  # noqa: SIM905 - one word a line would hide what is missing
)
"""Elements of SVG 1.1 (W3C) that only draw."""
_OUTSIDE = re.compile(r"@import|url\((?!\s*['\"]?#)", re.IGNORECASE)


def publishable(file: str, content: bytes) -> bytes | Problem:
    """Return the bytes of a picture as published, or what is wrong with it.

    Parameters
    ----------
    file : str
        Path of the picture relative to the journal's folder.
    content : bytes
        What the file holds.
    """
    if Path(file).suffix.lower() == ".svg":
        fault = _drawing_fault(content)
        if fault is None:
            return content
        return Problem(
            "unsafe-picture",
            f"this drawing {fault}",
            Place(file),
            "save it as a plain SVG, without scripts, links or linked pictures",
        )
    try:
        return _without_hidden(content)
    except (UnidentifiedImageError, OSError, Image.DecompressionBombError, ValueError) as error:
        return Problem(
            "unreadable-picture",
            f"this picture cannot be read: {error}",
            Place(file),
            "save it again as JPEG, PNG or WebP",
        )


def _without_hidden(content: bytes) -> bytes:
    """Encode the pixels anew, turned as the camera was held, with the colour profile alone."""
    with Image.open(io.BytesIO(content)) as opened:
        kind, profile = opened.format, opened.info.get("icc_profile")
        upright = ImageOps.exif_transpose(opened)
        upright.info = {}
        out = io.BytesIO()
        options = {"quality": 88, "optimize": True} if kind == "JPEG" else {}
        upright.save(out, kind, icc_profile=profile, **options)
    return out.getvalue()


def _drawing_fault(content: bytes) -> str | None:
    if b"<!DOCTYPE" in content or b"<!ENTITY" in content or b"<?xml-stylesheet" in content:
        return "declares a document type, an entity or a style sheet"
    try:
        root = ElementTree.fromstring(content)  # entities were refused above
    except ElementTree.ParseError as error:
        return f"is not well-formed XML ({error})"
    if root.tag != f"{_SVG}svg":
        return "does not begin with an svg element of the SVG namespace"
    return next(filter(None, map(_element_fault, root.iter())), None)


def _element_fault(element: ElementTree.Element) -> str | None:
    name = element.tag.removeprefix(_SVG)
    if element.tag.startswith(_HTML):
        return "holds an element of HTML"
    if element.tag.startswith(_SVG) and name not in _DRAWN:
        return f"holds the element {name}, which does more than draw"
    if name == "style" and _OUTSIDE.search(element.text or ""):
        return "points outside itself in its style"
    for key, value in element.attrib.items():
        local = key.rsplit("}", 1)[-1].lower()
        if local.startswith("on"):
            return f"runs a script ({local})"
        if local == "href" and not value.startswith(("#", "data:image/png", "data:image/jpeg")):
            return f"points outside itself ({value})"
        if _OUTSIDE.search(value):
            return f"points outside itself ({value})"
    return None
