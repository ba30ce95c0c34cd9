"""How a part stands and what became of it, in the words of a page."""

from __future__ import annotations

from collections.abc import Callable

from hoistbook.history.state import Event, Fate, Outcome, PartState, Status, own_count
from hoistbook.pages.words import Words
from hoistbook.values.money import Money


def became(words: Words, money: Callable[[Money], str], fate: Fate) -> str:
    """Return a fate as one line: "replaced in episode 6 by Larger fuel pump: ran out".

    Parameters
    ----------
    words
        The words of the journal's language.
    money
        Prints an amount.
    fate
        What became of the part; of one in use nothing is said.
    """
    said = [_event(words, money, each) for each in fate.events]
    if fate.shared is not None:
        of = fate.events[-1].part
        said.append(words("fate.shared", part=of, fate=became(words, money, fate.shared)))
    text = "; ".join(said)
    return words("fate.reason", fate=text, because=fate.because) if fate.because else text


def became_in_short(words: Words, fate: Fate) -> str:
    """Return a fate as a mark in running text: "until episode 6"; empty while it is in use.

    Why it was so long and no longer, the story tells where it comes to it, and every table.
    """
    if fate.dropped:
        ended = fate.shared or fate
        return words("fate.until", episode=ended.episode) if ended.episode is not None else ""
    waits = fate.outcome is Outcome.NOT_YET and fate.shared is None
    return words(f"fate.{_key(fate.events[-1].how)}") if waits and fate.events else ""


def _event(words: Words, money: Callable[[Money], str], event: Event) -> str:
    key = _key(event.how)
    text = words(f"fate.{key}", episode=event.episode, part=event.part)
    if event.amount is not None:
        text = words("fate.for", fate=text, what=money(event.amount))
    if event.part and key not in _NAME_THE_OTHER:
        text = words("fate.for", fate=text, what=event.part)
    if event.left is not None:
        left, count = event.left
        text = words("fate.left", fate=text, left=left, count=count)
    return text


_NAME_THE_OTHER = ("replaced", "built_into")
"""The words of these say which other part it was."""


def standing(words: Words, name: Callable[[str], str], state: PartState) -> str:
    """Return how a part stands: "fitted", "on hand, broken", "8 fitted, 1 spare, 1 gone"."""
    if state.status is Status.GONE:
        return _how_gone(words, name, state)
    left = state.pieces_left or 0
    fitted = state.pieces_fitted if state.status is Status.FITTED else left
    count = own_count(state.part)
    text = words(f"status.{_key(state.status)}")
    if fitted < count:
        others = (("spare", left - fitted), ("gone", count - left))
        said = [words(f"standing.some_{key}", n=n) for key, n in others if n]
        text = ", ".join([words("standing.some", n=fitted, standing=text), *said])
    return words("standing.broken", standing=text) if state.broken else text


def _how_gone(words: Words, name: Callable[[str], str], state: PartState) -> str:
    how = _key(state.how_gone or state.status)
    if f"standing.{how}" in words:
        return words(f"standing.{how}")
    return words("standing.built_into", part=name(state.built_into or ""))


def _key(word: str) -> str:
    return word.replace(" ", "_")
