"""Works the table out: an environment of arrays, one formula after the other, speeds by samples.

Column 0 of every array holds the central value, the other columns the samples, so that one pass
gives both. A quantity over engine speed has one line for each speed, any other has one line.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from hoistbook.engineering import FORMULAS, GLOSSARY
from hoistbook.figures.base import Base, Inputs, Subject, keyed
from hoistbook.figures.catalogue import CATALOGUE, LOOP_FIRST, LOOP_LAST, LOOP_START
from hoistbook.figures.draws import Samples
from hoistbook.figures.figure import Key
from hoistbook.figures.row import Row

SWEEPS = 5
"""How often the loop is gone through; a test shows that once more changes nothing shown."""
IMPOSSIBLE = "numbers that go together: with these there is no {}"
"""What to give where a formula comes to no number, as the root of a negative pressure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One row for one subject, its parameters bound to names of the environment."""

    row: Row
    subject: str
    sources: Mapping[str, str]
    """Parameter of the formula -> name in the environment; physical constants stand aside."""

    @property
    def key(self) -> Key:
        """Return the name of the figure."""
        return Key(self.row.quantity, self.subject)

    @property
    def name(self) -> str:
        """Return the name of the result in the environment."""
        return keyed(self.row.quantity, self.subject)

    def judged(self, quantity: str) -> str:
        """Return the name of what a range of the formula is of: result, parameter or neither.

        A loss of pressure is good up to a Mach number that it does not take.
        """
        if quantity == FORMULAS[self.row.formula].result:
            return self.name
        return self.sources.get(quantity) or keyed(quantity, self.subject)


@dataclass(slots=True, kw_only=True)
class Worked:
    """The environment after the last row."""

    inputs: Inputs
    values: dict[str, Samples] = field(default_factory=dict)
    """Name -> central value and samples, speeds by 1 + samples; SI."""
    bases: dict[str, Base] = field(default_factory=dict)
    steps: dict[str, Step] = field(default_factory=dict)
    """Name of a result -> the step that gave it."""
    rests_on: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """Name -> names of all base inputs that it rests on, in the order of the inputs."""
    lines: dict[str, int] = field(default_factory=dict)
    """Name of what was worked out at one engine speed alone -> the line of that speed."""
    bands: dict[tuple[str, int], tuple[float, float]] = field(default_factory=dict)
    """Name and line -> ends of the 95 % band, of what has been asked for."""
    missing: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """Name of what cannot be worked out -> what to give."""


def work_out(
    inputs: Inputs, sweeps: int = SWEEPS, *, sampled: bool = True, only: tuple[str, ...] = ()
) -> Worked:
    """Return the environment that the base inputs lead to.

    Parameters
    ----------
    inputs
        What the chain starts from.
    sweeps
        How often to go through the loop of pressure loss, flow and charge temperature.
    sampled
        Whether the samples are worked out too; the central values alone take a fiftieth of the
        time.
    only
        Names of what is wanted; what it does not rest on is left out. Without any, all is wanted.
    """
    worked = Worked(inputs=inputs)
    worked.missing = {name: (give,) for name, give in inputs.missing}
    needed = upstream(inputs, (*only, "power")) if only else None
    for base in inputs.bases:
        if needed is not None and base.key not in needed:
            continue
        worked.bases[base.key] = base
        worked.values[base.key] = base.column() if sampled else base.centre()
        worked.rests_on[base.key] = (base.key,)
    for unknown, start in LOOP_START.items():
        if start in worked.values and unknown not in worked.values:
            worked.values[unknown] = worked.values[start]
            worked.rests_on[unknown] = worked.rests_on[start]
    if inputs.speeds:
        worked.values["engine_speed"] = np.array(inputs.speeds)[:, np.newaxis]
        worked.rests_on["engine_speed"] = ()
    for step in _in_order(inputs, sweeps):
        if needed is None or step.name in needed:
            _evaluate(worked, step)
    return worked


def upstream(inputs: Inputs, names: Sequence[str]) -> frozenset[str]:
    """Return every name of the environment that some names rest on, themselves included."""
    steps: dict[str, Step] = {step.name: step for step in steps_of(inputs)}
    needed: set[str] = set()
    ahead = list(names)
    while ahead:
        name = ahead.pop()
        if name in needed:
            continue
        needed.add(name)
        if name in steps:
            ahead += steps[name].sources.values()
            ahead += map(steps[name].judged, FORMULAS[steps[name].row.formula].valid)
        if name in LOOP_START:
            ahead.append(LOOP_START[name])
    return frozenset(needed)


def _in_order(inputs: Inputs, sweeps: int) -> Iterator[Step]:
    """Yield the steps in the order of the table, those of the loop several times."""
    steps = list(steps_of(inputs))
    names = [step.row.quantity for step in steps]
    last = next((name for name in LOOP_LAST if name in names), None)
    if last is None or not any(base.key in LOOP_START.values() for base in inputs.bases):
        yield from steps
        return
    start, end = names.index(LOOP_FIRST), names.index(last) + 1
    yield from steps[:start]
    for _ in range(sweeps):
        yield from steps[start:end]
    yield from steps[end:]


def steps_of(inputs: Inputs) -> Iterator[Step]:
    """Yield each row that applies, for each of its subjects, with its parameters bound."""
    given = {base.key for base in inputs.bases}
    for row, subject, own in _applying(inputs):
        if keyed(row.quantity, subject) not in given:
            yield Step(row=row, subject=subject, sources=_sources(row, own))


def given_of(inputs: Inputs) -> Iterator[Step]:
    """Yield each listed row that would apply but was given, as by a log: nothing is bound."""
    given = {base.key for base in inputs.bases}
    for row, subject, _ in _applying(inputs):
        if keyed(row.quantity, subject) in given and not row.step:
            yield Step(row=row, subject=subject, sources={})


def _applying(inputs: Inputs) -> Iterator[tuple[Row, str, Mapping[str, str]]]:
    """Yield each row that applies with the name of each of its subjects and what they bind."""
    bound = [(each.kind, each.name, bound_to(each, inputs)) for each in inputs.subjects]
    for row in CATALOGUE:
        if row.only <= inputs.conditions:
            for kind, name, own in bound if row.per else [ENGINE]:
                if kind == row.per:
                    yield row, name, own


ENGINE: tuple[str, str, Mapping[str, str]] = ("", "engine", {})
"""The subject of rows that have no other, with nothing bound."""


def bound_to(subject: Subject, inputs: Inputs) -> dict[str, str]:
    """Return where the parameters of a subject's formulas come from, where not from the engine.

    What a row works out for its kind, and what was given or is missing of it, is its own.
    """
    of = f" of {subject.name}"
    own = [row.quantity for row in CATALOGUE if row.per == subject.kind]
    own += [base.name for base in inputs.bases if base.subject == subject.name]
    own += [name.removesuffix(of) for name, _ in inputs.missing if name.endswith(of)]
    return {each: keyed(each, subject.name) for each in own} | dict(subject.binds)


def _sources(row: Row, own: Mapping[str, str]) -> dict[str, str]:
    """Return where each parameter comes from; constants of the glossary need no source."""
    bound = {**own, **row.binds}
    return {
        parameter: bound.get(parameter, parameter)
        for parameter in FORMULAS[row.formula].parameters
        if GLOSSARY[parameter].default is None
    }


def _evaluate(worked: Worked, step: Step) -> None:
    """Put down the result of one step, or what is missing for it."""
    lacking = [name for name in step.sources.values() if name not in worked.values]
    if lacking:
        gives = (worked.missing.get(name, ()) for name in lacking)
        _give_up(worked, step.name, [give for some in gives for give in some])
        return
    values = {parameter: worked.values[name] for parameter, name in step.sources.items()}
    if step.row.at_power:
        values = _at_power(worked, step, values)
    with np.errstate(all="ignore"):
        result = FORMULAS[step.row.formula](**values)
    if not np.isfinite(result).all():
        _give_up(worked, step.name, [IMPOSSIBLE.format(GLOSSARY[step.row.quantity].words)])
        return
    worked.values[step.name] = result
    worked.steps[step.name] = step
    worked.rests_on[step.name] = _union(worked, step.sources.values())


def _at_power(worked: Worked, step: Step, values: Mapping[str, Samples]) -> dict[str, Samples]:
    """Return what a formula takes at the engine speed of highest power, and put down which."""
    line = line_of_power(worked)
    if any(len(each) > 1 for each in values.values()) or any(
        name in worked.lines for name in step.sources.values()
    ):
        worked.lines[step.name] = line
    return {
        name: each[line : line + 1] if len(each) > 1 else each for name, each in values.items()
    }


def line_of_power(worked: Worked) -> int:
    """Return the line of the engine speed at which power is highest; without power the last."""
    power = worked.values.get("power")
    return len(worked.inputs.speeds) - 1 if power is None else int(np.argmax(power[:, 0]))


def _give_up(worked: Worked, name: str, gives: Iterable[str]) -> None:
    """Put down what is missing for a result; what an earlier sweep took for it goes too."""
    worked.missing[name] = tuple(dict.fromkeys(gives))
    worked.values.pop(name, None)
    worked.steps.pop(name, None)


def _union(worked: Worked, names: Iterable[str]) -> tuple[str, ...]:
    """Return the base inputs behind several names, in the order of the inputs."""
    behind = {base for name in names for base in worked.rests_on[name]}
    return tuple(key for key in worked.bases if key in behind)
