"""The table of cautions: what each says, and what on a page calls for it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

import yaml

from hoistbook.cautions.caution import Caution


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What calls for one caution; any one of these is enough."""

    caution: Caution
    systems: tuple[str, ...] = ()
    """A part of the system is named on the page."""
    fitted_systems: tuple[str, ...] = ()
    """A part of the system was fitted to the car as bought."""
    kinds: tuple[str, ...] = ()
    words: re.Pattern[str] | None = None
    """In the name of a part or a line about work; the prose that has one owes a line."""
    work: re.Pattern[str] | None = None
    """In a line about work; the prose that has one owes a line."""
    told: re.Pattern[str] | None = None
    """In a line about work or in the prose, which then describes that work."""
    topics: tuple[str, ...] = ()
    """Modules of the formulas that work a figure out."""
    quantities: tuple[str, ...] = ()
    measured: tuple[str, ...] = ()
    evidence: tuple[str, ...] = ()
    verdicts: tuple[str, ...] = ()
    """Of joins."""


def read_rules() -> tuple[Rule, ...]:
    """Return the rules of `texts.yaml` in their order."""
    source = files("hoistbook.cautions").joinpath("texts.yaml").read_text(encoding="utf-8")
    table = yaml.load(source, Loader=yaml.CSafeLoader)
    return tuple(_rule(id_, row) for id_, row in table.items())


def _rule(id_: str, row: Mapping[str, Any]) -> Rule:
    calls: dict[str, list[str]] = dict(row["called by"])
    harmless = calls.pop("but not", [])
    patterns: dict[str, Any] = {
        key: pattern_of(calls.pop(key), harmless)
        for key in ("words", "work", "told")
        if key in calls
    }
    names: dict[str, Any] = {key.replace(" ", "_"): tuple(names) for key, names in calls.items()}
    return Rule(
        caution=Caution(id=id_, title=row["title"], line=row["line"], text=tuple(row["text"])),
        **patterns,
        **names,
    )


NEGATED = (
    r"(?:no|not|never|without|nor|neither|cannot|\w+n['\u2019]t)\s+"
    r"(?:(?:a|an|any|the|my|our|single|yet|even|been|be|being|have|had|need|to|do|dare|for|of)\s+)*"
)
"""What before a term says that the thing was not there or not done. Only articles and auxiliaries
may stand between: in "not only welded" and "no room, so we welded" something was welded."""


def pattern_of(words: Iterable[str], but_not: Iterable[str] = ()) -> re.Pattern[str]:
    """Return a pattern that finds any of the words; a star stands for any ending.

    A word inside a longer term that is harmless is found as that term, and so is a negated word;
    both are found without a first group.
    """
    either, harmless = _any_of(words), _any_of(but_not)
    passed = f"{harmless}|{NEGATED}{either}" if harmless else f"{NEGATED}{either}"
    return re.compile(rf"\b(?:{passed}|({either}))\b", re.IGNORECASE)


def _any_of(words: Iterable[str]) -> str:
    terms = "|".join(re.escape(word).replace(r"\*", r"\w*") for word in words)
    return f"(?:{terms})" if terms else ""


def terms_in(pattern: re.Pattern[str] | None, text: str) -> tuple[str, ...]:
    """Return the terms of a pattern that a text has, as it writes them.

    Examples
    --------
    >>> terms_in(pattern_of(["weld*", "jack"]), "A jacket, a jack, the welding set, no welder")
    ('jack', 'welding')
    >>> terms_in(pattern_of(["cable"], ["throttle cable"]), "A throttle cable and a cable")
    ('cable',)
    """
    found = () if pattern is None else (each[1] for each in pattern.finditer(text))
    return tuple(term for term in found if term)


RULES = read_rules()
CAUTIONS = tuple(rule.caution for rule in RULES)
"""Every caution, in the order in which pages print them."""
