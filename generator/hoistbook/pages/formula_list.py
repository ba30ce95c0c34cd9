"""Every formula there is: one list, and for each topic a page with its formulas in symbols."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from hoistbook.engineering.check_counts import REFERENCE_VALUES
from hoistbook.engineering.formula import FORMULAS
from hoistbook.engineering.formula_list import TOPICS, Listed, formula_list
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.engineering.power_standards import STANDARDS
from hoistbook.figures.catalogue import CATALOGUE
from hoistbook.figures.figure import Figure
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import FormulaShown, capital, formula_id, formula_shown, noun
from hoistbook.pages.mathml import inline_symbol
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Sheet
from hoistbook.references import Reference

INPUTS_USE = ("power_of_torque", "standard_pressure", "station_pressure")
"""Formulas that are no line of the table of figures: reading the air and power runs calls them."""
CALLED = frozenset(INPUTS_USE) | {row.formula for row in CATALOGUE}
"""Every formula that some journal can have a number from; the others only check these."""
READING = frozenset(INPUTS_USE) | {"dry_air_pressure", *STANDARDS.values()}
"""Those that pages have numbers from without a figure: the air and the power of runs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaRow:
    """One formula of the list."""

    formula: Link
    """Leads to it in symbols."""
    source: str
    check_values: str
    """How many reference values it is held against: "4"."""
    used: tuple[Link, ...]
    """Workings of this journal that use it; empty where none does."""
    unused: str
    """Why no figure uses it, where none does."""
    taken_by: tuple[Link, ...]
    """Formulas that take its result."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicRows:
    """The formulas of one topic."""

    id: str
    title: Link
    rows: tuple[FormulaRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulasContext(Sheet):
    """`formulas.html`: the list."""

    topics: tuple[TopicRows, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SymbolRow:
    """One symbol of a topic."""

    symbol: Markup
    words: str
    unit: str
    """SI, as it stands in formulas; empty for a plain number."""
    value: str
    """Of a physical constant; empty for everything else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicFormula:
    """One formula of a topic in symbols."""

    title: str
    shown: FormulaShown
    row: FormulaRow


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicContext(Sheet):
    """`formula-topic.html`: the formulas of one topic."""

    formulas: tuple[TopicFormula, ...]
    symbols: tuple[SymbolRow, ...]


def formula_pages(desk: Desk) -> Iterator[Page]:
    """Yield the list of formulas and the page of each topic."""
    users = _users(desk)
    groups = [
        (topic, tuple(group)) for topic, group in groupby(formula_list(), lambda each: each.topic)
    ]
    yield _list(desk, groups, users)
    for topic, listed in groups:
        yield _topic(desk, topic, listed, users)


def _users(desk: Desk) -> Mapping[str, dict[str, None]]:
    """Return for each formula the quantities of this journal that are worked out by it."""
    users: dict[str, dict[str, None]] = {}
    for figures in desk.figures.values():
        for each in figures.figures:
            if isinstance(each, Figure) and each.formula:
                users.setdefault(each.formula, {})[each.key.quantity] = None
    return users


def _list(
    desk: Desk,
    groups: Iterable[tuple[str, tuple[Listed, ...]]],
    users: Mapping[str, dict[str, None]],
) -> Page:
    title = desk.words("formulas.title")
    every = formula_list()
    topics = tuple(
        TopicRows(
            id=_slug(topic),
            title=Link(text=topic, address=links.formula_topic(_slug(topic))),
            rows=tuple(_row(desk, each, users) for each in listed),
        )
        for topic, listed in groups
    )
    return Page(
        address=links.FORMULAS,
        template="formulas.html",
        title=title,
        description=desk.words("formulas.description", n=len(every)),
        context=FormulasContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words(
                "formulas.lead",
                formulas=desk.formats.count(len(every)),
                values=desk.formats.count(REFERENCE_VALUES),
            ),
            contents=tuple(Link(text=each.title.text, address=f"#{each.id}") for each in topics),
            topics=topics,
        ),
        owed=desk.owed(links.FORMULAS),
    )


def _topic(
    desk: Desk, topic: str, listed: tuple[Listed, ...], users: Mapping[str, dict[str, None]]
) -> Page:
    address = links.formula_topic(_slug(topic))
    title = desk.words("formulas.topic", topic=topic)
    formulas = tuple(
        TopicFormula(
            title=capital(noun(FORMULAS[each.name])),
            shown=formula_shown(desk, FORMULAS[each.name]),
            row=_row(desk, each, users),
        )
        for each in listed
    )
    return Page(
        address=address,
        template="formula-topic.html",
        title=title,
        description=desk.words("formulas.topic_description", topic=topic, n=len(listed)),
        context=TopicContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("workings.units"),
            contents=tuple(
                Link(text=each.title, address=f"#{each.shown.id}") for each in formulas
            ),
            formulas=formulas,
            symbols=tuple(_symbols(desk, listed)),
        ),
        owed=desk.owed(address),
    )


def _row(desk: Desk, listed: Listed, users: Mapping[str, dict[str, None]]) -> FormulaRow:
    formula = FORMULAS[listed.name]
    workings = tuple(
        Link(
            text=desk.titles.get(quantity) or capital(GLOSSARY[quantity].words),
            address=links.workings(quantity),
        )
        for quantity in users.get(listed.name, ())
    )
    return FormulaRow(
        formula=Link(text=capital(noun(formula)), address=_to(listed.name).address),
        source=_source(desk, listed.reference),
        check_values=desk.formats.count(listed.check_values),
        used=workings,
        unused=desk.words(f"formulas.{_unused(listed.name)}"),
        taken_by=tuple(_to(other) for other in listed.taken_by),
    )


def _unused(name: str) -> str:
    """Return the words for why no figure is worked out by a formula."""
    if name in READING:
        return "reading"
    return "not_used" if name in CALLED else "check_only"


def _source(desk: Desk, reference: Reference) -> str:
    """Return a source in short, and whether it is only remembered."""
    if not reference.publisher:
        return desk.words(f"workings.{reference.seen}")
    known = ", ".join(filter(None, (reference.authors, str(reference.year or ""))))
    remembered = reference.seen == "from memory"
    return desk.words("formulas.from_memory", source=known) if remembered else known


def _to(name: str) -> Link:
    """Return a link to a formula in symbols."""
    return Link(text=noun(FORMULAS[name]), address=formula_address(name))


def formula_address(name: str) -> str:
    """Return where a formula stands in symbols, by its name."""
    formula = FORMULAS[name]
    topic = TOPICS[formula.function.__module__.rpartition(".")[2]]
    return f"{links.formula_topic(_slug(topic))}#{formula_id(formula)}"


def _slug(topic: str) -> str:
    """Return a topic as it stands in addresses: the name of its module, with hyphens."""
    return next(name for name, title in TOPICS.items() if title == topic).replace("_", "-")


def _symbols(desk: Desk, listed: Iterable[Listed]) -> Iterator[SymbolRow]:
    """Yield each symbol of some formulas once, in the order of the glossary."""
    formulas = [FORMULAS[each.name] for each in listed]
    used = {key for each in formulas for key in (*each.parameters, each.result)}
    for key, term in GLOSSARY.items():
        if key in used:
            yield SymbolRow(
                symbol=inline_symbol(key),
                words=term.words,
                unit=desk.formats.si_unit(key),
                value="" if term.default is None else desk.formats.quantity(term.default, key),
            )
