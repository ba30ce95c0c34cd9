"""The traps that YAML lays for people who write about cars, each with a message of its own."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import TypeAlias, cast

import yaml

from hoistbook.authored.nodes import Node, Text
from hoistbook.problems import Place, Problem


def start_of(event: yaml.Event) -> yaml.Mark:
    """Return where an event begins; the C parser marks every one of them."""
    return cast(yaml.Mark, event.start_mark)


def end_of(event: yaml.Event) -> yaml.Mark:
    """Return where an event ends."""
    return cast(yaml.Mark, event.end_mark)


NOT_READ = "the rest of this file was not read"

Found: TypeAlias = tuple[str, str, Place, str]
"""Code, message, place and hint of a trap."""


def cut_by_comment(event: yaml.ScalarEvent, lines: Sequence[str], end: Place) -> Problem | None:
    """Return a problem for a plain text that goes on behind ` #`, as in `Hose #8`."""
    line = lines[end_of(event).line] if end_of(event).line < len(lines) else ""
    match = re.match(r"\s+#(?=\w)(.*)$", line[end_of(event).column :])
    if match is None:
        return None
    whole = event.value + line[end_of(event).column :].rstrip()
    return Problem(
        "cut-by-comment",
        "what follows ` #` is taken for a comment and cut off",
        end.moved(match[0].index("#")),
        f"quote the text: {quoted(whole.strip())}; or write `# ` before a comment",
    )


def comma_in_mapping(previous: Node | None, key: Node, value: Node) -> Problem | None:
    """Return a problem for `{paid: 6,40 EUR}`, which YAML splits at the comma."""
    if not (isinstance(previous, Text) and isinstance(key, Text) and isinstance(value, Text)):
        return None
    if value.value or not previous.plain or previous.place.line != key.place.line:
        return None
    if not (previous.value[-1:].isdigit() and key.value[:1].isdigit()):
        return None
    if key.place.column != previous.place.column + len(previous.value) + 1:
        return None
    whole = f"{previous.value},{key.value}"
    return Problem(
        "split-by-comma",
        f"the comma in `{whole}` ends the value inside braces",
        key.place.moved(-1),
        f"quote it: {quoted(whole)}",
    )


def quoted(text: str) -> str:
    """Return a text in the quotes that suit it."""
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


def syntax_problem(
    error: yaml.MarkedYAMLError,
    events: Sequence[yaml.Event],
    lines: Sequence[str],
    file: str,
    first_line: int,
) -> Problem:
    """Return the problem behind an error of the YAML parser."""

    def place(mark: yaml.Mark | None) -> Place:
        line = min(mark.line if mark else 0, len(lines) - 1)
        return Place(file, line + first_line, (mark.column if mark else 0) + 1, lines[line])

    at = place(error.problem_mark)
    text = f"{error.context or ''}: {error.problem or ''}"
    last = events[-1] if events else None
    found = _quotes(text, at, place(error.context_mark), last, place) or _signs(
        text, at, place(error.context_mark), lines
    )
    code, message, where, hint = found or (
        "yaml-syntax",
        f"this cannot be read as YAML ({error.problem or error.context or 'it breaks off'})",
        at,
        "compare the lines around it with the other episodes",
    )
    return Problem(code, message, where, f"{hint}; {NOT_READ}")


def _quotes(
    text: str,
    at: Place,
    context: Place,
    last: yaml.Event | None,
    place: Callable[[yaml.Mark | None], Place],
) -> Found | None:
    """Recognise quotes that do not close, or close too early."""
    if "quoted scalar" in text and "end of stream" in text:
        return "unclosed-quote", "this quote is not closed", context, "close it on the same line"
    if "unknown escape" in text:
        return (
            "backslash",
            "a backslash means something of its own inside double quotes",
            at,
            "use single quotes",
        )
    if not (isinstance(last, yaml.ScalarEvent) and last.style in ("'", '"')):
        return None
    if not text.endswith(("expected key", "',' or '}'", "',' or ']'")):
        return None
    start = place(start_of(last))
    if end_of(last).line > start_of(last).line:
        return "unclosed-quote", "this quote is not closed", start, "close it on the same line"
    if end_of(last).line + 1 < at.line - start.line + start_of(last).line + 1:
        return None
    return _early_quote(last, start)


def _early_quote(last: yaml.ScalarEvent, start: Place) -> Found:
    end = start.moved(end_of(last).column - start_of(last).column - 1)
    rest = start.text[start_of(last).column + 1 :].rstrip().removesuffix(last.style or "")
    if last.style == '"' and last.value[-1:].isdigit():
        inches = re.sub(r'(\d)"', r"\1 in", rest)
        hint = f"write {quoted(inches)} or {quoted(rest)}"
        return "inch-mark", "the inch mark closes the quoted text", end, hint
    message = "the quoted text ends here, and more follows"
    other = '"' if last.style == "'" else "'"
    return "early-quote", message, end, f"quote the whole with {other} instead"


def _signs(text: str, at: Place, context: Place, lines: Sequence[str]) -> Found | None:
    """Recognise colons, tabs, brackets and lines that stand too far left or right."""
    if "tab character" in text or at.text[at.column - 1 : at.column] == "\t":
        tab = Place(at.file, at.line, at.text.find("\t") + 1, at.text)
        return "tab", "a tab stands here; YAML is indented with spaces", tab, "put two spaces"
    if "mapping values are not allowed" in text:
        return _colon(at)
    if "cannot start any token" in text:
        sign = at.text[at.column - 1 : at.column]
        rest = quoted(at.text[at.column - 1 :].strip())
        return "bad-start", f"a text cannot begin with `{sign}`", at, f"quote it: {rest}"
    if "alphabetic or numeric" in text:
        rest = quoted(context.text[context.column - 1 :].strip())
        message = f"a text cannot begin with `{context.text[context.column - 1]}`"
        return "bad-start", message, context, f"quote it: {rest}"
    if text.endswith(("',' or '}'", "',' or ']'")):
        return _bracket(context)
    if "block sequence entries" in text:
        hint = "put the list on the lines below its key"
        return "dash", "a list cannot begin behind a key on the same line", at, hint
    if text.endswith(("expected key", "'-' indicator")):
        hint = "put it exactly under the line it belongs with"
        return "indentation", "this line stands under nothing that it could belong to", at, hint
    if "could not find expected ':'" in text:
        return "no-colon", "a key without its `: ` stands here", context, "as `title: Hot side`"
    return None


def _colon(at: Place) -> Found:
    before, after = at.text[: at.column - 1], at.text[at.column - 1 :]
    key = re.match(r"(\s*(?:- +)*[^:]*?: +)(.*)$", before)
    if key is None:
        hint = "put it exactly under the line above, or quote the text of that line"
        return "indentation", "this key stands inside the value of the line above", at, hint
    whole = quoted((key[2] + after).rstrip())
    hint = f"quote the text: {key[1].strip()} {whole}"
    return "second-colon", "a second `: ` stands in this line", at, hint


def _bracket(context: Place) -> Found:
    sign = context.text[context.column - 1 : context.column]
    cut = re.search(r"\s#(?=\w)", context.text[context.column :])
    if cut:
        where = context.moved(cut.start() + 2)
        message = "what follows ` #` is taken for a comment and cut off"
        return "cut-by-comment", message, where, "quote the text with the #"
    closing = {"{": "}", "[": "]"}.get(sign, "}")
    return "bracket", f"this `{sign}` is not closed", context, f"put `{closing}` where it ends"
