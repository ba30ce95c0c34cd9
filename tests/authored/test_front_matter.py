"""Front matter: every scalar stays text, everything has its place, private notes reach nobody."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.authored.nodes import Items, Node, Table, Text
from hoistbook.authored.traps import DEEPEST
from hoistbook.problems import Place


def table(text: str, first_line: int = 1) -> Table:
    node, problems = parse_front_matter(text, "episode.md", first_line)
    assert problems == ()
    assert isinstance(node, Table)
    return node


def texts(node: Node) -> Iterator[Text]:
    match node:
        case Text():
            yield node
        case Items(items):
            for item in items:
                yield from texts(item)
        case Table(entries):
            for entry in entries:
                yield entry.key
                yield from texts(entry.value)


@pytest.mark.parametrize(
    "written",
    ["no", "yes", "on", "null", "~", "4:10", "0123", "1.10", "1e3", "0x1F", "2026-02-14", ".inf"],
)
def test_a_scalar_stays_what_was_written(written: str) -> None:
    assert table(f"key: {written}").get("key") == Text(
        written, Place("episode.md", 1, 6, f"key: {written}")
    )


def test_every_node_knows_its_line_in_the_whole_file_and_its_column() -> None:
    node = table("title: One\nbought:\n  - from: Shop\n    parts: [Gasket, 'Seal']\n", 2)

    assert [(text.value, text.place.line, text.place.column) for text in texts(node)] == [
        ("title", 2, 1),
        ("One", 2, 8),
        ("bought", 3, 1),
        ("from", 4, 5),
        ("Shop", 4, 11),
        ("parts", 5, 5),
        ("Gasket", 5, 13),
        ("Seal", 5, 21),
    ]
    bought = node.get("bought")
    assert isinstance(bought, Items)
    assert bought.place == Place("episode.md", 4, 3, "  - from: Shop")


def test_columns_count_characters_and_not_bytes() -> None:
    node = table("tür: {größe: ü, maß: 3}")
    last = list(texts(node))[-1]

    assert (last.value, last.place.column) == ("3", 22)


def test_quoted_and_folded_texts_are_known_as_such() -> None:
    node = table("a: plain\nb: \"double\"\nc: 'single'\nd: >-\n  folded\n  text\n")

    assert [(text.value, text.plain) for text in texts(node)][1::2] == [
        ("plain", True),
        ("double", False),
        ("single", False),
        ("folded text", False),
    ]


def test_nothing_written_is_nothing_read() -> None:
    assert parse_front_matter("", "episode.md") == (None, ())
    assert parse_front_matter("# only a comment\n", "episode.md") == (None, ())


def test_nesting_is_read_down_to_its_limit_and_no_further() -> None:
    deepest = "[" * DEEPEST + "]" * DEEPEST
    _, fine = parse_front_matter(deepest, "episode.md")
    node, problems = parse_front_matter("[" * 4_000, "episode.md")
    _, too_long = parse_front_matter("[" * 100_000, "episode.md")

    assert fine == ()
    assert node is None
    assert [each.message for each in problems] == ["this is nested more than 20 levels deep"]
    assert [each.message for each in too_long] == ["this line is longer than 5000 characters"]


def test_aliases_that_would_multiply_are_refused_and_not_followed() -> None:
    lines = ["a: &a [x, x]"] + [f"{b}: &{b} [*{a}, *{a}]" for a, b in ("ab", "bc", "cd", "de")]
    node, problems = parse_front_matter("\n".join(lines), "episode.md")

    assert {each.code for each in problems} == {"indirection"}
    assert node is not None
    assert [text.value for text in texts(node)].count("x") == 2


PRIVATE = """\
title: One
private: the seller's number is 555
done:
  - {sold: seat, private: paid "in cash", for: 40 EUR}
  - broke: stud
    private:
      who: me
      why: [tired, late]
note: not private
"""


def test_private_notes_are_dropped_wherever_they_stand() -> None:
    node = table(PRIVATE)

    assert [text.value for text in texts(node)] == [
        *("title", "One", "done", "sold", "seat", "for", "40 EUR", "broke", "stud"),
        *("note", "not private"),
    ]


def test_no_place_carries_a_private_note_along() -> None:
    lines = {text.place.text for text in texts(table(PRIVATE))}

    assert lines == {
        "title: One",
        "done:",
        "  - {sold: seat, private: **** *** *****, for: 40 EUR}",
        "  - broke: stud",
        "note: not private",
    }


def test_not_even_a_syntax_error_shows_a_private_note() -> None:
    _, problems = parse_front_matter("title: One\nprivate: call: 555\n", "episode.md")

    assert [each.place and each.place.text for each in problems] == ["private: ***** ***"]
    assert "555" not in str(problems)
