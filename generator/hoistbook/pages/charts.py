"""The charts of a journal: what each shows, its words for who cannot see it, and its data.

A chart is drawn once for each episode that changed what it shows; later episodes show the same
file. Power at the wheels and power at the crank are separate lines with separate words.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import lru_cache, partial

from hoistbook.authored.records import BoostBySpeed
from hoistbook.compare.verdicts import Comparison
from hoistbook.figures.figure import AS_RUN, Curve, Figure
from hoistbook.pages import links
from hoistbook.pages.csv_table import csv_table
from hoistbook.pages.desk import Desk
from hoistbook.pages.drawing import (
    BarDrawing,
    Line,
    LineDrawing,
    drawing_size,
    drawn,
)
from hoistbook.pages.logged_chart import logged_plot
from hoistbook.pages.map_chart import map_plot
from hoistbook.pages.plot import Plot, axis, curve_line, said_of_curve, state_words
from hoistbook.pages.runs import standard_shown
from hoistbook.pages.shown import Chart, Link, Picture


def charts_on(desk: Desk, number: int) -> Mapping[str, Chart]:
    """Return the charts of an episode by the name that its prose gives them.

    They are those that the episode changed, and those that its prose places.
    """
    episode = desk.episodes.get(number)
    placed = {each.target for each in episode.links if each.kind == "chart"} if episode else set()
    shown = {}
    for kind in _KINDS:
        plot = _plot(desk, kind, number)
        if plot is not None and (plot.name.endswith(f"-episode-{number}") or kind in placed):
            shown[kind] = _shown(desk, plot)
    return shown


def chart_of(desk: Desk, kind: str, number: int) -> Chart | None:
    """Return the power, torque or boost chart as at an episode, None where nothing is known."""
    plot = _plot(desk, kind, number) if kind in _KINDS else None
    return _shown(desk, plot) if plot else None


def map_chart(desk: Desk) -> Chart | None:
    """Return the compressor map as at the last episode, None where there is none."""
    plot = map_plot(desk, desk.last)
    return _shown(desk, plot) if plot else None


def cost_charts(desk: Desk) -> tuple[Chart, ...]:
    """Return the charts of the running cost, as at the last episode."""
    return tuple(_shown(desk, plot) for plot in _cost_plots(desk))


def chart_calls(desk: Desk) -> dict[str, tuple[Callable[[], bytes], str]]:
    """Return what draws each chart, and all that it is drawn from, by its path in the site."""
    calls: dict[str, tuple[Callable[[], bytes], str]] = {}
    for plot in _all_plots(desk):
        for narrow in (False, True):
            # The record of a drawing, with the language of its numbers, says all that it shows.
            draw = partial(drawn, plot.drawing, narrow=narrow)
            known = f"chart {desk.words.language} {narrow} {plot.drawing!r}"
            calls[links.file_path(_address(plot, narrow=narrow))] = (draw, known)
    return calls


def chart_data(desk: Desk) -> dict[str, bytes]:
    """Return the data of every chart: path in the site -> content."""
    return {
        links.file_path(links.chart(plot.name, "csv")): _data(desk, plot.drawing)
        for plot in _all_plots(desk)
    }


def _address(plot: Plot, *, narrow: bool) -> str:
    return links.chart(f"{plot.name}-narrow" if narrow else plot.name)


def _all_plots(desk: Desk) -> Iterable[Plot]:
    plots = [plot for kind in _KINDS for plot in _plots(desk, kind).values() if plot is not None]
    map_of_last = map_plot(desk, desk.last)
    own = [map_of_last] if map_of_last else []
    return [*{plot.name: plot for plot in plots}.values(), *own, *_cost_plots(desk)]


def _shown(desk: Desk, plot: Plot) -> Chart:
    width, height = drawing_size(plot.drawing)
    narrow_width, narrow_height = drawing_size(plot.drawing, narrow=True)
    return Chart(
        address=links.chart(plot.name),
        width=width,
        height=height,
        text=plot.text,
        caption=plot.caption,
        data=Link(text=desk.words("charts.data"), address=links.chart(plot.name, "csv")),
        narrow=Picture(
            address=_address(plot, narrow=True),
            width=narrow_width,
            height=narrow_height,
            text=plot.text,
        ),
    )


def _plot(desk: Desk, kind: str, number: int) -> Plot | None:
    return _plots(desk, kind)[number]


@lru_cache(maxsize=16)
def _plots(desk: Desk, kind: str) -> Mapping[int, Plot | None]:
    """Return a chart as at every state; one that shows the same as before is the one before.

    So its name is that of the episode that changed what it shows, be it only by the speeds over
    which it reaches.
    """
    plots: dict[int, Plot | None] = {}
    before = None
    for number in desk.states:
        plot = _KINDS[kind](desk, number)
        if plot is not None and before is not None and plot.drawing == before.drawing:
            plot = before
        plots[number] = before = plot
    return plots


def _power(desk: Desk, number: int) -> Plot | None:
    return _over_speed(desk, "power", number, lambda curve: curve)


def _torque(desk: Desk, number: int) -> Plot | None:
    return _over_speed(desk, "torque", number, _torque_of)


def _torque_of(power: Curve) -> Curve:
    """Return the torque that belongs to a power at the same place and engine speed."""
    turns = [2 * math.pi * speed / 60 for speed in power.speeds]

    def over(values: tuple[float, ...]) -> tuple[float, ...]:
        return tuple(value / turn for value, turn in zip(values, turns, strict=True))

    return Curve(
        speeds=power.speeds, values=over(power.values), low=over(power.low), high=over(power.high)
    )


def _over_speed(
    desk: Desk, quantity: str, number: int, of_power: Callable[[Curve], Curve]
) -> Plot | None:
    """Return power or torque over engine speed: the estimate, and the runs made so far."""
    figure = desk.figures[number].get(quantity)
    estimate = figure if isinstance(figure, Figure) and figure.curve else None
    runs = _first_and_latest(desk, number)
    if estimate is None and not runs:
        return None
    lines, said = [], []
    if estimate is not None and estimate.curve is not None:
        name = desk.words("charts.estimate", place=desk.words("charts.crank"))
        lines.append(curve_line(desk, quantity, name, estimate.curve))
        said.append(said_of_curve(desk, quantity, name, estimate.curve))
    for run in runs:
        for name, curve, points in _curves_of(desk, run, latest=run is runs[-1]):
            lines.append(curve_line(desk, quantity, name, of_power(curve), points=points))
            said.append(said_of_curve(desk, quantity, name, of_power(curve)))
    title = desk.words(f"charts.{quantity}")
    own = [desk.formats.standard(AS_RUN)] if estimate is not None else []
    standards = dict.fromkeys([*own, *(standard_shown(desk, each) for each in runs)])
    return Plot(
        name=f"{quantity}-episode-{number}",
        caption=desk.words(
            "charts.power_over_speed",
            title=title,
            state=state_words(desk, number),
            standard=", ".join(standards),
        ),
        text=" ".join([desk.words("charts.over_speed_text", title=title), *said]),
        drawing=LineDrawing(
            across=axis(desk, "engine_speed", desk.words("charts.engine_speed")),
            up=axis(desk, quantity, title),
            lines=tuple(lines),
            print_number=desk.formats.plain,
        ),
    )


def _first_and_latest(desk: Desk, number: int) -> tuple[Comparison, ...]:
    made = [each for each in desk.material.comparisons if each.episode <= number]
    return tuple(made[:1] + made[1:][-1:])


def _curves_of(
    desk: Desk, comparison: Comparison, *, latest: bool
) -> Iterator[tuple[str, Curve, bool]]:
    """Yield the lines of a run: of the latest also what was said of it before, in its place."""
    place = desk.words(f"charts.{comparison.run.at}")
    if latest and comparison.said_then is not None:
        yield desk.words("charts.said_then", place=place), comparison.said_then, False
    name = desk.words("charts.measured", place=place, number=comparison.episode)
    yield name, comparison.measured, True


def _boost(desk: Desk, number: int) -> Plot | None:
    """Return boost over engine speed, only where the author or a log gives it."""
    lines = []
    setting = desk.states[number].settings.get("boost")
    if setting is not None and isinstance(setting.value, BoostBySpeed):
        by_speed = setting.value
        curve = [each.value for each in by_speed.pressures]
        name = desk.words("charts.boost_set", evidence=desk.evidence(by_speed, setting=True))
        lines.append(_boost_line(desk, name, by_speed.speeds, curve))
    unusable = {each.run.log for each in desk.material.comparisons if each.boost_slip}
    for run in desk.states[number].runs[-1:]:
        log = desk.material.journal.logs.get(run.value.log)
        if run.value.log in unusable:
            continue
        if log is not None and "boost" in log.columns and "speed" in log.columns:
            samples = zip(log.columns["speed"], log.columns["boost"], strict=True)
            known = sorted(each for each in samples if not any(map(math.isnan, each)))
            if known:
                name = desk.words("charts.boost_log", number=run.episode)
                lines.append(_boost_line(desk, name, *zip(*known, strict=True)))
    if not lines:
        return None
    title = desk.words("charts.boost")
    said = [_said_line(desk, "boost", each) for each in lines]
    return Plot(
        name=f"boost-episode-{number}",
        caption=desk.words("charts.over_speed", title=title, state=state_words(desk, number)),
        text=" ".join([desk.words("charts.over_speed_text", title=title), *said]),
        drawing=LineDrawing(
            across=axis(desk, "engine_speed", desk.words("charts.engine_speed")),
            up=axis(desk, "boost", title),
            lines=tuple(lines),
            print_number=desk.formats.plain,
        ),
    )


_KINDS: Mapping[str, Callable[[Desk, int], Plot | None]] = {
    "power": _power,
    "torque": _torque,
    "boost": _boost,
    "lambda": partial(logged_plot, column="lambda"),
    "temperature": partial(logged_plot, column="charge temperature"),
}
"""What prose may place as `chart:NAME`."""


def _boost_line(
    desk: Desk, name: str, speeds: Iterable[float], pressures: Iterable[float]
) -> Line:
    up = tuple(desk.formats.in_unit(each, "boost") for each in pressures)
    return Line(name=name, across=tuple(speeds), up=up, points=True)


def _said_line(desk: Desk, quantity: str, line: Line) -> str:
    top = max(range(len(line.up)), key=line.up.__getitem__)
    unit = desk.formats.unit_words(quantity)
    return desk.words(
        "charts.highest",
        name=line.name.replace("\n", " "),
        value=f"{desk.formats.number(line.up[top], 2)}\N{NO-BREAK SPACE}{unit}",
        speed=desk.formats.quantity(line.across[top], "engine_speed"),
    )


def _cost_plots(desk: Desk) -> Iterator[Plot]:
    if len(desk.tallies) > 1:
        yield _cost_by_episode(desk)
    if desk.tallies[desk.last].by_system:
        yield _cost_by_system(desk)


def _cost_by_episode(desk: Desk) -> Plot:
    words, tallies = desk.words, tuple(desk.tallies.values())
    numbers = tuple(float(each.episode) for each in tallies)
    spent = tuple(float(each.spent) for each in tallies)
    listed = tuple(float(each.list_total) for each in tallies)
    return Plot(
        name="cost-by-episode",
        caption=words("charts.cost_by_episode"),
        text=words(
            "charts.cost_by_episode_text",
            first=desk.home_money(tallies[0].spent),
            total=desk.home_money(tallies[-1].spent),
            number=desk.last,
        ),
        drawing=LineDrawing(
            across=words("charts.episode"),
            up=_costaxis(desk),
            lines=(
                Line(
                    name=words("charts.spent"), across=numbers, up=spent, points=True, steps=True
                ),
                Line(name=words("charts.list"), across=numbers, up=listed, steps=True),
            ),
            print_number=desk.formats.plain,
            whole_steps=True,
        ),
    )


def _cost_by_system(desk: Desk) -> Plot:
    latest = desk.tallies[desk.last]
    systems = sorted(latest.by_system, key=lambda each: (-each[1], each[0]))
    names = tuple(desk.system(name) for name, _ in systems)
    printed = tuple(desk.home_money(amount) for _, amount in systems)
    said = [f"{name} {amount}" for name, amount in zip(names, printed, strict=True)]
    return Plot(
        name="cost-by-system",
        caption=desk.words("charts.cost_by_system"),
        text=desk.words(
            "charts.cost_by_system_text",
            total=desk.home_money(latest.spent),
            systems=", ".join(said),
        ),
        drawing=BarDrawing(
            across=desk.words("charts.system"),
            up=_costaxis(desk),
            names=names,
            values=tuple(float(amount) for _, amount in systems),
            printed=printed,
        ),
    )


def _costaxis(desk: Desk) -> str:
    return desk.words("charts.axis", title=desk.words("charts.cost"), unit=desk.currency)


def _data(desk: Desk, drawing: LineDrawing | BarDrawing) -> bytes:
    """Return what a chart shows as a CSV table, one row for each point."""
    if isinstance(drawing, BarDrawing):
        rows = [[n, f"{v:.2f}"] for n, v in zip(drawing.names, drawing.values, strict=True)]
        return csv_table([drawing.across, drawing.up], rows)
    header = [desk.words("charts.line"), drawing.across, drawing.up]
    header += [desk.words("charts.low"), desk.words("charts.high")]
    beside = any(line.labels for line in drawing.lines)
    header += [desk.words("charts.beside")] if beside else []
    points = (row for line in drawing.lines for row in _points(line))
    return csv_table(header, [row if beside else row[:-1] for row in points])


def _points(line: Line) -> Iterator[list[str]]:
    name = line.name.replace("\n", " ")
    nothing = ("",) * len(line.across)
    low = [f"{each:.4g}" for each in line.low] or nothing
    high = [f"{each:.4g}" for each in line.high] or nothing
    beside = line.labels or nothing
    for across, up, *rest in zip(line.across, line.up, low, high, beside, strict=True):
        value = f"{up:.4g}" if line.low else f"{up:.6g}"
        yield [name, f"{across:.6g}", value, *rest]
