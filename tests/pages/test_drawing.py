"""Names at the ends of lines keep clear of one another."""

from hypothesis import given
from hypothesis import strategies as st

from hoistbook.pages.drawing import spread

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
