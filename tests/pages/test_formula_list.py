"""Where each formula is used: in this journal, or honestly nowhere."""

from __future__ import annotations

import ast
from dataclasses import replace
from pathlib import Path

from hoistbook.engineering import FORMULAS
from hoistbook.engineering.formula_list import formula_list
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.figure import Figure, Figures
from hoistbook.figures.inputs import inputs_of
from hoistbook.figures.stage import estimates
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.formula_list import CALLED, FormulasContext, TopicContext, formula_pages
from hoistbook.pages.formulas import capital, noun
from hoistbook.printed.formulas import formula_blocks
from tests.engineering.handbook import read_cases
from tests.figures.states import boosted
from tests.pages.sample import sample_material

PACKAGE = Path(__file__).parents[2] / "generator" / "hoistbook"
NOT_USED = "no figure of this journal, whose record does not call for it"
CHECK_ONLY = "no figure: a reference check only"
READ = "no figure of its own here: called where a power run, its air or a weather report is read"


def desk() -> Desk:
    """Return the sample with the figures of a boosted car that says everything."""
    inputs = inputs_of(boosted())
    material = sample_material()
    figures = tuple(
        Figures(episode=each.episode, figures=estimates(inputs), inputs=inputs)
        for each in material.figures
    )
    return desk_of(replace(material, figures=figures))


def test_a_case_that_several_formulas_have_a_part_in_counts_as_one_value() -> None:
    listing = next(iter(formula_pages(desk()))).context
    assert isinstance(listing, FormulasContext)
    assert listing.lead == (
        f"{len(FORMULAS)} formulas, held against {len(read_cases())} reference values whenever "
        "the program's tests run. Each stands in symbols on the page of its topic."
    )


def test_a_formula_leads_to_every_working_that_uses_it_and_one_unused_to_none() -> None:
    at = desk()
    first = next(formula_pages(at))
    assert isinstance(first.context, FormulasContext)
    rows = [row for topic in first.context.topics for row in topic.rows]
    used: dict[str, set[str]] = {}
    for each in at.figures[at.last].figures:
        if isinstance(each, Figure):
            used.setdefault(each.formula, set()).add(f"/workings/{each.key.quantity}/")
    for listed, row in zip(formula_list(), rows, strict=True):
        assert {each.address for each in row.used} == used.get(listed.name, set()), listed.name
    why = {row.unused for row in rows if not row.used}
    assert why == {NOT_USED, CHECK_ONLY, READ}
    read = {
        each.name
        for each, row in zip(formula_list(), rows, strict=True)
        if not row.used and row.unused == READ
    }
    assert read == {
        "dry_air_pressure",
        "standard_pressure",
        "station_pressure",
        "power_of_torque",
        "sae_j1349_correction",
        "iso_1585_correction",
        "din_70020_correction",
        "sae_j607_correction",
    }


def test_a_formula_that_no_code_calls_is_called_a_check_only() -> None:
    called: set[str] = {row.formula for row in CATALOGUE}
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and "engineering" in (node.module or ""):
                called |= {each.name for each in node.names} & FORMULAS.keys()
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
                called |= {node.func.attr} & FORMULAS.keys()
            match node:
                case ast.Subscript(value=ast.Name(id="FORMULAS"), slice=ast.Constant(value=name)):
                    called.add(str(name))
    assert called == CALLED


def test_the_page_of_a_topic_says_what_takes_a_result() -> None:
    pages = {page.address: page.context for page in formula_pages(desk())}
    pipes = pages["/workings/formulas/pipes/"]
    assert isinstance(pipes, TopicContext)
    velocity = next(each for each in pipes.formulas if each.shown.id == "formula-pipe_velocity")
    assert [each.text for each in velocity.row.taken_by] == [
        "the Mach number in the pipe",
        "the pressure lost in the pipe with its bends and ends",
    ]


def test_the_command_prints_the_list_of_the_page() -> None:
    blocks = list(formula_blocks(desk(), 0))
    rows = {row[0]: row for block in blocks for row in block.rows}
    assert sum(len(block.rows) for block in blocks) == len(FORMULAS)
    bend = FORMULAS["bend_loss_coefficient"]
    assert rows[capital(noun(bend))] == (
        "The loss coefficient of a smooth bend",
        "D. C. Rennels, H. M. Hudson, 2012, from memory",
        rows[capital(noun(bend))][2],
        "Loss coefficient of a bend",
    )
    index = noun(FORMULAS["anti_knock_index"])
    assert rows[capital(index)][3] == CHECK_ONLY
