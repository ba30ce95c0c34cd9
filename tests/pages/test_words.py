"""Words come from one table, and a missing one is a loud mistake."""

import pytest

from hoistbook.authored.offered import LANGUAGES
from hoistbook.pages.words import Words, load_words


def test_english_is_there() -> None:
    assert "en" in LANGUAGES


def test_a_dialect_takes_the_words_of_its_language() -> None:
    assert load_words("en-GB")("pressure.gauge") == "gauge"


def test_a_missing_word_is_an_error_that_names_it() -> None:
    with pytest.raises(KeyError, match=r"no words for 'tally\.titel' in language 'en'"):
        load_words("en")("tally.titel")


def test_a_count_chooses_the_form() -> None:
    words = Words("en", {"part": {"one": "{n} part", "other": "{n} parts"}})
    assert [words("part", n=n) for n in (0, 1, 2)] == ["0 parts", "1 part", "2 parts"]


def test_braces_of_a_text_want_their_values() -> None:
    with pytest.raises(KeyError, match="low"):
        load_words("en")("figure.band", high="1")
