"""What the readers of one file share: its habits of writing, and what they found wrong."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from hoistbook.authored.nodes import Text
from hoistbook.problems import Notice, Place, Problem
from hoistbook.values.slip import Slip


@dataclass(slots=True)
class Context:
    """One file being read."""

    root: Path
    """The journal's folder."""
    file: str
    """The file, relative to the journal's folder."""
    numbers: str = "point"
    currency: str = "EUR"
    episode: int | None = None
    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)
    numbers_known: bool = True
    """False where build.yaml is not there to say what a comma means, or says it wrongly."""

    def problem(self, code: str, message: str, place: Place, hint: str = "") -> None:
        """Note something wrong."""
        self.problems.append(Problem(code, message, place, hint))

    def notice(self, code: str, message: str, place: Place, hint: str = "") -> None:
        """Note something that the owner should look at."""
        self.notices.append(Notice(code, message, place, hint, self.episode))

    def slip(self, slip: Slip, text: Text, offset: int = 0) -> None:
        """Note what is wrong with a text, at its place in the line."""
        self.problem(slip.code, slip.message, within(text, slip.offset + offset), slip.hint)


def within(text: Text, offset: int) -> Place:
    """Return the place of a character of a text, where the line shows it as it was read."""
    column = text.place.column - 1 + (0 if text.plain else 1)
    if text.place.text.startswith(text.value, column):
        return text.place.moved(offset + (0 if text.plain else 1))
    return text.place
