"""The page on accuracy claims no more than what the checks come to."""

import numpy as np

from hoistbook.engineering import FORMULAS
from hoistbook.figures.validation import VALIDATION
from hoistbook.units import from_unit
from tests.engineering import test_cycle as cycle
from tests.figures.test_chain import catalogue_band, catalogue_engines
from tests.figures.test_whole_chain import errors

__all__ = ["errors"]


def at_most(found: float, claimed: float) -> bool:
    """Return whether a claim is the next hundredth above what was found."""
    return claimed - 0.01 < found <= claimed


def test_catalogue_engines_lie_inside_the_band_as_often_as_is_said() -> None:
    engines, said = catalogue_engines(), VALIDATION["catalogue"]
    bands = {rated: catalogue_band(rated) for rated in {engine["rpm"] for engine in engines}}
    ratios = [from_unit(each["bmep_bar"], "bar") / bands[each["rpm"]][1] for each in engines]
    levels = [float(np.median(np.delete(ratios, n))) for n in range(len(engines))]
    shares = [(low / value, high / value) for low, value, high in bands.values()]
    inside = [
        low <= ratio / level * value <= high
        for (low, value, high), ratio, level in zip(
            (bands[engine["rpm"]] for engine in engines), ratios, levels, strict=True
        )
    ]
    assert (len(engines), sum(inside)) == (said["engines"], said["inside"])
    assert at_most(1 - min(low for low, _ in shares), said["below"])
    assert at_most(max(high for _, high in shares) - 1, said["above"])


def test_the_scatter_of_the_other_engines_alone_asks_for_such_a_band() -> None:
    # Nothing of ours is in it: a 95 % prediction interval of one more normal value (Student, with
    # 1.98667 for 90 degrees of freedom), mean and deviation of each without the engine itself.
    pressures, said = [each["bmep_bar"] for each in catalogue_engines()], VALIDATION["catalogue"]
    others = [np.delete(pressures, n) for n in range(len(pressures))]
    means = np.array([each.mean() for each in others])
    halves = np.array([1.98667 * each.std(ddof=1) * np.sqrt(1 + 1 / 91) for each in others])

    assert (np.abs(pressures - means) <= halves).sum() == said["alone"]
    assert at_most(float((halves / means).max()), said["scatter"])
    assert 0.90 <= said["alone"] / said["engines"] <= 0.99


def test_the_simulation_is_followed_as_closely_as_is_said() -> None:
    said = VALIDATION["cycle"]
    ours = np.array(
        [
            cycle.mean_pressure(
                float(row["trapped_air_mg"]) * 1e-6,
                cycle.point_of(row),
                FORMULAS["gross_indicated_efficiency"](
                    reference_indicated_efficiency=0.40,
                    compression_ratio=float(row["compression_ratio"]),
                ),
            )
            for row in cycle.rows()
        ]
    )
    theirs = cycle.column("brake_mean_pressure_bar") * 1e5
    error = (ours / theirs - 1)[theirs > 3e5]
    assert len(error) == said["cases"]
    assert at_most(abs(error.mean()), said["mean"])
    assert at_most(error.std(), said["deviation"])
    assert at_most(np.abs(error).max(), said["largest"])


def test_what_is_learnt_without_boost_errs_with_boost_as_little_as_is_said(
    errors: np.ndarray,
) -> None:
    said = VALIDATION["boosted"]
    assert len(errors) == said["cases"]
    assert at_most(abs(errors[:, 0].mean()), said["mean"])
    assert at_most(np.abs(errors[:, 0]).max(), said["largest"])
    assert at_most(np.abs(errors[:, 1]).max(), said["constant"])
