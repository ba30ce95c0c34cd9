"""Tables that stand beside the workings of one quantity: what belongs to it and is no formula."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from hoistbook.engineering.map_reading import WITHIN, efficiency_of_points, place_among_points
from hoistbook.figures.map_inputs import charger_of
from hoistbook.pages.charts import map_chart
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.pages.map_chart import ACROSS, UP, air_of, line_on_map
from hoistbook.pages.shown import PlainTable

EVERY = 500.0
"""Engine speeds of which multiples stand in a table, beside the first and the last, 1/min."""


def tables_beside(desk: Desk, quantity: str) -> tuple[PlainTable, ...]:
    """Return the tables that stand with the workings of a quantity, as at the last episode."""
    make = _BESIDE.get(quantity)
    return tuple(make(desk)) if make else ()


def _on_map(desk: Desk) -> Iterator[PlainTable]:
    """Yield where the compressor runs on its map."""
    charger, curves = charger_of(desk.states[desk.last]), line_on_map(desk, desk.last)
    if charger is None or charger.part.compressor_map is None or curves is None:
        return
    known, (flow, ratio) = charger.part.compressor_map, curves
    read = efficiency_of_points(
        known.flow, known.pressure_ratio, known.efficiency, flow.values, ratio.values
    )
    rows = []
    for at in _some(flow.speeds):
        place = place_among_points(
            known.flow, known.pressure_ratio, flow.values[at], ratio.values[at]
        )
        value, band = desk.formats.banded(flow.values[at], flow.low[at], flow.high[at], ACROSS)
        up, up_band = desk.formats.banded(ratio.values[at], ratio.low[at], ratio.high[at], UP)
        rows.append(
            (
                desk.formats.quantity(flow.speeds[at], "engine_speed"),
                _with_band(desk, value, band),
                _with_band(desk, up, up_band),
                desk.words(f"map.{place}"),
                desk.formats.share(float(read[at]))
                if place == WITHIN
                else desk.words("map.outside"),
            )
        )
    yield PlainTable(
        id="on-the-map",
        heading=desk.words("map.table"),
        lead=f"{air_of(desk, known)} {desk.words('map.lead', name=charger.part.name)}",
        caption=desk.words("map.table_caption", number=desk.last),
        header=tuple(
            capital(desk.words(f"map.{each}"))
            for each in ("speed", "flow", "ratio", "place", "read")
        ),
        rows=tuple(rows),
        notes=(desk.words("map.nothing_beyond"),),
        chart=map_chart(desk),
    )


def _with_band(desk: Desk, value: str, band: str) -> str:
    return f"{value} {desk.words('workings.banded', band=band)}" if band else value


def _some(speeds: tuple[float, ...]) -> list[int]:
    """Return the lines of some engine speeds: the full steps, the first and the last."""
    last = len(speeds) - 1
    return [at for at, speed in enumerate(speeds) if speed % EVERY == 0 or at in (0, last)]


_BESIDE: Mapping[str, Callable[[Desk], Iterator[PlainTable]]] = {"corrected_flow": _on_map}
"""By quantity."""
