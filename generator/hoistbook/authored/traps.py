"""The traps that YAML lays for people who write about cars, each with a message of its own."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TypeAlias

from hoistbook.authored.nodes import Node, Text
from hoistbook.problems import Place, Problem

NOT_READ = "the rest of this file was not read"

DEEPEST = 20
"""Levels of nesting; the deepest record of ours needs six."""

TOO_DEEP = f"this is nested more than {DEEPEST} levels deep"
FLATTER = f"write it flatter; {NOT_READ}"

Trap: TypeAlias = tuple[str, str, Place, str]
"""Code, message, place and hint."""


@dataclass(frozen=True, slots=True)
class Quoted:
    """A text in quotes, from its first quote to behind its last."""

    value: str
    mark: str
    start: Place
    end: Place


@dataclass(frozen=True, slots=True)
class Broken:
    """What the YAML parser says where it breaks off."""

    said: str
    at: Place
    context: Place
    """Where the thing began that was being read."""
    before: Quoted | None
    """What was read last, if it stands in quotes."""


def quoted(text: str) -> str:
    """Return a text in the quotes that suit it."""
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


_COMMENT = re.compile(r"\s+#(?=\w)")


def cut_by_comment(value: str, end: Place) -> Problem | None:
    """Return a problem for a plain text that goes on behind ` #`, as in `Hose #8`."""
    match = _COMMENT.match(end.text, end.column - 1)
    if match is None:
        return None
    behind = end.text[end.column - 1 :]
    return Problem(
        "cut-by-comment",
        "what follows ` #` is taken for a comment and cut off",
        end.moved(match.end() - end.column),
        f"quote the text: {quoted((value + behind).strip())}; or write `# ` before a comment",
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


def syntax_problem(broken: Broken) -> Problem:
    """Return the problem behind an error of the YAML parser."""
    if "maximum nesting depth" in broken.said:
        return Problem("too-deep", TOO_DEEP, broken.at, FLATTER)
    code, message, where, hint = _open_quote(broken) or _signs(broken) or _lines(broken)
    return Problem(code, message, where, f"{hint}; {NOT_READ}")


def _open_quote(broken: Broken) -> Trap | None:
    """Recognise quotes that do not close, or close too early."""
    if "quoted scalar" in broken.said and "end of stream" in broken.said:
        return "unclosed-quote", "this quote is not closed", broken.context, CLOSE
    if "unknown escape" in broken.said:
        message = "a backslash means something of its own inside double quotes"
        return "backslash", message, broken.at, "use single quotes"
    last = broken.before
    goes_on = broken.said.endswith(("expected key", "',' or '}'", "',' or ']'"))
    if last is None or not goes_on:
        return None
    if last.end.line > last.start.line:
        return "unclosed-quote", "this quote is not closed", last.start, CLOSE
    return _early_quote(last) if last.end.line == broken.at.line else None


CLOSE = "close it on the same line"


def _early_quote(last: Quoted) -> Trap:
    end = last.end.moved(-1)
    rest = last.start.text[last.start.column :].rstrip()
    closed = re.fullmatch(rf"(.*){last.mark}[\]}}, ]*", rest)
    whole = closed[1] if closed else rest
    is_inch = last.mark == '"' and last.value[-1:].isdigit()
    if closed is None and not is_inch:
        # The quotes belong to the words: `"Big" day`.
        whole = f"{last.mark}{rest}"
    if is_inch:
        inches = re.sub(r'(\d)"', r"\1 in", whole)
        hint = f"write {quoted(inches)} or {quoted(whole)}"
        return "inch-mark", "the inch mark closes the quoted text", end, hint
    message = "the quoted text ends here, and more follows"
    return "early-quote", message, end, f"quote the whole: {quoted(whole)}"


SPACES = "put spaces in its place, as many as the lines beside it have"


def _signs(broken: Broken) -> Trap | None:
    """Recognise tabs, colons, brackets, and signs that begin no text."""
    said, at, context = broken.said, broken.at, broken.context
    sign = at.text[at.column - 1 : at.column]
    if "tab character" in said or sign == "\t":
        tab = Place(at.file, at.line, at.text.find("\t") + 1, at.text)
        return "tab", "a tab stands here; YAML is indented with spaces", tab, SPACES
    if "mapping values are not allowed" in said:
        return _colon(at)
    if "cannot start any token" in said:
        return _bad_start(at)
    if any(word in said for word in _MEANT_AS_TEXT):
        return _bad_start(context)
    if said.endswith(("',' or '}'", "',' or ']'")):
        return _bracket(context)
    return None


_MEANT_AS_TEXT = (
    "alphabetic or numeric",
    "scanning a block scalar: did not find expected comment",
    "scanning a tag",
)
"""What the parser says of a text that begins with a sign of its own: * & ! | >"""


def _bad_start(at: Place) -> Trap:
    text = at.text[at.column - 1 :].strip()
    return "bad-start", f"a text cannot begin with `{text[:1]}`", at, f"quote it: {quoted(text)}"


def _colon(at: Place) -> Trap:
    before, after = at.text[: at.column - 1], at.text[at.column - 1 :]
    key = re.match(r"(\s*(?:- +)*[^:]*?: +)(.*)$", before)
    if key is None and not before.startswith((" ", "-")):
        message = "the line above this one has no `: ` behind its key"
        return "no-colon", message, at.moved(1 - at.column), "as `title: Hot side`"
    if key is None:
        hint = "put it exactly under the line above, or quote the text of that line"
        return "indentation", "this key stands inside the value of the line above", at, hint
    whole = quoted((key[2] + after).rstrip())
    hint = f"quote the text: {key[1].strip()} {whole}"
    return "second-colon", "a second `: ` stands in this line", at, hint


def _bracket(context: Place) -> Trap:
    sign = context.text[context.column - 1 : context.column]
    cut = re.search(r"\s#(?=\w)", context.text[context.column :])
    if cut:
        where = context.moved(cut.start() + 2)
        message = "what follows ` #` is taken for a comment and cut off"
        return "cut-by-comment", message, where, "quote the text that has the #"
    closing = "]" if sign == "[" else "}"
    return "bracket", f"this `{sign}` is not closed", context, f"put `{closing}` where it ends"


def _lines(broken: Broken) -> Trap:
    """Recognise lines that stand too far left or right; or pass on what the parser says."""
    said, at = broken.said, broken.at
    if "block sequence entries" in said:
        hint = "put the list on the lines below its key"
        return "dash", "a list cannot begin behind a key on the same line", at, hint
    if said.endswith(("expected key", "'-' indicator")):
        hint = "put it exactly under the line it belongs with"
        return "indentation", "this line stands under nothing that it could belong to", at, hint
    if "<document start>" in said:
        message = "what stands above this line is no key with its `: `"
        return "no-colon", message, at, "as `title: Hot side`"
    if "could not find expected ':'" in said:
        return (
            "no-colon",
            "a key without its `: ` stands here",
            broken.context,
            "as `title: Hot side`",
        )
    if "expected node content" in said:
        hint = "look at the commas and brackets of this line"
        return "no-value", "a value is missing here", at, hint
    hint = "compare the lines around it with the other episodes"
    return "yaml-syntax", f"this cannot be read as YAML ({said})", at, hint
