"""One line of the table of figures, and the short form in which the tables are written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Headline(StrEnum):
    """Which point of a curve over engine speed stands for the whole, as pages print it."""

    HIGHEST = "highest"
    LOWEST = "lowest"
    AT_POWER = "where power is highest"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of the table."""

    quantity: str
    """Glossary key."""
    formula: str
    """Name of the formula, where it is not the quantity's own."""
    title: str = ""
    """As pages and claims name it; a row without one is a step and is not listed on its own."""
    binds: Mapping[str, str] = field(default_factory=dict)
    """Parameter of the formula -> name in the environment, where the two differ."""
    only: frozenset[str] = frozenset()
    """Conditions of the engine that must all hold for the row to apply."""
    per: str = ""
    """The kind of subjects that it is worked out for in turn; the engine where it is empty."""
    drawn: bool = False
    """Whether its curve over engine speed is drawn or compared; of others the headline is all."""
    at_power: bool = False
    """Whether it is worked out at the engine speed of highest power alone, and is no curve."""
    headline: Headline = Headline.AT_POWER
    also_called: tuple[str, ...] = ()
    """Other words by which a claim may name it."""
    note: str = ""
    """What has to be said wherever the figure stands."""
    until_a_run: str = ""
    """What has to be said until a power run of this engine has taught it."""

    @property
    def step(self) -> bool:
        """Whether it is an intermediate result."""
        return not self.title


def row(
    quantity: str,
    title: str = "",
    formula: str = "",
    only: str = "",
    headline: Headline = Headline.AT_POWER,
    also_called: tuple[str, ...] = (),
    per: str = "",
    drawn: bool = False,
    at_power: bool = False,
    note: str = "",
    until_a_run: str = "",
    **binds: str,
) -> Row:
    """Return a line of the table; what is bound is written by its name."""
    return Row(
        quantity=quantity,
        formula=formula or quantity,
        title=title,
        binds=binds,
        only=frozenset(filter(None, only.split(", "))),
        per=per,
        drawn=drawn,
        at_power=at_power,
        headline=headline,
        also_called=also_called,
        note=note,
        until_a_run=until_a_run,
    )
