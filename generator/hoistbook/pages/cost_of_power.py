"""What a kilowatt gained has cost: the money spent between two power runs over the power won."""

from __future__ import annotations

import math

from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.digits import place_of_band, rounded
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formats import NO_BREAK
from hoistbook.pages.shown import Entry, Number
from hoistbook.values.evidence import Evidence


def cost_of_power(desk: Desk, number: int) -> Entry | None:
    """Return the cost of each kilowatt gained by an episode.

    It is from the first power run to the latest at the same place, the wheels or the crank. The
    bands of both are taken to be independent, which is wide where the rollers were the same. None
    without two such runs, and where their bands leave open whether anything was gained.
    """
    runs = _first_and_latest(desk, number)
    if runs is None:
        return None
    first, latest = runs
    before, after = (_highest(each) for each in runs)
    gained = after[0] - before[0]
    half = math.hypot(before[1], after[1])
    spent = desk.tallies[latest.episode].spent - desk.tallies[first.episode].spent
    if gained <= half or spent <= 0:
        return None
    unit = desk.formats.unit("power")
    per = [
        float(spent) / desk.formats.in_unit(each, "power")
        for each in (gained, gained + half, gained - half)
    ]
    at = place_of_band(*per[1:])
    value, low, high = (desk.formats.plain(float(rounded(each, at))) for each in per)
    label = f"{NO_BREAK}{desk.currency}/{unit}"
    return Entry(
        label=desk.words("tally.per_power", unit=unit),
        number=Number(
            value=f"{value}{label}",
            band=desk.words("figure.band", low=low, high=f"{high}{label}"),
            evidence=desk.word("evidence", Evidence.MEASURED),
            address=f"{links.episode(latest.episode)}#power",
        ),
        note=desk.words(
            "tally.per_power_note",
            spent=desk.home_money(spent),
            place=desk.words(f"run.at_{latest.run.at}"),
            before=_power(desk, before),
            first=first.episode,
            after=_power(desk, after),
            latest=latest.episode,
        ),
    )


def _first_and_latest(desk: Desk, number: int) -> tuple[Comparison, Comparison] | None:
    """Return the first and the latest run at the place at which the latest of all was made."""
    made = [each for each in desk.material.comparisons if each.episode <= number]
    if not made:
        return None
    same = [each for each in made if each.run.at == made[-1].run.at]
    return (same[0], same[-1]) if same[0].episode < same[-1].episode else None


def _highest(run: Comparison) -> tuple[float, float]:
    """Return the highest power of a run and the half width of its band there, W."""
    curve = run.measured
    top = max(range(len(curve.values)), key=curve.values.__getitem__)
    return curve.values[top], (curve.high[top] - curve.low[top]) / 2


def _power(desk: Desk, highest: tuple[float, float]) -> str:
    value, half = highest
    return desk.formats.banded(value, value - half, value + half, "power")[0]
