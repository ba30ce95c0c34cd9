"""What is wrong with a text, before anyone knows on which line it stands."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Slip:
    """A mistake in one text; whoever knows the text's place makes a `Problem` of it."""

    code: str
    message: str
    """What is wrong, one sentence without a full stop at its end."""
    hint: str = ""
    offset: int = 0
    """Characters between the start of the text and the mistake."""
