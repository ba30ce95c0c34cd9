"""Files that an episode shows: that they stay in the journal, and how large a picture is."""

from __future__ import annotations

import re
import warnings
from pathlib import Path, PurePosixPath
from xml.etree import ElementTree

from PIL import Image, UnidentifiedImageError

from hoistbook.problems import closest
from hoistbook.values.slip import Slip

RASTER = (".jpg", ".jpeg", ".png", ".webp", ".gif", ".avif")
DRAWING = ".svg"
MOST_PIXELS = 60_000_000
LONGEST_DRAWING = 2_000_000
"""Bytes of an SVG file."""

ORIENTATION, LYING = 274, (5, 6, 7, 8)
"""Tag of Exif 2.3 (CIPA DC-008, section 4.6.4), and its values for a camera held upright."""

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
_OUTSIDE = re.compile(r"@import|javascript:|url\((?!\s*['\"]?#)", re.IGNORECASE)


def inside(root: Path, file: str, target: str) -> str | Slip:
    """Return the path of a file beside an episode, relative to the journal's folder.

    Parameters
    ----------
    root
        The journal's folder.
    file
        The episode's file, relative to it.
    target
        The path as written, relative to the episode's folder.
    """
    if "\\" in target or ":" in target or target.startswith("/") or "\0" in target:
        return Slip(
            "path-outside",
            f"`{target}` is not a file beside the episode",
            "put the file into the episode's folder and write its name alone",
        )
    folder = (root / file).parent
    try:
        wanted = (folder / target).resolve()
        path = wanted.relative_to(root.resolve())
        there = wanted.is_file()
    except (ValueError, OSError, RuntimeError):
        return Slip(
            "path-outside",
            f"`{target}` leads out of the journal",
            "put the file into the episode's folder and write its name alone",
        )
    if not there:
        names = [each.name for each in folder.iterdir() if each.is_file()]
        near = closest(PurePosixPath(target).name, names)
        hint = f"did you mean {near}?" if near else f"it is looked for in {folder.name}/"
        return Slip("missing-file", f"there is no file `{target}`", hint)
    return path.as_posix()


def read_size(path: Path) -> tuple[int, int] | Slip:
    """Return width and height of a picture in pixels, or what is wrong with it."""
    suffix = path.suffix.casefold()
    if suffix == DRAWING:
        return _drawing_size(path)
    if suffix not in RASTER:
        known = ", ".join(ending[1:] for ending in (*RASTER, DRAWING))
        return Slip(
            "bad-picture", f"`{path.name}` is not a picture that pages show", f"one of: {known}"
        )
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            with Image.open(path) as picture:
                width, height = picture.size
                if picture.getexif().get(ORIENTATION) in LYING:
                    width, height = height, width
    except (Image.DecompressionBombWarning, Image.DecompressionBombError):
        width, height = MOST_PIXELS, MOST_PIXELS
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError):
        return Slip("bad-picture", f"`{path.name}` cannot be read as a picture", "save it again")
    if width * height > MOST_PIXELS:
        message = f"`{path.name}` has more than {MOST_PIXELS // 1_000_000} million pixels"
        return Slip("large-picture", message, "save a smaller copy")
    return width, height


def _drawing_size(path: Path) -> tuple[int, int] | Slip:
    source = path.read_bytes()
    if len(source) > LONGEST_DRAWING:
        return Slip("large-picture", f"`{path.name}` is larger than 2 MB", "save a simpler copy")
    if b"<!DOCTYPE" in source or b"<!ENTITY" in source:
        return _unsafe(path, "a document type")
    if b"<?xml-stylesheet" in source:
        return _unsafe(path, "a style sheet")
    try:
        root = ElementTree.fromstring(source)
    except (ElementTree.ParseError, ValueError, LookupError):
        return Slip("bad-picture", f"`{path.name}` cannot be read as a drawing", "save it again")
    for element in root.iter():
        found = _active(element)
        if found:
            return _unsafe(path, found)
    return _box(root) or Slip(
        "bad-picture", f"`{path.name}` does not say how large it is", "give the svg a viewBox"
    )


def _active(element: ElementTree.Element) -> str:
    """Name what in an element could act or reach out; empty for a plain drawing."""
    name = str(element.tag).removeprefix(_SVG)
    if name not in _DRAWN and not _of_an_editor(str(element.tag)):
        return f"<{name.rpartition('}')[2]}>"
    if name == "style" and _OUTSIDE.search(element.text or ""):
        return "a style that loads a file"
    for attribute, value in element.attrib.items():
        key = attribute.rpartition("}")[2].casefold()
        if key.startswith("on"):
            return f"the attribute {key}"
        if key in ("href", "src") and not re.match(r"#|data:image/(png|jpeg|webp|gif);", value):
            return f"a link to {value[:40]}"
        if _OUTSIDE.search(value):
            return "a style that loads a file"
    return ""


def _of_an_editor(tag: str) -> bool:
    """Tell whether an element belongs to a drawing program's notes, which browsers pass over."""
    return tag.startswith("{") and not tag.startswith((_SVG, _HTML))


def _unsafe(path: Path, what: str) -> Slip:
    return Slip("unsafe-picture", f"`{path.name}` holds {what}", "save it as a plain drawing")


def _box(root: ElementTree.Element) -> tuple[int, int] | None:
    sizes = [
        re.fullmatch(r"\s*([\d.]{1,9})(?:px)?\s*", root.get(name, ""))
        for name in ("width", "height")
    ]
    found = [match[1] for match in sizes if match]
    if len(found) != 2:
        found = re.split(r"[\s,]+", root.get("viewBox", "").strip())[2:4]
    try:
        width, height = (round(float(number)) for number in found)
    except (ValueError, OverflowError):
        return None
    return (width, height) if width > 0 and height > 0 else None
