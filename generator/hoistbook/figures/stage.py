"""The stage: figures of every state, estimated from its inputs, measured where a run holds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from hoistbook.authored.records import Journal, PowerRun
from hoistbook.figures.base import Inputs
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Figure, Figures, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.power_runs import measured_figures
from hoistbook.figures.summary import summed_up
from hoistbook.history.state import Dated, State

AIR = ("air_pressure", "air_temperature", "relative_humidity")


@lru_cache(maxsize=256)
def estimates(inputs: Inputs) -> tuple[Figure | Missing, ...]:
    """Return the figures that the inputs lead to; equal inputs are worked out once."""
    return summed_up(work_out(inputs))


def figures_of(journal: Journal, states: Sequence[State]) -> tuple[Figures, ...]:
    """Return the figures of each state, in the order of the states."""
    by_episode = {state.episode: state for state in states}
    return tuple(_of_state(journal, state, by_episode) for state in states)


def _of_state(journal: Journal, state: State, by_episode: Mapping[int, State]) -> Figures:
    """Return a state's figures: its estimates, and in their place what a run has measured."""
    estimated = estimates(inputs_of(state))
    measured = _measured(journal, state, by_episode)
    figures: list[Figure | Missing] = []
    for each in estimated:
        better = measured.pop(each.key.quantity, None) if each.key.subject == "engine" else None
        if better is not None:
            figures.append(better)
        elif isinstance(each, Missing):
            figures.append(replace(each, episode=state.episode))
        else:
            figures.append(each)
    return Figures(episode=state.episode, figures=(*figures, *measured.values()))


def _measured(
    journal: Journal, state: State, by_episode: Mapping[int, State]
) -> dict[str, Figure]:
    """Return what runs have measured of this very set-up, the latest run of each place."""
    found: dict[str, Figure] = {}
    for dated in state.runs:
        log = journal.logs.get(dated.value.log)
        if log is not None and holds_for(dated, state, by_episode):
            found |= measured_figures(dated.value, log, dated.episode)
    return found


def holds_for(run: Dated[PowerRun], state: State, by_episode: Mapping[int, State]) -> bool:
    """Return whether what a run measured still holds: nothing that its power rests on changed."""
    of_run = state_of(run, by_episode)
    return of_run is not None and _set_up(inputs_of(of_run)) == _set_up(inputs_of(state))


def state_of(run: Dated[PowerRun], by_episode: Mapping[int, State]) -> State | None:
    """Return the state that a run measured: that of its episode, or of the one before."""
    if not run.value.before_work:
        return by_episode.get(run.episode)
    earlier = [number for number in by_episode if number < run.episode]
    return by_episode[max(earlier)] if earlier else None


def _set_up(inputs: Inputs) -> tuple[tuple[str, object], ...]:
    """Return what of the inputs makes the power of an engine, without the air of the day."""
    powers = (each for each in estimates(inputs) if each.key.quantity == "power")
    rests_on = {
        each.name for power in powers if isinstance(power, Figure) for each in power.budget
    }
    return tuple(
        (base.key, base.value)
        for base in inputs.bases
        if base.name not in AIR and (not rests_on or base.name in rests_on)
    )
