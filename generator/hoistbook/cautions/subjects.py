"""What stands on a page that may call for a caution: parts, work, settings, figures."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hoistbook.authored.records import BoostBySpeed, Episode, Given, Part, PowerRun, Verb
from hoistbook.engineering import FORMULAS
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.figure import Figure, Figures
from hoistbook.fit.joins import JoinVerdict
from hoistbook.history.state import PartState, State, Status
from hoistbook.history.words import value_words
from hoistbook.values.evidence import Evidence

WORKED_ON = (Verb.FITTED, Verb.TOOK_OFF, Verb.TRIED, Verb.BROKE)
"""What is done with tools in hand; the other verbs only mention a part."""

UNSURE = (Evidence.ESTIMATED, Evidence.ASSUMED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """One thing on a page, with what the rules look at."""

    name: str
    """As the page prints it; empty for prose, where the word that was found stands for it."""
    words: str = ""
    """Where the names of things are looked for."""
    work: str = ""
    """Where every word of work is looked for."""
    told: str = ""
    """Where words of work are looked for that tell of it even in prose, where `work` is empty."""
    system: str | None = None
    kind: str | None = None
    fitted: bool = False
    """Whether it is a part that was fitted to the car as bought."""
    quantity: str | None = None
    topics: frozenset[str] = frozenset()
    """Of a quantity: the modules of the formulas that work it out."""
    measured: str | None = None
    estimated: bool = False
    verdict: str | None = None
    """Of a join."""


def part_subject(part: Part, *, fitted: bool = False) -> Subject:
    """Return a part as something that may call for cautions."""
    return Subject(
        name=part.name, words=part.name, system=part.system, kind=part.kind, fitted=fitted
    )


def join_subject(judged: JoinVerdict, state: State) -> Subject:
    """Return a join of a state as something that may call for cautions by its verdict."""
    ends = (judged.join.a, judged.join.b)
    names = (f"{state.parts[each.part].part.name} {each.end}" for each in ends)
    return Subject(name=" to ".join(names), verdict=judged.fit.verdict)


def work_subject(what: str) -> Subject:
    """Return a line about work as something that may call for cautions."""
    return Subject(name=what, words=what, work=what)


def told_subject(prose: str) -> Subject:
    """Return prose about work; what it only names stands in `named_subject`."""
    return Subject(name="", told=prose)


def named_subject(prose: str) -> Subject:
    """Return prose as something that names things and work, done or not."""
    return Subject(name="", words=prose, work=prose)


def quantity_subject(quantity: str) -> Subject:
    """Return a quantity that is worked out as something that may call for cautions."""
    formulas = (row.formula for row in CATALOGUE if row.quantity == quantity)
    modules = (FORMULAS[each].function.__module__ for each in formulas)
    return Subject(
        name="",
        quantity=quantity,
        topics=frozenset(module.rpartition(".")[2] for module in modules),
    )


def worked_on(episode: Episode, state: State) -> Iterator[Subject]:
    """Yield what was worked on in an episode, by its lines and by its prose."""
    for done in episode.done:
        if done.verb in WORKED_ON and done.part in state.parts:
            yield part_subject(state.parts[done.part].part, fitted=done.verb is Verb.FITTED)
    for made in episode.made:
        yield part_subject(made)
        yield work_subject(made.name)
    for join in episode.joins:
        for end in (join.a, join.b):
            yield part_subject(state.parts[end.part].part)
    yield from (work_subject(work.what) for work in episode.work)
    yield from (work_subject(chapter.title) for chapter in episode.chapters)
    yield from (work_subject(spent.what) for spent in episode.spent)
    for measured in episode.measured:
        if isinstance(measured, PowerRun):
            yield Subject(name="power run", measured="power run")
        else:
            yield work_subject(measured.what)
    if "fuel" in episode.settings:
        yield fuel_subject(episode.settings["fuel"])
    yield from map(told_subject, prose_of(episode))


def mentioned(episode: Episode, state: State) -> Iterator[Subject]:
    """Yield what an episode only mentions: what was bought, planned or sold; its fuel."""
    yield from (part_subject(part) for receipt in episode.bought for part in receipt.parts)
    yield from (part_subject(part) for part in episode.got)
    for done in episode.done:
        if done.part in state.parts:
            yield part_subject(state.parts[done.part].part)
    yield from fuel_in(state)
    yield from map(named_subject, prose_of(episode))


def prose_of(episode: Episode) -> Iterator[str]:
    """Yield what is told in free words: the prose, and the notes beside fields."""
    noted = (*episode.made, *episode.measured)
    yield from (each.note for each in noted if each.note)
    yield episode.prose


def fitted_parts(state: State) -> Iterator[Subject]:
    """Yield the parts on the car, and the fuel in its tank."""
    for each in state.parts.values():
        if each.status is Status.FITTED:
            yield part_subject(each.part, fitted=was_added(each))
    yield from fuel_in(state)


def was_added(part: PartState) -> bool:
    """Tell whether a part on the car is not one that the car was bought with."""
    return bool(part.fitted_in)


def fuel_in(state: State) -> Iterator[Subject]:
    """Yield the fuel that the car runs on."""
    if "fuel" in state.settings:
        yield fuel_subject(state.settings["fuel"].value)


def fuel_subject(fuel: Given | BoostBySpeed) -> Subject:
    """Return the setting of the fuel as something that may call for cautions."""
    words = value_words(fuel)
    return Subject(name=words, words=words)


def estimates_in(figures: Figures) -> Iterator[Subject]:
    """Yield one subject if any of the figures is not measured."""
    if estimated_subjects(figures):
        yield Subject(name="", estimated=True)


def estimated_subjects(figures: Figures) -> tuple[str, ...]:
    """Return what the figures that are not measured are of: the engine, parts by their ids."""
    unsure = (
        each.key.subject
        for each in figures.figures
        if isinstance(each, Figure) and each.evidence in UNSURE
    )
    return tuple(dict.fromkeys(unsure))
