"""The few functions a formula may call, each for floats, NumPy arrays and SymPy expressions.

A formula is written once and called with whichever of the three the caller has, so these look at
the type of their arguments. SymPy takes a third of a second to import: it is never imported here,
only used when the caller has handed over one of its expressions.
"""

from __future__ import annotations

import math
import sys
from types import ModuleType
from typing import Any, TypeAlias

import numpy as np

Value: TypeAlias = Any
"""A float, a NumPy array or a SymPy expression; a formula returns what it was given."""

pi = math.pi


def _home(*arguments: Value) -> ModuleType:
    """Return the library that the arguments belong to."""
    sympy = sys.modules.get("sympy")
    if sympy is not None and any(isinstance(each, sympy.Basic) for each in arguments):
        return sympy
    if any(isinstance(each, np.ndarray) for each in arguments):
        return np
    return math


def sqrt(x: Value) -> Value:
    """Return the square root."""
    return _home(x).sqrt(x)


def exp(x: Value) -> Value:
    """Return e to the power x."""
    return _home(x).exp(x)


def log(x: Value) -> Value:
    """Return the natural logarithm."""
    return _home(x).log(x)


def sin(x: Value) -> Value:
    """Return the sine of an angle in radians."""
    return _home(x).sin(x)


def cos(x: Value) -> Value:
    """Return the cosine of an angle in radians."""
    return _home(x).cos(x)


def minimum(a: Value, b: Value) -> Value:
    """Return the lesser of two values, element by element."""
    home = _home(a, b)
    if home is math:
        return min(a, b)
    return np.minimum(a, b) if home is np else home.Min(a, b)


def maximum(a: Value, b: Value) -> Value:
    """Return the greater of two values, element by element."""
    home = _home(a, b)
    if home is math:
        return max(a, b)
    return np.maximum(a, b) if home is np else home.Max(a, b)


def where(condition: Value, if_true: Value, if_false: Value) -> Value:
    """Return one of two values by a condition, element by element."""
    home = _home(condition, if_true, if_false)
    if home is math:
        return if_true if condition else if_false
    if home is np:
        return np.where(condition, if_true, if_false)
    return home.Piecewise((if_true, condition), (if_false, True))
