"""The workings: how each figure came about, one page for each quantity.

A page has an entry for every subject and every episode that changed the figure's inputs, so that a
number on any page of any episode leads to its own. The latest are shown whole; where they are many
the earlier ones are one row each, for a page must stay light.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from hoistbook.engineering.formula import FORMULAS
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Inputs
from hoistbook.figures.figure import Figure, Missing
from hoistbook.pages import links
from hoistbook.pages.beside_workings import tables_beside
from hoistbook.pages.chain import chain_sheets
from hoistbook.pages.charts import chart_of
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import FormulaShown, capital, formula_shown
from hoistbook.pages.mathml import inline_symbol
from hoistbook.pages.own_numbers import Chains, Json
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Chart, Link, Number, PlainTable, Sheet
from hoistbook.pages.worked import Entry, entry_of, heading_of

MOST_NODES = 800
"""Of a page's 1,400 elements, what its whole entries may take."""

Worked = tuple[Figure, Inputs | None]
"""A figure with what its state starts from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierRow:
    """One figure as at an earlier episode, as a row."""

    id: str
    heading: str
    episode: Link
    number: Number
    put_in: str
    """The numbers put in, in one line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingsContext(Sheet):
    """`workings.html`: all figures of one quantity."""

    words: str
    symbol: Markup
    formulas: tuple[FormulaShown, ...]
    entries: tuple[Entry, ...]
    earlier: tuple[EarlierRow, ...]
    missing: tuple[WorkedRow, ...]
    """Figures that cannot be worked out as at the last episode, with what to give."""
    chart: Chart | None
    tables: tuple[PlainTable, ...]
    """What belongs to the quantity and is no formula, as at the last episode."""
    chains: tuple[Json, ...]
    """What the script of a reader's own numbers works out anew, by the numbers in the entries."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedRow:
    """A figure of the last episode as a row of the index."""

    quantity: Link
    symbol: Markup
    subject: Link | None
    number: Number | None
    """None when it is not known."""
    missing: tuple[str, ...]
    """What to give then."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingsIndexContext(Sheet):
    """`workings-index.html`: every figure as at the last episode."""

    rows: tuple[WorkedRow, ...]
    steps: tuple[WorkedRow, ...]
    """Results on the way to these."""
    beside: tuple[Link, ...]
    """The whole chain, the list of formulas, the page on accuracy."""


def workings_pages(desk: Desk) -> Iterator[Page]:
    """Yield the index of the workings and the page of every quantity that has any."""
    yield _index(desk)
    for quantity in _quantities(desk):
        worked = _worked(desk, quantity)
        missing = [
            each
            for each in desk.figures[desk.last].figures
            if isinstance(each, Missing) and each.key.quantity == quantity
        ]
        if worked or missing:
            yield _page(desk, quantity, worked, missing)


def _quantities(desk: Desk) -> Iterable[str]:
    """Return the quantities that the journal has, in the order of the chain."""
    return dict.fromkeys(
        each.key.quantity for figures in desk.figures.values() for each in figures.figures
    )


def _title(desk: Desk, quantity: str) -> str:
    """Return a quantity's title; a step on the way has none but its words."""
    return desk.titles.get(quantity) or capital(GLOSSARY[quantity].words)


def _index(desk: Desk) -> Page:
    title = desk.words("workings.title")
    now = desk.figures[desk.last].figures
    return Page(
        address=links.WORKINGS,
        template="workings-index.html",
        title=title,
        description=desk.words("workings.description", title=desk.material.journal.title),
        context=WorkingsIndexContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("workings.lead"),
            rows=tuple(_worked_row(desk, each) for each in now if not _is_step(each)),
            steps=tuple(_worked_row(desk, each) for each in now if _is_step(each)),
            beside=tuple(_beside(desk)),
        ),
        owed=desk.owed(links.WORKINGS),
    )


def _beside(desk: Desk) -> Iterator[Link]:
    yield from chain_sheets(desk)
    yield Link(text=desk.words("formulas.title"), address=links.FORMULAS)
    yield Link(text=desk.words("accuracy.title"), address=links.ACCURACY)


def _is_step(figure: Figure | Missing) -> bool:
    return isinstance(figure, Figure) and figure.step


def _worked_row(desk: Desk, figure: Figure | Missing) -> WorkedRow:
    quantity = figure.key.quantity
    return WorkedRow(
        quantity=Link(text=_title(desk, quantity), address=links.workings(quantity)),
        symbol=inline_symbol(quantity),
        subject=desk.subject(figure.key),
        number=desk.number(figure) if isinstance(figure, Figure) else None,
        missing=figure.give if isinstance(figure, Missing) else (),
    )


def _worked(desk: Desk, quantity: str) -> list[Worked]:
    """Return each figure of a quantity once for each episode that changed it, the latest first."""
    found = {
        (each.key, each.episode): (each, figures.inputs)
        for figures in desk.figures.values()
        for each in figures.figures
        if isinstance(each, Figure) and each.key.quantity == quantity
    }
    return sorted(found.values(), key=lambda each: -each[0].episode)


def _page(desk: Desk, quantity: str, worked: Sequence[Worked], missing: Sequence[Missing]) -> Page:
    title, said = _title(desk, quantity), GLOSSARY[quantity].words
    address = links.workings(quantity)
    used = dict.fromkeys(each.formula for each, _ in worked if each.formula)
    chains = Chains()
    entries, earlier = _within_weight(desk, worked, chains)
    return Page(
        address=address,
        template="workings.html",
        title=desk.words("workings.page_title", title=title),
        description=desk.words("workings.page_description", title=title, words=said),
        context=WorkingsContext(
            heading=title,
            margin=desk.margin(),
            lead=desk.words("workings.page_lead", words=capital(said), number=desk.last),
            words=said,
            symbol=inline_symbol(quantity),
            formulas=tuple(formula_shown(desk, FORMULAS[name]) for name in used),
            entries=entries,
            earlier=earlier,
            missing=tuple(_worked_row(desk, each) for each in missing),
            chart=chart_of(desk, quantity, desk.last),
            tables=tables_beside(desk, quantity),
            chains=tuple(chains.listed),
        ),
        owed=desk.owed(address),
    )


def _within_weight(
    desk: Desk, worked: Sequence[Worked], chains: Chains
) -> tuple[tuple[Entry, ...], tuple[EarlierRow, ...]]:
    """Return the latest figures whole, as many as a page can carry, and the others as rows."""
    whole: list[Entry] = []
    nodes = 0
    for figure, inputs in worked:
        entry = entry_of(desk, figure, inputs, chains)
        nodes += 36 + 13 * len(entry.inputs) + 3 * len(entry.shares)
        nodes += sum(each.count("</") for each in entry.equations)
        if whole and nodes > MOST_NODES:
            break
        whole.append(entry)
    return tuple(whole), tuple(_earlier(desk, each) for each, _ in worked[len(whole) :])


def _earlier(desk: Desk, figure: Figure) -> EarlierRow:
    return EarlierRow(
        id=links.entry(figure.key, figure.episode),
        heading=heading_of(desk, figure),
        episode=desk.episode(figure.episode),
        number=desk.number(figure),
        put_in=", ".join(
            desk.words(
                "workings.put_in",
                words=GLOSSARY[each.name].words,
                value=desk.formats.input(each)[0],
            )
            for each in figure.inputs
        ),
    )
