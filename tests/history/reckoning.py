"""What the tests of money share: entries and tallies of a journal, in a form that can be read."""

from __future__ import annotations

from hoistbook.authored.records import Journal
from hoistbook.history.fold import fold
from hoistbook.history.ledger import Entry, Tally
from hoistbook.history.money import Reckoned, ledger

# 0.8 makes every conversion one that can be checked in the head: 8 GBP are 10 EUR.
RATE = "2026-01-20,GBP,0.8,by hand\n"


def reckoned(journal: Journal) -> Reckoned:
    folded = fold(journal)
    assert folded.problems == ()
    return ledger(journal, folded.states)


def entries(journal: Journal) -> list[str]:
    """Return the entries in the form `episode stage label: amount = home (postage) at list`."""
    done = reckoned(journal)
    assert done.problems == ()
    return [line_of(entry) for entry in done.ledger.entries]


def line_of(entry: Entry) -> str:
    extras = f" ({entry.postage})" if entry.postage else ""
    listed = "" if entry.list_home is None else f", list {entry.list_home}"
    until = "" if entry.until is None else f" until {entry.until}"
    return (
        f"{entry.episode} {entry.stage}{until} {entry.label}: {entry.amount.amount} "
        f"{entry.amount.currency} = {entry.home}{extras}{listed}"
    )


def last_tally(journal: Journal) -> Tally:
    return reckoned(journal).ledger.tallies[-1]


def receipt(parts: str, more: str = "") -> str:
    return f"bought: [{{from: Shop, date: 2026-01-20, parts: [{parts}]{more}}}]"
