"""What the record says about the car that its owner should look at; none stops publishing."""

from __future__ import annotations

from collections.abc import Iterator

from hoistbook.compare.verdicts import Result
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.figure import Figure, LimitState
from hoistbook.pages.formats import Formats
from hoistbook.pages.page import Material
from hoistbook.pages.words import load_words
from hoistbook.problems import Notice


def notices_of(material: Material) -> tuple[Notice, ...]:
    """Return the notices of everything worked out, in the order of the episodes."""
    found = [*_over_limit(material), *_claims(material), *_unpriced(material)]
    return tuple(sorted(found, key=lambda each: each.episode or 0))


def _over_limit(material: Material) -> Iterator[Notice]:
    """Yield a notice in the episode that brought a figure over its limit, and in no later one."""
    journal = material.journal
    formats = Formats(load_words(journal.language), GLOSSARY, journal.units)
    for as_at in material.figures:
        for each in as_at.figures:
            if isinstance(each, Figure) and each.episode == as_at.episode and _is_over(each):
                text = formats.figure(each)
                of = "" if each.key.subject == "engine" else f" of {each.key.subject}"
                name = GLOSSARY[each.key.quantity].words
                said = f"{name}{of} is {text.sentence}: {text.limit}"
                yield Notice("over-limit", said, each.place, text.limit_detail, as_at.episode)


def _is_over(figure: Figure) -> bool:
    return figure.limit is not None and figure.limit.state is LimitState.OVER


def _claims(material: Material) -> Iterator[Notice]:
    for each in material.claims:
        if each.result is not Result.HOLDS:
            said = f'claim "{each.claim.text}": {each.result}'
            yield Notice("claim", said, each.claim.place, each.why, each.episode)


def _unpriced(material: Material) -> Iterator[Notice]:
    for part_id in material.ledger.tallies[-1].unpriced:
        known = material.states[-1].parts[part_id]
        yield Notice(
            "no-price",
            f"{part_id} was bought, but its price is not given",
            known.part.place,
            "add paid: with the amount and its currency, or came: for a part that cost nothing",
            known.known_in,
        )
