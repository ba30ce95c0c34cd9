"""Expected and got: what was said before a power run, what the model says of it, what came."""

from __future__ import annotations

from dataclasses import dataclass

from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.figure import Curve
from hoistbook.pages.desk import Desk
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
        standard=_standard(desk, run.power_standard),
        device=run.device or "",
        note=run.note or "",
        highest=_power(desk, measured, top, Evidence.MEASURED),
        highest_at=desk.formats.quantity(measured.speeds[top], "engine_speed"),
        rows=tuple(_row(desk, comparison, each) for each in _told(comparison)),
        score=_score(desk, comparison),
        why_none=comparison.why_none,
    )


def _score(desk: Desk, comparison: Comparison) -> str:
    """Return at how many speeds it is inside which band: of what was said, or of the day's."""
    if not comparison.out_of:
        return ""
    key = "run.score" if comparison.said_then else "run.score_of_the_day"
    return desk.words(key, inside=comparison.inside, out_of=comparison.out_of)


def _standard(desk: Desk, standard: str) -> str:
    if standard == "none":
        return desk.words("run.no_standard")
    return desk.words("run.standard", standard=standard)


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


def _power(desk: Desk, curve: Curve, at: int, evidence: Evidence) -> Power:
    value, band = desk.formats.banded(curve.values[at], curve.low[at], curve.high[at], "power")
    return Power(value=value, band=band, evidence=desk.word("evidence", evidence))
