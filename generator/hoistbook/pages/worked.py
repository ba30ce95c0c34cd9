"""One figure worked out in print: the numbers put in, where they came from, what widens its band.

Pages of workings and the page of the whole chain are made of these.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from markupsafe import Markup

from hoistbook.engineering.formula import FORMULAS
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import Inputs, keyed
from hoistbook.figures.figure import Figure, Input, Key
from hoistbook.pages import links
from hoistbook.pages.desk import Desk
from hoistbook.pages.formulas import capital
from hoistbook.pages.mathml import inline_symbol, with_numbers
from hoistbook.pages.own_numbers import Chains
from hoistbook.pages.shown import Link, Number

LEAST_SHARE = 0.02
"""What brings less of the variance to a band is not listed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InputRow:
    """One number that went into a figure."""

    name: str
    """Key of its quantity, by which the script of a reader's own numbers finds it."""
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
    """Name of its formula; empty for a measurement."""
    working: str
    """What the script calls its result: "power", "pipe_velocity of pipe-2"."""
    chain: int | None
    """Which chain of the page leads to it; None where the script cannot work it out anew."""
    equations: tuple[Markup, ...]
    """The formula with the numbers put in."""
    inputs: tuple[InputRow, ...]
    shares: tuple[Share, ...]
    """What makes the band as wide as it is, the greatest first."""
    notes: tuple[str, ...]


def entry_of(desk: Desk, figure: Figure, inputs: Inputs | None, chains: Chains) -> Entry:
    """Return a figure worked out in print.

    Parameters
    ----------
    desk
        The desk.
    figure
        The figure.
    inputs
        What its state starts from, where the browser may work it out anew.
    chains
        The chains of the page, to which its own is added.
    """
    working = figure.worked_as or keyed(figure.key.quantity, figure.key.subject)
    inputs = figure.own or inputs
    opens = inputs is not None and figure.formula
    number = desk.number(figure)
    return Entry(
        id=links.entry(figure.key, figure.episode),
        heading=heading_of(desk, figure),
        subject=desk.subject(figure.key),
        episode=desk.episode(figure.episode),
        number=replace(number, address=""),
        formula=figure.formula,
        working=working,
        chain=chains.number(inputs, figure.at_speed, [working]) if inputs and opens else None,
        equations=numbers_in(desk, figure, number.value),
        inputs=tuple(_input(desk, figure, each) for each in figure.inputs),
        shares=tuple(
            Share(
                words=GLOSSARY[each.name].words,
                evidence=desk.known(each),
                origin=_origin(desk, figure, each),
                share=desk.formats.share(each.share),
            )
            for each in figure.budget
            if each.share is not None and each.share >= LEAST_SHARE
        ),
        notes=figure.notes,
    )


def heading_of(desk: Desk, figure: Figure) -> str:
    """Return what a figure is of and since when it holds."""
    subject = desk.subject(figure.key)
    text = subject.text if subject else desk.words("workings.engine")
    key = "workings.entry" if figure.episode else "workings.entry_bought"
    return desk.words(key, subject=capital(text), number=figure.episode)


def numbers_in(desk: Desk, figure: Figure, result: str) -> tuple[Markup, ...]:
    """Return a figure's formula with the numbers put in and a result behind; empty for none."""
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
        name=given.name,
        symbol=inline_symbol(given.name),
        words=GLOSSARY[given.name].words,
        value=value,
        band=band,
        evidence=desk.known(given),
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
