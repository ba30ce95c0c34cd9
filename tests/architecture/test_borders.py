"""Each outside library has its home: only the files named here may import it."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[2] / "generator/hoistbook"

HOMES = {
    "babel": {"pages/formats.py", "pages/numerals.py", "pages/words.py", "values/money.py"},
    "click": {"cli.py"},
    "currency_converter": {"authored/rates.py"},
    "jinja2": {"pages/environment.py"},
    "markdown_it": {"authored/prose.py", "pages/prose.py"},
    "markupsafe": {
        "pages/environment.py",
        "pages/chain.py",
        "pages/episode.py",
        "pages/formula_list.py",
        "pages/formulas.py",
        "pages/mathml.py",
        "pages/parts_copy.py",
        "pages/prose.py",
        "pages/worked.py",
        "pages/workings.py",
    },
    "matplotlib": {"pages/drawing.py"},
    "PIL": {"authored/pictures.py", "publish/pictures.py"},
    "pint": {"units.py"},
    "pyelk": {"pages/circuit_layout.py"},
    "rich": {"console.py"},
    "starlette": {"preview/serve.py"},
    "uvicorn": {"preview/serve.py"},
    "watchdog": {"preview/watch.py"},
    "yaml": {"authored/front_matter.py", "cautions/texts.py", "pages/words.py"},
}
"""NumPy is not named: engineering and figures are written in it."""

LONGEST = 400


def modules() -> Iterator[Path]:
    yield from sorted(PACKAGE.rglob("*.py"))


def imported(file: Path) -> set[str]:
    """Return the top names of all libraries that a file imports, wherever in it."""
    names = set()
    for node in ast.walk(ast.parse(file.read_bytes())):
        if isinstance(node, ast.Import):
            names |= {each.name.partition(".")[0] for each in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module.partition(".")[0])
    return names


def test_every_outside_library_is_imported_in_its_home_alone() -> None:
    homes: dict[str, set[str]] = {}
    for file in modules():
        for name in imported(file) - set(sys.stdlib_module_names) - {"hoistbook", "numpy"}:
            homes.setdefault(name, set()).add(file.relative_to(PACKAGE).as_posix())

    assert homes == HOMES


def test_no_file_is_too_long_to_be_read_in_one_go() -> None:
    repository = PACKAGE.parents[1]
    files = [*modules(), *sorted((repository / "tests").rglob("*.py"))]
    lengths = {
        file.relative_to(repository).as_posix(): len(file.read_text().splitlines())
        for file in files
        if "node_modules" not in file.parts
    }

    assert {file: lines for file, lines in lengths.items() if lines > LONGEST} == {}


def test_every_package_says_what_it_is_for() -> None:
    silent = [
        file.parent.name
        for file in modules()
        if file.name == "__init__.py" and not ast.get_docstring(ast.parse(file.read_bytes()))
    ]

    assert silent == []
