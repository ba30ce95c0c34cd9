"""Which page owes which caution: in full where work is described, as a line elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from hoistbook.authored.records import Journal
from hoistbook.cautions.caution import Owed
from hoistbook.cautions.subjects import (
    UNSURE,
    Subject,
    estimated_subjects,
    estimates_in,
    fitted_parts,
    join_subject,
    mentioned,
    part_subject,
    quantity_subject,
    was_added,
    worked_on,
)
from hoistbook.cautions.texts import CAUTIONS, RULES, Rule, terms_in
from hoistbook.figures.figure import Figure, Figures
from hoistbook.fit.joins import JoinVerdict
from hoistbook.history.state import State, Status

WAITING = (Status.PLANNED, Status.ORDERED, Status.ON_HAND)
ESTIMATES = "estimates"
"""The caution that every page with an estimate owes."""
ALWAYS_AT_HOME = ("road-law", ESTIMATES)
"""What the first page says whatever the latest episode was about."""


def owed_by_page(
    journal: Journal,
    states: Sequence[State],
    figures: Sequence[Figures],
    joins: Sequence[Sequence[JoinVerdict]] = (),
) -> dict[str, tuple[Owed, ...]]:
    """Return the cautions that every page owes, by the page's address.

    Parameters
    ----------
    journal
        All that was read.
    states
        One per episode, the car as bought first.
    figures
        One per state.
    joins
        The joins of every state, judged; one per state.
    """
    judged = joins or [()] * len(states)
    held = [*fitted_parts(states[-1]), *(join_subject(each, states[-1]) for each in judged[-1])]
    pages = {
        "/tally/": (),
        "/cautions/": tuple(Owed(caution=each, full=True, because=()) for each in CAUTIONS),
        "/circuits/": owed(lines=held),
        "/circuits/bench/": owed(lines=held),
        **owed_by_episodes(journal, states, figures, judged),
        **owed_by_parts(states[-1], judged[-1], figures[-1]),
        **owed_by_specs(states, figures),
        **owed_by_workings(figures),
    }
    episodes = [pages[f"/episodes/{episode.number}/"] for episode in journal.episodes]
    pages["/changes/"] = as_lines(each for page in episodes for each in page)
    always = (
        Owed(caution=each, full=False, because=())
        for each in CAUTIONS
        if each.id in ALWAYS_AT_HOME
    )
    pages["/"] = as_lines((*(episodes[-1] if episodes else ()), *always))
    return pages


def owed_by_episodes(
    journal: Journal,
    states: Sequence[State],
    figures: Sequence[Figures],
    joins: Sequence[Sequence[JoinVerdict]],
) -> dict[str, tuple[Owed, ...]]:
    """Return what the pages of the episodes owe: in full what their work calls for."""
    return {
        f"/episodes/{episode.number}/": ahead(
            owed(
                full=(
                    *worked_on(episode, state),
                    *(
                        join_subject(each, state)
                        for each in made
                        if each.episode == episode.number
                    ),
                ),
                lines=(*mentioned(episode, state), *estimates_in(here)),
            )
        )
        for episode, state, here, made in zip(
            journal.episodes, states[1:], figures[1:], joins[1:], strict=True
        )
    }


def owed_by_parts(
    last: State, joins: Iterable[JoinVerdict], figures: Figures
) -> dict[str, tuple[Owed, ...]]:
    """Return what the page of each part, the list of parts and the next steps owe."""
    subjects = {
        id_: part_subject(each.part, fitted=was_added(each)) for id_, each in last.parts.items()
    }
    joined: dict[str, list[Subject]] = {}
    for each in joins:
        for part in {each.join.a.part: None, each.join.b.part: None}:
            joined.setdefault(part, []).append(join_subject(each, last))
    for id_ in estimated_subjects(figures):
        joined.setdefault(id_, []).append(Subject(name="", estimated=True))
    waiting = [subjects[id_] for id_, each in last.parts.items() if each.status in WAITING]
    return {
        "/parts/": owed(lines=(*subjects.values(), *estimates_in(figures))),
        "/next/": owed(lines=waiting),
        **{
            f"/parts/{id_}/": owed(lines=[subject, *joined.get(id_, ())])
            for id_, subject in subjects.items()
        },
    }


def owed_by_specs(
    states: Sequence[State], figures: Sequence[Figures]
) -> dict[str, tuple[Owed, ...]]:
    """Return what the spec sheets owe, as at the last episode and as at every one."""
    sheets = {
        f"/spec/{state.episode}/": owed(lines=(*fitted_parts(state), *estimates_in(here)))
        for state, here in zip(states, figures, strict=True)
    }
    return {"/spec/": sheets[f"/spec/{states[-1].episode}/"], **sheets}


def owed_by_workings(figures: Sequence[Figures]) -> dict[str, tuple[Owed, ...]]:
    """Return what the workings of each quantity owe; they say in full what an estimate is."""
    estimated: dict[str, bool] = {}
    for here in figures:
        for each in here.figures:
            unsure = isinstance(each, Figure) and each.evidence in UNSURE
            quantity = each.key.quantity
            estimated[quantity] = estimated.get(quantity, False) or unsure
    pages = {
        f"/workings/{quantity}/": owed(
            full=[Subject(name="", estimated=unsure)],
            lines=[quantity_subject(quantity)],
        )
        for quantity, unsure in sorted(estimated.items())
    }
    every = as_lines(each for page in pages.values() for each in page)
    sheets = [f"/workings/chain/{name}" for name in ("", "pipes/", "beside/")]
    return {"/workings/": every, "/claims/": every, **dict.fromkeys(sheets, every), **pages}


def owed(*, full: Iterable[Subject] = (), lines: Iterable[Subject] = ()) -> tuple[Owed, ...]:
    """Return the cautions that the subjects of a page call for, in the order of the table."""
    worked, named = reasons_by_caution(full), reasons_by_caution(lines)
    return tuple(
        Owed(
            caution=caution,
            full=caution.id in worked,
            because=(worked if caution.id in worked else named)[caution.id].names,
        )
        for caution in CAUTIONS
        if caution.id in worked or caution.id in named
    )


def ahead(several: Iterable[Owed]) -> tuple[Owed, ...]:
    """Return the cautions of a page that describes work, which stand as lines before it too."""
    return tuple(replace(each, ahead=each.full) for each in several)


@dataclass(slots=True)
class Reasons:
    """What calls for one caution on a page."""

    fields: list[str] = field(default_factory=list)
    """Names of parts and lines of work."""
    prose: list[str] = field(default_factory=list)
    """Words of the prose."""

    @property
    def names(self) -> tuple[str, ...]:
        """What is printed: words of the prose only where no field calls for it."""
        return tuple(dict.fromkeys(self.fields or self.prose))


def reasons_by_caution(subjects: Iterable[Subject]) -> dict[str, Reasons]:
    """Return for each caution that is called for what calls for it."""
    found: dict[str, Reasons] = {}
    for subject in subjects:
        for id_, terms in called_for(subject):
            reasons = found.setdefault(id_, Reasons())
            if subject.name:
                reasons.fields.append(subject.name)
            else:
                reasons.prose.extend(terms)
    return found


@lru_cache(maxsize=10_000)
def called_for(subject: Subject) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return the cautions that a subject calls for, and by which terms; it is on many pages."""
    by_rule = (
        (rule.caution.id, called_directly(rule, subject), terms_of(rule, subject))
        for rule in RULES
    )
    return tuple((id_, terms) for id_, directly, terms in by_rule if directly or terms)


def called_directly(rule: Rule, subject: Subject) -> bool:
    """Tell whether a subject calls for a caution by what it is, whatever it is called."""
    return (
        subject.system in rule.systems
        or (subject.fitted and subject.system in rule.fitted_systems)
        or subject.kind in rule.kinds
        or subject.quantity in rule.quantities
        or not subject.topics.isdisjoint(rule.topics)
        or subject.measured in rule.measured
        or subject.verdict in rule.verdicts
        or (subject.estimated and "estimated" in rule.evidence)
    )


def terms_of(rule: Rule, subject: Subject) -> tuple[str, ...]:
    """Return the terms by which the words of a subject call for a caution."""
    return (
        *terms_in(rule.words, subject.words),
        *terms_in(rule.work, subject.work),
        *terms_in(rule.told, subject.told or subject.work),
    )


def as_lines(several: Iterable[Owed]) -> tuple[Owed, ...]:
    """Return cautions of several pages as lines for one that only mentions their work."""
    merged: dict[str, Owed] = {}
    for each in several:
        before = merged.get(each.caution.id, replace(each, because=()))
        names = tuple(dict.fromkeys((*before.because, *each.because)))
        merged[each.caution.id] = replace(each, full=False, ahead=False, because=names)
    return tuple(merged[each.id] for each in CAUTIONS if each.id in merged)
