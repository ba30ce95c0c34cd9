"""How one figure came about, from the author's line to the page, for the terminal."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from hoistbook.engineering.formula import FORMULAS, Formula
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.figure import Figure, Input, Missing
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.shown import FigureRow
from hoistbook.printed.block import Block
from hoistbook.printed.facts import figure_block


def workings_blocks(desk: Desk, quantity: str, number: int) -> Iterator[Block]:
    """Yield the workings of a quantity, of all its subjects, as at an episode."""
    for each in desk.figures[number].figures:
        if each.key.quantity == quantity:
            yield from _missing(desk, each) if isinstance(each, Missing) else _worked(desk, each)


def _missing(desk: Desk, missing: Missing) -> Iterator[Block]:
    rows = tuple((each,) for each in missing.give)
    yield Block(title=f"{_title(desk, missing)}: missing", headings=("Give",), rows=rows)


def _worked(desk: Desk, figure: Figure) -> Iterator[Block]:
    if figure.inputs:
        yield Block(
            title=f"{_title(desk, figure)}: the numbers put in",
            headings=("Quantity", ">Value", "95 % band", "Evidence", ">Share", "From", "Line"),
            rows=tuple(_input(desk, each) for each in figure.inputs),
        )
    if figure.formula:
        yield _formula(FORMULAS[figure.formula])
    row = FigureRow(
        title=_name(desk, figure), subject=desk.subject(figure.key), now=desk.number(figure)
    )
    yield figure_block([row])
    rows = [
        ("page", links.file_path(desk.workings(figure)), desk.workings(figure).partition("#")[2])
    ]
    yield Block(
        title="Where it stands", headings=("", "File of the site", "Anchor"), rows=tuple(rows)
    )
    if figure.notes:
        yield Block(title="Notes", headings=("",), rows=tuple((each,) for each in figure.notes))


def _title(desk: Desk, figure: Figure | Missing) -> str:
    subject = desk.subject(figure.key)
    of = f" of {subject.text}" if subject else ""
    return f"{_name(desk, figure)}{of}, set in episode {figure.episode}"


def _name(desk: Desk, figure: Figure | Missing) -> str:
    """Return the title of a figure, the words of the glossary where it is a step on the way."""
    quantity = figure.key.quantity
    return desk.titles.get(quantity) or GLOSSARY[quantity].words.capitalize()


def _input(desk: Desk, given: Input) -> tuple[str, ...]:
    value, band = desk.formats.input(given)
    share = desk.formats.share(given.share) if given.share else ""
    line = str(given.place) if given.place else ""
    return (GLOSSARY[given.name].words, value, band, desk.known(given), share, given.origin, line)


def _formula(formula: Formula) -> Block:
    """Return a formula as its source has it, with what has to be said beside it."""
    reference = formula.reference
    cited = ", ".join(
        each
        for each in (
            reference.authors,
            reference.title,
            reference.publisher,
            str(reference.year or ""),
            formula.where,
            reference.seen,
        )
        if each
    )
    rows = [*(("", line) for line in _lines(formula)), ("source", cited)]
    rows += [("assumes", each) for each in formula.assumes]
    return Block(title="Formula", headings=("", formula.name), rows=tuple(rows))


def _lines(formula: Formula) -> Iterator[str]:
    for statement in formula.tree.body:
        if isinstance(statement, ast.Return) and statement.value is not None:
            yield f"{formula.result} = {ast.unparse(statement.value)}"
        elif isinstance(statement, ast.Assign):
            yield ast.unparse(statement)
