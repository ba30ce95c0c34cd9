"""Charts of what a log has beside the power: the mixture and the temperature of the charge."""

from __future__ import annotations

import math

from hoistbook.figures.figure import Curve
from hoistbook.figures.power_runs import SMOOTHING, binned
from hoistbook.figures.spreads import spread
from hoistbook.pages.desk import Desk
from hoistbook.pages.drawing import LineDrawing
from hoistbook.pages.plot import Plot, axis, curve_line, said_of_curve, state_words
from hoistbook.values.evidence import Evidence

CHARTED = {"lambda": "lambda_ratio", "charge temperature": "charge_temperature"}
"""Column of a log -> the quantity as which it is drawn."""


def logged_plot(desk: Desk, number: int, *, column: str) -> Plot | None:
    """Return a column of the first and of the latest run that has it, None where none has."""
    quantity, name = CHARTED[column], column.rpartition(" ")[2]
    curves = {
        run.episode: curve
        for run in desk.states[number].runs
        if (curve := _curve(desk, run.value.log, column, quantity)) is not None
    }
    if not curves:
        return None
    lines, said = [], []
    for episode in dict.fromkeys((min(curves), max(curves))):
        label = desk.words("charts.logged", number=episode)
        lines.append(curve_line(desk, quantity, label, curves[episode], points=True))
        said.append(said_of_curve(desk, quantity, label, curves[episode]))
    title = desk.words(f"charts.{name}")
    state = state_words(desk, number)
    return Plot(
        name=f"{name}-episode-{number}",
        caption=desk.words("charts.logged_over_speed", title=title, state=state, how=SMOOTHING),
        text=" ".join([desk.words("charts.over_speed_text", title=title), *said]),
        drawing=LineDrawing(
            across=axis(desk, "engine_speed", desk.words("charts.engine_speed")),
            up=axis(desk, quantity, title),
            lines=tuple(lines),
            print_number=desk.formats.plain,
            # Neither begins at nothing: a mixture of 0 is none, a charge of 0 degrees is no limit.
            base=math.inf,
        ),
    )


def _curve(desk: Desk, log: str, column: str, quantity: str) -> Curve | None:
    """Return the medians of a column over engine speed, with the band of a measurement."""
    found = desk.material.journal.logs.get(log)
    values = binned(found, column) if found is not None else {}
    if not values:
        return None
    half = [spread(quantity, Evidence.MEASURED, each) for each in values.values()]
    return Curve(
        speeds=tuple(values),
        values=tuple(values.values()),
        low=tuple(each - by for each, by in zip(values.values(), half, strict=True)),
        high=tuple(each + by for each, by in zip(values.values(), half, strict=True)),
    )
