"""Engine speeds in words."""

import numpy as np
import pytest

from hoistbook.figures.stretches import between

SPEEDS = (1000.0, 1100.0, 1200.0, 1300.0, 1400.0)


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ([2], "at 1,200 rpm"),
        ([0, 1, 2], "between 1,000 and 1,200 rpm"),
        ([0, 3, 4], "at 1,000 rpm and between 1,300 and 1,400 rpm"),
    ],
)
def test_each_stretch_stands_by_itself(lines, words):
    assert between(np.array(lines), SPEEDS) == words
