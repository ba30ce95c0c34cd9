"""Shares of variance: of straight lines, of bent ones, and of causes that a run has tied."""

from __future__ import annotations

import numpy as np
import pytest

from hoistbook.figures.base import Base, Learnt
from hoistbook.figures.budget import Budget
from hoistbook.figures.draws import SAMPLES, draw
from hoistbook.values.evidence import Evidence

NAMES = ("speed", "mass", "bore")


def base(name, learnt=None):
    return Base(
        name=name,
        value=0.0,
        half_width=1.0,
        evidence=Evidence.STATED,
        origin="made up",
        learnt=learnt,
    )


def shares(effect, columns, tied=()):
    learnt = Learnt(kept=b"", half_width=1.0, shift=0.0)
    bases = {name: base(name, learnt if name in tied else None) for name in columns}
    return Budget(columns, bases).shares(tuple(columns), effect)


@pytest.fixture
def columns():
    return {name: draw(name, 0.0, 1.0) for name in NAMES}


def test_of_a_sum_each_has_its_part_of_the_variance(columns):
    # GUM (JCGM 100:2008), 5.1.2: of a sum the variances add, each times its factor squared.
    effect = 3 * columns["speed"] + 4 * columns["mass"]
    found = shares(effect, columns)
    assert found["speed"] == pytest.approx(9 / 25, abs=0.03)
    assert found["mass"] == pytest.approx(16 / 25, abs=0.03)
    assert found["bore"] < 0.01


def test_of_a_bent_effect_each_has_the_variance_of_its_means(columns):
    # Of the sum of two squares of unit normals each brings half; the first of a product of two
    # such, X Y, brings nothing alone (Saltelli et al., The Primer, section 1.2; from memory).
    found = shares(columns["speed"] ** 2 + columns["mass"] ** 2, columns)
    assert found["speed"] == pytest.approx(0.5, abs=0.07)
    assert found["mass"] == pytest.approx(0.5, abs=0.07)
    assert found["bore"] < 0.02
    both = shares(columns["speed"] * columns["mass"], columns)
    assert max(both.values()) < 0.03


def test_what_rests_on_one_cause_rests_on_it_wholly(columns):
    columns["mass"] = columns["bore"] = np.zeros(SAMPLES)
    found = shares(columns["speed"] ** 2, columns)
    assert found == {"speed": 1.0, "mass": 0.0, "bore": 0.0}


def test_shares_of_tied_causes_never_come_to_more_than_all(columns):
    # A cause that goes against the others takes width away; what the others bring is then more
    # than all that is left.
    tied = {"speed": columns["speed"], "mass": columns["speed"] - 0.3 * columns["mass"]}
    effect = 2 * tied["speed"] - tied["mass"] + columns["bore"]
    found = shares(effect, tied | {"bore": columns["bore"]}, tied=("speed", "mass"))
    assert sum(found.values()) == pytest.approx(1)
    assert min(found.values()) == 0


def test_without_width_nothing_has_a_share(columns):
    assert set(shares(np.ones(SAMPLES), columns).values()) == {0.0}
