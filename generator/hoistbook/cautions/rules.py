"""Which page owes which caution: in full where work is described, as a line elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
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
    was_added,
    worked_on,
)
from hoistbook.cautions.texts import CAUTIONS, RULES, Rule
from hoistbook.figures.figure import Figure, Figures
from hoistbook.fit.joins import JoinVerdict
from hoistbook.history.state import State, Status

WAITING = (Status.PLANNED, Status.ORDERED, Status.ON_HAND)
ALWAYS_AT_HOME = ("road-law", "estimates")
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
    held = [*fitted_parts(states[-1]), *map(join_subject, judged[-1])]
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
        f"/episodes/{episode.number}/": owed(
            full=(
                *worked_on(episode, state),
                *(join_subject(each) for each in made if each.episode == episode.number),
            ),
            lines=(*mentioned(episode, state), *estimates_in(here)),
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
            joined.setdefault(part, []).append(join_subject(each))
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
            lines=[Subject(name="", quantity=quantity)],
        )
        for quantity, unsure in sorted(estimated.items())
    }
    every = as_lines(each for page in pages.values() for each in page)
    return {"/workings/": every, "/workings/chain/": every, **pages}


def owed(*, full: Iterable[Subject] = (), lines: Iterable[Subject] = ()) -> tuple[Owed, ...]:
    """Return the cautions that the subjects of a page call for, in the order of the table."""
    worked, named = names_by_caution(full), names_by_caution(lines)
    return tuple(
        Owed(
            caution=caution,
            full=caution.id in worked,
            because=tuple(
                name
                for name in dict.fromkeys(
                    (*worked.get(caution.id, ()), *named.get(caution.id, ()))
                )
                if name
            ),
        )
        for caution in CAUTIONS
        if caution.id in worked or caution.id in named
    )


def names_by_caution(subjects: Iterable[Subject]) -> dict[str, list[str]]:
    """Return for each caution that is called for the names that call for it."""
    found: dict[str, list[str]] = {}
    for subject in subjects:
        for id_, names in called_for(subject):
            found.setdefault(id_, []).extend(names)
    return found


@lru_cache(maxsize=10_000)
def called_for(subject: Subject) -> tuple[tuple[str, list[str]], ...]:
    """Return the cautions that one subject calls for; a part stands on many pages."""
    by_rule = ((rule.caution.id, called_by(rule, subject)) for rule in RULES)
    return tuple((id_, names) for id_, names in by_rule if names)


def called_by(rule: Rule, subject: Subject) -> list[str]:
    """Return the names by which a subject calls for a caution; none when it does not."""
    direct = (
        subject.system in rule.systems
        or (subject.fitted and subject.system in rule.fitted_systems)
        or subject.kind in rule.kinds
        or subject.quantity in rule.quantities
        or subject.measured in rule.measured
        or subject.verdict in rule.verdicts
        or (subject.estimated and "estimated" in rule.evidence)
    )
    if direct:
        return [subject.name]
    found = [
        str(word)
        for pattern, text in ((rule.words, subject.words), (rule.work, subject.work))
        if pattern is not None
        for word in pattern.findall(text)
    ]
    return [subject.name] if found and subject.name else found


def as_lines(several: Iterable[Owed]) -> tuple[Owed, ...]:
    """Return cautions of several pages as lines for one that only mentions their work."""
    merged: dict[str, Owed] = {}
    for each in several:
        before = merged.get(each.caution.id, replace(each, because=()))
        names = tuple(dict.fromkeys((*before.because, *each.because)))
        merged[each.caution.id] = replace(each, full=False, because=names)
    return tuple(merged[each.id] for each in CAUTIONS if each.id in merged)
