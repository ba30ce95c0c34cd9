"""Expected and got: what was said of a power run, what the model makes of its day, what it gave.

All three stand in the same place. A run at the wheels is held against the estimate at the wheels,
which carries the loss on the way there as an uncertain input; a measured number is not converted.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from hoistbook.authored.records import Journal, PowerRun
from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.base import Inputs
from hoistbook.figures.figure import Curve, Figure, Figures, Key
from hoistbook.figures.known_runs import KnownRun, at_the_run, known_runs
from hoistbook.figures.power_runs import curve_of, place_of
from hoistbook.figures.run_figures import held_back
from hoistbook.figures.stage import estimate, informed, taught
from hoistbook.history.state import State

COMPARED_EVERY = 500.0
"""Engine speeds at which an estimate is held against a run, 1/min."""


def comparisons(
    journal: Journal, states: Sequence[State], figures: Sequence[Figures]
) -> tuple[Comparison, ...]:
    """Return expected and got for every power run whose log gives a power, oldest first."""
    runs = known_runs(journal, states)
    return tuple(
        _compared(run, [each for each in runs[:number] if each is not None])
        for number, run in enumerate(runs)
        if run is not None
    )


def _compared(known: KnownRun, before: Sequence[KnownRun]) -> Comparison:
    """Return one run's comparison; the estimate knows the runs before it and not this one."""
    run = known.run
    measured = curve_of(run, known.power)
    said_then, why_none = _estimate(run, informed(known.state, before))
    then = taught(at_the_run(known), known.state, before)
    on_the_day = _estimate(run, then)[0] if then.speeds else None
    speeds, inside = _inside(measured, said_then or on_the_day, known.held_back)
    return Comparison(
        episode=known.episode,
        run=run,
        measured=measured,
        said_then=said_then,
        same_conditions=on_the_day,
        inside=inside,
        out_of=len(speeds),
        why_none=why_none,
        compared=speeds,
        referred=known.referred,
        boost_slip=known.boost_slip,
        held_back=held_back(known),
    )


def _estimate(run: PowerRun, inputs: Inputs) -> tuple[Curve | None, str]:
    """Return the estimated power in the place of the run, or why there is none."""
    quantity = "power" if place_of(run) == "crank" else "wheel_power"
    found = estimate(inputs, Key(quantity))
    if isinstance(found, Figure):
        return found.curve, ""
    give = f": give {'; '.join(found.give)}" if found else ""
    return None, f"Nothing was estimated{give}."


def _inside(
    measured: Curve, estimate: Curve | None, aside: Collection[float]
) -> tuple[tuple[float, ...], int]:
    """Return the compared speeds, and at how many of them the measured power is in the band.

    Of an estimate at full load nothing is compared at the speeds aside, those of part load.
    """
    if estimate is None:
        return (), 0
    band = dict(zip(estimate.speeds, zip(estimate.low, estimate.high, strict=True), strict=True))
    power = dict(zip(measured.speeds, measured.values, strict=True))
    full = [each for each in measured.speeds if each not in aside]
    speeds = tuple(each for each in full if each in band and each % COMPARED_EVERY == 0)
    inside = [band[speed][0] <= power[speed] <= band[speed][1] for speed in speeds]
    return speeds, sum(inside)
