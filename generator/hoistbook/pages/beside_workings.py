"""Tables that stand beside the workings of one quantity: what belongs to it and is no formula."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial

from hoistbook.engineering.map_reading import WITHIN, efficiency_of_points, place_among_points
from hoistbook.figures.base import Inputs
from hoistbook.figures.figure import Figure
from hoistbook.figures.map_inputs import charger_of
from hoistbook.figures.power_runs import SMOOTHING, binned
from hoistbook.figures.variants import Banded, banded, cores, pump_flows, regulators
from hoistbook.pages.charts import map_chart
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.pages.map_chart import ACROSS, UP, air_of, line_on_map
from hoistbook.pages.shown import PlainTable

SCALES = (0.75, 1.0, 1.5)
"""Areas of a core's face, over that of the fitted one."""
PRESSURES = (3e5, 4e5, 5e5, 6e5)
"""Of the fuel at the pump, gauge [Pa]."""
VOLTAGES = (12.0, 13.5)
"""At the pump: a battery at rest, an alternator at work [V]."""
LOGGED = {
    "boost": "boost",
    "manifold pressure": "manifold_absolute_pressure",
    "lambda": "lambda_ratio",
    "charge temperature": "charge_temperature",
    "air mass flow": "engine_air_flow",
    "injector duty": "injector_duty",
    "injector time": "pulse_width",
}
"""Column of a log that tells of the engine -> the quantity as which it is printed."""
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


def _other_cores(desk: Desk) -> Iterator[PlainTable]:
    """Yield what a smaller and a larger core would trade, where the highest flow of air is."""
    inputs, flow = desk.figures[desk.last].inputs, _highest(desk, "engine_air_flow")
    if inputs is None or flow is None or "conductance known" not in inputs.conditions:
        return
    found = cores(inputs, flow.at_speed or 0.0, SCALES)
    if not found:
        return
    rows = tuple(
        (
            desk.words("core.fitted")
            if each.scale == 1
            else desk.words("core.times", scale=desk.formats.plain(each.scale)),
            _shown(desk, each.charge_temperature, "charge_temperature"),
            _shown(desk, each.pressure_loss, "cooler_pressure_loss"),
            _shown(desk, each.charge_density, "charge_density"),
            _in_points(desk, each.density_gained) if each.scale != 1 else "",
        )
        for each in found
    )
    yield PlainTable(
        id="other-cores",
        heading=desk.words("core.heading"),
        lead=desk.words(
            "core.lead",
            flow=desk.formats.quantity(flow.value, "engine_air_flow"),
            speed=desk.formats.quantity(flow.at_speed or 0.0, "engine_speed"),
        ),
        caption=desk.words("core.caption", number=desk.last),
        header=tuple(
            desk.words(f"core.{each}")
            for each in ("area", "temperature", "loss", "density", "gained")
        ),
        rows=rows,
        notes=(desk.words("core.assumed"), *_log_aside(desk, inputs)),
    )


def _log_aside(desk: Desk, inputs: Inputs) -> tuple[str, ...]:
    """Return that a logged charge temperature is left out of account, where there is one."""
    logged = any(base.key == "charge_temperature" for base in inputs.bases)
    return (desk.words("core.log_aside"),) if logged else ()


def _in_points(desk: Desk, each: Banded) -> str:
    """Return a gain or loss with its sign and band, in per cent."""
    low, high = (desk.formats.change(end) for end in (each.low, each.high))
    span = desk.words("figure.band", low=low, high=high)
    return _with_band(desk, desk.formats.change(each.value), span)


def _regulators(desk: Desk) -> Iterator[PlainTable]:
    """Yield the injectors with a regulator of either kind, where the duty is highest."""
    inputs, duty = desk.figures[desk.last].inputs, _highest(desk, "injector_duty")
    if inputs is None or duty is None or "boosted" not in inputs.conditions:
        return
    rows = tuple(
        (
            desk.words(f"regulator.{kind}"),
            *(
                _shown(desk, banded(worked.values[name]), name)
                for name in (
                    "injector_pressure_difference",
                    "injector_static_flow",
                    "injector_duty",
                )
            ),
        )
        for kind, worked in regulators(inputs, duty.at_speed or 0.0).items()
    )
    yield PlainTable(
        id="regulators",
        heading=desk.words("regulator.heading"),
        lead=desk.words(
            "regulator.lead",
            speed=desk.formats.quantity(duty.at_speed or 0.0, "engine_speed"),
        ),
        caption=desk.words("regulator.caption", number=desk.last),
        header=tuple(
            desk.words(f"regulator.{each}") for each in ("kind", "pressure", "flow", "duty")
        ),
        rows=rows,
        notes=(desk.words("regulator.note"),),
    )


def _pump(desk: Desk) -> Iterator[PlainTable]:
    """Yield the flow of the pump against pressure and voltage."""
    inputs = desk.figures[desk.last].inputs
    flow = desk.figures[desk.last].get("pump_margin")
    if inputs is None or not isinstance(flow, Figure) or flow.at_speed is None:
        return
    rows = tuple(
        (
            desk.formats.quantity(pressure, "pump_pressure"),
            *(_shown(desk, each, "pump_flow") for each in by_voltage),
        )
        for pressure, by_voltage in pump_flows(inputs, flow.at_speed, PRESSURES, VOLTAGES)
    )
    pressure = desk.figures[desk.last].get("pump_pressure")
    needed = desk.figures[desk.last].get("fuel_flow")
    if not isinstance(pressure, Figure) or not isinstance(needed, Figure):
        return
    yield PlainTable(
        id="pump-flow",
        heading=desk.words("pump.heading"),
        lead=desk.words(
            "pump.lead", pressure=desk.formats.quantity(pressure.value, "pump_pressure")
        ),
        caption=desk.words("pump.caption", number=desk.last),
        header=(
            desk.words("pump.pressure"),
            *(
                desk.words("pump.at", voltage=desk.formats.quantity(each, "pump_voltage"))
                for each in VOLTAGES
            ),
        ),
        rows=rows,
        notes=(desk.words("pump.note"),),
    )


def _highest(desk: Desk, quantity: str) -> Figure | None:
    found = desk.figures[desk.last].get(quantity)
    return found if isinstance(found, Figure) and found.at_speed is not None else None


def _shown(desk: Desk, each: Banded, quantity: str) -> str:
    return _with_band(desk, *desk.formats.banded(each.value, each.low, each.high, quantity))


def _logged(desk: Desk, place: str) -> Iterator[PlainTable]:
    """Yield what the log of the last run in a place says beside the power, by engine speed."""
    runs = [each for each in desk.material.comparisons if each.run.at == place]
    log = desk.material.journal.logs.get(runs[-1].run.log) if runs else None
    if log is None:
        return
    found = {name: values for name in LOGGED if (values := binned(log, name))}
    if not found:
        return
    speeds = [each for each in runs[-1].measured.speeds if each % EVERY == 0]
    rows = tuple(
        (
            desk.formats.quantity(speed, "engine_speed"),
            *(
                desk.formats.quantity(values[speed], LOGGED[name]) if speed in values else ""
                for name, values in found.items()
            ),
        )
        for speed in speeds
    )
    yield PlainTable(
        id="logged",
        heading=desk.words("logged.heading"),
        lead=desk.words("logged.lead", number=runs[-1].episode),
        caption=desk.words("logged.caption", number=runs[-1].episode),
        header=(
            capital(desk.words("map.speed")),
            *(capital(desk.words(f"logged.{name.replace(' ', '_')}")) for name in found),
        ),
        rows=rows,
        notes=(SMOOTHING,),
    )


_BESIDE: Mapping[str, Callable[[Desk], Iterator[PlainTable]]] = {
    "corrected_flow": _on_map,
    "cooler_effectiveness": _other_cores,
    "injector_duty": _regulators,
    "pump_margin": _pump,
    "wheel_power": partial(_logged, place="wheels"),
    "crank_power": partial(_logged, place="crank"),
}
"""By quantity."""
