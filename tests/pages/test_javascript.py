"""Formulas become JavaScript from their syntax trees; the browser judges the numbers."""

import ast
from types import SimpleNamespace
from typing import cast

import pytest

from hoistbook.engineering import FORMULAS
from hoistbook.engineering.formula import Formula
from hoistbook.pages.javascript import inputs_of, javascript


def formula(body: str, *parameters: str) -> Formula:
    """Stand in for a registered formula: the printer reads its tree and its parameters only."""
    (tree,) = ast.parse(f'def made_up():\n    """Return it."""\n    {body}').body
    return cast(Formula, SimpleNamespace(tree=tree, parameters=parameters))


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ("return -power ** 2", "return (-(power ** 2));"),
        ("return (-power) ** 2", "return ((-power) ** 2);"),
        ("return power - (torque - 1e-06)", "return (power - (torque - 1e-06));"),
        (
            "return sqrt(pi * maximum(power, 0))",
            "return Math.sqrt((Math.PI * Math.max(power, 0)));",
        ),
        ("return where(power <= 1, power, 2)", "return ((power <= 1) ? power : 2);"),
        ("throw = power * 2\n    return throw", "const throw_ = (power * 2);\n  return throw_;"),
    ],
)
def test_an_expression_keeps_its_order_in_brackets(body: str, expected: str) -> None:
    assert javascript(formula(body, "power")) == f"(power) => {{\n  {expected}\n}}"


def test_constants_of_nature_come_last_and_by_default() -> None:
    density = FORMULAS["air_density"]
    assert inputs_of(density) == ("air_pressure", "vapour_pressure", "air_temperature")
    first, *_ = javascript(density).splitlines()
    assert first.startswith("(air_pressure, vapour_pressure, air_temperature, ")
    assert "air_gas_constant = 287.05" in first


def test_every_formula_can_be_printed() -> None:
    for each in FORMULAS.values():
        assert javascript(each).endswith("\n}")


def test_what_is_not_a_formula_is_refused() -> None:
    with pytest.raises(NotImplementedError, match="no JavaScript for Subscript"):
        javascript(formula("return power[0]", "power"))
