"""All words of ours that stand on pages: one table for each language, read once."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib import resources

import yaml
from babel import Locale

_FOLDER = resources.files("hoistbook") / "words"


class Words:
    """The words of one language, by dotted keys; called by code and templates alike.

    Examples
    --------
    >>> words = Words("en", {"tally": {"title": "Tally", "parts": {"one": "{n} part", "other": "{n} parts"}}})
    >>> words("tally.title")
    'Tally'
    >>> words("tally.parts", n=1)
    '1 part'
    """  # noqa: E501 - the table of an example stands on one line

    def __init__(self, language: str, table: Mapping[str, object]) -> None:
        self.language = language
        self._plural = Locale.parse(language, sep="-").plural_form
        self._texts = dict(_flat(table))

    def __call__(self, key: str, **put_in: object) -> str:
        """Return the text of a key with values put in for the names in its braces.

        A text with several forms is chosen by the count `n`.

        Raises
        ------
        KeyError
            When the table has no such key, or the text names a value that was not given: our
            mistake, never the author's.
        """
        text = self._texts.get(key)
        if text is None and "n" in put_in:
            text = self._texts[f"{key}.{self._plural(float(str(put_in['n'])))}"]
        if text is None:
            raise KeyError(f"no words for {key!r} in language {self.language!r}")
        return text.format(**put_in)

    def text(self, key: str) -> str:
        """Return the text of a key as it stands, for a script that puts the names in itself."""
        return self._texts[key]

    def below(self, key: str) -> tuple[str, ...]:
        """Return the names that stand directly below a key, in the order of the table."""
        names = (
            each.removeprefix(f"{key}.") for each in self._texts if each.startswith(f"{key}.")
        )
        return tuple(dict.fromkeys(each.partition(".")[0] for each in names))

    def __contains__(self, key: str) -> bool:
        return key in self._texts


def _flat(table: Mapping[str, object], above: str = "") -> list[tuple[str, str]]:
    pairs: list[tuple[str, str]] = []
    for key, value in table.items():
        if isinstance(value, Mapping):
            pairs += _flat(value, f"{above}{key}.")
        else:
            pairs.append((f"{above}{key}", str(value)))
    return pairs


@cache
def load_words(language: str) -> Words:
    """Return the words of a language; of "en-GB" those of `en`, which an author can ask for.

    The terms that are explained to readers stand in a file of their own, as `term`.
    """
    name = language.partition("-")[0]
    texts, terms = (
        yaml.safe_load((_FOLDER / path).read_text(encoding="utf-8"))
        for path in (f"{name}.yaml", f"{name}/terms.yaml")
    )
    return Words(language, texts | {"term": terms})
