"""The draw reproduces published examples of the propagation of uncertainty."""

import math

import numpy as np
import pytest

from hoistbook.figures.base import Base
from hoistbook.figures.budget import Budget
from hoistbook.figures.draws import SAMPLES, band, draw, order, share_of_variance
from hoistbook.values.evidence import Evidence

UNTIED = Base(name="x", value=0.0, half_width=1.0, evidence=Evidence.STATED, origin="")
FAMILIES = 25
"""Sets of input names that an example is repeated with: one set of 4,000 samples alone has an
error of its own of about 1 % of the band's width, the mean of 25 of 0.2 %."""


def half_widths(example):
    ends = [band(example(str(family))) for family in range(FAMILIES)]
    return np.array([(high - low) / 2 for low, high in ends])


def test_the_sum_of_four_standard_normals_has_the_published_interval():
    # JCGM 101:2008, 9.2.2: +-3.92 (exact: 2 x 1.95996); the tolerance for two significant digits
    # of u = 2.0 is 0.05 (JCGM 101, 7.9.2). From memory, recomputed.
    widths = half_widths(lambda family: sum(draw(f"{family} X{k}", 0, 1.959964) for k in range(4)))
    assert widths.mean() == pytest.approx(3.92, abs=0.03)
    assert np.abs(widths - 3.92).max() < 0.15


def test_three_narrow_rectangles_and_a_wide_one_have_the_published_interval():
    # JCGM 101:2008, 9.2.4: +-17.0, where the law of propagation of uncertainty gives +-19.9.
    # From memory; an independent Monte Carlo with 2e6 trials gave 17.010.
    def example(family):
        narrow = sum(draw(f"{family} X{k}", 0, math.sqrt(3), "rectangular") for k in range(3))
        return narrow + draw(f"{family} X4", 0, 10 * math.sqrt(3), "rectangular")

    widths = half_widths(example)
    assert widths.mean() == pytest.approx(17.0, abs=0.05)
    assert np.abs(widths - 17.0).max() < 0.25


def test_a_sum_of_squares_has_the_exact_mean_and_deviation():
    # JCGM 101:2008, 9.4.2 (comparison loss, x1 = 0.010, u = 0.005, r = 0); from memory. Exact:
    # mean x1^2 + 2 u^2, deviation sqrt(4 x1^2 u^2 + 4 u^4); first order gives 0.000 100, wrongly.
    loss = draw("X1", 0.010, 0.005 * 1.959964) ** 2 + draw("X2", 0, 0.005 * 1.959964) ** 2
    assert loss.mean() == pytest.approx(0.000150, rel=0.01)
    assert loss.std() == pytest.approx(0.0001118034, rel=0.01)


def test_the_end_gauge_has_the_published_length_and_uncertainty():
    # GUM (JCGM 100:2008), H.1: 50 000 838 nm, u_c = 32 nm (the GTC 1.5 documentation prints
    # 50000838(32); GTC computes 31.66 by first order). H.1.7: the terms of second order, which
    # Monte Carlo carries too, add 11.7 and 1.7 nm: sqrt(31.66^2 + 11.7^2 + 1.7^2) = 33.8 nm.
    def normal(name, centre, u):
        return draw(name, centre, 1.959964 * u)

    length_standard = normal("l_s", 50_000_623, 25)
    difference = normal("d0", 215, 5.8) + normal("d1", 0, 3.9) + normal("d2", 0, 6.7)
    expansion = draw("alpha_s", 11.5e-6, 2e-6, "rectangular")
    offset = normal("theta_bar", -0.1, 0.2) + normal("delta", 0, 0.5 / math.sqrt(2))
    expansion_difference = draw("d_alpha", 0, 1e-6, "rectangular")
    temperature_difference = draw("d_theta", 0, 0.05, "rectangular")
    length = (
        length_standard
        + difference
        - length_standard * (expansion_difference * offset + expansion * temperature_difference)
    )
    assert length.mean() == pytest.approx(50_000_838, abs=0.5)
    assert length.std() == pytest.approx(33.8, rel=0.01)


def test_the_budget_of_the_end_gauge_has_the_published_degrees_of_freedom():
    # GUM (JCGM 100:2008), H.1.6: 16, truncated; GTC 1.5.1 gives 16.75 by first order. Formula G.2b
    # of Welch and Satterthwaite, with the shares of variance that the budget tells apart.
    samples, freedom = {}, {}
    for name, u, nu in (
        ("l_s", 25, 18),
        ("d0", 5.8, 24),
        ("d1", 3.9, 5),
        ("d2", 6.7, 8),
        ("d_alpha", 50_000_623 * 0.1 * 1e-6 / math.sqrt(3), 50),
        ("d_theta", 50_000_623 * 11.5e-6 * 0.05 / math.sqrt(3), 2),
    ):
        samples[name], freedom[name] = draw(name, 0, 1.959964 * u), nu
    shares = Budget(samples, dict.fromkeys(samples, UNTIED)).shares(
        tuple(samples), sum(samples.values())
    )
    whole = sum(shares.values())
    effective = 1 / sum((shares[name] / whole) ** 2 / freedom[name] for name in samples)
    assert whole == pytest.approx(1, abs=0.03)
    # H.1: u_c = 32 nm, of first order as these are.
    assert sum(samples.values()).std() == pytest.approx(32, abs=0.5)
    assert effective == pytest.approx(16.75, abs=0.99)


def test_resistance_and_reactance_have_the_published_uncertainty_with_correlated_inputs():
    # GUM (JCGM 100:2008), H.2: V, I and phi measured together, correlations -0.36, 0.86 and -0.65;
    # R = 127.732 (0.071), X = 219.847 (0.295), Z = 254.260 (0.236) ohm; from memory. Without the
    # correlations R would have 0.195.
    correlations = np.array([[1, -0.36, 0.86], [-0.36, 1, -0.65], [0.86, -0.65, 1]])
    apart = np.stack([draw(name, 0, 1.959964) for name in ("V", "I", "phi")])
    voltage, current, phase = np.linalg.cholesky(correlations) @ apart
    volts, amperes = 4.9990 + 0.0032 * voltage, 19.6610e-3 + 0.0095e-3 * current
    angle = 1.04446 + 0.00075 * phase
    for value, published, u in (
        (volts / amperes * np.cos(angle), 127.732, 0.071),
        (volts / amperes * np.sin(angle), 219.847, 0.295),
        (volts / amperes, 254.260, 0.236),
    ):
        assert value.mean() == pytest.approx(published, abs=0.005)
        assert value.std() == pytest.approx(u, rel=0.03)


def test_the_calibrated_mass_has_the_published_interval():
    # JCGM 101:2008, 9.3: 1.234 mg, u 0.0754 mg, 95 % from 1.0834 to 1.3825 mg, where the law of
    # propagation gives u 0.0539 mg, wrongly: the model is not linear. From memory.
    reference = draw("m_R", 100_000.0, 1.959964 * 0.050)
    difference = draw("dm_R", 1.234, 1.959964 * 0.020)
    air = draw("rho_a", 1.20, 0.10, "rectangular")
    weight = draw("rho_W", 8_000, 1_000, "rectangular")
    standard = draw("rho_R", 8_000, 50, "rectangular")
    mass = (reference + difference) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000
    low, high = band(mass)
    assert mass.mean() == pytest.approx(1.234, abs=0.005)
    assert mass.std() == pytest.approx(0.0754, rel=0.02)
    assert (low, high) == pytest.approx((1.0834, 1.3825), abs=0.008)


def test_a_rectangle_has_the_deviation_of_the_guide():
    # GUM (JCGM 100:2008), 4.3.7: a / sqrt(3), here for a = 5.
    assert draw("a", 0, 5, "rectangular").std() == pytest.approx(2.886751, rel=1e-4)


def test_relative_deviations_of_a_product_add_in_quadrature():
    # GUM 5.1.6, u of 5, 2, 6 and 2 %: 8.306624 %, within 0.02; the product itself adds 0.01.
    deviations = []
    for family in range(FAMILIES):
        product = 1.0
        for name, u in (("VE", 0.05), ("density", 0.02), ("efficiency", 0.06), ("mixture", 0.02)):
            product = product * draw(f"{family} {name}", 1, 1.959964 * u)
        deviations.append(100 * product.std())
    assert np.mean(deviations) == pytest.approx(8.306624, abs=0.02)


def test_a_band_of_95_per_cent_is_the_expanded_uncertainty_with_its_own_k():
    # GUM (JCGM 100:2008), 6.3.3: k = 2 for about 95 %, here 240 kW with 8.3 %: 39.84 kW; a band
    # of 95 % has 1.96 in its place. 4,000 samples know its ends within 0.15 %.
    power = draw("power", 240, 1.959964 * 0.083 * 240)
    low, high = band(power)
    assert 2 * power.std() == pytest.approx(39.84, rel=5e-4)
    assert (high - low) / 2 == pytest.approx(39.84 * 1.959964 / 2, rel=1.5e-3)


def test_every_stratum_is_drawn_once():
    assert sorted(order("engine displacement")) == list(range(SAMPLES))


def test_a_name_always_gives_the_same_order():
    # Written down once; another machine, library version or language must give the same.
    assert order("volumetric_efficiency")[:5].tolist() == [1090, 258, 1044, 1708, 671]


def test_no_two_inputs_come_out_correlated():
    columns = np.array([order(f"input {k}") for k in range(200)], dtype=float)
    correlation = np.corrcoef(columns) - np.eye(200)
    assert np.abs(correlation).max() < 0.08


def test_samples_stay_within_physical_bounds():
    pressure_loss = draw("loss", 3_000, 4_000, floor=0)
    assert pressure_loss.min() == 0
    assert np.median(pressure_loss) == pytest.approx(3_000, rel=1e-3)


def test_shares_of_variance_of_a_sum_are_those_of_its_parts():
    # GUM 5.1.2 for y = 3 a + 4 b with equal u: shares of 9/25 and 16/25.
    a, b, idle = draw("a", 0, 1), draw("b", 0, 1), draw("idle", 0, 1)
    assert share_of_variance(a, 3 * a + 4 * b) == pytest.approx(0.36, abs=0.03)
    assert share_of_variance(b, 3 * a + 4 * b) == pytest.approx(0.64, abs=0.03)
    assert share_of_variance(idle, 3 * a + 4 * b) < 0.002
