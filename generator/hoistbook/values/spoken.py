"""Sizes as people say them, turned into digits: "three-eighths", "dash ten", "2½ inch"."""

from __future__ import annotations

import re
from fractions import Fraction

ONES = {
    word: str(count)
    for count, word in enumerate(
        (
            *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"),
            *("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen"),
        )
    )
}
TENS = {"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70}
PARTS = {"half": 2, "halve": 2, "quarter": 4, "eighth": 8, "sixteenth": 16}
VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
SIGNS = (
    (re.compile("[\u2010-\u2015\u2212]"), "-"),
    (re.compile(r"×|(?<=\d) ?\* ?(?=\d)"), "x"),
    (re.compile(r"(?<=\d)(?=deg)"), " "),
    (re.compile("[″”“\"]|''"), " in "),
    (re.compile("[°º]"), " degree "),
    (re.compile(r"\bdeg(?:ree)?s?\.?(?= |$|,|c\b)"), " degree "),
    (re.compile(r"\binch(?:es)?\b"), "in"),
    (re.compile(r"\bmillimet(?:er|re)s?\b"), "mm"),
    (re.compile(r"(?<=\d),(?=\d)"), "."),
    (re.compile(r"\b(\d) ?x ?m\d+ (?:hole|bolt|stud)s?\b"), r"\1 bolt flange"),
    (re.compile(r"(?<=[a-z])-(?=[a-z])"), " "),
    (re.compile(r"(?<=\d)-(?=(?:in|mm|degree|bolt|hole|bar)\b)"), " "),
    (re.compile(r"(?<=[a-z])-(?=\d+(?:in|mm|degree|bolt|hole)\b)"), " "),
)
_COUNT = "|".join((*ONES, "an", "a"))
TEN = re.compile(rf"\b({'|'.join(TENS)})(?: ({'|'.join(list(ONES)[1:10])}))?\b")
INCH_AND = re.compile(r"\b(?:(?:one|an|1) )?in and (?=(?:an? )?(?:half|quarter|eighth))")
_PART = "|".join(PARTS)
MIXED = re.compile(rf"\b({_COUNT}|\d+) and (?:({_COUNT}) )?({_PART})s?\b")
FRACTION = re.compile(rf"\b(?:({_COUNT}) )?({_PART})s?(?! (?:turn|round))\b")
COUNT = re.compile(rf"\b({'|'.join(ONES)})\b")
DASH = re.compile(r"\b(?:dash|minus|size)[ -](?=\d)")
SEVERAL = re.compile(
    r"\b(barb|tail|spigot|stub|neck|hose|duct|tube|pipe|line|flare|port|bolt|stud|plug|nipple|"
    r"sender|sensor|switch|screw|nut|bung|boss|socket|flange|washer)(?:s|es)\b"
)
"""Things that people name in the plural where they have two of an end."""
SERIES = (
    (
        re.compile(r"\b(an|jic|orb) ?-?(\d{1,2})\b(?![/.]| ?(?:mm|in|bar|degree|bolt|hole)\b)"),
        r"-\2 \1",
    ),
    (
        re.compile(
            r"(?<![\d/.])(?<!\d-)-?\b(\d{1,2}) ?(an|jic|orb)\b(?! (?:in|eighth|hose barb))"
        ),
        r"-\1 \2",
    ),
)
"""Dash sizes that are told by their series: "AN6", "6 AN"."""
INCHES = re.compile(r"(?:(?P<whole>\d+)[ -])?(?P<part>\d+/\d+)|(?P<decimal>\d+(?:\.\d+)?)")


def plain(text: str) -> str:
    """Return a text in small letters with its numbers as digits and its signs made one.

    Examples
    --------
    >>> plain("Dash ten, 37°")
    '-10, 37 degree'
    >>> plain("two-and-a-half-inch hose")
    '2 1/2 in hose'
    >>> plain("Three-eighths NPT")
    '3/8 npt'
    >>> plain("inch and a quarter hoses"), plain("thirty-eight mm")
    ('1 1/4 in hose', '38 mm')
    """
    for sign, digits in VULGAR.items():
        text = text.replace(sign, f" {digits} ")
    text = " ".join(text.casefold().split())
    for pattern, plainer in SIGNS:
        text = " ".join(pattern.sub(plainer, text).split())
    text = SEVERAL.sub(r"\1", text.replace(" ,", ","))
    text = TEN.sub(lambda found: str(TENS[found[1]] + int(ONES[found[2] or "zero"])), text)
    text, inches_and = INCH_AND.subn("1 and ", text)
    text = MIXED.sub(lambda found: f"{_digits(found[1])} {_part(found[2], found[3])}", text)
    text = FRACTION.sub(lambda found: _part(found[1], found[2]), text)
    if inches_and:
        text = re.sub(r"\b(1 \d/\d)\b(?! in\b)", r"\1 in", text)
    text = COUNT.sub(lambda found: ONES[found[1]], text)
    text = DASH.sub("-", text)
    for pattern, dash in SERIES:
        text = pattern.sub(dash, text)
    return text


def _digits(word: str | None) -> str:
    return ONES.get(word or "a", "1") if not (word or "").isdigit() else str(word)


def _part(count: str | None, part: str) -> str:
    return f"{_digits(count)}/{PARTS[part]}"


def inches(text: str) -> float:
    """Return the millimetres of a size in inches.

    Examples
    --------
    >>> inches("2-1/2"), inches("3/8"), inches("2.25")
    (63.5, 9.525, 57.15)
    """
    found = INCHES.fullmatch(text.strip())
    if found is None:
        raise ValueError(f"no inches in {text!r}")
    if found["decimal"]:
        return round(float(found["decimal"]) * 25.4, 4)
    return round(float(Fraction(found["part"]) + int(found["whole"] or 0)) * 25.4, 4)
