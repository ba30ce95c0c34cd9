"""Contradictions that need no folding: the order of dates, and links of the prose."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from hoistbook.authored.records import Came, Episode, Journal
from hoistbook.history.known import all_episodes, not_known, parts_written
from hoistbook.problems import Place, Problem


def checks(journal: Journal, written: Mapping[str, int]) -> Iterator[Problem]:
    """Yield what contradicts itself in the dates, the kits and the links of the prose."""
    yield from late_receipts(journal)
    for episode in all_episodes(journal):
        yield from unknown_kits(episode, written)
        yield from unknown_links(episode, written)


def late_receipts(journal: Journal) -> Iterator[Problem]:
    """Yield each payment that is dated after the episode following its own was filmed."""
    for episode, following in zip(journal.episodes, journal.episodes[1:], strict=False):
        if following.filmed is None:
            continue
        for what, day, place in payments(episode):
            if day > following.filmed:
                yield Problem(
                    "receipt-after-episode",
                    f"{what} of {day} is in episode {episode.number}, and episode "
                    f"{following.number} was filmed before it, on {following.filmed}",
                    place,
                    f"correct the date, or move it to episode {following.number} or later",
                )


def payments(episode: Episode) -> Iterator[tuple[str, date, Place]]:
    """Yield what was paid in an episode and on which day."""
    for receipt in episode.bought:
        yield f"the receipt from {receipt.supplier}", receipt.date, receipt.place
    for spent in episode.spent:
        if spent.date is not None:
            yield f"the payment for {spent.what}", spent.date, spent.place


def unknown_kits(episode: Episode, written: Mapping[str, int]) -> Iterator[Problem]:
    """Yield each part that came with something which is not known by the end of the episode."""
    if episode.number == 0:
        return
    for part in parts_written(episode):
        kit = part.came_with
        if part.came is Came.WITH and kit is not None and unknown(kit, episode, written):
            yield not_known(kit, part.place, episode.number, written)


def unknown_links(episode: Episode, written: Mapping[str, int]) -> Iterator[Problem]:
    """Yield each link of the prose to a part that is not known by the end of the episode."""
    for link in episode.links:
        if link.kind == "part" and unknown(link.target, episode, written):
            yield not_known(link.target, link.place, episode.number, written)


def unknown(id_: str, episode: Episode, written: Mapping[str, int]) -> bool:
    """Tell whether a part is written down only after an episode, or never."""
    return written.get(id_, episode.number + 1) > episode.number
