"""Counts the handbook's cases by formula, for the list of formulas that pages print.

Run with `python -m tests.engineering.write_check_counts` after a case was added; a test says when.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from tests.engineering.handbook import read_cases

TARGET = Path(__file__).parents[2] / "generator/hoistbook/engineering/check_counts.py"

HEAD = '''"""How many reference values each formula is held against.

Written by `python -m tests.engineering.write_check_counts` from the handbook of the tests, which
no installation carries.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

REFERENCE_VALUES = {cases}
"""Cases of the handbook; one that several formulas have a part in counts once."""

CHECK_COUNTS: Mapping[str, int] = MappingProxyType(
    {{
'''
FOOT = '''    }
)
"""By the formula's name: cases of the handbook whose value it has a part in."""
'''


def check_counts() -> str:
    """Return the text of the module of counts."""
    cases = read_cases()
    counts = Counter(name for case in cases for name in set(case.formulas))
    rows = "".join(f'        "{name}": {counts[name]},\n' for name in sorted(counts))
    return HEAD.format(cases=len(cases)) + rows + FOOT


if __name__ == "__main__":
    TARGET.write_text(check_counts(), "utf-8")
