"""The record of a formula, and the decorator that registers a plain function as one.

A formula is one closed expression: assignments and one `return`, keyword parameters named by keys
of the glossary, values in the glossary's units. Its author writes the factors in the textbook's
order, because the workings are printed from the function's own syntax tree. Validity, assumptions
and source stand in the decorator and nowhere else; the docstring has equation, units, an example.

To add one: write the function in its topic's module, its new quantities in `glossary`, its source
in `hoistbook.references`, and a case in `tests/engineering/handbook/`; then count the cases anew
with `python -m tests.engineering.write_check_counts`. Each of these that is left out fails a test
that says so.
"""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property

from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.engineering.maths import Value
from hoistbook.references import REFERENCES, Reference


@dataclass(frozen=True, kw_only=True)
class Formula:
    """One formula: its function and what has to be said beside it."""

    name: str
    """Name of the function, a noun of what it returns."""
    function: Callable[..., Value]
    """Takes keyword arguments only; for floats, NumPy arrays or SymPy expressions."""
    parameters: tuple[str, ...]
    """Glossary keys, in the order of the signature."""
    result: str
    """Glossary key of what it returns; several formulas may return one quantity."""
    reference: Reference
    where: str
    """Where it stands in the reference: an equation, a section, a page."""
    valid: Mapping[str, tuple[float, float]]
    """Range by parameter or result, both ends included; judged by the caller, never clipped."""
    assumes: tuple[str, ...]
    """Assumptions, one sentence each."""

    def __call__(self, **values: Value) -> Value:
        """Return the result; physical constants that are not given come from the glossary."""
        constants = {
            key: GLOSSARY[key].default
            for key in self.parameters
            if GLOSSARY[key].default is not None
        }
        return self.function(**(constants | values))

    @cached_property
    def tree(self) -> ast.FunctionDef:
        """The function's syntax tree, docstring included, as its author ordered it."""
        (definition,) = ast.parse(textwrap.dedent(inspect.getsource(self.function))).body
        if not isinstance(definition, ast.FunctionDef):
            raise TypeError(f"formula {self.name} is not written as a function")
        return definition

    @property
    def summary(self) -> str:
        """First line of the docstring."""
        return inspect.cleandoc(self.function.__doc__ or "").partition("\n")[0]

    def outside(self, values: Mapping[str, float]) -> tuple[str, ...]:
        """Return the keys whose value lies outside the formula's valid range."""
        return tuple(
            key
            for key, (low, high) in self.valid.items()
            if key in values and not low <= values[key] <= high
        )


FORMULAS: dict[str, Formula] = {}
"""Every formula by its name; importing `hoistbook.engineering` fills it."""


def formula(
    *,
    reference: str,
    where: str,
    result: str = "",
    valid: Mapping[str, tuple[float, float]] | None = None,
    assumes: tuple[str, ...] = (),
) -> Callable[[Callable[..., Value]], Callable[..., Value]]:
    """Register the decorated function as a formula and return it unchanged.

    Parameters
    ----------
    reference
        Key of the list of references.
    where
        Equation, section or page in it.
    result
        Glossary key of what is returned; the function's own name when left out.
    valid
        Range by glossary key.
    assumes
        Assumptions, one sentence each.
    """

    def register(function: Callable[..., Value]) -> Callable[..., Value]:
        name = function.__name__
        FORMULAS[name] = Formula(
            name=name,
            function=function,
            parameters=tuple(inspect.signature(function).parameters),
            result=result or name,
            reference=REFERENCES[reference],
            where=where,
            valid=dict(valid or {}),
            assumes=assumes,
        )
        return function

    return register
