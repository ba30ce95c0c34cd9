"""Money that has not left yet: what is planned, and what is ordered and not paid."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from hoistbook.authored.records import Done, Episode, Part, Verb
from hoistbook.history.exchange import Exchange
from hoistbook.history.known import parts_written
from hoistbook.history.ledger import Entry, EntryKind, Stage
from hoistbook.history.receipts import kept_share, label_of
from hoistbook.history.spread import rounded
from hoistbook.history.state import State, Status
from hoistbook.problems import Notice
from hoistbook.values.money import Money

STAGE_OF = {Verb.PLANNED: Stage.PLANNED, Verb.ORDERED: Stage.COMMITTED}


def promised_entries(
    episodes: Sequence[Episode], states: Sequence[State], exchange: Exchange
) -> tuple[Entry, ...]:
    """Return what was planned and ordered, each with the episode until which it stood.

    A plan stands until the part is ordered, paid, had without paying, or given up; an order until
    it is paid, or the part is gone.
    """
    standing: dict[str, Entry] = {}
    closed: list[Entry] = []
    settled: set[str] = set()

    def close(part: str, episode: int) -> None:
        if part in standing:
            closed.append(replace(standing.pop(part), until=episode))

    for episode, state in zip(episodes, states, strict=True):
        for part in had(episode):
            settled.add(part.id)
            close(part.id, episode.number)
        for done in episode.done:
            if done.verb in STAGE_OF and done.part not in settled:
                close(done.part, episode.number)
                entry = promise(done, episode, state, exchange)
                if entry is not None:
                    standing[done.part] = entry
        for id_ in list(standing):
            if id_ in state.parts and state.parts[id_].status is Status.GONE:
                close(id_, episode.number)
    return (*closed, *standing.values())


def had(episode: Episode) -> Iterator[Part]:
    """Yield the parts that came in an episode: all that it writes down but does not just plan."""
    promised = [done.new_part for done in episode.done]
    yield from (part for part in parts_written(episode) if part not in promised)


def promise(done: Done, episode: Episode, state: State, exchange: Exchange) -> Entry | None:
    """Return the entry of one plan or order; None when no price is known."""
    known = state.parts.get(done.part)
    if known is None:
        return None
    part = known.part
    price = part.paid or part.list_price
    if price is None:
        return None
    day = done.date or episode.filmed
    home = exchange.home(price, day, done.place)
    listed = exchange.home(part.list_price, day, done.place) if part.list_price else None
    if home is None:
        return None
    kept = kept_share(part)
    return Entry(
        episode=episode.number,
        kind=EntryKind.PART,
        stage=STAGE_OF[done.verb],
        label=label_of(part),
        amount=Money(rounded(Fraction(price.amount) * kept, price.currency), price.currency),
        home=rounded(home * kept, exchange.currency),
        place=done.place,
        day=day,
        part=part.id,
        system=part.system,
        list_home=None if listed is None else rounded(listed * kept, exchange.currency),
        rate=exchange.words(price.currency, day),
    )


def unpaid_notices(entries: Sequence[Entry], last: State) -> Iterator[Notice]:
    """Yield a notice for each part that is here although nothing says what was paid for it."""
    for entry in entries:
        if entry.stage is Stage.SPENT or entry.until is not None or entry.part is None:
            continue
        state = last.parts[entry.part]
        if state.status in (Status.ON_HAND, Status.FITTED):
            yield Notice(
                "no-receipt",
                f"`{entry.part}` is {state.status} since episode {state.since} and no receipt "
                f"says what was paid: {entry.amount.amount} {entry.amount.currency} count as "
                f"{entry.stage}, not as spent",
                entry.place,
                "write it under `bought`, or under `got` if it cost nothing",
                state.since,
            )
