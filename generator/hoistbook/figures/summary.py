"""From the worked-out environment to figures: headline, band, curve, inputs, budget and notes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from hoistbook.engineering import FORMULAS, GLOSSARY
from hoistbook.figures.base import CALIBRATED, Base, keyed
from hoistbook.figures.budget import Budget
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.chain import Step, Worked, given_of, line_of_power, steps_of
from hoistbook.figures.choking import out_of_reach
from hoistbook.figures.draws import Samples, band
from hoistbook.figures.figure import Curve, Figure, Input, Key, Missing
from hoistbook.figures.limits import limit_of
from hoistbook.figures.row import Headline
from hoistbook.figures.stretches import between
from hoistbook.references import REFERENCES
from hoistbook.values.evidence import Evidence

OF_THE_FILLING = ("engine_air_flow", "power", "torque", "wheel_power", "wheel_torque", "fuel_flow")
"""Figures that go with the filling, beside which it is said where it may be that of part load."""
OF_THE_WORK = (
    "brake_mean_effective_pressure",
    "power",
    "torque",
    "wheel_power",
    "wheel_torque",
    "power_to_mass",
)
WORK_OF_THE_ENGINE = ("gross_indicated_efficiency", "mixture_factor", "ignition_factor")
"""Steps to power whose ranges an engine leaves by what it is set to, and not by its speed."""
BELOW_NOTHING = (
    "{at} the boost is below nothing: where the throttle is not open there, the filling is less "
    "than the one taken here, and air, fuel and power with it. On one test-bench engine it was "
    "0.95 under boost and 0.54 to 0.90 at or below the pressure of the air."
)


def summed_up(worked: Worked, key: Key | None = None) -> tuple[Figure | Missing, ...]:
    """Return every figure of the table that applies, or the one of a key, or what is missing.

    What a log has given in the place of an estimate is a figure too, as it was measured. Their
    episodes are those of their inputs; of a missing one it is 0 until a state claims it.
    """
    found: list[Figure | Missing] = []
    # A band over engine speed moves as a whole, so one line of each input stands for all.
    columns = {key: worked.values[key][-1, 1:] for key in worked.bases}
    budget = Budget(columns, worked.bases)
    for step in steps_of(worked.inputs):
        if key is not None and step.key != key:
            continue
        if step.name in worked.steps:
            found.append(_figure(worked, step, budget))
        elif not step.row.step:
            found.append(Missing(key=step.key, give=worked.missing[step.name], episode=0))
    found += [
        _as_given(_figure(worked, step, budget), worked.bases[step.name])
        for step in given_of(worked.inputs)
        if step.name in worked.bases and key in (None, step.key)
    ]
    return tuple(sorted(found, key=lambda each: ORDER[each.key.quantity]))


ORDER = {row.quantity: place for place, row in reversed(tuple(enumerate(CATALOGUE)))}
"""Quantity -> its first row of the table."""


def _as_given(figure: Figure, base: Base) -> Figure:
    """Return a figure of what was given: nothing was put into a formula but it itself."""
    (given,) = figure.budget
    return replace(
        figure,
        low=given.low,
        high=given.high,
        evidence=base.evidence,
        inputs=(given,),
        formula="",
        budget=(),
        place=base.place,
    )


def _figure(worked: Worked, step: Step, budget: Budget) -> Figure:
    values = worked.values[step.name]
    line = worked.lines.get(step.name, _headline_line(worked, step, values))
    own = min(line, len(values) - 1)
    over_speed = len(values) > 1
    curve = _curve(worked, step.name) if over_speed and step.row.drawn else None
    low, high = _band_at(worked, step.name, own)
    rests_on = [worked.bases[key] for key in worked.rests_on[step.name]]
    shares = budget.shares(worked.rests_on[step.name], values[own, 1:])
    at_speed = over_speed or step.name in worked.lines
    value = float(values[own, 0])
    return Figure(
        key=step.key,
        value=value,
        low=float(low),
        high=float(high),
        evidence=Evidence.ESTIMATED,
        inputs=tuple(_input(worked, step, name, line, shares) for name in _parameters(step)),
        formula=step.row.formula,
        episode=max((base.episode for base in rests_on), default=0),
        at_speed=worked.inputs.speeds[line] if at_speed else None,
        headline=step.row.headline.value if at_speed else "",
        curve=curve,
        limit=limit_of(step.row.quantity, value, float(low), float(high)),
        notes=_notes(worked, step),
        budget=tuple(
            _base_input(worked.bases[key], worked.bases[key].name, line, share)
            for key, share in sorted(shares.items(), key=lambda each: -each[1])
        ),
        step=step.row.step,
    )


def headline_value(worked: Worked, key: Key) -> float | None:
    """Return the central value that stands for a figure, None where it cannot be worked out."""
    name = keyed(key.quantity, key.subject)
    if name not in worked.steps:
        return None
    values = worked.values[name]
    return float(values[_headline_line(worked, worked.steps[name], values), 0])


def _band(values: Samples) -> tuple[Samples, Samples]:
    """Return the ends of the band; what rests on engine speed alone has none."""
    if values.shape[-1] == 1:
        return values[..., 0], values[..., 0]
    return band(values[..., 1:])


def _band_at(worked: Worked, name: str, line: int) -> tuple[float, float]:
    """Return the ends of the band of one line; many figures ask for the same."""
    if (name, line) not in worked.bands:
        low, high = _band(worked.values[name][line])
        worked.bands[name, line] = float(low), float(high)
    return worked.bands[name, line]


def _parameters(step: Step) -> tuple[str, ...]:
    """Return what was put in; into what was given, nothing."""
    return FORMULAS[step.row.formula].parameters if step.sources else ()


def _headline_line(worked: Worked, step: Step, values: Samples) -> int:
    """Return the line of the curve that stands for the whole."""
    if len(values) == 1:
        return 0
    if step.row.headline is Headline.LOWEST:
        return int(np.argmin(values[:, 0]))
    if step.row.headline is Headline.HIGHEST:
        return int(np.argmax(values[:, 0]))
    return line_of_power(worked)


def _curve(worked: Worked, name: str) -> Curve:
    values = worked.values[name]
    low, high = _band(values)
    ends = zip(low.tolist(), high.tolist(), strict=True)
    worked.bands |= {(name, line): pair for line, pair in enumerate(ends)}
    return Curve(
        speeds=worked.inputs.speeds,
        values=tuple(values[:, 0].tolist()),
        low=tuple(low.tolist()),
        high=tuple(high.tolist()),
    )


def _input(
    worked: Worked, step: Step, parameter: str, line: int, shares: Mapping[str, float]
) -> Input:
    """Return one parameter of the formula with what was put in for it at the headline."""
    term = GLOSSARY[parameter]
    if term.default is not None:
        source = REFERENCES[term.source]
        return _exact(parameter, term.default, f"physical constant: {source.title}")
    name = step.sources[parameter]
    if name == "engine_speed":
        return _exact(parameter, worked.inputs.speeds[line], "engine speed of the headline")
    if name in worked.bases:
        return _base_input(worked.bases[name], parameter, line, shares[name])
    values = worked.values[name]
    at = min(line, len(values) - 1)
    low, high = _band_at(worked, name, at)
    return Input(
        name=parameter,
        value=float(values[at, 0]),
        low=low,
        high=high,
        evidence=Evidence.ESTIMATED,
        origin="worked out",
        figure=worked.steps[name].key,
    )


def _exact(parameter: str, value: float, origin: str) -> Input:
    return Input(
        name=parameter,
        value=value,
        low=value,
        high=value,
        evidence=Evidence.STATED,
        origin=origin,
    )


def _base_input(base: Base, name: str, line: int, share: float) -> Input:
    """Return a base input as it stands on a page; of a rectangular one the band is its range."""
    value = base.value
    if isinstance(value, tuple):
        value = value[min(line, len(value) - 1)]
    low, high = (
        min(max(end, base.floor), base.ceiling)
        for end in (value - base.half_width, value + base.half_width)
    )
    return Input(
        name=name,
        value=value,
        low=low,
        high=high,
        evidence=base.evidence,
        origin=base.origin,
        place=base.place,
        share=share,
    )


def _notes(worked: Worked, step: Step) -> tuple[str, ...]:
    own = [text for quantity, text in worked.inputs.notes if quantity == step.row.quantity]
    if not step.sources:
        return tuple(own)
    if step.row.until_a_run and CALIBRATED not in worked.inputs.conditions:
        own.insert(0, step.row.until_a_run)
    if step.row.note:
        own.insert(0, step.row.note)
    if step.row.quantity in OF_THE_FILLING:
        own += out_of_reach(worked)
    return (
        *own,
        *_below_nothing(worked, step),
        *_on_the_way(worked, step),
        *_out_of_range(worked, step, "this formula"),
    )


def _on_the_way(worked: Worked, step: Step) -> list[str]:
    """Return what of the engine's own leaves the range of a formula on the way to its power."""
    if step.row.quantity not in OF_THE_WORK:
        return []
    notes = []
    for name in WORK_OF_THE_ENGINE:
        if name in worked.steps:
            formula = f'the formula of "{GLOSSARY[name].words}"'
            found = _out_of_range(worked, worked.steps[name], formula)
            notes += [f"{note} The band does not cover that." for note in found]
    return notes


def _below_nothing(worked: Worked, step: Step) -> list[str]:
    """Return where boost is below nothing, beside a figure of a boosted engine's filling."""
    boost = worked.values.get("boost")
    if boost is None or "boosted" not in worked.inputs.conditions:
        return []
    below = np.flatnonzero(boost[:, 0] < 0)
    if len(below) == 0 or step.row.quantity not in OF_THE_FILLING:
        return []
    at = between(below, worked.inputs.speeds)
    return [BELOW_NOTHING.format(at=f"{at[0].upper()}{at[1:]}")]


def _out_of_range(worked: Worked, step: Step, formula: str) -> list[str]:
    """Return a sentence for each quantity that leaves the range that a step's formula has."""
    notes = []
    for judged, (low, high) in FORMULAS[step.row.formula].valid.items():
        name = step.judged(judged)
        if name not in worked.values:
            continue
        centre = worked.values[name][:, 0]
        if step.name in worked.lines and len(centre) > 1:
            centre = centre[[worked.lines[step.name]]]
        outside = np.flatnonzero((centre < low) | (centre > high))
        if len(outside) == 0:
            continue
        words = GLOSSARY[judged].words.partition(":")[0].partition(",")[0]
        notes.append(
            f"{words[0].upper()}{words[1:]} leaves the range that {formula} is good for"
            f"{' ' + between(outside, worked.inputs.speeds) if len(centre) > 1 else ''}."
        )
    return notes
