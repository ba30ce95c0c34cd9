"""Reading between the points of a compressor map."""

import matplotlib.tri
import numpy as np
import pytest

from hoistbook.engineering.map_reading import efficiency_of_points, place_among_points


def points(number: int, count: int) -> tuple[tuple[float, ...], ...]:
    draw = np.random.default_rng(number)
    columns = draw.uniform(0.02, 0.2, count), draw.uniform(1.1, 3, count)
    return tuple(tuple(each.tolist()) for each in (*columns, draw.uniform(0.5, 0.78, count)))


@pytest.mark.parametrize("count", [3, 4, 12, 60])
def test_it_reads_as_a_triangulation_by_qhull_does(count: int) -> None:
    # matplotlib's triangulation is that of the library Qhull (Barber and others, ACM TOMS 22, 4).
    for number in range(5):
        flow, ratio, efficiency = points(number, count)
        draw = np.random.default_rng(100 + number)
        at = draw.uniform(0.01, 0.21, 200), draw.uniform(1, 3.1, 200)
        # Triangles depend on how the axes are scaled: here each runs over its own range.
        (low, high), (least, most) = (min(flow), max(flow)), (min(ratio), max(ratio))
        around = matplotlib.tri.Triangulation(
            (np.array(flow) - low) / (high - low), (np.array(ratio) - least) / (most - least)
        )
        reference = matplotlib.tri.LinearTriInterpolator(around, np.array(efficiency))(
            (at[0] - low) / (high - low), (at[1] - least) / (most - least)
        ).filled(np.nan)
        read = efficiency_of_points(flow, ratio, efficiency, *at)
        np.testing.assert_allclose(read, reference, rtol=0, atol=1e-9)
        inside = [
            place_among_points(flow, ratio, *each) == "within" for each in zip(*at, strict=True)
        ]
        assert inside == np.isfinite(reference).tolist()


def test_a_plane_is_read_as_it_is_on_points_that_lie_in_a_grid() -> None:
    grid = [(x / 10, 1 + y / 4) for x in range(1, 7) for y in range(1, 6)]
    flow, ratio = (tuple(each) for each in zip(*grid, strict=True))
    plane = tuple(0.4 + 0.3 * x + 0.05 * y for x, y in grid)
    at = (0.1, 0.25, 0.6, 0.37), (1.25, 1.5, 2.25, 1.99)
    read = efficiency_of_points(flow, ratio, plane, *at)
    assert read == pytest.approx([0.4 + 0.3 * x + 0.05 * y for x, y in zip(*at, strict=True)])


def test_a_point_itself_is_read_as_given_and_beyond_the_points_there_is_nothing() -> None:
    flow, ratio, efficiency = points(7, 30)
    assert efficiency_of_points(flow, ratio, efficiency, flow, ratio) == pytest.approx(
        efficiency, abs=1e-5
    )
    beyond = efficiency_of_points(flow, ratio, efficiency, [0.3, 0.1, 0.1], [2.0, 1.0, 3.5])
    assert np.isnan(beyond).all()


@pytest.mark.parametrize(
    ("at", "place"),
    [
        ((0.10, 1.6), "within"),
        ((0.05, 1.4), "within"),
        ((0.04, 1.4), "left"),
        ((0.06, 1.9), "left"),
        ((0.15, 1.6), "right"),
        ((0.10, 2.1), "above"),
        ((0.10, 1.3), "below"),
    ],
)
def test_where_a_point_lies_is_said_by_the_outermost_points(
    at: tuple[float, float], place: str
) -> None:
    assert place_among_points((0.05, 0.15, 0.10), (1.4, 1.4, 2.0), *at) == place
