"""Expected and got: what was said before a power run, what the model says of it, what came."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hoistbook.compare.verdicts import Comparison
from hoistbook.engineering.power_standards import STANDARDS
from hoistbook.figures.figure import Curve
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.values.evidence import Evidence

MOST_ROWS = 12
"""A log has hundreds of samples; the table shows some, the chart and the data file all of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Power:
    """A power with its band."""

    value: str
    band: str
    evidence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RunRow:
    """One engine speed of a power run: the three numbers, all in the same place."""

    speed: str
    said_then: Power | None
    same_conditions: Power | None
    measured: Power


@dataclass(frozen=True, slots=True, kw_only=True)
class RunShown:
    """Expected and got for one power run."""

    place: str
    """"at the wheels" or "at the crank"."""
    standard: str
    """The power standard, in words."""
    device: str
    note: str
    highest: Power
    """The highest power measured."""
    highest_at: str
    """The engine speed of it."""
    rows: tuple[RunRow, ...]
    referred: tuple[str, ...]
    """Sentences on part load, and on power standards: what was taken out, put in, or why not."""
    score: str
    """"At 7 of these 9 speeds ..."; empty when there is nothing to compare."""
    why_none: str


def runs_of(desk: Desk, number: int) -> tuple[RunShown, ...]:
    """Return the power runs of one episode."""
    return tuple(_run(desk, each) for each in desk.material.comparisons if each.episode == number)


def _run(desk: Desk, comparison: Comparison) -> RunShown:
    run, measured = comparison.run, comparison.measured
    top = max(range(len(measured.values)), key=measured.values.__getitem__)
    return RunShown(
        place=desk.words(f"run.at_{run.at}"),
        standard=standard_shown(desk, comparison),
        device=run.device or "",
        note=run.note or "",
        highest=_power(desk, measured, top, Evidence.MEASURED),
        highest_at=desk.formats.quantity(measured.speeds[top], "engine_speed"),
        rows=tuple(_row(desk, comparison, each) for each in _told(comparison)),
        referred=(*comparison.held_back, *_referred(desk, comparison)),
        score=_score(desk, comparison),
        why_none=comparison.why_none,
    )


def _score(desk: Desk, comparison: Comparison) -> str:
    """Return at how many speeds it is inside which band: of what was said, or of the day's."""
    if not comparison.out_of:
        return ""
    key = "run.score" if comparison.said_then else "run.score_of_the_day"
    return desk.words(key, inside=comparison.inside, out_of=comparison.out_of)


def standard_shown(desk: Desk, comparison: Comparison, *, printed: bool = False) -> str:
    """Return by which standard a run's power stands there: as observed, or as it is printed."""
    standards = comparison.referred
    kept = standards.stated if standards.taken_out == 1 and standards.put_in == 1 else ""
    standard = standards.standard if printed else kept
    return (
        desk.words("run.standard", standard=standard)
        if standard
        else desk.words("run.no_standard")
    )


def highest_printed(desk: Desk, comparison: Comparison) -> tuple[Power, float]:
    """Return the highest power of a run as the journal prints it, and its engine speed."""
    curve, factor = comparison.measured, comparison.referred.put_in
    top = max(range(len(curve.values)), key=curve.values.__getitem__)
    return _power(desk, curve, top, Evidence.MEASURED, factor), curve.speeds[top]


def _referred(desk: Desk, comparison: Comparison) -> Iterator[str]:
    """Yield what has to be said of power standards beside a run."""
    standards = comparison.referred
    if standards.taken_out != 1:
        factor = desk.formats.number(standards.taken_out, 4)
        yield desk.words("run.taken_out", standard=standards.stated, factor=factor)
    if standards.standard and standards.put_in != 1:
        power, _ = highest_printed(desk, comparison)
        factor = desk.formats.number(standards.put_in, 4)
        yield desk.words(
            "run.put_in", standard=standards.standard, value=power.value, factor=factor
        )
    for reason in standards.reasons:
        yield f"{capital(reason)}."
    if standards.standard or standards.reasons or standards.stated:
        return
    if standards.held:
        why = standards.held.removeprefix("no correction: ")
        yield desk.words("run.held", why=why)
    elif standards.by_each:
        each = ", ".join(
            desk.words("run.by", standard=name, factor=desk.formats.number(factor, 3))
            for name, factor in standards.by_each
        )
        said = desk.words("run.as_run", each=each)
        others = [name for name in STANDARDS if name not in dict(standards.by_each)]
        names = ", ".join(others)
        yield desk.words("run.not_then", said=said, standards=names) if others else said


def _told(comparison: Comparison) -> list[int]:
    """Return the positions of the speeds that are counted, of some where nothing is compared."""
    speeds = comparison.measured.speeds
    return [speeds.index(each) for each in comparison.compared] or _some(len(speeds))


def _some(count: int) -> list[int]:
    """Return evenly spread positions, the first and the last among them."""
    if count <= MOST_ROWS:
        return list(range(count))
    return sorted({round(each * (count - 1) / (MOST_ROWS - 1)) for each in range(MOST_ROWS)})


def _row(desk: Desk, comparison: Comparison, at: int) -> RunRow:
    speed = comparison.measured.speeds[at]
    return RunRow(
        speed=desk.formats.quantity(speed, "engine_speed"),
        said_then=_near(desk, comparison.said_then, speed),
        same_conditions=_near(desk, comparison.same_conditions, speed),
        measured=_power(desk, comparison.measured, at, Evidence.MEASURED),
    )


def _near(desk: Desk, curve: Curve | None, speed: float) -> Power | None:
    """Return the power that a curve has at a speed, None where it has none there."""
    if curve is None or speed not in curve.speeds:
        return None
    return _power(desk, curve, curve.speeds.index(speed), Evidence.ESTIMATED)


def _power(desk: Desk, curve: Curve, at: int, evidence: Evidence, factor: float = 1.0) -> Power:
    middle, low, high = (factor * each[at] for each in (curve.values, curve.low, curve.high))
    value, band = desk.formats.banded(middle, low, high, "power")
    return Power(value=value, band=band, evidence=desk.word("evidence", evidence))
