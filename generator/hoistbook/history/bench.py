"""The build while an episode is being worked through: the one place where parts and joins change.

A `Bench` is private to the fold. Between two episodes it is copied into a frozen `State`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from hoistbook.authored.records import (
    BoostBySpeed,
    Given,
    Join,
    JoinEnd,
    Part,
    PowerRun,
    Reading,
)
from hoistbook.history.known import not_known
from hoistbook.history.state import Dated, PartState, State, Status, own_count
from hoistbook.problems import Place, Problem


@dataclass(slots=True)
class Bench:
    """The build in the middle of an episode."""

    written: Mapping[str, int]
    """Part id -> the episode that first writes it down, over the whole journal."""
    episode: int = 0
    car: dict[str, Dated[Given]] = field(default_factory=dict)
    settings: dict[str, Dated[Given | BoostBySpeed]] = field(default_factory=dict)
    parts: dict[str, PartState] = field(default_factory=dict)
    joins: list[Dated[Join]] = field(default_factory=list)
    readings: list[Dated[Reading]] = field(default_factory=list)
    runs: list[Dated[PowerRun]] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    successors: dict[str, tuple[str, str | None]] = field(default_factory=dict)
    """New part -> the part it is meant to replace once it is fitted, and why."""

    def frozen(self) -> State:
        """Return the state of the build as it is now."""
        return State(
            episode=self.episode,
            car=dict(self.car),
            settings=dict(self.settings),
            parts=dict(self.parts),
            joins=tuple(self.joins),
            readings=tuple(self.readings),
            runs=tuple(self.runs),
        )

    def problem(self, code: str, message: str, place: Place, hint: str = "") -> None:
        """Put down a problem."""
        self.problems.append(Problem(code, message, place, hint))

    def find(self, id_: str, place: Place) -> PartState | None:
        """Return the part of that id; None, with a problem put down, when it is not known yet."""
        found = self.parts.get(id_)
        if found is None:
            self.problems.append(not_known(id_, place, self.episode, self.written))
        return found

    def write_down(self, part: Part, status: Status) -> None:
        """Let a part be known for the first time."""
        pieces = own_count(part)
        self.parts[part.id] = PartState(
            part=part,
            status=status if pieces else Status.GONE,
            known_in=self.episode,
            since=self.episode,
            changed_in=self.episode,
            came_in=None if status in UNBOUGHT else self.episode,
            fitted_in=self.episode if status is Status.FITTED else None,
            how_gone=None if pieces else "bought for somebody else",
            pieces_left=pieces,
            pieces_fitted=pieces if status is Status.FITTED else 0,
        )

    def come(self, state: PartState) -> PartState:
        """Return a part, come if it was only planned or ordered until now."""
        if state.status not in UNBOUGHT:
            return state
        here = self.episode
        return replace(state, status=Status.ON_HAND, since=here, changed_in=here, came_in=here)

    def take_off(self, state: PartState, count: int) -> PartState:
        """Return a part with so many of it taken off the car."""
        fitted = state.pieces_fitted - count
        if fitted > 0:
            return replace(state, pieces_fitted=fitted)
        self.part_joins(state.part.id)
        return replace(state, status=Status.ON_HAND, since=self.episode, pieces_fitted=0)

    def use_up(self, state: PartState, count: int, how: str) -> PartState:
        """Return a part with so many of it gone, and with it all of it when none is left."""
        left = (state.pieces_left or 0) - count
        if left > 0:
            fitted = min(state.pieces_fitted, left)
            return replace(state, changed_in=self.episode, pieces_left=left, pieces_fitted=fitted)
        self.part_joins(state.part.id)
        return replace(
            state,
            status=Status.GONE,
            since=self.episode,
            how_gone=how,
            pieces_left=0,
            pieces_fitted=0,
        )

    def part_joins(self, id_: str) -> None:
        """Part every join of a part that leaves the car."""
        self.joins = [each for each in self.joins if id_ not in joined_parts(each.value)]

    def make_room(self, end: JoinEnd) -> None:
        """Part the oldest joins of an end until one more of its part is free for a new one.

        Two elbows under one id have two of each end; a single part has one.
        """
        holding = [each for each in self.joins if end in (each.value.a, each.value.b)]
        excess = len(holding) + 1 - max(1, self.parts[end.part].pieces_left or 1)
        for each in holding[: max(0, excess)]:
            self.joins.remove(each)


UNBOUGHT = (Status.PLANNED, Status.ORDERED)


def joined_parts(join: Join) -> tuple[str, str]:
    """Return the ids of the two parts of a join."""
    return join.a.part, join.b.part
