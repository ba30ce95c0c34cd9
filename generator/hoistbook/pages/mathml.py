"""A formula as MathML, printed from its own syntax tree in the order in which it was written.

Two renderings: in symbols, and with the numbers put in. Neither calculates anything: what stands
on the page is the expression that the program evaluates.
"""

from __future__ import annotations

import ast
import re
import unicodedata
from collections.abc import Callable, Mapping
from html import escape, unescape
from typing import TypeAlias

from markupsafe import Markup

from hoistbook.engineering.formula import Formula
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.pages.formats import NO_BREAK
from hoistbook.pages.words import Words

Printed: TypeAlias = tuple[list[str], int]
"""The MathML elements of a piece, and how strongly it holds together."""

SUM, PRODUCT, FRACTION, ATOM = 1, 2, 3, 4
RESULT = "result"
"""The name that the number behind a formula carries."""
ROW = 22
"""Most characters of a row of a formula: what a sheet of 320 px takes with fields over numbers."""
_TAG = re.compile(r"<[^>]*>")
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
    printer = _Printer(lambda name: ([symbol(_plain_symbol(name))], ATOM), "⋅", words)
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
            return [symbol(_plain_symbol(parameter))], ATOM
        number = _number(text, parameter)
        return number, PRODUCT if len(number) > 1 else ATOM

    return _equations(formula, _Printer(name, "×", words), result)


def symbol(text: str) -> str:
    """Return the MathML of a plain symbol: "V_d", "ṁ_a", "Δp_c", "ρ_3/ρ_1".

    Examples
    --------
    >>> symbol("T_2")
    '<msub><mi>T</mi><mn>2</mn></msub>'
    >>> symbol("V_d")
    '<msub><mi>V</mi><mi mathvariant="normal">d</mi></msub>'
    """
    if "/" in text:
        above, below = text.split("/")
        return f"<mrow>{symbol(above)}<mo>/</mo>{symbol(below)}</mrow>"
    if text.startswith("Δ") and len(text) > 1:
        return f'<mrow><mi mathvariant="normal">Δ</mi>{symbol(text[1:])}</mrow>'
    base, _, below = text.partition("_")
    letters = unicodedata.normalize("NFD", base)
    printed = f"<mi>{escape(letters.replace(_DOT_ABOVE, ''))}</mi>"
    if _DOT_ABOVE in letters:
        printed = f'<mover accent="true">{printed}<mo>˙</mo></mover>'
    if not below:
        return printed
    return f"<msub>{printed}{_subscript(below)}</msub>"


def _subscript(text: str) -> str:
    """Return what stands below: upright, for it is a word cut short and no quantity (ISO 80000-1).

    A name of several letters is upright as it is.
    """
    if text.isdigit():
        return f"<mn>{text}</mn>"
    upright = ' mathvariant="normal"' if len(text) == 1 else ""
    return f"<mi{upright}>{escape(text)}</mi>"


def inline_symbol(key: str) -> Markup:
    """Return a glossary symbol as a piece of MathML that stands in a line of text."""
    return Markup(f"<math>{symbol(GLOSSARY[key].symbol)}</math>")


def _plain_symbol(name: str) -> str:
    """Return a name's symbol; names of the formula's own lines stand as they are spelt."""
    term = GLOSSARY.get(name)
    return term.symbol if term else name.replace("_", " ")


def _number(text: str, name: str) -> list[str]:
    """Return a printed value: number and unit apart, so that each is read as what it is.

    The number carries the name of what it is of, by which a script finds it.
    """
    number, space, unit = text.partition(NO_BREAK)
    printed = [f'<mn class="{name}">{escape(number)}</mn>']
    return [*printed, f"<mtext>{space}{escape(unit)}</mtext>"] if unit else printed


def _equations(formula: Formula, printer: _Printer, result: str | None) -> tuple[Markup, ...]:
    lines = []
    for statement in formula.tree.body:
        if isinstance(statement, ast.Assign):
            (target,) = statement.targets
            lines.append([printer.show(target), "<mo>=</mo>", *printer.pieces(statement.value)])
        elif isinstance(statement, ast.Return) and statement.value is not None:
            left = symbol(GLOSSARY[formula.result].symbol)
            behind = ["<mo>≈</mo>", *_number(result, RESULT)] if result else []
            lines.append([left, "<mo>=</mo>", *printer.pieces(statement.value), *behind])
    return tuple(map(_breakable, lines))


def _breakable(pieces: list[str]) -> Markup:
    """Return a line as rows that an operator leads: a narrow sheet breaks it before one.

    A row is as long as the narrowest sheet takes it, and a line of one row is none: its elements
    count on a page that has many. A sign behind an operator belongs to what follows it.
    """
    rows: list[list[str]] = [[]]
    for before, piece in zip(["", *pieces], pieces, strict=False):
        if piece.startswith("<mo>") and not before.startswith("<mo>"):
            rows.append([])
        rows[-1].append(piece)
    held = [rows[0]]
    for row in rows[1:]:
        if _length(held[-1]) + _length(row) <= ROW:
            held[-1] += row
        else:
            # What stands first in a row would be taken for a sign, and set without space.
            held.append([row[0].replace("<mo>", '<mo form="infix">'), *row[1:]])
    if len(held) == 1:
        return Markup(f'<math display="block">{"".join(held[0])}</math>')
    return Markup(f'<math display="block" class="rows">{"".join(map(_row, held))}</math>')


def _length(row: list[str]) -> int:
    """Return how many characters a row has; of a fraction those above and below its line."""
    return len(unescape(_TAG.sub("", "".join(row))))


class _Printer:
    """Prints expressions; `name` says what stands for a name."""

    def __init__(self, name: Callable[[str], Printed], times: str, words: Words) -> None:
        self._name = name
        self._times = times
        self._words = words

    def show(self, node: ast.expr) -> str:
        """Return the MathML of an expression, as it stands in a row."""
        return "".join(self.pieces(node))

    def pieces(self, node: ast.expr) -> list[str]:
        """Return the MathML of an expression, its operators apart from what they join."""
        return self._print(node)[0]

    def _one(self, node: ast.expr) -> str:
        """Return the MathML of an expression as a single element."""
        return _row(self._print(node)[0])

    def _print(self, node: ast.expr) -> Printed:
        match node:
            case ast.Name(id="pi"):
                return ['<mi mathvariant="normal">π</mi>'], ATOM
            case ast.Name(id=name):
                return self._name(name)
            case ast.Constant(value=value):
                return _constant(str(value))
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return ["<mo>\N{MINUS SIGN}</mo>", *self._held(operand, PRODUCT)], SUM
            case ast.BinOp():
                return self._binary(node)
            case ast.Compare(left=left, ops=[sign], comparators=[right]):
                mark = f"<mo>{escape(_SIGNS[type(sign)])}</mo>"
                return [*self._print(left)[0], mark, *self._print(right)[0]], SUM
            case ast.Call(func=ast.Name(id=function), args=arguments):
                return self._call(function, arguments)
        raise NotImplementedError(f"no MathML for {ast.dump(node)}")

    def _held(self, node: ast.expr, strength: int) -> list[str]:
        """Return a piece, in brackets where it holds together less than its place asks."""
        pieces, own = self._print(node)
        return pieces if own >= strength else [_bracketed(pieces)]

    def _binary(self, node: ast.BinOp) -> Printed:
        left, right = node.left, node.right
        match node.op:
            case ast.Div():
                return [f"<mfrac>{self._one(left)}{self._one(right)}</mfrac>"], FRACTION
            case ast.Pow():
                base = _row(self._held(left, ATOM))
                return [f"<msup>{base}{self._one(right)}</msup>"], FRACTION
            case ast.Mult():
                times = f"<mo>{self._times}</mo>"
                factors = [*self._first_factor(left), times, *self._held(right, PRODUCT)]
                return factors, SUM if isinstance(left, ast.UnaryOp) else PRODUCT
        sign = f"<mo>{_SIGNS[type(node.op)]}</mo>"
        return [*self._print(left)[0], sign, *self._held(right, PRODUCT)], SUM

    def _first_factor(self, node: ast.expr) -> list[str]:
        """Return a first factor; a sign before it needs no brackets there."""
        if isinstance(node, ast.UnaryOp):
            return self._print(node)[0]
        return self._held(node, PRODUCT)

    def _call(self, function: str, arguments: list[ast.expr]) -> Printed:
        if function == "where":
            return [self._cases(*arguments)], FRACTION
        if function == "sqrt":
            return [f"<msqrt>{self.show(arguments[0])}</msqrt>"], ATOM
        name = _FUNCTIONS.get(function) or _EXTREMES[function]
        inside = "<mo>,</mo>".join(self.show(each) for each in arguments)
        return [f"<mi>{name}</mi>", _bracketed([inside])], FRACTION

    def _cases(self, condition: ast.expr, first: ast.expr, second: ast.expr) -> str:
        rows = self._case_rows(condition, first, second)
        return f"<mrow><mo>{{</mo><mtable>{rows}</mtable></mrow>"

    def _case_rows(self, condition: ast.expr, first: ast.expr, second: ast.expr) -> str:
        """Return a row for each case; one inside the last of another is one more row.

        Each cell holds one element, so that a narrow sheet may set cells one below the other.
        """
        when = f"<mtext>{self._words('workings.if')}{NO_BREAK}</mtext>"
        held = _row([when, *self.pieces(condition)])
        row = f"<mtr><mtd>{self._one(first)}</mtd><mtd>{held}</mtd></mtr>"
        match second:
            case ast.Call(func=ast.Name(id="where"), args=[condition, first, last]):
                return row + self._case_rows(condition, first, last)
        otherwise = f"<mtext>{self._words('workings.otherwise')}</mtext>"
        return f"{row}<mtr><mtd>{self._one(second)}</mtd><mtd>{otherwise}</mtd></mtr>"


def _row(pieces: list[str]) -> str:
    """Return MathML as the single child that a fraction or a power wants."""
    return pieces[0] if len(pieces) == 1 else f"<mrow>{''.join(pieces)}</mrow>"


def _bracketed(pieces: list[str]) -> str:
    return f"<mrow><mo>(</mo>{''.join(pieces)}<mo>)</mo></mrow>"


def _constant(text: str) -> Printed:
    """Return a number as it was written, a power of ten set as one."""
    number, _, exponent = text.removesuffix(".0").lower().partition("e")
    if not exponent:
        return [f"<mn>{number}</mn>"], ATOM
    ten = f"<msup><mn>10</mn><mn>{int(exponent)}</mn></msup>".replace("-", "\N{MINUS SIGN}")
    if number == "1":
        return [ten], FRACTION
    return [f"<mn>{number}</mn>", "<mo>×</mo>", ten], PRODUCT
