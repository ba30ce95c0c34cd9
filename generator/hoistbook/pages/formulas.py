"""A formula as the workings print it: in symbols, with its source and what it holds for."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from hoistbook.engineering.formula import Formula
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.pages.desk import Desk
from hoistbook.pages.mathml import in_symbols
from hoistbook.references import Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class Cited:
    """A source in full."""

    text: str
    where: str
    """"equation 2.27, section 2.10"."""
    seen: str
    """Whether the text was read, or is cited from memory."""
    address: str
    """Its DOI as a URL; empty without."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaShown:
    """A formula in symbols, with what has to be said beside it."""

    id: str
    summary: str
    """What it gives: "the power to mass"."""
    equations: tuple[Markup, ...]
    cited: Cited
    valid: tuple[str, ...]
    assumes: tuple[str, ...]


def formula_shown(desk: Desk, formula: Formula) -> FormulaShown:
    """Return a formula in symbols, with its source, valid range and assumptions."""
    return FormulaShown(
        id=formula_id(formula),
        summary=noun(formula),
        equations=in_symbols(formula, desk.words),
        cited=_cited(desk, formula.reference, formula.where),
        valid=tuple(
            desk.words(
                "workings.valid", words=short_words(key), range=desk.formats.span(low, high, key)
            )
            for key, (low, high) in formula.valid.items()
        ),
        assumes=formula.assumes,
    )


def formula_id(formula: Formula) -> str:
    """Return the id that a formula has on pages."""
    return f"formula-{formula.name}"


def noun(formula: Formula) -> str:
    """Return what a formula gives: "the power at the crank"."""
    return formula.summary.removeprefix("Return ").rstrip(".")


def _cited(desk: Desk, reference: Reference, where: str) -> Cited:
    seen = desk.words(f"workings.{reference.seen}")
    if not reference.publisher:
        return Cited(text=capital(seen), where=where, seen="", address="")
    key = "workings.cited" if reference.year else "workings.cited_undated"
    text = desk.words(
        key,
        authors=reference.authors,
        title=reference.title,
        publisher=reference.publisher,
        year=reference.year,
    )
    return Cited(
        text=text.rstrip(" ."),
        where=where,
        seen=seen,
        address=f"https://doi.org/{reference.doi}" if reference.doi else "",
    )


def short_words(key: str) -> str:
    """Return what a quantity is called in a sentence: its words up to the first explanation."""
    return GLOSSARY[key].words.partition(":")[0].partition(",")[0]


def capital(text: str) -> str:
    """Return a text that begins with a capital letter."""
    return text[:1].upper() + text[1:]
