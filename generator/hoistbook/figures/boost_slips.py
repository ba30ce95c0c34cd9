"""A logged boost that was written in another unit than its column says, told by what was set."""

from __future__ import annotations

from hoistbook.values.slip import Slip

NEAR_THE_AIR = 15e3
"""How near to the pressure of the air is taken for it [Pa] (common practice, no source)."""
NEARLY = 0.10
"""Share by which the highest of a log may miss what was set (common practice, no source)."""

TOO_LOW = {"bar and psi": 14.504, "bar and inHg": 29.530, "psi and kPa": 6.895, "bar and kPa": 100}
"""How far apart two units lie, for a log too low; below a fifth boost that did not build is not
told from a slip."""
TOO_HIGH = TOO_LOW | {"psi and inHg": 2.036, "kPa and inHg": 3.386}

CODE = "absolute-boost"
FROM_VACUUM = (
    "if the column counts from vacuum, say so: `columns: {manifold pressure: HEADING in bar "
    "absolute}`"
)
FROM_THE_AIR = (
    "if the column counts from the air, say so: `columns: {boost: HEADING in bar gauge}`"
)
OTHER_UNIT = "look at the unit of the column, or set the boost that it had"


def boost_slip(highest: float, asked: float, air: float, *, absolute: bool) -> Slip | None:
    """Return why a logged boost cannot be what its column says, None where it can.

    Parameters
    ----------
    highest
        The highest that was logged, above the air [Pa].
    asked
        The highest that was set, above the air [Pa]; zero for none.
    air
        The pressure of the air [Pa].
    absolute
        Whether the column counts from vacuum.
    """
    off = highest - asked
    if abs(off + air if absolute else off - air) < NEAR_THE_AIR:
        hint = FROM_THE_AIR if absolute else FROM_VACUUM
        return Slip(CODE, _said(highest, asked, "the pressure of the air apart"), hint)
    here, there = (highest + air, asked + air) if absolute else (highest, asked)
    if min(here, there) <= 0:
        return None
    share, apart = (there / here, TOO_LOW) if here < there else (here / there, TOO_HIGH)
    for units, factor in apart.items():
        if abs(share / factor - 1) < NEARLY:
            return Slip(CODE, _said(highest, asked, f"as far apart as {units}"), OTHER_UNIT)
    return None


def _said(highest: float, asked: float, apart: str) -> str:
    return (
        f"a boost of up to {highest / 1e5:.2f} bar gauge, and {max(0.0, asked) / 1e5:.2f} bar was "
        f"set: {apart}; it is left out"
    )
