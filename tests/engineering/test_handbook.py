"""Each formula against worked examples, tables and reference libraries.

To add a case, add a group to a file of `handbook/`: `what`, the `formulas` in the order in which
they are called (none for a constant or a change of unit, which then names its `result`), one of
`relative tolerance` and `absolute tolerance`, the `source`, and the `cases` with their inputs by
glossary key and what is `expected`. Tolerances are those of the source.
"""

from __future__ import annotations

import numpy as np
import pytest
import sympy

from hoistbook.engineering import FORMULAS
from tests.engineering.handbook import Case, constant, read_cases

CASES = read_cases()
WITH_FORMULAS = [case for case in CASES if case.formulas]


def by_name(case: Case) -> str:
    return case.name


@pytest.mark.parametrize("case", CASES, ids=by_name)
def test_a_value_agrees_with_its_source(case: Case) -> None:
    values = case.worked()

    value = values[case.result] if case.result in values else constant(case.result)

    assert value == pytest.approx(case.expected, rel=0, abs=case.tolerance)


@pytest.mark.parametrize("case", WITH_FORMULAS, ids=by_name)
def test_arrays_give_what_single_numbers_give(case: Case) -> None:
    arrays = {key: np.full(3, value) for key, value in case.given.items()}

    assert case.worked(arrays)[case.result] == pytest.approx([case.worked()[case.result]] * 3)


@pytest.mark.parametrize("case", WITH_FORMULAS, ids=by_name)
def test_symbols_give_an_expression_of_the_same_value(case: Case) -> None:
    symbols = {key: sympy.Symbol(key, positive=True) for key in case.given}

    expression = sympy.sympify(case.worked(symbols)[case.result])

    numbers = {symbol: case.given[key] for key, symbol in symbols.items()}
    assert float(expression.subs(numbers)) == pytest.approx(case.worked()[case.result], rel=1e-9)


def test_every_formula_has_a_case() -> None:
    covered = {name for case in CASES for name in case.formulas}

    assert sorted(set(FORMULAS) - covered) == []
