"""Everything printed on a terminal: problems with their picture, notices, tables, progress.

On a terminal rich gives weight and width; anywhere else the same words come as plain lines, so
that they can be sent to a file or a mail and compared.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from io import TextIOWrapper
from pathlib import Path

from rich.console import Console
from rich.table import Table
from rich.text import Text

from hoistbook.problems import Notice, Problem, picture


class Screen:
    """One place to print on: results go to `out`, what is wrong goes to `err`."""

    def __init__(self, out: Console | None = None, err: Console | None = None) -> None:
        self._out = out or _console(stderr=False)
        self._err = err or _console(stderr=True)

    def say(self, text: str = "") -> None:
        """Print a line of the result."""
        _line(self._out, _typed(text))

    def complain(self, text: str) -> None:
        """Print a line about what is wrong."""
        _line(self._err, Text(text))

    def problems(self, problems: Iterable[Problem], folder: Path) -> None:
        """Print what stops publishing, each with its line and a caret under the place."""
        for each in problems:
            _line(self._err, _picture(each, folder), end="\n\n")

    def notices(self, notices: Iterable[Notice], folder: Path) -> None:
        """Print what the owner of the car should look at."""
        for each in notices:
            _line(self._out, _picture(each, folder), end="\n\n")

    def table(self, headings: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
        """Print a table; headings that begin with `>` stand over numbers, set to the right."""
        if self._out.is_terminal:
            self._out.print(_ruled(headings, rows))
        else:
            for line in _plain(headings, list(rows)):
                self.say(line)

    @contextmanager
    def progress(self) -> Iterator[Callable[[str], None]]:
        """Show which step of long work is being done; nothing is shown off a terminal."""
        if not self._err.is_terminal:
            yield _silent
            return
        with self._err.status("…") as status:
            yield status.update


def _console(*, stderr: bool) -> Console:
    # Where the terminal has no minus sign or degree, its number is printed instead of nothing.
    stream = sys.stderr if stderr else sys.stdout
    if isinstance(stream, TextIOWrapper):
        stream.reconfigure(errors="backslashreplace")
    # Colour words and links of rich's own would say things that the text does not.
    return Console(stderr=stderr, highlight=False, markup=False, emoji=False)


def _line(console: Console, text: Text, end: str = "\n") -> None:
    # A terminal wraps for itself; what is wrapped here could not be copied whole.
    console.print(text, end=end, soft_wrap=True)


def _typed(text: str) -> Text:
    """Return a text of a page as it would be typed, so that what is printed can be searched."""
    return Text(text.replace("\N{NO-BREAK SPACE}", " "))


def _silent(_: str) -> None:
    """Show nothing."""


def _picture(told: Problem | Notice, folder: Path) -> Text:
    text = _typed(picture(told, folder.as_posix()))
    text.highlight_regex(r"^(problem|notice):", "bold")
    return text


def _ruled(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> Table:
    table = Table(box=None, pad_edge=False, header_style="bold")
    for heading in headings:
        to_right = heading.startswith(">")
        table.add_column(heading.removeprefix(">"), justify="right" if to_right else "left")
    for row in rows:
        table.add_row(*map(_typed, row))
    return table


def _plain(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Return the lines of a table in columns of even width, two spaces apart."""
    right = [heading.startswith(">") for heading in headings]
    lines = [[heading.removeprefix(">") for heading in headings], *rows]
    widths = [max(len(cell) for cell in column) for column in zip(*lines, strict=True)]
    for line in lines:
        cells = [
            cell.rjust(width) if to_right else cell.ljust(width)
            for cell, width, to_right in zip(line, widths, right, strict=True)
        ]
        yield "  ".join(cells).rstrip()
