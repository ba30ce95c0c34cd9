"""What happens in one episode, in the order in which it happens.

The order inside an episode is written here and nowhere else: measured before the work, car and
settings, bought, got, made, done, joins, measured.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hoistbook.authored.records import (
    BoostBySpeed,
    Done,
    Episode,
    Given,
    Join,
    Part,
    PowerRun,
    Reading,
)


@dataclass(frozen=True, slots=True)
class CarSet:
    """Something is true of the car from here on."""

    key: str
    value: Given


@dataclass(frozen=True, slots=True)
class SettingSet:
    """Something is adjusted from here on."""

    key: str
    value: Given | BoostBySpeed


@dataclass(frozen=True, slots=True)
class PartCame:
    """A part is here: bought, given, already owned, or on the car as bought."""

    part: Part


@dataclass(frozen=True, slots=True)
class PartMade:
    """A part was made, maybe out of other parts."""

    part: Part


Event = CarSet | SettingSet | PartCame | PartMade | Done | Join | PowerRun | Reading


def events(episode: Episode) -> Iterator[Event]:
    """Yield the events of an episode in order."""
    yield from (each for each in episode.measured if each.before_work)
    yield from (CarSet(key, value) for key, value in episode.car.items())
    yield from (SettingSet(key, value) for key, value in episode.settings.items())
    yield from (PartCame(part) for receipt in episode.bought for part in receipt.parts)
    yield from (PartCame(part) for part in episode.got)
    yield from (PartMade(part) for part in episode.made)
    yield from episode.done
    yield from episode.joins
    yield from (each for each in episode.measured if not each.before_work)
