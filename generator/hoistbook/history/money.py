"""The running cost: every amount of the journal as an entry, and the tally as at every episode."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from hoistbook.authored.rates import FoundRates, RateNeed, look_up
from hoistbook.authored.records import Episode, Journal
from hoistbook.history.exchange import Exchange
from hoistbook.history.fold import fold
from hoistbook.history.known import all_episodes
from hoistbook.history.ledger import Entry, Ledger
from hoistbook.history.money_checks import money_notices, money_problems
from hoistbook.history.paid import got_entries, returned_entries, spent_entries
from hoistbook.history.promised import promised_entries
from hoistbook.history.receipts import receipt_entries
from hoistbook.history.state import State
from hoistbook.history.tallies import tallies
from hoistbook.problems import Notice, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoned:
    """The ledger, and what was wrong or worth a look on the way to it."""

    ledger: Ledger
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    needs: tuple[RateNeed, ...]
    """Exchange rates that the journal does not carry yet."""


def ledger(journal: Journal, states: Sequence[State]) -> Reckoned:
    """Return every amount of a journal, and what the build has cost as at every episode.

    Parameters
    ----------
    journal
        All that was read, with the rates that it carries.
    states
        The states of the build, from `fold`.

    Returns
    -------
    Reckoned
        The entries in the order of the episodes and one tally per state. An amount whose rate is
        missing has no entry but a problem.
    """
    exchange = Exchange(journal)
    episodes = all_episodes(journal)
    paid: list[Entry] = []
    for episode in episodes:
        paid.extend(paid_entries(episode, states, paid, exchange))
    promised = promised_entries(episodes, states, exchange)
    entries = tuple(sorted((*paid, *promised), key=in_time))
    return Reckoned(
        ledger=Ledger(
            currency=journal.currency,
            entries=entries,
            tallies=tallies(journal, entries, exchange),
        ),
        problems=(*money_problems(journal), *exchange.problems),
        notices=(*money_notices(journal, entries, states), *exchange.notices),
        needs=tuple(exchange.needs),
    )


def in_time(entry: Entry) -> tuple[int, date]:
    """Return what entries are sorted by: the episode, in it the day, and last what has no day."""
    return entry.episode, entry.day or date.max


def paid_entries(
    episode: Episode, states: Sequence[State], before: Sequence[Entry], exchange: Exchange
) -> Iterator[Entry]:
    """Yield what was paid and what came back in one episode, given the entries before it."""
    yield from spent_entries(episode, exchange)
    here: list[Entry] = []
    for receipt in episode.bought:
        here.extend(receipt_entries(receipt, episode.number, exchange))
    here.extend(got_entries(episode, exchange))
    yield from here
    yield from returned_entries(episode, states[-1], (*before, *here), exchange)


def missing_rates(journal: Journal) -> FoundRates:
    """Look up the rates that a journal needs and does not carry yet."""
    return look_up(ledger(journal, fold(journal).states).needs, journal.currency)
