"""The table of cautions: what each says, and what on a page calls for it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.resources import files

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
    """Words in the name of a part, in a line about work, in the prose."""
    quantities: tuple[str, ...] = ()
    measured: tuple[str, ...] = ()
    evidence: tuple[str, ...] = ()


def read_rules() -> tuple[Rule, ...]:
    """Return the rules of `texts.yaml` in their order."""
    source = files("hoistbook.cautions").joinpath("texts.yaml").read_text(encoding="utf-8")
    table = yaml.load(source, Loader=yaml.CSafeLoader)
    return tuple(_rule(id_, **row) for id_, row in table.items())


def _rule(id_: str, *, title: str, line: str, text: list[str], **called_by: object) -> Rule:
    calls: dict[str, list[str]] = dict(called_by["called by"])  # type: ignore[call-overload]
    words = calls.pop("words", None)
    return Rule(
        caution=Caution(id=id_, title=title, line=line, text=tuple(text)),
        words=None if words is None else pattern_of(words),
        **{key.replace(" ", "_"): tuple(names) for key, names in calls.items()},
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
