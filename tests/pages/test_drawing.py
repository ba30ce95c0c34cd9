"""Names at the ends of lines keep clear of one another."""

import re

from hypothesis import given
from hypothesis import strategies as st

from hoistbook.pages.drawing import Line, LineDrawing, drawn, spread

NAMES = st.lists(st.tuples(st.floats(0, 400), st.sampled_from([19.0, 38.0])), max_size=6)


@given(NAMES)
def test_names_never_overlap_and_keep_their_order(names: list[tuple[float, float]]) -> None:
    names.sort()
    sizes = [size for _, size in names]
    placed = spread([height for height, _ in names], sizes)
    gaps = zip(placed, placed[1:], sizes, sizes[1:], strict=False)
    assert all(b - a >= (s + t) / 2 - 1e-6 for a, b, s, t in gaps)


def test_names_that_are_clear_stay_where_their_lines_end() -> None:
    assert spread([10.0, 100.0], [19.0, 38.0]) == [10.0, 100.0]


def test_engine_speeds_count_in_thousands_on_a_sheet_and_on_a_phone() -> None:
    line = Line(name="at the crank", across=(1800.0, 6300.0), up=(20.0, 120.0))
    drawing = LineDrawing(
        across="engine speed, rpm", up="Power, kW", lines=(line,), print_number="{:,.0f}".format
    )
    for narrow in (False, True):
        texts = re.findall(r">([^<\s][^<]*)</text>", drawn(drawing, narrow=narrow).decode())
        axis = texts[: texts.index("engine speed, rpm")]
        assert axis == ["2,000", "3,000", "4,000", "5,000", "6,000"]
