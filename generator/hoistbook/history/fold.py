"""The events of all episodes, folded into one frozen state of the build per episode."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.authored.records import Done, Episode, Join, JoinEnd, Journal, Reading
from hoistbook.history.bench import Bench
from hoistbook.history.checks import checks
from hoistbook.history.coming import come_in, make
from hoistbook.history.deeds import do
from hoistbook.history.events import CarSet, Event, PartCame, PartMade, SettingSet, events
from hoistbook.history.known import all_episodes, first_written
from hoistbook.history.state import Dated, State, Status
from hoistbook.problems import Place, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """The states of a build and the contradictions met on the way."""

    states: tuple[State, ...]
    """One per episode; `states[0]` is the car as bought."""
    problems: tuple[Problem, ...]


def fold(journal: Journal) -> Folded:
    """Return the state of the build as at every episode.

    Parameters
    ----------
    journal
        All that was read, episodes in order of their numbers.

    Returns
    -------
    Folded
        The states, the car as bought first, and every contradiction, in the order of the
        episodes. After a contradiction the line that makes it is left out of account, so that
        one mistake brings one problem.
    """
    written = first_written(journal)
    bench = Bench(written=written)
    states = [bench_after(bench, episode).frozen() for episode in all_episodes(journal)]
    return Folded(states=tuple(states), problems=(*bench.problems, *checks(journal, written)))


def bench_after(bench: Bench, episode: Episode) -> Bench:
    """Work through one episode."""
    bench.episode = episode.number
    for event in events(episode):
        happen(bench, event)
    return bench


def happen(bench: Bench, event: Event) -> None:
    """Let one thing happen to the build."""
    match event:
        case CarSet(key, value):
            bench.car[key] = Dated(value=value, episode=bench.episode)
        case SettingSet(key, setting):
            bench.settings[key] = Dated(value=setting, episode=bench.episode)
        case PartCame(part):
            on_the_car = bench.episode == 0
            come_in(bench, part, Status.FITTED if on_the_car else Status.ON_HAND)
        case PartMade(part):
            make(bench, part)
        case Done():
            do(bench, event)
        case Join():
            join(bench, event)
        case Reading():
            bench.readings.append(Dated(value=event, episode=bench.episode))
        case _:
            bench.runs.append(Dated(value=event, episode=bench.episode))


def join(bench: Bench, made: Join) -> None:
    """Put two ends together, parting what held them before."""
    ends = (made.a, made.b)
    joinable = [can_be_joined(bench, end, made.place) for end in ends]
    if not all(joinable):
        return
    for end in ends:
        bench.parts[end.part] = bench.come(bench.parts[end.part])
        bench.make_room(end)
    bench.joins.append(Dated(value=made, episode=bench.episode))


def can_be_joined(bench: Bench, end: JoinEnd, place: Place) -> bool:
    """Tell whether an end can be joined in this episode, and put down why not."""
    state = bench.find(end.part, place)
    if state is None:
        return False
    if state.status is Status.GONE:
        bench.problem(
            "gone-before",
            f"`{end.part}` was {state.how_gone} in episode {state.since} and cannot be joined in "
            f"episode {bench.episode}",
            place,
            "if it came back, or this is another one, write it down under `got` with an id of its "
            "own",
        )
        return False
    if state.status is Status.PLANNED:
        bench.problem(
            "not-here-yet",
            f"`{end.part}` is only planned and cannot be joined",
            place,
            "write down how it came, under `bought` or `got`",
        )
        return False
    return True
