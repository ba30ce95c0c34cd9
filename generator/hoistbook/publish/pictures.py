"""Makes a picture of the journal fit to publish: nothing of what the camera wrote is left in it.

Reading has refused what is no picture, what is too large and drawings that act or reach out.
"""

from __future__ import annotations

import io
from pathlib import Path

from PIL import Image, ImageOps

KEPT_AS_IT_IS = ".svg"


def publishable(file: str, content: bytes) -> bytes:
    """Return the bytes of a picture as published.

    Parameters
    ----------
    file : str
        Path of the picture relative to the journal's folder.
    content : bytes
        What the file holds.
    """
    if Path(file).suffix.lower() == KEPT_AS_IT_IS:
        return content
    return _without_hidden(content)


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
