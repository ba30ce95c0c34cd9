"""The workings: how each figure came about, one page for each quantity.

A page has an entry for every subject and every episode that changed the figure's inputs, so that a
number on any page of any episode leads to its own. The latest are shown whole; where they are many
the earlier ones are one row each, for a page must stay light.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from hoistbook.engineering.formula import FORMULAS
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.figure import Figure, Input, Key, Missing
from hoistbook.pages import links
from hoistbook.pages.charts import chart_of
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import FormulaShown, capital, formula_shown
from hoistbook.pages.mathml import inline_symbol, with_numbers
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Chart, Link, Number, Sheet

MOST_NODES = 800
"""Of a page's 1,400 elements, what its whole entries may take."""

LEAST_SHARE = 0.02
"""What brings less of the variance to a band is not listed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InputRow:
    """One number that went into a figure."""

    symbol: Markup
    words: str
    value: str
    band: str
    evidence: str
    origin: Link
    """Where it came from; leads to the author's episode or to its own workings, or nowhere."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """What one number that everything rests on brings to the width of the band."""

    words: str
    evidence: str
    origin: Link
    share: str
    """Of the variance: "62 %"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One figure as at one episode, shown whole."""

    id: str
    heading: str
    subject: Link | None
    episode: Link
    number: Number
    formula: str
    """Id of its formula; empty for a measurement."""
    equations: tuple[Markup, ...]
    """The formula with the numbers put in."""
    inputs: tuple[InputRow, ...]
    shares: tuple[Share, ...]
    """What makes the band as wide as it is, the greatest first."""
    notes: tuple[str, ...]


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
        ),
        owed=desk.owed(links.WORKINGS),
    )


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


def _worked(desk: Desk, quantity: str) -> list[Figure]:
    """Return each figure of a quantity once for each episode that changed it, the latest first."""
    found = {
        (each.key, each.episode): each
        for figures in desk.figures.values()
        for each in figures.figures
        if isinstance(each, Figure) and each.key.quantity == quantity
    }
    return sorted(found.values(), key=lambda each: -each.episode)


def _page(desk: Desk, quantity: str, worked: Sequence[Figure], missing: Sequence[Missing]) -> Page:
    title, said = _title(desk, quantity), GLOSSARY[quantity].words
    address = links.workings(quantity)
    used = dict.fromkeys(each.formula for each in worked if each.formula)
    entries, earlier = _within_weight(desk, worked)
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
        ),
        owed=desk.owed(address),
    )


def _within_weight(
    desk: Desk, worked: Sequence[Figure]
) -> tuple[tuple[Entry, ...], tuple[EarlierRow, ...]]:
    """Return the latest figures whole, as many as a page can carry, and the others as rows."""
    whole: list[Entry] = []
    nodes = 0
    for figure in worked:
        entry = _entry(desk, figure)
        nodes += 30 + 12 * len(entry.inputs) + 3 * len(entry.shares)
        nodes += sum(each.count("</") for each in entry.equations)
        if whole and nodes > MOST_NODES:
            break
        whole.append(entry)
    return tuple(whole), tuple(_earlier(desk, each) for each in worked[len(whole) :])


def _entry(desk: Desk, figure: Figure) -> Entry:
    number = desk.number(figure)
    return Entry(
        id=links.entry(figure.key, figure.episode),
        heading=_heading(desk, figure),
        subject=desk.subject(figure.key),
        episode=desk.episode(figure.episode),
        number=replace(number, address=""),
        formula=figure.formula,
        equations=_put_in(desk, figure, number.value),
        inputs=tuple(_input(desk, figure, each) for each in figure.inputs),
        shares=tuple(
            Share(
                words=GLOSSARY[each.name].words,
                evidence=each.evidence,
                origin=_origin(desk, figure, each),
                share=desk.formats.share(each.share),
            )
            for each in figure.budget
            if each.share is not None and each.share >= LEAST_SHARE
        ),
        notes=figure.notes,
    )


def _earlier(desk: Desk, figure: Figure) -> EarlierRow:
    return EarlierRow(
        id=links.entry(figure.key, figure.episode),
        heading=_heading(desk, figure),
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


def _heading(desk: Desk, figure: Figure) -> str:
    subject = desk.subject(figure.key)
    text = subject.text if subject else desk.words("workings.engine")
    key = "workings.entry" if figure.episode else "workings.entry_bought"
    return desk.words(key, subject=capital(text), number=figure.episode)


def _put_in(desk: Desk, figure: Figure, result: str) -> tuple[Markup, ...]:
    formula = FORMULAS.get(figure.formula)
    if formula is None:
        return ()
    given = {each.name: desk.formats.put_in(each) for each in figure.inputs}
    constants = {
        key: desk.formats.quantity(default, key)
        for key in formula.parameters
        if key not in given and (default := GLOSSARY[key].default) is not None
    }
    return with_numbers(formula, constants | given, result, desk.words)


def _input(desk: Desk, figure: Figure, given: Input) -> InputRow:
    value, band = desk.formats.input(given)
    return InputRow(
        symbol=inline_symbol(given.name),
        words=GLOSSARY[given.name].words,
        value=value,
        band=band,
        evidence=given.evidence,
        origin=_origin(desk, figure, given),
    )


def _origin(desk: Desk, figure: Figure, given: Input) -> Link:
    if given.figure is not None:
        own = _as_at(desk, given.figure, figure.episode)
        if own is not None:
            return Link(text=given.origin, address=links.figure(own.key, own.episode))
    if given.place is not None:
        return Link(text=given.origin, address=_written_in(desk, given.place.file))
    return Link(text=given.origin, address="")


def _as_at(desk: Desk, key: Key, number: int) -> Figure | None:
    """Return a figure as at an episode, which may be one that is not shown."""
    known = [each for each in desk.figures if each <= number]
    found = desk.figures[max(known)].get(key.quantity, key.subject) if known else None
    return found if isinstance(found, Figure) else None


def _written_in(desk: Desk, file: str) -> str:
    """Return the address of the page that shows what a file of the journal says."""
    numbers = [each.number for each in desk.material.episodes if each.file == file]
    return desk.episode(numbers[0] if numbers else 0).address
