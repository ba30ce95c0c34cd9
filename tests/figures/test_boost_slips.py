"""A logged boost in another unit than its column says."""

import pytest

from hoistbook.figures.boost_slips import boost_slip

AIR = 97e3


def why(highest, asked, *, absolute=False):
    slip = boost_slip(highest * 1e5, asked * 1e5, AIR, absolute=absolute)
    return slip and slip.message.partition(": ")[2].partition(";")[0]


@pytest.mark.parametrize(
    ("highest", "asked", "units"),
    [
        # 0.5 bar logged as half a psi, 7.25 psi as 7.25 kPa, 14.8 inHg as so many psi (NIST SP
        # 811, appendix B.8: 1 psi is 6894.757 Pa, 1 inHg 3386.389 Pa).
        (0.5 * 0.06894757, 0.5, "bar and psi"),
        (0.5 * 0.01, 0.5, "bar and kPa"),
        (7.25 * 0.01, 0.5, "psi and kPa"),
        (0.5 * 0.03386389, 0.5, "bar and inHg"),
        (14.8 * 0.06894757, 0.5, "psi and inHg"),
        (50 * 0.03386389, 0.5, "kPa and inHg"),
        (50 * 0.06894757, 0.5, "psi and kPa"),
    ],
)
def test_units_that_were_taken_for_each_other_are_named(highest, asked, units):
    assert why(highest, asked) == f"as far apart as {units}"


def test_a_boost_that_did_not_build_is_a_reading():
    assert [why(share * 0.5, 0.5) for share in (1.3, 1.1, 0.8, 0.5, 0.3)] == [None] * 5
    assert why(0.0, 0.0) is None
    assert why(-0.4, 0.5) is None


def test_a_column_from_vacuum_and_one_from_the_air_are_told_apart():
    apart = "the pressure of the air apart"
    assert why(1.47, 0.5) == apart
    assert why(0.97, 0.0) == apart
    assert why(0.5 - 0.97, 0.5, absolute=True) == apart
    assert why(0.5, 0.5, absolute=True) is None
    # 21.3 psi absolute under a heading of kPa.
    assert why(0.213 - 0.97, 0.5, absolute=True) == "as far apart as psi and kPa"
