"""Power standards applied to a run and taken out of it: what a log printed, what was observed.

What the estimates are held against is always the power as observed, in the air of the run. What a
page prints is that power, or the same referred to the standard that the journal has chosen. A
boosted run whose boost makes up for the air is referred to none, and it is said why.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hoistbook.authored.records import Given, PowerRun
from hoistbook.authored.standards import AS_RUN
from hoistbook.engineering import FORMULAS
from hoistbook.engineering.power_standards import STANDARDS, PowerCorrection, power_correction
from hoistbook.figures.base import Base
from hoistbook.figures.defaults import DEFAULTS
from hoistbook.figures.finding import impossible
from hoistbook.figures.spreads import spread
from hoistbook.history.state import State
from hoistbook.values.evidence import Evidence
from hoistbook.values.quantity import Quantity

FOLLOWS = "follows the air"
"""Of `settings: boost control`: the boost does not make up for thin air."""

NO_AIR = (
    "the air of the run was not written down, or cannot be: `pressure` and `temperature` beside "
    "its log, and `humidity` where there is one"
)
UNKNOWN = "{stated} is no standard that is known here, so nothing can be taken out or put in"
LEFT_IN = "the log is referred to {stated} and {no_air}; its factor stays in, give or take 4 %"
TAKEN_OUT = "the log is referred to {stated}, whose factor is taken out, for here there is {why}"
NOT_APPLIED = "not referred to {wanted}: {why}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Referred:
    """What power standards have to do with one run."""

    stated: str = ""
    """The standard that its log was referred to; empty for a log as run."""
    taken_out: float = 1.0
    """Factor by which the log's power is more than what was observed."""
    standard: str = ""
    """The standard that its power is printed by; empty for one as run."""
    put_in: float = 1.0
    """Factor by which what is printed is more than what was observed."""
    reasons: tuple[str, ...] = ()
    """Why a standard that was asked for is not applied, or one of the log's not taken out."""
    by_each: tuple[tuple[str, float], ...] = ()
    """What every standard would make of what was observed; empty where none applies."""
    held: str = ""
    """Why none of them applies to this run."""

    @property
    def left_in(self) -> str:
        """Return the standard whose factor stays in what was observed, `none` for none."""
        return self.stated if self.stated and self.taken_out == 1 else AS_RUN


AS_IT_WAS = Referred()
"""Of a run as it was run, of which no standard says anything."""


def referred(run: PowerRun, state: State, wanted: str, *, boosted: bool) -> Referred:
    """Return what is taken out of a run's log, and what is put in.

    Parameters
    ----------
    run
        The run.
    state
        What it measured.
    wanted
        The journal's standard, `none` for power as run.
    boosted
        Whether the engine was boosted then.
    """
    stated = "" if run.power_standard == AS_RUN else run.power_standard
    wanted = "" if wanted == AS_RUN else wanted
    air = air_of(run)
    if stated and stated not in STANDARDS:
        return Referred(stated=stated, standard=stated, reasons=(UNKNOWN.format(stated=stated),))
    compensates = boosted and _words(state, "boost control") != FOLLOWS
    if air is None:
        return _without_air(stated, wanted, compensates)
    each = {name: _corrected(name, air, compensates) for name in STANDARDS}
    put_in = each.get(wanted)
    reasons = (
        [NOT_APPLIED.format(wanted=wanted, why=put_in.reason)] if put_in and put_in.reason else []
    )
    if stated and compensates:
        reasons.insert(0, TAKEN_OUT.format(stated=stated, why=each[stated].reason))
    applies = bool(put_in and put_in.applies)
    held = next((one.reason for one in each.values() if one.reason), "") if compensates else ""
    return Referred(
        stated=stated,
        taken_out=each[stated].by_the_formula if stated else 1.0,
        standard=wanted if applies else "",
        put_in=put_in.factor if put_in and applies else 1.0,
        reasons=tuple(reasons),
        by_each=tuple((name, one.factor) for name, one in each.items() if one.applies),
        held=held,
    )


def _without_air(stated: str, wanted: str, compensates: bool) -> Referred:
    """Return what can be said of a run whose air nobody wrote down: it stays as its log has it."""
    reasons = []
    if stated and (stated != wanted or compensates):
        reasons.append(LEFT_IN.format(stated=stated, no_air=NO_AIR))
    elif wanted and not stated:
        reasons.append(NOT_APPLIED.format(wanted=wanted, why=NO_AIR))
    return Referred(stated=stated, standard=stated, reasons=tuple(reasons))


def air_of(run: PowerRun) -> Mapping[str, float] | None:
    """Return pressure, temperature and dry pressure of a run's air; None where it is not known.

    Where only the humidity is not known, the usual stands for it: it moves a factor by 1 %.
    """
    given = _measured_air(run)
    if not {"air_pressure", "air_temperature"} <= given.keys():
        return None
    found = {"relative_humidity": DEFAULTS["relative_humidity"].value}
    found |= {name: quantity.value for name, quantity in given.items()}
    for name in ("saturation_pressure", "vapour_pressure", "dry_air_pressure"):
        formula = FORMULAS[name]
        found[name] = float(
            formula(**{key: found[key] for key in formula.parameters if key in found})
        )
    return found


def _corrected(standard: str, air: Mapping[str, float], compensates: bool) -> PowerCorrection:
    return power_correction(
        standard,
        air_pressure=air["air_pressure"],
        air_temperature=air["air_temperature"],
        dry_air_pressure=air["dry_air_pressure"],
        boost_compensates=compensates,
    )


def _words(state: State, key: str) -> str:
    dated = state.settings.get(key)
    given = dated.value if dated else None
    return str(given.value) if isinstance(given, Given) else ""


def air_bases(run: PowerRun) -> dict[str, Base]:
    """Return the air of a run as far as it was written down, by glossary key."""
    return {
        name: Base(
            name=name,
            value=value.value,
            half_width=(
                spread(name, Evidence.MEASURED, value.value)
                if value.half_width is None
                else value.half_width
            ),
            evidence=Evidence.MEASURED,
            origin="the air of the power run",
            place=run.place,
        )
        for name, value in _measured_air(run).items()
    }


def _measured_air(run: PowerRun) -> dict[str, Quantity]:
    """Return what was written down of a run's air and can be, by glossary key."""
    air = {
        "air_pressure": run.pressure,
        "air_temperature": run.temperature,
        "relative_humidity": run.humidity,
    }
    return {
        name: quantity
        for name, quantity in air.items()
        if quantity is not None and not impossible(name, quantity.value)
    }
