"""READ THIS FIRST: the stages in their order, from a folder of episodes to a written site.

Each stage is a pure function of frozen records; only reading, at the beginning, and writing, at
the end, touch the disk. A mistake in the record stops the line where it is met; what the record
says about the car never does.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path

from hoistbook.authored.journal import read_journal
from hoistbook.authored.rates import FoundRates, write_rates
from hoistbook.authored.records import Episode, Journal, PowerRun
from hoistbook.cautions.rules import owed_by_page
from hoistbook.cautions.texts import CAUTIONS
from hoistbook.compare.claims import claim_verdicts
from hoistbook.compare.expected import comparisons
from hoistbook.figures.service import judged_joins
from hoistbook.figures.stage import figures_of
from hoistbook.history.differences import differences
from hoistbook.history.fates import fates
from hoistbook.history.fold import fold
from hoistbook.history.money import ledger, missing_rates
from hoistbook.notices import notices_of
from hoistbook.pages.page import Material
from hoistbook.problems import Notice, Problem
from hoistbook.publish.cache import NO_CACHE, Cache
from hoistbook.publish.tree import site_tree

Tell = Callable[[str], None]
"""Is told which stage is being worked on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """What comes of a folder; material and tree are None where a problem stopped the line."""

    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...] = ()
    material: Material | None = None
    tree: dict[str, bytes] | None = None
    """The whole site, path by path."""


def silent(_: str) -> None:
    """Tell nobody."""


def build(
    folder: Path, *, unpublished: bool = False, cache: Cache = NO_CACHE, tell: Tell = silent
) -> Built:
    """Return the whole site of a journal, in memory.

    Parameters
    ----------
    folder : Path
        The journal's folder.
    unpublished : bool
        Whether episodes whose video is not up yet are part of it.
    cache : Cache
        Where what takes long is kept.
    tell : callable
        Is told which stage is being worked on.
    """
    worked = work_out(folder, unpublished=unpublished, tell=tell)
    if worked.material is None:
        return worked
    tell("laying out the pages")
    tree, problems = site_tree(worked.material, folder, cache)
    return replace(worked, problems=problems, tree=None if problems else tree)


def work_out(folder: Path, *, unpublished: bool = False, tell: Tell = silent) -> Built:
    """Return everything that is worked out from a journal, without laying it out."""
    tell("reading the journal")
    read = read_journal(folder)
    if read.journal is None or read.problems:
        return Built(problems=read.problems, notices=read.notices)
    journal = read.journal if unpublished else published(read.journal)

    tell("going through the episodes")
    folded = fold(journal)
    states = folded.states
    reckoned = ledger(journal, states)
    problems = (*folded.problems, *reckoned.problems)
    if problems:
        return Built(problems=problems, notices=read.notices)

    tell("working out the figures")
    figures = figures_of(journal, states)
    claims = claim_verdicts(journal, states, figures)
    joins = tuple(judged_joins(state, here) for state, here in zip(states, figures, strict=True))
    material = Material(
        journal=journal,
        episodes=journal.episodes,
        states=states,
        changes=((), *(differences(before, after) for before, after in pairwise(states))),
        fates=fates(states),
        ledger=reckoned.ledger,
        figures=figures,
        claims=claims,
        comparisons=comparisons(journal, states, figures),
        cautions=CAUTIONS,
        owed=owed_by_page(journal, states, figures, joins),
        joins=joins,
    )
    left_out = (_left_out(each) for each in read.journal.episodes if each not in journal.episodes)
    notices = (*read.notices, *reckoned.notices, *notices_of(material), *left_out)
    return Built(problems=(), notices=tuple(sorted(notices, key=_by_line)), material=material)


def _left_out(episode: Episode) -> Notice:
    """Return the notice of an episode that the public site does not have yet."""
    return Notice(
        "not-published",
        f"episode {episode.number} is not published yet: the site is written without it",
        episode.place,
        "add `published:` with the day, as 2026-03-06, once its video is up; "
        "`hoistbook watch` shows it until then",
        episode.number,
    )


def _by_line(notice: Notice) -> tuple[str, int]:
    return (notice.place.file, notice.place.line) if notice.place else ("", 0)


def check(folder: Path, *, tell: Tell = silent) -> Built:
    """Return what a journal comes to with its unpublished episodes, and what is wrong without."""
    built = build(folder, unpublished=True, tell=tell)
    if built.material is None or published(built.material.journal) == built.material.journal:
        return built
    public = work_out(folder, tell=tell)
    return replace(
        built,
        problems=tuple(dict.fromkeys((*built.problems, *public.problems))),
        notices=tuple(dict.fromkeys((*built.notices, *public.notices))),
    )


def published(journal: Journal) -> Journal:
    """Return the journal as if its unpublished episodes had not been written."""
    kept = tuple(each for each in journal.episodes if each.published is not None)
    runs = {run.log for each in kept for run in each.measured if isinstance(run, PowerRun)}
    logs = {path: log for path, log in journal.logs.items() if path in runs}
    return replace(journal, episodes=kept, logs=logs)


def fill_rates(folder: Path) -> FoundRates:
    """Write the exchange rates that a journal needs and does not carry yet into its rates.csv."""
    read = read_journal(folder)
    if read.journal is None or read.problems:
        return FoundRates(rates=(), problems=read.problems)
    found = missing_rates(read.journal)
    write_rates(folder, found.rates)
    return found
