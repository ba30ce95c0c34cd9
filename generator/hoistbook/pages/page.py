"""A page before it is rendered, and all the material that pages are made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hoistbook.authored.records import Episode, Journal
from hoistbook.cautions.caution import Caution, Owed
from hoistbook.compare.verdicts import ClaimVerdict, Comparison
from hoistbook.figures.figure import Figures
from hoistbook.fit.joins import JoinVerdict
from hoistbook.history.ledger import Ledger
from hoistbook.history.state import Change, Fate, State


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Everything worked out from a journal, ready to be laid out; pure data."""

    journal: Journal
    episodes: tuple[Episode, ...]
    """The episodes to show, in order; an unpublished one is among them only for `watch`."""
    states: tuple[State, ...]
    """One per episode, with episode 0 first: `states[0]` is the car as bought."""
    changes: tuple[tuple[Change, ...], ...]
    """What each state changed from the one before; `changes[0]` is empty."""
    fates: Mapping[str, Fate]
    """By part id."""
    ledger: Ledger
    figures: tuple[Figures, ...]
    """One per state."""
    claims: tuple[ClaimVerdict, ...]
    comparisons: tuple[Comparison, ...]
    cautions: tuple[Caution, ...]
    """All cautions that the site owes anywhere, in the order of the table."""
    owed: Mapping[str, tuple[Owed, ...]]
    """By page address ("/episodes/3/")."""
    joins: tuple[tuple[JoinVerdict, ...], ...] = ()
    """One per state: its joins, judged."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page: where it stands, which template lays it out and what that template is given."""

    address: str
    """"/episodes/3/": always begins and ends with a slash."""
    template: str
    """File name in the theme."""
    title: str
    description: str
    context: object
    """The typed context of the template, available to it as `page`."""
    owed: tuple[Owed, ...] = ()
    structured: Mapping[str, object] | None = None
    """JSON-LD, where the page has any."""
