"""Reading a compressor map that is given as points: a relation, no formula.

Between the points the efficiency runs straight over triangles; outside of the points there is
none. Nothing is said of how a compressor behaves beyond them.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]

WITHIN, LEFT, RIGHT, ABOVE, BELOW = "within", "left", "right", "above", "below"
"""Where a point of operation lies to the points of a map."""

_FAR = 1e4
"""Corners of the triangle around all points, in ranges of the points."""
_NUDGE = 1e-7
"""By how much points are moved so that no four of them lie on one circle, in their ranges."""
_EDGE = 1e-6
"""What still counts as inside of a triangle, as a share of it."""


def efficiency_of_points(
    flow: tuple[float, ...],
    pressure_ratio: tuple[float, ...],
    efficiency: tuple[float, ...],
    at_flow: ArrayLike,
    at_ratio: ArrayLike,
) -> Floats:
    """Return the efficiency between the points of a map, NaN outside of them.

    Parameters
    ----------
    flow, pressure_ratio, efficiency
        The points: corrected mass flow [kg/s], pressure ratio [-], isentropic efficiency [-];
        three or more that do not lie on one line.
    at_flow, at_ratio
        Where to read it.

    Returns
    -------
    array
        Efficiency [-].

    Notes
    -----
    Linear over the triangles of B. Delaunay (1934), which A. Bowyer and D. F. Watson (both The
    Computer Journal 24, 1981) build by putting in one point after the other; from memory.

    Examples
    --------
    >>> read = efficiency_of_points(
    ...     (0.05, 0.15, 0.10), (1.4, 1.4, 2.0), (0.60, 0.64, 0.74), (0.10, 0.20), (1.7, 1.7)
    ... )
    >>> read.round(3).tolist()
    [0.68, nan]
    """
    points, _ = _scaled(flow, pressure_ratio)
    corners = _triangles(flow, pressure_ratio)
    shares = _shares(points[corners], _to_scale(flow, pressure_ratio, at_flow, at_ratio))
    inside = np.asarray(shares.min(axis=2) >= -_EDGE)
    values = (shares * np.asarray(efficiency)[corners]).sum(axis=2)
    first = inside.argmax(axis=1)
    read = values[np.arange(len(first)), first]
    return np.where(inside.any(axis=1), read, np.nan)


def place_among_points(
    flow: tuple[float, ...], pressure_ratio: tuple[float, ...], at_flow: float, at_ratio: float
) -> str:
    """Return where a point of operation lies to the outermost points of a map.

    Parameters
    ----------
    flow, pressure_ratio
        The points: corrected mass flow [kg/s], pressure ratio [-].
    at_flow, at_ratio
        The point of operation.

    Returns
    -------
    str
        `within`, `left`, `right`, `above` or `below`.

    Examples
    --------
    >>> place_among_points((0.05, 0.15, 0.10), (1.4, 1.4, 2.0), 0.06, 1.9)
    'left'
    """
    low, high = min(pressure_ratio), max(pressure_ratio)
    if not low <= at_ratio <= high:
        return ABOVE if at_ratio > high else BELOW
    corners = _triangles(flow, pressure_ratio)
    ends = np.concatenate([corners[:, (0, 1)], corners[:, (1, 2)], corners[:, (2, 0)]])
    flows, ratios = np.asarray(flow)[ends], np.asarray(pressure_ratio)[ends]
    crossing = (ratios.min(axis=1) <= at_ratio) & (at_ratio <= ratios.max(axis=1))
    rise = ratios[crossing, 1] - ratios[crossing, 0]
    along = np.where(rise == 0, 0.0, (at_ratio - ratios[crossing, 0]) / np.where(rise, rise, 1.0))
    at = flows[crossing, 0] + along * (flows[crossing, 1] - flows[crossing, 0])
    every = np.concatenate([at, flows[crossing, 1][rise == 0]])
    slack = _EDGE * (max(flow) - min(flow))
    if at_flow < every.min() - slack:
        return LEFT
    return RIGHT if at_flow > every.max() + slack else WITHIN


def _scaled(flow: tuple[float, ...], pressure_ratio: tuple[float, ...]) -> tuple[Floats, Floats]:
    """Return the points with each axis from 0 to 1, and origin and range of the axes."""
    points = np.array([flow, pressure_ratio]).T
    origin = points.min(axis=0)
    reach = np.ptp(points, axis=0)
    return (points - origin) / reach, np.array([origin, reach])


def _to_scale(
    flow: tuple[float, ...],
    pressure_ratio: tuple[float, ...],
    at_flow: ArrayLike,
    at_ratio: ArrayLike,
) -> Floats:
    _, (origin, reach) = _scaled(flow, pressure_ratio)
    wanted = np.array([np.atleast_1d(at_flow), np.atleast_1d(at_ratio)], dtype=float).T
    return np.asarray((wanted - origin) / reach)


def _shares(triangles: Floats, wanted: Floats) -> Floats:
    """Return the share of each corner in each wanted point, wanted by triangles by corners."""
    last = triangles[:, 2]
    sides = np.stack([triangles[:, 0] - last, triangles[:, 1] - last], axis=2)
    offset = (wanted[:, np.newaxis] - last)[..., np.newaxis]
    two = np.linalg.solve(sides[np.newaxis], offset)[..., 0]
    return np.concatenate([two, 1 - two.sum(axis=2, keepdims=True)], axis=2)


@lru_cache(maxsize=32)
def _triangles(flow: tuple[float, ...], pressure_ratio: tuple[float, ...]) -> Whole:
    """Return the corners of the triangles between the points, three numbers of points each."""
    points, _ = _scaled(flow, pressure_ratio)
    count = len(points)
    angles = np.arange(2 * count).reshape(count, 2) * 2.399963
    points = points + _NUDGE * np.sin(angles)
    around = _FAR * np.array([(-1.0, -1.0), (1.0, -1.0), (0.0, 1.5)])
    every = np.concatenate([points, around])
    triangles = np.array([(count, count + 1, count + 2)])
    for number in range(count):
        triangles = _with_point(every, triangles, number)
    own = triangles[(triangles < count).all(axis=1)]
    corners = every[own]
    sides = corners[:, :2] - corners[:, 2:]
    # What only the nudge has spanned between points of one line is no triangle.
    return np.asarray(own[np.abs(np.linalg.det(sides)) > 10 * _NUDGE])


def _with_point(points: Floats, triangles: Whole, number: int) -> Whole:
    """Return triangles with one point more: those whose circle holds it are cut anew."""
    near = _in_circle(points[triangles], points[number])
    edges: dict[tuple[int, int], bool] = {}
    for a, b, c in triangles[near].tolist():
        for edge in ((a, b), (b, c), (c, a)):
            back = edge[::-1]
            if back in edges:
                del edges[back]
            else:
                edges[edge] = True
    fresh = [(a, b, number) for a, b in edges]
    return np.concatenate([triangles[~near], np.array(fresh, dtype=np.intp)])


def _in_circle(triangles: Floats, point: Floats) -> NDArray[np.bool_]:
    """Return whether a point lies in the circle through the corners of each triangle."""
    a, b, c = (triangles[:, corner] - point for corner in range(3))
    rows = np.stack([np.column_stack([each, (each**2).sum(axis=1)]) for each in (a, b, c)], axis=1)
    (ux, uy), (vx, vy) = (b - a).T, (c - a).T
    turn = ux * vy - uy * vx
    return np.asarray(np.linalg.det(rows) * np.sign(turn) > 0)
