"""What an author may ask for by name because it comes with hoistbook: languages and themes."""

from __future__ import annotations

from pathlib import Path

from hoistbook.problems import closest
from hoistbook.values.slip import Slip

_PACKAGE = Path(__file__).parents[1]
# The wheel carries the themes inside the package; a clone keeps them at its top.
OURS = next(
    each for each in (_PACKAGE / "themes", _PACKAGE.parents[1] / "themes") if each.is_dir()
)
"""The folder of the themes that come with hoistbook."""

LANGUAGES = tuple(sorted(each.stem for each in (_PACKAGE / "words").glob("*.yaml")))
"""The languages that have a table of words."""


def known_themes(journal: Path) -> tuple[str, ...]:
    """Return the names of all themes that a journal may use, its own among them."""
    folders = [each for each in (journal / "themes", OURS) if each.is_dir()]
    return tuple(
        sorted({theme.name for each in folders for theme in each.iterdir() if theme.is_dir()})
    )


def one_of(what: str, name: str, known: tuple[str, ...]) -> Slip | None:
    """Return what is wrong with a name that is not among the known ones, None with one that is."""
    if name in known:
        return None
    near = closest(name, known)
    hint = f"did you mean `{near}`?" if near else f"there are: {', '.join(known)}"
    return Slip(f"unknown-{what}", f"there is no {what} `{name}`", hint)
