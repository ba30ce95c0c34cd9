"""A formula as MathML, printed from its own syntax tree in the order in which it was written.

Two renderings: in symbols, and with the numbers put in. Neither calculates anything: what stands
on the page is the expression that the program evaluates.
"""

from __future__ import annotations

import ast
import unicodedata
from collections.abc import Callable, Mapping
from html import escape
from typing import TypeAlias

from markupsafe import Markup

from hoistbook.engineering.formula import Formula
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.pages.formats import NO_BREAK
from hoistbook.pages.words import Words

Printed: TypeAlias = tuple[str, int]
"""MathML of a piece, and how strongly it holds together."""

SUM, PRODUCT, FRACTION, ATOM = 1, 2, 3, 4
_DOT_ABOVE = "\N{COMBINING DOT ABOVE}"
_FUNCTIONS = {"exp": "exp", "log": "ln", "sin": "sin", "cos": "cos"}
_EXTREMES = {"minimum": "min", "maximum": "max"}
_SIGNS: dict[type[ast.AST], str] = {
    ast.Add: "+",
    ast.Sub: "\N{MINUS SIGN}",
    ast.Lt: "<",
    ast.LtE: "≤",
    ast.Gt: ">",
    ast.GtE: "≥",
}


def in_symbols(formula: Formula, words: Words) -> tuple[Markup, ...]:
    """Return a formula in symbols, one equation for each of its lines."""
    printer = _Printer(lambda name: (symbol(_plain_symbol(name)), ATOM), "⋅", words)
    return _equations(formula, printer, result=None)


def with_numbers(
    formula: Formula, put_in: Mapping[str, str], result: str, words: Words
) -> tuple[Markup, ...]:
    """Return a formula with numbers put in, one equation for each of its lines.

    Parameters
    ----------
    formula
        The formula.
    put_in
        Parameter -> its value as printed, with its unit: "0.20 kg/s".
    result
        The value as printed, which stands behind the last equation; empty for none.
    words
        Words of the page.
    """

    def name(parameter: str) -> Printed:
        text = put_in.get(parameter)
        if text is None:
            return symbol(_plain_symbol(parameter)), ATOM
        return _number(text), PRODUCT if " " in text.replace(NO_BREAK, " ") else ATOM

    return _equations(formula, _Printer(name, "×", words), result)


def symbol(text: str) -> str:
    """Return the MathML of a plain symbol: "V_d", "ṁ_a", "Δp_c", "ρ_3/ρ_1".

    Examples
    --------
    >>> symbol("V_d")
    '<msub><mi>V</mi><mi>d</mi></msub>'
    >>> symbol("Δp_c")
    '<mrow><mi>Δ</mi><msub><mi>p</mi><mi>c</mi></msub></mrow>'
    """
    if "/" in text:
        above, below = text.split("/")
        return f"<mrow>{symbol(above)}<mo>/</mo>{symbol(below)}</mrow>"
    if text.startswith("Δ") and len(text) > 1:
        return f"<mrow><mi>Δ</mi>{symbol(text[1:])}</mrow>"
    base, _, below = text.partition("_")
    letters = unicodedata.normalize("NFD", base)
    printed = f"<mi>{escape(letters.replace(_DOT_ABOVE, ''))}</mi>"
    if _DOT_ABOVE in letters:
        printed = f'<mover accent="true">{printed}<mo>˙</mo></mover>'
    if not below:
        return printed
    tag = "mn" if below.isdigit() else "mi"
    return f"<msub>{printed}<{tag}>{escape(below)}</{tag}></msub>"


def inline_symbol(key: str) -> Markup:
    """Return a glossary symbol as a piece of MathML that stands in a line of text."""
    return Markup(f"<math>{symbol(GLOSSARY[key].symbol)}</math>")


def _plain_symbol(name: str) -> str:
    """Return a name's symbol; names of the formula's own lines stand as they are spelt."""
    term = GLOSSARY.get(name)
    return term.symbol if term else name.replace("_", " ")


def _number(text: str) -> str:
    """Return a printed value: number and unit apart, so that each is read as what it is."""
    number, space, unit = text.partition(NO_BREAK)
    printed = f"<mn>{escape(number)}</mn>"
    return f"<mrow>{printed}<mtext>{space}{escape(unit)}</mtext></mrow>" if unit else printed


def _equations(formula: Formula, printer: _Printer, result: str | None) -> tuple[Markup, ...]:
    lines = []
    for statement in formula.tree.body:
        if isinstance(statement, ast.Assign):
            (target,) = statement.targets
            left = printer.show(target)
            right = printer.show(statement.value)
            lines.append(f"{left}<mo>=</mo>{right}")
        elif isinstance(statement, ast.Return) and statement.value is not None:
            left = symbol(GLOSSARY[formula.result].symbol)
            behind = f"<mo>≈</mo>{_number(result)}" if result else ""
            lines.append(f"{left}<mo>=</mo>{printer.show(statement.value)}{behind}")
    return tuple(Markup(f'<math display="block">{line}</math>') for line in lines)


class _Printer:
    """Prints expressions; `name` says what stands for a name."""

    def __init__(self, name: Callable[[str], Printed], times: str, words: Words) -> None:
        self._name = name
        self._times = times
        self._words = words

    def show(self, node: ast.expr) -> str:
        """Return the MathML of an expression."""
        return self._print(node)[0]

    def _print(self, node: ast.expr) -> Printed:
        match node:
            case ast.Name(id="pi"):
                return "<mi>π</mi>", ATOM
            case ast.Name(id=name):
                return self._name(name)
            case ast.Constant(value=value):
                return _constant(str(value)), ATOM
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return f"<mrow><mo>\N{MINUS SIGN}</mo>{self._held(operand, PRODUCT)}</mrow>", SUM
            case ast.BinOp():
                return self._binary(node)
            case ast.Compare(left=left, ops=[sign], comparators=[right]):
                mark = escape(_SIGNS[type(sign)])
                return f"<mrow>{self.show(left)}<mo>{mark}</mo>{self.show(right)}</mrow>", SUM
            case ast.Call(func=ast.Name(id=function), args=arguments):
                return self._call(function, arguments)
        raise NotImplementedError(f"no MathML for {ast.dump(node)}")

    def _held(self, node: ast.expr, strength: int) -> str:
        """Return a piece, in brackets where it holds together less than its place asks."""
        text, own = self._print(node)
        return text if own >= strength else f"<mrow><mo>(</mo>{text}<mo>)</mo></mrow>"

    def _binary(self, node: ast.BinOp) -> Printed:
        left, right = node.left, node.right
        match node.op:
            case ast.Div():
                return f"<mfrac>{_one(self.show(left))}{_one(self.show(right))}</mfrac>", FRACTION
            case ast.Pow():
                return f"<msup>{self._held(left, ATOM)}{_one(self.show(right))}</msup>", FRACTION
            case ast.Mult():
                times = f"<mo>{self._times}</mo>"
                factors = self._first_factor(left) + times + self._held(right, PRODUCT)
                return factors, SUM if isinstance(left, ast.UnaryOp) else PRODUCT
        sign = f"<mo>{_SIGNS[type(node.op)]}</mo>"
        return self._print(left)[0] + sign + self._held(right, PRODUCT), SUM

    def _first_factor(self, node: ast.expr) -> str:
        """Return a first factor; a sign before it needs no brackets there."""
        return self.show(node) if isinstance(node, ast.UnaryOp) else self._held(node, PRODUCT)

    def _call(self, function: str, arguments: list[ast.expr]) -> Printed:
        if function == "where":
            return self._cases(*arguments), FRACTION
        shown = [self.show(each) for each in arguments]
        if function == "sqrt":
            return f"<msqrt>{shown[0]}</msqrt>", ATOM
        name = _FUNCTIONS.get(function) or _EXTREMES[function]
        inside = "<mo>,</mo>".join(shown)
        return f"<mrow><mi>{name}</mi><mo>(</mo>{inside}<mo>)</mo></mrow>", FRACTION

    def _cases(self, condition: ast.expr, first: ast.expr, second: ast.expr) -> str:
        rows = self._case_rows(condition, first, second)
        return f"<mrow><mo>{{</mo><mtable>{rows}</mtable></mrow>"

    def _case_rows(self, condition: ast.expr, first: ast.expr, second: ast.expr) -> str:
        """Return a row for each case; one inside the last of another is one more row."""
        when = f"<mtext>{self._words('workings.if')}{NO_BREAK}</mtext>{self.show(condition)}"
        row = f"<mtr><mtd>{self.show(first)}</mtd><mtd>{when}</mtd></mtr>"
        match second:
            case ast.Call(func=ast.Name(id="where"), args=[condition, first, last]):
                return row + self._case_rows(condition, first, last)
        otherwise = f"<mtext>{self._words('workings.otherwise')}</mtext>"
        return f"{row}<mtr><mtd>{self.show(second)}</mtd><mtd>{otherwise}</mtd></mtr>"


def _one(text: str) -> str:
    """Return MathML as the single child that a fraction or a power wants."""
    return f"<mrow>{text}</mrow>"


def _constant(text: str) -> str:
    """Return a number as it was written, a power of ten set as one."""
    number, _, exponent = text.removesuffix(".0").lower().partition("e")
    if not exponent:
        return f"<mn>{number}</mn>"
    ten = f"<msup><mn>10</mn><mn>{int(exponent)}</mn></msup>".replace("-", "\N{MINUS SIGN}")
    return ten if number == "1" else f"<mrow><mn>{number}</mn><mo>×</mo>{ten}</mrow>"
