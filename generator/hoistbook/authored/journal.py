"""Reading a whole journal: build.yaml first, then every episode, then what ties them together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path

from hoistbook.authored.build_file import BuildFile, habits_by_look, read_build, read_habits
from hoistbook.authored.context import Context
from hoistbook.authored.episode_file import EpisodeFile, read_episode
from hoistbook.authored.folder import BUILD_FILE, episode_files, near_name, read_text
from hoistbook.authored.front_matter import parse_front_matter
from hoistbook.authored.joins import Known, known_in, resolve
from hoistbook.authored.prose_links import astray
from hoistbook.authored.rates import read_rates
from hoistbook.authored.records import Episode, Journal, Log, Rate
from hoistbook.problems import Notice, Place, Problem


@dataclass(frozen=True, slots=True)
class Read:
    """What reading a journal gave: the records, or what is wrong; all files at once."""

    journal: Journal | None
    """None when there are problems."""
    problems: tuple[Problem, ...]
    """By file, line and column."""
    notices: tuple[Notice, ...]


def read_journal(folder: Path) -> Read:
    """Read a journal.

    Parameters
    ----------
    folder
        The folder that holds build.yaml.
    """
    context = Context(folder, BUILD_FILE)
    build = _build(context)
    files, notices = episode_files(folder)
    context.notices.extend(notices)
    if not files:
        near = near_name(folder, "episodes", ("episode",))
        hint = f"rename {near} to episodes" if near else FIRST_EPISODE
        context.problem("no-episode", "this journal has no episode", Place(BUILD_FILE), hint)
    episodes = [each for file in files if (each := _episode(file, context)) is not None]
    _numbers_are_unique(episodes, context)
    context.notices.extend(_days_out_of_order([each.episode for each in episodes]))
    context.notices.extend(_days_of_one(each.episode for each in episodes))
    rates = read_rates(folder, context.currency)
    context.problems.extend(rates.problems)
    if build is not None and not context.problems:
        # What a join or link names may stand in a line that could not be read: so they wait.
        every = [each.episode for each in episodes]
        known = known_in([build.start, *every])
        joined = _joined(known, episodes)
        context.problems.extend(astray(every, known.ends))
        if not context.problems:
            return Read(_journal(build, joined, rates.rates), (), tuple(context.notices))
    told = (each for each in context.problems if context.numbers_known or not _of_a_comma(each))
    return Read(None, tuple(_in_order(told)), tuple(context.notices))


def _of_a_comma(problem: Problem) -> bool:
    """Tell whether a problem is there only because nobody knows what a comma means."""
    return problem.code in ("two-readings", "decimal-mark")


MOST_PROBLEMS = 50
"""Of one file; a file of another kind would have one on every line."""


def _in_order(problems: Iterable[Problem]) -> Iterator[Problem]:
    """Yield problems by file, line and column, of each file no more than a person will read."""
    for _, of_file in groupby(sorted(problems, key=_order), key=lambda each: _order(each)[0]):
        every = list(of_file)
        yield from every[:MOST_PROBLEMS]
        if len(every) > MOST_PROBLEMS:
            message = f"{len(every) - MOST_PROBLEMS} more problems stand in this file"
            place = every[MOST_PROBLEMS].place
            yield Problem("more-problems", message, place, "put these right first")


def _build(context: Context) -> BuildFile | None:
    text, problems = read_text(context.root, BUILD_FILE)
    context.problems.extend(replace(each, hint=_no_build(each, context)) for each in problems)
    if text is None or problems:
        context.numbers_known = False
        return None
    node, found = parse_front_matter(text, BUILD_FILE)
    context.problems.extend(found)
    if node is None:
        habits_by_look(text, context)
        if not found:
            hint = "begin with `format: 1` and `title: ...`"
            context.problem("empty-file", "this file is empty", Place(BUILD_FILE), hint)
        return None
    read_habits(node, context)
    return read_build(node, context)


FIRST_EPISODE = "begin with episodes/01-some-words/episode.md"


def _no_build(problem: Problem, context: Context) -> str:
    """Return what to do about a build.yaml that is not there."""
    if problem.code != "missing-file":
        return problem.hint
    near = near_name(context.root, BUILD_FILE, ("build.yml",))
    if near:
        return f"rename {near} to {BUILD_FILE}"
    above = [
        folder for folder in context.root.resolve().parents if (folder / BUILD_FILE).is_file()
    ]
    if above:
        return f"name the folder that holds it: {above[0].name}"
    return "name the folder that holds it, or begin one with `format: 1` and `title: ...` in it"


def _episode(file: str, shared: Context) -> EpisodeFile | None:
    context = Context(
        shared.root, file, shared.numbers, shared.currency, None, shared.problems, shared.notices
    )
    text, problems = read_text(context.root, file)
    context.problems.extend(problems)
    return None if text is None or problems else read_episode(text, context)


def _numbers_are_unique(episodes: list[EpisodeFile], context: Context) -> None:
    first: dict[int, str] = {}
    for each in episodes:
        episode = each.episode
        if episode.number in first:
            context.problem(
                "duplicate-episode",
                f"episode {episode.number} is here for the second time, first in "
                f"{first[episode.number]}",
                episode.place,
                "give one of the two another number; a published number stays as it is",
            )
        first.setdefault(episode.number, episode.file)


def _days_out_of_order(episodes: Iterable[Episode]) -> Iterator[Notice]:
    """Yield a notice for each episode that is of an earlier day than one with a lower number."""
    latest: Episode | None = None
    for each in sorted(episodes, key=lambda episode: episode.number):
        if each.filmed is None:
            continue
        if latest is not None and latest.filmed is not None and each.filmed < latest.filmed:
            yield Notice(
                "out-of-order",
                f"episode {each.number} was filmed on {each.filmed}, and episode "
                f"{latest.number} before it on {latest.filmed}",
                each.place,
                "look at both dates; the state of the car follows the numbers, not the days",
                each.number,
            )
        else:
            latest = each


def _days_of_one(episodes: Iterable[Episode]) -> Iterator[Notice]:
    """Yield a notice for each day of an episode that cannot be right beside another of it."""
    for each in episodes:
        if each.published is None:
            continue
        if each.filmed is not None and each.published < each.filmed:
            message = (
                f"episode {each.number} was published on {each.published}, before it was filmed "
                f"on {each.filmed}"
            )
            hint = "look at both dates"
            yield Notice("out-of-order", message, each.place, hint, each.number)
        for receipt in each.bought:
            if receipt.date > each.published:
                message = (
                    f"the receipt from {receipt.supplier} is of {receipt.date}, and its episode "
                    f"was published on {each.published}"
                )
                hint = "look at both dates, or move it to a later episode"
                yield Notice("out-of-order", message, receipt.place, hint, each.number)


def _joined(known: Known, episodes: list[EpisodeFile]) -> list[EpisodeFile]:
    """Resolve every join, now that all parts are known."""
    found = []
    for each in episodes:
        joins = (resolve(line, known, each.context) for line in each.joins)
        episode = replace(each.episode, joins=tuple(join for join in joins if join is not None))
        found.append(replace(each, episode=episode))
    return found


def _journal(build: BuildFile, episodes: list[EpisodeFile], rates: tuple[Rate, ...]) -> Journal:
    in_order = sorted(episodes, key=lambda each: each.episode.number)
    pictures: dict[str, tuple[int, int]] = {}
    logs: dict[str, Log] = {}
    for each in in_order:
        pictures |= each.pictures
        logs |= each.logs
    return Journal(
        **build.journal,
        episodes=tuple(each.episode for each in in_order),
        start=build.start,
        pictures=dict(sorted(pictures.items())),
        logs=logs,
        rates=rates,
    )


def _order(problem: Problem) -> tuple[str, int, int, str]:
    place = problem.place or Place("")
    return place.file, place.line, place.column, problem.code
