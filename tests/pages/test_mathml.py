"""Formulas become MathML in the order in which they were written, and nothing is calculated."""

import ast
from types import SimpleNamespace
from typing import cast

import pytest
from lxml import etree

from hoistbook.engineering.formula import Formula
from hoistbook.pages.mathml import in_symbols, symbol, with_numbers
from hoistbook.pages.words import load_words

WORDS = load_words("en")


def formula(expression: str, result: str = "power") -> Formula:
    """Stand in for a registered formula: the printer reads its tree and its result only."""
    (tree,) = ast.parse(f"def made_up():\n    {expression}").body
    return cast(Formula, SimpleNamespace(tree=tree, result=result))


def led(sign: str, behind: str) -> str:
    """Return a row that an operator leads: where a line may be broken."""
    return f'<mrow><mo form="infix">{sign}</mo>{behind}</mrow>'


def rows(*held: str) -> str:
    """Return a line that a narrow sheet may break between its rows."""
    return f'<math display="block" class="rows">{"".join(held)}</math>'


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("V_d", '<msub><mi>V</mi><mi mathvariant="normal">d</mi></msub>'),
        ("p_me", "<msub><mi>p</mi><mi>me</mi></msub>"),
        ("Δp_1", '<mrow><mi mathvariant="normal">Δ</mi><msub><mi>p</mi><mn>1</mn></msub></mrow>'),
        ("p_1", "<msub><mi>p</mi><mn>1</mn></msub>"),
        ("NTU", "<mi>NTU</mi>"),
        ("ṁ", '<mover accent="true"><mi>m</mi><mo>˙</mo></mover>'),
        ("P/m", "<mrow><mi>P</mi><mo>/</mo><mi>m</mi></mrow>"),
    ],
)
def test_a_plain_symbol_is_set_with_its_subscript(text: str, expected: str) -> None:
    assert symbol(text) == expected


@pytest.mark.parametrize(
    ("expression", "expected"),
    [
        (
            "return torque * engine_speed / 2",
            "<mo>=</mo><mfrac><mrow><mi>M</mi><mo>⋅</mo><mi>N</mi></mrow><mn>2</mn></mfrac>",
        ),
        (
            "return (torque + power) * power",
            "<mo>=</mo><mrow><mo>(</mo><mi>M</mi><mo>+</mo><mi>P</mi><mo>)</mo></mrow>"
            "<mo>⋅</mo><mi>P</mi>",
        ),
        (
            "return torque - (power - torque)",
            "<mo>=</mo><mi>M</mi><mo>−</mo>"
            "<mrow><mo>(</mo><mi>P</mi><mo>−</mo><mi>M</mi><mo>)</mo></mrow>",
        ),
        (
            "return (torque / power) ** 2",
            "<mo>=</mo><msup><mrow><mo>(</mo><mfrac><mi>M</mi><mi>P</mi></mfrac>"
            "<mo>)</mo></mrow><mn>2</mn></msup>",
        ),
        (
            "return sqrt(1e-06 * pi)",
            "<mo>=</mo><msqrt><msup><mn>10</mn><mn>−6</mn></msup><mo>⋅</mo>"
            '<mi mathvariant="normal">π</mi></msqrt>',
        ),
        (
            "return log(power)",
            "<mo>=</mo><mi>ln</mi><mrow><mo>(</mo><mi>P</mi><mo>)</mo></mrow>",
        ),
        (
            "return torque - -power * torque",
            "<mo>=</mo><mi>M</mi><mo>−</mo><mrow>"
            "<mo>(</mo><mo>−</mo><mi>P</mi><mo>⋅</mo><mi>M</mi><mo>)</mo></mrow>",
        ),
        ("return -power", "<mo>=</mo><mo>−</mo><mi>P</mi>"),
    ],
)
def test_an_expression_keeps_its_order_and_its_brackets(expression: str, expected: str) -> None:
    (line,) = in_symbols(formula(expression), WORDS)
    assert line == f'<math display="block"><mi>P</mi>{expected}</math>'


def test_cases_stand_in_a_table_of_cells_of_one_element() -> None:
    cases = formula("return where(power < 2.5, power, where(torque >= 1, torque, 0))")
    (line,) = in_symbols(cases, WORDS)
    assert line == rows(
        "<mi>P</mi>",
        led(
            "=",
            "<mrow><mo>{</mo><mtable>"
            "<mtr><mtd><mi>P</mi></mtd><mtd><mrow><mtext>if\N{NO-BREAK SPACE}</mtext>"
            "<mi>P</mi><mo>&lt;</mo><mn>2.5</mn></mrow></mtd></mtr>"
            "<mtr><mtd><mi>M</mi></mtd><mtd><mrow><mtext>if\N{NO-BREAK SPACE}</mtext>"
            "<mi>M</mi><mo>≥</mo><mn>1</mn></mrow></mtd></mtr>"
            "<mtr><mtd><mn>0</mn></mtd><mtd><mtext>otherwise</mtext></mtd></mtr>"
            "</mtable></mrow>",
        ),
    )


def test_numbers_are_put_in_with_their_units_and_not_worked_out() -> None:
    put_in = {"torque": "200\N{NO-BREAK SPACE}N\N{NO-BREAK SPACE}m", "engine_speed": "6,000"}
    made_up = formula("return torque * engine_speed ** 2")
    (line,) = with_numbers(made_up, put_in, "110\N{NO-BREAK SPACE}kW", WORDS)
    torque = '<mn class="torque">200</mn><mtext>\N{NO-BREAK SPACE}N\N{NO-BREAK SPACE}m</mtext>'
    assert line == rows(
        "<mrow><mi>P</mi><mo>=</mo>"
        f'{torque}<mo>×</mo><msup><mn class="engine_speed">6,000</mn><mn>2</mn></msup></mrow>',
        led("≈", '<mn class="result">110</mn><mtext>\N{NO-BREAK SPACE}kW</mtext>'),
    )


def test_a_line_is_broken_before_the_operator_at_which_a_row_would_be_too_long() -> None:
    terms = " + ".join(["torque"] * 22)
    (line,) = in_symbols(formula(f"return {terms}"), WORDS)
    lengths = [len("".join(row.itertext())) for row in etree.fromstring(line)]
    # "P=M" and ten times "+M" are 23 characters, one more than a row takes.
    assert lengths == [21, 22, 2]
    assert [row[0].get("form") for row in etree.fromstring(line)] == [None, "infix", "infix"]


def test_a_number_with_its_unit_is_held_together_where_a_power_wants_one_thing() -> None:
    (line,) = with_numbers(
        formula("return torque ** 2"), {"torque": "3\N{NO-BREAK SPACE}N"}, "", WORDS
    )
    squared = (
        '<msup><mrow><mo>(</mo><mn class="torque">3</mn><mtext>\N{NO-BREAK SPACE}N</mtext>'
        "<mo>)</mo></mrow><mn>2</mn></msup>"
    )
    assert line == f'<math display="block"><mi>P</mi><mo>=</mo>{squared}</math>'


def test_a_formula_of_two_lines_is_two_equations() -> None:
    lines = in_symbols(formula("share = power / torque\n    return share ** 2"), WORDS)
    assert [etree.fromstring(line).tag for line in lines] == ["math", "math"]
    assert lines[0].startswith('<math display="block"><mi>share</mi><mo>=</mo><mfrac>')


def test_what_is_not_a_formula_is_refused() -> None:
    with pytest.raises(NotImplementedError, match="no MathML for Subscript"):
        in_symbols(formula("return power[0]"), WORDS)
