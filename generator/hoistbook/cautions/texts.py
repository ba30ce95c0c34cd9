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
    """In a line about work or the prose, which then describes that work."""
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
    words, work = calls.pop("words", None), calls.pop("work", None)
    names: dict[str, Any] = {key.replace(" ", "_"): tuple(names) for key, names in calls.items()}
    return Rule(
        caution=Caution(id=id_, title=row["title"], line=row["line"], text=tuple(row["text"])),
        words=None if words is None else pattern_of(words),
        work=None if work is None else pattern_of(work),
        **names,
    )


def pattern_of(words: Iterable[str]) -> re.Pattern[str]:
    """Return a pattern that finds any of the words; a star stands for any ending.

    Examples
    --------
    >>> pattern_of(["weld*", "jack"]).findall("A jacket, a jack and the welding set")
    ['jack', 'welding']
    """
    either = "|".join(re.escape(word).replace(r"\*", r"\w*") for word in words)
    return re.compile(rf"\b(?:{either})\b", re.IGNORECASE)


RULES = read_rules()
CAUTIONS = tuple(rule.caution for rule in RULES)
"""Every caution, in the order in which pages print them."""
