"""Draws a chart as an SVG file: the only home of matplotlib.

A drawing is pure data; the same drawing gives the same bytes. The file carries the colours of both
schemes and its own paper, and every line is named where it ends and has a dash of its own, so
that nothing hangs on colour. Every chart is drawn twice: for a sheet, with the names of its lines
at their ends, and for the width of a phone, with the names in a key below.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH, HEIGHT = 720, 420
"""Size of a line chart [px]; a bar chart is as high as its bars need."""
NARROW, NARROW_HEIGHT = 330, 300
"""The same for a phone, without the key below: as wide as shown, so letters keep their size."""

_POINTS = 72 / 96
"""Points to a CSS pixel."""
_TYPE = 15
"""Size of the letters [px]."""
_LOW, _TOP = 64, 44
"""Room below and above a line chart [px]."""
_NARROW_SPAN = (0.18, 0.95)
"""Where a line chart for a phone begins and ends, as shares of its width."""
_BAR = 30
_NARROW_BAR = 52
"""Height of a bar [px]; on a phone its name stands above it."""
_LETTER = 9
"""Generous width of a letter [px]."""
_LEADING = 18
"""Height of a line of text [px]."""
_GAP = 6
"""Least distance of two names at the ends of lines [px]."""

_STEPS = (1, 2, 5, 10)
"""Between two numbers along the lower axis, times a power of ten: so speeds count in thousands."""

# Colours that stand in the drawing for the names on the right, until the file is written.
_NAMED = {
    "#010101": "ink",
    "#020202": "paper",
    "#030303": "rule",
    "#040404": "first",
    "#050505": "second",
    "#060606": "third",
    "#070707": "fourth",
}
_INK, _PAPER, _RULE, *_LINES = _NAMED
_DASHES: tuple[Any, ...] = ("solid", (0, (7, 3)), (0, (2, 2)), (0, (9, 2, 2, 2)))

_STYLE = """<style>
:root{--ink:#1d2a2e;--paper:#faf9f4;--rule:#d5d9d0;--first:#0b4f8a;--second:#8a3b12;--third:#4b4a45;\
--fourth:#6a2a7a}
@media (prefers-color-scheme:dark){:root{--ink:#e6e5dc;--paper:#14191b;--rule:#2f3839;\
--first:#8fc3f2;--second:#f0a878;--third:#b9b5a8;--fourth:#d9a8e6}}
text{font-family:system-ui,sans-serif;font-size:11.25px}
</style>"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a chart over an axis that counts up; in the units of the axes."""

    name: str
    """Stands at its end."""
    across: tuple[float, ...]
    up: tuple[float, ...]
    low: tuple[float, ...] = ()
    high: tuple[float, ...] = ()
    """The 95 % band; empty for none."""
    points: bool = False
    """True for what was measured: its samples are marked."""
    steps: bool = False
    """True where a value holds until the next."""
    labels: tuple[str, ...] = ()
    """Words beside each point, empty for none there; no words at all where this is empty."""
    joined: bool = True
    """False for points that no line runs through."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineDrawing:
    """Lines over one axis."""

    across: str
    up: str
    """Names of the axes, with their units."""
    lines: tuple[Line, ...]
    print_number: Callable[[float], str] = field(repr=False)
    """Prints a number along an axis."""
    whole_steps: bool = False
    """True where the lower axis counts things that have no halves."""
    base: float = 0.0
    """Where the upper axis begins, unless something lies below."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BarDrawing:
    """A bar for each name, the value printed at its end."""

    across: str
    up: str
    """What the names and the values are, with the unit; said beside the drawing, not in it."""
    names: tuple[str, ...]
    values: tuple[float, ...]
    printed: tuple[str, ...]


def drawing_size(drawing: LineDrawing | BarDrawing, *, narrow: bool = False) -> tuple[int, int]:
    """Return the width and height of a drawing [px]."""
    if isinstance(drawing, BarDrawing):
        bar = _NARROW_BAR if narrow else _BAR
        return NARROW if narrow else WIDTH, 24 + bar * len(drawing.names)
    if narrow:
        return NARROW, NARROW_HEIGHT + _LEADING * len(drawing.lines)
    return WIDTH, HEIGHT


def drawn(drawing: LineDrawing | BarDrawing, *, narrow: bool = False) -> bytes:
    """Return a chart as an SVG file.

    Parameters
    ----------
    drawing
        What it shows.
    narrow
        Whether it is drawn for a phone.
    """
    if isinstance(drawing, BarDrawing):
        return _bars(drawing, narrow=narrow)
    return _lines(drawing, narrow=narrow)


def _lines(drawing: LineDrawing, *, narrow: bool) -> bytes:
    def draw(axes: Axes) -> None:
        from matplotlib.ticker import MaxNLocator

        def along(value: float, _: object) -> str:
            return drawing.print_number(value)

        for number, line in enumerate(drawing.lines):
            _line(axes, line, _LINES[number % len(_LINES)], _DASHES[number % len(_DASHES)])
            _words_beside(axes, line, _LINES[number % len(_LINES)], narrow=narrow)
        if narrow:
            _key_below(axes, drawing.lines)
        else:
            _name_ends(axes, drawing.lines, drawing.base)
        axes.set_ylim(bottom=min(drawing.base, axes.get_ylim()[0]))
        axes.set_xlabel(drawing.across)
        axes.set_title(drawing.up, loc="left")
        most = 5 if narrow else 10 if drawing.whole_steps else 8
        axes.xaxis.set_major_locator(MaxNLocator(most, steps=_STEPS, integer=drawing.whole_steps))
        axes.xaxis.set_major_formatter(along)
        axes.yaxis.set_major_formatter(along)
        axes.grid(axis="y", color=_RULE, linewidth=1)

    size = drawing_size(drawing, narrow=narrow)
    if not narrow:
        return _svg(draw, size, left=0.09, right=0.72)
    low = _LOW + _LEADING * len(drawing.lines)
    left, right = _NARROW_SPAN
    return _svg(draw, size, left=left, right=right, low=low)


def _bars(drawing: BarDrawing, *, narrow: bool) -> bytes:
    rows = range(len(drawing.names))

    def draw(axes: Axes) -> None:
        axes.barh(rows, drawing.values, height=0.34 if narrow else 0.62, color=_LINES[0])
        for row, value, text in zip(rows, drawing.values, drawing.printed, strict=True):
            axes.annotate(
                text,
                (max(value, 0.0), row),
                xytext=(6, 0),
                textcoords="offset points",
                va="center",
            )
        if narrow:
            _names_above(axes, drawing.names)
        axes.set_yticks(rows, [""] * len(rows) if narrow else drawing.names)
        axes.set_ylim(len(rows) - 0.5, -0.5)
        axes.set_xticks([])
        axes.tick_params(length=0)
        axes.axvline(0, color=_INK, linewidth=1)
        axes.spines[["bottom", "left"]].set_visible(False)

    size = drawing_size(drawing, narrow=narrow)
    if narrow:
        return _svg(draw, size, left=0.02, right=0.64, low=2, top=22)
    left = 0.04 + max(map(len, drawing.names)) * _LETTER / WIDTH
    return _svg(draw, size, left=left, right=0.82, low=12, top=12)


def _names_above(axes: Axes, names: Sequence[str]) -> None:
    """Write each name above its bar, clear of the line of nothing, which bars below zero cross."""
    for row, name in enumerate(names):
        axes.annotate(
            name, (0, row - 0.28), xytext=(6, 0), textcoords="offset points", va="bottom"
        )


def _key_below(axes: Axes, lines: Sequence[Line]) -> None:
    """Write each line's name below the chart, behind a piece of the line.

    The key begins at the edge of the paper: a name may be nearly as wide as that.
    """
    axes.margins(x=_margin(lines))
    left, right = _NARROW_SPAN
    start, end, text = ((each - left) / (right - left) for each in (0.01, 0.1, 0.13))
    high = NARROW_HEIGHT - _LOW - _TOP
    for number, line in enumerate(lines):
        at = -(_LOW + _LEADING * number) / high
        axes.plot(
            (start, end),
            (at, at),
            transform=axes.transAxes,
            clip_on=False,
            color=_LINES[number % len(_LINES)],
            linestyle=_DASHES[number % len(_DASHES)] if line.joined else "none",
            marker="" if line.joined else "o",
            markersize=4,
            linewidth=2,
        )
        name = line.name.replace("\n", " ")
        axes.text(text, at, name, transform=axes.transAxes, va="center")


def _line(axes: Axes, line: Line, colour: str, dash: Any) -> None:
    if line.high:
        axes.fill_between(line.across, line.low, line.high, color=colour, alpha=0.16, linewidth=0)
    across, up = line.across, line.up
    if line.steps:
        # The last value holds on: half a step of it is shown.
        across, up = (*across, across[-1] + 0.5), (*up, up[-1])
    style = "steps-post" if line.steps else "default"
    if line.joined:
        axes.plot(across, up, color=colour, linestyle=dash, linewidth=2, drawstyle=style)
    if line.points:
        every = max(1, len(line.across) // 12) if line.joined else 1
        axes.plot(line.across[::every], line.up[::every], "o", color=colour, markersize=4)


def _words_beside(axes: Axes, line: Line, colour: str, *, narrow: bool) -> None:
    """Write the words of points beside them: of a line below, of points alone above.

    On a phone every second of points alone has room for them.
    """
    below = (3, -13) if line.joined else (4, 3)
    for number, words in enumerate(line.labels):
        if not words or (narrow and number % 2 and not line.joined):
            continue
        at = line.across[number], line.up[number]
        if line.joined:
            axes.plot(*at, "o", color=colour, markersize=5)
        axes.annotate(words, at, xytext=below, textcoords="offset points", color=colour)


def _margin(lines: Sequence[Line]) -> float:
    """Return the room at both ends of the lower axis: words beside points need some."""
    return 0.07 if any(line.labels for line in lines) else 0.0


def _name_ends(axes: Axes, lines: Sequence[Line], base: float) -> None:
    """Write each line's name at its end, the names pushed apart where ends are close."""
    axes.margins(x=_margin(lines))
    low, high = axes.get_ylim()
    low = min(low, base)
    unit = (high - low) / (HEIGHT * 0.74)
    ordered = sorted(lines, key=lambda each: each.up[-1])
    heights = spread(
        [(each.up[-1] - low) / unit for each in ordered],
        [_GAP + _LEADING * (1 + each.name.count("\n")) for each in ordered],
    )
    for line, height in zip(ordered, heights, strict=True):
        axes.annotate(
            line.name,
            (line.across[-1], line.up[-1]),
            xytext=(1.03, low + height * unit),
            textcoords=axes.get_yaxis_transform(),
            va="center",
            arrowprops={"arrowstyle": "-", "color": _RULE, "shrinkA": 2, "shrinkB": 2},
        )


def spread(heights: Sequence[float], sizes: Sequence[float]) -> list[float]:
    """Return ascending heights moved apart as little as keeps things of these sizes clear.

    Examples
    --------
    >>> spread([10.0, 12.0, 50.0], [8.0, 8.0, 8.0])
    [7.0, 15.0, 50.0]
    """
    # Things that touch form a block, which stands where it moves its members least on average.
    blocks: list[tuple[float, list[float]]] = []
    for height, size in zip(heights, sizes, strict=True):
        middle, members = height, [size]
        while blocks and blocks[-1][0] + sum(blocks[-1][1]) / 2 > middle - sum(members) / 2:
            below, others = blocks.pop()
            count = len(others) + len(members)
            middle = (below * len(others) + middle * len(members)) / count
            members = others + members
        blocks.append((middle, members))
    placed: list[float] = []
    for middle, members in blocks:
        edge = middle - sum(members) / 2
        for size in members:
            placed.append(edge + size / 2)
            edge += size
    return placed


def _svg(
    draw: Callable[[Axes], None],
    size: tuple[int, int],
    *,
    left: float,
    right: float,
    low: float = _LOW,
    top: float = _TOP,
) -> bytes:
    # Imported here because it takes a quarter of a second, and most runs draw nothing anew.
    from matplotlib import rc_context
    from matplotlib.figure import Figure

    rules: dict[Any, Any] = {
        "svg.hashsalt": "hoistbook",
        "svg.fonttype": "none",
        "text.parse_math": False,
        "font.size": _TYPE * _POINTS,
        "axes.titlesize": _TYPE * _POINTS,
        "axes.spines.top": False,
        "axes.spines.right": False,
        **dict.fromkeys(
            ["text.color", "axes.labelcolor", "axes.edgecolor", "xtick.color", "ytick.color"], _INK
        ),
        "axes.facecolor": "none",
        "figure.facecolor": _PAPER,
    }
    with rc_context(rules):
        width, height = size
        figure = Figure(figsize=(width / 96, height / 96))
        axes = figure.add_axes((left, low / height, right - left, 1 - (low + top) / height))
        draw(axes)
        return _written(figure)


def _written(figure: Figure) -> bytes:
    file = io.StringIO()
    nothing = dict.fromkeys(["Creator", "Date", "Format", "Type"])
    figure.savefig(file, format="svg", metadata=nothing)
    text = file.getvalue()
    for colour, name in _NAMED.items():
        text = text.replace(colour, f"var(--{name})")
    text = re.sub(r"font-size: [\d.]+px; font-family: [^;\"]*;? ?", "", text)
    text = re.sub(r"<defs>\s*<style.*?</style>\s*</defs>", _STYLE, text, count=1, flags=re.DOTALL)
    # A hundredth of a point is finer than any screen.
    text = re.sub(r"(\.\d\d)\d+", r"\1", text)
    text = re.sub(r"<!DOCTYPE.*?>\s*|<\?xml.*?\?>\s*", "", text, flags=re.DOTALL)
    return text.encode()
