"""The stage: figures of every state, estimated from its inputs, measured where a run holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from hoistbook.authored.records import Journal
from hoistbook.figures.base import Inputs, keyed
from hoistbook.figures.chain import work_out
from hoistbook.figures.figure import Figure, Figures, Key, Missing
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.known_runs import KnownRun, known_runs, up_to
from hoistbook.figures.learning import calibrated
from hoistbook.figures.logged import as_logged, set_up
from hoistbook.figures.map_inputs import with_map
from hoistbook.figures.run_figures import measured_figures
from hoistbook.figures.summary import summed_up
from hoistbook.history.state import State


@lru_cache(maxsize=256)
def estimates(inputs: Inputs) -> tuple[Figure | Missing, ...]:
    """Return the figures that the inputs lead to; equal inputs are worked out once."""
    return summed_up(work_out(inputs))


@lru_cache(maxsize=256)
def estimate(inputs: Inputs, key: Key) -> Figure | Missing | None:
    """Return one of the figures that the inputs lead to, None where the table has none for it."""
    worked = work_out(inputs, only=(keyed(key.quantity, key.subject),))
    return next(iter(summed_up(worked, key)), None)


def figures_of(journal: Journal, states: Sequence[State]) -> tuple[Figures, ...]:
    """Return the figures of each state, in the order of the states."""
    runs = known_runs(journal, states)
    found: list[Figures] = []
    for state in states:
        here = _of_state(state, up_to(runs, state))
        found.append(_since(here, found[-1] if found else None))
    return tuple(found)


def _since(here: Figures, before: Figures | None) -> Figures:
    """Return a state's figures, each with the episode since which it has been as it is.

    The episodes of its inputs do not tell: a part that comes off takes its own with it, and a
    figure that goes back to what it was is not what the episode before said.
    """
    known = {each.key: each for each in before.figures} if before else {}
    dated: list[Figure | Missing] = []
    for each in here.figures:
        old = known.get(each.key)
        same = isinstance(old, Figure) and replace(each, episode=old.episode) == old
        dated.append(replace(each, episode=old.episode if old and same else here.episode))
    return replace(here, figures=tuple(dated))


def informed(state: State, runs: Sequence[KnownRun]) -> Inputs:
    """Return what the figures of a state start from, after all that its runs have told.

    Parameters
    ----------
    state
        The build as at one episode.
    runs
        The runs that it has seen, oldest first.
    """
    return taught(as_logged(state, runs), state, runs)


def taught(inputs: Inputs, state: State, runs: Sequence[KnownRun]) -> Inputs:
    """Return inputs of a state after what runs say of its engine and a map of its compressor."""
    return with_map(calibrated(inputs, state, runs), state)


def _of_state(state: State, runs: Sequence[KnownRun]) -> Figures:
    """Return a state's figures: its estimates, and in their place what a run has measured."""
    measured = _measured(state, runs)
    figures: list[Figure | Missing] = []
    inputs = informed(state, runs)
    for each in estimates(inputs):
        better = measured.pop(each.key.quantity, None) if each.key.subject == "engine" else None
        figures.append(better or each)
    return Figures(episode=state.episode, figures=(*figures, *measured.values()), inputs=inputs)


def _measured(state: State, runs: Sequence[KnownRun]) -> dict[str, Figure]:
    """Return what runs have measured of this very set-up, the latest run of each place."""
    found: dict[str, Figure] = {}
    for run in runs:
        if set_up(inputs_of(run.state)) == set_up(inputs_of(state)):
            found |= measured_figures(run)
    return found
