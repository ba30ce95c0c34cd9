"""A formula as JavaScript, printed from its own syntax tree, so that both work out the same.

The printed function takes single numbers in the order of the formula's parameters, its physical
constants last and given by default.
"""

from __future__ import annotations

import ast
import re

from hoistbook.engineering.formula import Formula
from hoistbook.engineering.glossary import GLOSSARY

_FUNCTIONS = {
    "sqrt": "Math.sqrt",
    "exp": "Math.exp",
    "log": "Math.log",
    "sin": "Math.sin",
    "cos": "Math.cos",
    "minimum": "Math.min",
    "maximum": "Math.max",
}
_SIGNS: dict[type[ast.AST], str] = {
    ast.Add: "+",
    ast.Sub: "-",
    ast.Mult: "*",
    ast.Div: "/",
    ast.Pow: "**",
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
}

_RESERVED = re.compile(
    "arguments|await|case|catch|const|debugger|default|delete|do|enum|eval|export|extends|"
    "function|implements|instanceof|interface|let|new|null|package|private|protected|public|"
    "static|super|switch|this|throw|typeof|var|void"
)
"""Words of JavaScript that Python lets one use as names (ECMA-262, 12.7.2)."""


def javascript(formula: Formula) -> str:
    """Return a formula as a JavaScript function.

    Examples
    --------
    >>> from hoistbook.engineering import FORMULAS
    >>> print(javascript(FORMULAS["power_to_mass"]))
    (power, vehicle_mass) => {
      return (power / vehicle_mass);
    }
    """
    inputs = inputs_of(formula)
    constants = [key for key in formula.parameters if key not in inputs]
    taken = [
        *map(_name, inputs),
        *(f"{_name(key)} = {GLOSSARY[key].default!r}" for key in constants),
    ]
    lines = [f"  {line}" for statement in formula.tree.body if (line := _line(statement))]
    return "\n".join([f"({', '.join(taken)}) => {{", *lines, "}"])


def inputs_of(formula: Formula) -> tuple[str, ...]:
    """Return the parameters that are no physical constants, in their order."""
    return tuple(key for key in formula.parameters if GLOSSARY[key].default is None)


def _line(statement: ast.stmt) -> str:
    match statement:
        case ast.Expr(value=ast.Constant(value=str())):
            return ""  # the docstring
        case ast.Assign(targets=[ast.Name(id=name)], value=value):
            return f"const {_name(name)} = {_expression(value)};"
        case ast.Return(value=ast.expr() as value):
            return f"return {_expression(value)};"
    raise NotImplementedError(f"no JavaScript for {ast.dump(statement)}")


def _name(name: str) -> str:
    return f"{name}_" if _RESERVED.fullmatch(name) else name


def _expression(node: ast.expr) -> str:
    """Return an expression with every operation in brackets, so that none binds otherwise."""
    match node:
        case ast.Name(id="pi"):
            return "Math.PI"
        case ast.Name(id=name):
            return _name(name)
        case ast.Constant(value=float() | int() as number):
            return repr(number)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return f"(-{_expression(operand)})"
        case ast.BinOp(left=left, op=sign, right=right):
            return _between(left, sign, right)
        case ast.Compare(left=left, ops=[sign], comparators=[right]):
            return _between(left, sign, right)
        case ast.Call(func=ast.Name(id="where"), args=[condition, first, second]):
            asked, yes, no = (_expression(each) for each in (condition, first, second))
            return f"({asked} ? {yes} : {no})"
        case ast.Call(func=ast.Name(id=function), args=arguments):
            return f"{_FUNCTIONS[function]}({', '.join(map(_expression, arguments))})"
    raise NotImplementedError(f"no JavaScript for {ast.dump(node)}")


def _between(left: ast.expr, sign: ast.AST, right: ast.expr) -> str:
    return f"({_expression(left)} {_SIGNS[type(sign)]} {_expression(right)})"
