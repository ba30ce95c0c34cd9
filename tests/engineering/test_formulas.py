"""What holds for every formula: its form, its glossary entries, its docstring, its reference."""

from __future__ import annotations

import ast
import inspect
import math
import re
import subprocess
import sys

import numpy as np
import pytest
import sympy

from hoistbook.engineering import FORMULAS, GLOSSARY, Formula, maths
from hoistbook.engineering.formula import formula
from hoistbook.references import REFERENCES
from hoistbook.units import canonical, dimension

ALLOWED_CALLS = {"sqrt", "exp", "log", "sin", "cos", "minimum", "maximum", "where"}
ALLOWED_NODES = (
    ast.Assign,
    ast.Return,
    ast.Name,
    ast.Load,
    ast.Store,
    ast.Constant,
    ast.BinOp,
    ast.Add,
    ast.Sub,
    ast.Mult,
    ast.Div,
    ast.Pow,
    ast.UnaryOp,
    ast.USub,
    ast.Call,
)
ONE_FORMULA = pytest.mark.parametrize("one", FORMULAS.values(), ids=lambda one: one.name)


def faults(tree: ast.FunctionDef) -> list[str]:
    """Return what in a formula's body is more than one closed expression."""
    body = tree.body[1:] if ast.get_docstring(tree) else tree.body
    found = []
    if not isinstance(body[-1], ast.Return):
        found.append("does not end in return")
    for node in (node for statement in body for node in ast.walk(statement)):
        match node:
            case ast.Call(func=ast.Name(id=name), keywords=[]) if name in ALLOWED_CALLS:
                pass
            case ast.Call():
                found.append(f"calls {ast.unparse(node.func)}")
            case ast.Compare(ops=[ast.Lt() | ast.Gt() | ast.LtE() | ast.GtE()]):
                if not any(
                    isinstance(call, ast.Call)
                    and ast.unparse(call.func) == "where"
                    and call.args[0] is node
                    for call in ast.walk(tree)
                ):
                    found.append("compares outside where")
            case ast.Lt() | ast.Gt() | ast.LtE() | ast.GtE():
                pass
            case _ if not isinstance(node, ALLOWED_NODES):
                found.append(f"has {type(node).__name__}")
    return found


@ONE_FORMULA
def test_a_formula_is_one_closed_expression(one: Formula) -> None:
    assert faults(one.tree) == []


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ("return min(a, b)", "calls min"),
        ("return abs(a)", "calls abs"),
        ("return round(a, 2)", "calls round"),
        ("return a if a > 0 else b", "has IfExp"),
        ("return a and b", "has BoolOp"),
        ("return where(0 < a < 1, a, b)", "has Compare"),
        ("return a > b", "compares outside where"),
        ("return a // b", "has FloorDiv"),
        ("for c in a: b = c\n    return b", "has For"),
        ("c = a", "does not end in return"),
    ],
)
def test_what_is_more_than_a_closed_expression_is_found(body: str, fault: str) -> None:
    (tree,) = ast.parse(f"def wrong(*, a, b):\n    {body}").body
    assert isinstance(tree, ast.FunctionDef)

    assert fault in faults(tree)


@ONE_FORMULA
def test_every_name_in_a_formula_is_a_parameter_or_assigned_before(one: Formula) -> None:
    nodes = (node for statement in one.tree.body for node in ast.walk(statement))
    names = [node for node in nodes if isinstance(node, ast.Name)]
    assigned = {node.id for node in names if isinstance(node.ctx, ast.Store)}
    free = {node.id for node in names} - assigned - set(one.parameters)

    assert free - ALLOWED_CALLS - {"pi"} == set()


@ONE_FORMULA
def test_parameters_result_and_ranges_are_in_the_glossary(one: Formula) -> None:
    keys = [*one.parameters, one.result, *one.valid]

    assert [key for key in keys if key not in GLOSSARY] == []


@ONE_FORMULA
def test_parameters_are_given_by_name_and_have_no_defaults(one: Formula) -> None:
    parameters = inspect.signature(one.function).parameters.values()

    assert {each.kind for each in parameters} == {inspect.Parameter.KEYWORD_ONLY}
    assert {each.default for each in parameters} == {inspect.Parameter.empty}


@ONE_FORMULA
def test_a_formula_has_a_reference_and_a_place_in_it(one: Formula) -> None:
    assert REFERENCES[one.reference.key] is one.reference
    assert one.where


@ONE_FORMULA
def test_ranges_are_the_right_way_round_and_of_the_formulas_own_quantities(one: Formula) -> None:
    assert all(low < high for low, high in one.valid.values())


@ONE_FORMULA
def test_the_docstring_names_each_parameter_with_its_unit(one: Formula) -> None:
    sections = sections_of(one)
    said = re.findall(r"^(\w+)\n((?:    .+\n?)+)", sections["Parameters"], re.MULTILINE)

    expected = [(key, f"[{GLOSSARY[key].unit}]") for key in one.parameters]
    assert [(name, re.findall(r"\[[^\]]*\]", text)[-1]) for name, text in said] == expected


@ONE_FORMULA
def test_the_docstring_gives_the_unit_of_the_result(one: Formula) -> None:
    assert sections_of(one)["Returns"].rstrip().endswith(f"[{GLOSSARY[one.result].unit}].")


@ONE_FORMULA
def test_the_docstring_has_the_equation_and_an_example(one: Formula) -> None:
    sections = sections_of(one)
    symbol = GLOSSARY[one.result].symbol

    assert sections["Notes"].startswith(f"{symbol} = ")
    assert sections["Examples"].startswith(f">>> {one.name}(")


@ONE_FORMULA
def test_the_equation_has_the_symbol_of_each_parameter(one: Formula) -> None:
    equation = sections_of(one)["Notes"].partition("\n\n")[0]

    assert [key for key in one.parameters if GLOSSARY[key].symbol not in equation] == []


@ONE_FORMULA
def test_symbols_in_one_equation_are_distinct(one: Formula) -> None:
    keys = {*one.parameters, one.result}

    assert len({GLOSSARY[key].symbol for key in keys}) == len(keys)


def sections_of(one: Formula) -> dict[str, str]:
    """Return the docstring's sections by their headings."""
    text = inspect.cleandoc(one.function.__doc__ or "")
    pieces = re.split(r"^(\w+)\n-+\n", text, flags=re.MULTILINE)
    return dict(zip(pieces[1::2], (piece.strip("\n") for piece in pieces[2::2]), strict=True))


@pytest.mark.parametrize("term", GLOSSARY.values(), ids=lambda term: term.key)
def test_a_term_has_units_of_one_dimension(term) -> None:
    units = [term.unit, term.metric, term.imperial]

    assert [canonical(unit) for unit in units] == units
    assert len({dimension(unit) for unit in units}) == 1


@pytest.mark.parametrize("term", GLOSSARY.values(), ids=lambda term: term.key)
def test_a_constant_has_a_source(term) -> None:
    assert (term.default is None) == (term.source == "")
    assert term.source in {*REFERENCES, ""}


def test_references_stand_in_the_order_of_the_alphabet() -> None:
    assert list(REFERENCES) == sorted(REFERENCES)


def test_constants_come_from_the_glossary_and_can_be_overruled() -> None:
    density = FORMULAS["pipe_density"]

    assert density(pipe_pressure=287.05e2, pipe_temperature=100.0) == pytest.approx(1.0)
    assert density(
        pipe_pressure=287e2, pipe_temperature=100.0, air_gas_constant=287.0
    ) == pytest.approx(1.0)


def test_a_missing_quantity_is_an_error_that_names_it() -> None:
    with pytest.raises(TypeError, match="'pipe_temperature'"):
        FORMULAS["pipe_density"](pipe_pressure=1e5)


def test_values_outside_the_valid_range_are_named_and_never_clipped() -> None:
    retard = FORMULAS["ignition_factor"]

    assert retard.outside({"ignition_retard": 0.5, "engine_speed": 9000.0}) == ("ignition_retard",)
    assert retard.outside({"ignition_retard": 0.1}) == ()
    assert retard(ignition_retard=np.radians(40.0)) == pytest.approx(0.6)


def test_the_summary_is_the_first_line_of_the_docstring() -> None:
    assert FORMULAS["pump_pressure"].summary == (
        "Return the pressure at the pump outlet, with a regulator that follows the manifold."
    )


def test_a_formula_that_is_no_function_has_no_tree() -> None:
    register = formula(reference="common-practice", where="nowhere")
    register(nameless := lambda *, boost: boost)
    one = FORMULAS.pop(nameless.__name__)

    with pytest.raises(TypeError, match="formula <lambda> is not written as a function"):
        _ = one.tree


def test_a_glossary_key_stands_once() -> None:
    source = inspect.getsource(sys.modules["hoistbook.engineering.glossary"])
    rows = re.findall(r"^(\w+) \| ", source, re.MULTILINE)

    assert sorted(rows) == sorted(GLOSSARY)


def test_formulas_need_no_sympy() -> None:
    # SymPy takes a third of a second to import, which a page without workings need not pay.
    program = "import sys, hoistbook.engineering; sys.exit('sympy' in sys.modules)"

    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0


@pytest.mark.parametrize("name", ["minimum", "maximum", "where"])
def test_choices_are_made_element_by_element(name: str) -> None:
    low, high = np.array([1.0, 5.0]), np.array([2.0, 3.0])
    arguments = (low < high, low, high) if name == "where" else (low, high)

    chosen = getattr(maths, name)(*arguments)

    expected = {"minimum": [1.0, 3.0], "maximum": [2.0, 5.0], "where": [1.0, 3.0]}
    assert chosen.tolist() == expected[name]


@pytest.mark.parametrize("name", ["sqrt", "exp", "log", "sin", "cos"])
def test_a_function_serves_floats_arrays_and_symbols_alike(name: str) -> None:
    function = getattr(maths, name)
    symbol = sympy.Symbol("x", positive=True)

    expected = getattr(math, name)(0.7)

    assert function(0.7) == expected
    assert function(np.array([0.7])) == pytest.approx([expected])
    assert float(function(symbol).subs(symbol, 0.7)) == pytest.approx(expected)
