"""The state of the build as at one episode, and what turned one state into the next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

from hoistbook.authored.records import (
    BoostBySpeed,
    Done,
    Given,
    Join,
    Part,
    PowerRun,
    Reading,
)
from hoistbook.values.money import Money

T = TypeVar("T")


class Status(StrEnum):
    """Where a part stands; the words that pages print."""

    PLANNED = "planned"
    ORDERED = "ordered"
    ON_HAND = "on hand"
    FITTED = "fitted"
    GONE = "gone"


def own_count(part: Part) -> int:
    """Return how many of a part's pieces are the build's own, which a friend's are not."""
    return part.count if part.kept is None else part.kept


@dataclass(frozen=True, slots=True, kw_only=True)
class PartState:
    """One part as at one episode."""

    part: Part
    status: Status
    known_in: int
    """Episode that wrote it down."""
    since: int
    """Episode of its last change of status."""
    changed_in: int
    """Episode in which anything last happened to it, or to some of its pieces."""
    came_in: int | None = None
    fitted_in: int | None = None
    broken: bool = False
    how_gone: str | None = None
    """`sold`, `given away`, `sent back`, `scrapped`, `given up` or `built into NAME`."""
    built_into: str | None = None
    """Id of the part that was last made from it, or from some of its pieces."""
    built_in: int | None = None
    broke_in: int | None = None
    last: Done | None = None
    """What was last done to it."""
    replaced_by: str | None = None
    replaced_in: int | None = None
    because: str | None = None
    pieces_left: int | None = None
    """How many of its count are left: not built in, sold, broken or a friend's."""
    pieces_fitted: int = 0
    """How many of them are on the car."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dated(Generic[T]):
    """A value and the episode that set it."""

    value: T
    episode: int


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """The build as at the end of one episode; episode 0 is the car as bought."""

    episode: int
    car: Mapping[str, Dated[Given]]
    settings: Mapping[str, Dated[Given | BoostBySpeed]]
    parts: Mapping[str, PartState]
    """Every part known by then, in the order in which they were written down."""
    joins: tuple[Dated[Join], ...]
    """The joins that hold, oldest first."""
    readings: tuple[Dated[Reading], ...]
    """Every reading so far, oldest first."""
    runs: tuple[Dated[PowerRun], ...]


class ChangeKind(StrEnum):
    """What sort of change it is; pages have a word for each."""

    PLANNED = "planned"
    ORDERED = "ordered"
    CAME = "came"
    FITTED = "fitted"
    TAKEN_OFF = "taken off"
    REPLACED = "replaced"
    BROKE = "broke"
    BUILT_IN = "built in"
    GONE = "gone"
    SET = "set"
    JOINED = "joined"
    PARTED = "parted"
    NOT_KNOWN = "not yet known"
    """Of a later state before an earlier one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One difference between two states, in words and with what it is about."""

    subject: str
    """`part:turbo`, `car:mass`, `settings:boost`, `join:turbo oil in`."""
    kind: ChangeKind
    before: str | None
    after: str | None
    because: str | None
    episode: int


class Outcome(StrEnum):
    """What became of a part by the journal's last episode."""

    IN_USE = "in use"
    REPLACED = "replaced"
    BROKEN = "broken"
    TAKEN_OFF = "taken off"
    DID_NOT_FIT = "did not fit"
    GONE = "gone"
    NOT_YET = "not yet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One thing that befell a part; pages have words for each."""

    how: str
    """`replaced`, `broke`, `taken off`, `did not fit`, `built into`, how it is gone (`sold`), or
    the status of a part that is not yet on the car."""
    episode: int | None = None
    """None for what still is so."""
    part: str = ""
    """Name of the other part that had to do with it."""
    amount: Money | None = None
    left: tuple[int, int] | None = None
    """How many are left, of how many, where only some were used."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fate:
    """What became of a part, as it stands beside the part on every page, earlier ones too."""

    outcome: Outcome
    episode: int | None = None
    events: tuple[Event, ...] = ()
    """Empty for a part in use, but for a piece of a made part: built into it."""
    because: str = ""
    shared: Fate | None = None
    """Of a piece: the fate of the part that it was built into."""

    @property
    def dropped(self) -> bool:
        """Whether a copied parts list leaves the part out unless asked."""
        return self.outcome not in (Outcome.IN_USE, Outcome.NOT_YET)

    def known_by(self, episode: int) -> bool:
        """Return whether all of it had come about by an episode; what still is so, never has."""
        told = all(each.episode is not None and each.episode <= episode for each in self.events)
        return told and (self.shared is None or self.shared.known_by(episode))
