"""The running totals as at every episode, out of the entries."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from hoistbook.authored.kinds import THE_CAR, systems
from hoistbook.authored.records import Episode, Journal
from hoistbook.history.exchange import Exchange
from hoistbook.history.known import all_episodes
from hoistbook.history.ledger import Entry, Stage, Tally
from hoistbook.history.money_checks import car_sold_in, unpriced_parts
from hoistbook.values.money import Money

NO_SYSTEM = "other"
"""Stands in the tally where an amount belongs to no system, as the travelling."""


@dataclass(slots=True)
class Running:
    """The sums while the episodes are gone through."""

    spent: Decimal = Decimal(0)
    list_total: Decimal = Decimal(0)
    came_back: Decimal = Decimal(0)
    by_system: dict[str, Decimal] = field(default_factory=dict)
    unpriced: list[str] = field(default_factory=list)

    def add(self, entry: Entry) -> None:
        """Add one paid or returned amount."""
        system = entry.system or NO_SYSTEM
        self.spent += entry.home
        self.list_total += at_list(entry)
        self.came_back += max(Decimal(0), -entry.home)
        self.by_system[system] = self.by_system.get(system, Decimal(0)) + entry.home


def tallies(journal: Journal, entries: Sequence[Entry], exchange: Exchange) -> tuple[Tally, ...]:
    """Return the tally as at every episode, the car as bought first.

    Selling the car closes the tally: what comes in later episodes is not added.
    """
    running = Running()
    closed_after = car_sold_in(journal)
    promised = [each for each in entries if each.stage is not Stage.SPENT]
    paid: dict[int, list[Entry]] = {}
    for entry in entries:
        if entry.stage is Stage.SPENT:
            paid.setdefault(entry.episode, []).append(entry)
    made = []
    for episode in all_episodes(journal):
        before = running.spent
        if closed_after is None or episode.number <= closed_after:
            for entry in paid.get(episode.number, ()):
                running.add(entry)
            running.unpriced += [part.id for part in unpriced_parts(episode)]
        made.append(
            Tally(
                episode=episode.number,
                spent=running.spent,
                spent_here=running.spent - before,
                committed=standing(promised, Stage.COMMITTED, episode.number),
                planned=standing(promised, Stage.PLANNED, episode.number),
                list_total=running.list_total,
                came_back=running.came_back,
                by_system=in_order(running.by_system),
                budget=journal.budget.amount if journal.budget else None,
                unpriced=tuple(running.unpriced),
                also_shown=also_shown(journal, episode, running.spent, exchange),
            )
        )
    return tuple(made)


def at_list(entry: Entry) -> Decimal:
    """Return what an amount would have been at list price, where one is known."""
    if entry.list_home is None:
        return entry.home
    return entry.list_home + entry.postage


def standing(entries: Sequence[Entry], stage: Stage, episode: int) -> Decimal:
    """Return what is planned, or committed, as at an episode."""
    return sum(
        (
            each.home
            for each in entries
            if each.stage is stage
            and each.episode <= episode
            and (each.until is None or episode < each.until)
        ),
        Decimal(0),
    )


def in_order(by_system: Mapping[str, Decimal]) -> tuple[tuple[str, Decimal], ...]:
    """Return the car's own sum and those of the systems, in the order in which pages list them."""
    known = {system: place for place, system in enumerate((THE_CAR, *systems()))}
    return tuple(sorted(by_system.items(), key=lambda item: known.get(item[0], len(known))))


def also_shown(
    journal: Journal, episode: Episode, spent: Decimal, exchange: Exchange
) -> tuple[Money, ...]:
    """Return a total in the other currencies that a journal shows, as far as rates are known."""
    if episode.filmed is None:
        return ()
    shown = (
        exchange.abroad(spent, currency, episode.filmed, episode.place)
        for currency in journal.also_show
        if currency != journal.currency
    )
    return tuple(money for money in shown if money is not None)
