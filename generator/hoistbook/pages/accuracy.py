"""How far the numbers can be trusted: what was checked, what not, what is taken for granted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from hoistbook.engineering.check_counts import REFERENCE_VALUES
from hoistbook.engineering.formula_list import formula_list
from hoistbook.engineering.glossary import GLOSSARY
from hoistbook.figures.base import CALIBRATED
from hoistbook.figures.defaults import DEFAULTS, Default
from hoistbook.figures.draws import SAMPLES
from hoistbook.figures.finding import CEILINGS, FLOORS
from hoistbook.figures.lessons import LESSONS
from hoistbook.figures.limits import AT_MOST, THRESHOLDS
from hoistbook.figures.spread_reasons import SPREAD_REASONS
from hoistbook.figures.spreads import GENERAL, SPREADS, Spread
from hoistbook.figures.validation import VALIDATION
from hoistbook.pages import links
from hoistbook.pages.desk import Desk, sections
from hoistbook.pages.formulas import capital
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Link, Sheet
from hoistbook.units import scale
from hoistbook.values.evidence import Evidence

SECTIONS = ("band", "checked", "not_checked", "defaults", "spreads", "lessons", "limits")
CHECKS = ("formulas", "libraries", "draw", "cycle", "boosted", "catalogue")
EVIDENCE = (Evidence.MEASURED, Evidence.STATED, Evidence.ESTIMATED, Evidence.ASSUMED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One thing that was held against something outside."""

    what: str
    against: str
    result: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DefaultRow:
    """What is taken where nothing is said."""

    what: str
    condition: str
    """Of which engine, where that decides: "boosted"."""
    value: str
    """With its band."""
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadRow:
    """What band a number gets that is given without one."""

    what: str
    bands: tuple[str, ...]
    """Measured, stated, estimated, assumed; empty where no line of the table says."""
    reason: str
    """Why it is known so well and no better."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitRow:
    """A limit of a quantity."""

    quantity: Link
    limit: str
    near: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AccuracyContext(Sheet):
    """`accuracy.html`: how far the numbers can be trusted."""

    band: tuple[str, ...]
    checks: tuple[Check, ...]
    formulas: Link
    not_checked: tuple[str, ...]
    defaults: tuple[DefaultRow, ...]
    spreads: tuple[SpreadRow, ...]
    lessons: tuple[DefaultRow, ...]
    limits: tuple[LimitRow, ...]


def accuracy_page(desk: Desk) -> Page:
    """Return the page on accuracy."""
    words = desk.words
    title = words("accuracy.title")
    return Page(
        address=links.ACCURACY,
        template="accuracy.html",
        title=title,
        description=words("accuracy.description"),
        context=AccuracyContext(
            heading=title,
            margin=desk.margin(),
            lead=words("accuracy.lead"),
            contents=sections(words, "accuracy", SECTIONS),
            band=(
                words("accuracy.band_text.inputs", samples=desk.formats.count(SAMPLES)),
                words("accuracy.band_text.beyond"),
            ),
            checks=tuple(_checks(desk)),
            formulas=Link(text=words("formulas.title"), address=links.FORMULAS),
            not_checked=tuple(_not_checked(desk)),
            defaults=tuple(_default(desk, key, each) for key, each in DEFAULTS.items()),
            spreads=tuple(_spreads(desk)),
            lessons=tuple(_lesson(desk, key, each) for key, each in LESSONS.items()),
            limits=tuple(_limits(desk)),
        ),
        owed=desk.owed(links.ACCURACY),
    )


def _checks(desk: Desk) -> Iterator[Check]:
    listed = formula_list()
    counted = {"formulas": len(listed), "values": REFERENCE_VALUES}
    numbers: dict[str, Mapping[str, float]] = {**VALIDATION, "formulas": counted}
    for key in CHECKS:
        put_in = {
            name: desk.formats.count(number)
            if isinstance(number, int)
            else desk.formats.share(number)
            for name, number in numbers.get(key, {}).items()
        }
        what, against, result = (
            desk.words(f"accuracy.{key}.{piece}", **put_in)
            for piece in ("what", "against", "result")
        )
        yield Check(what=what, against=against, result=result)


def _not_checked(desk: Desk) -> Iterator[str]:
    yield desk.words("accuracy.not_text.boosted")
    inputs = desk.figures[desk.last].inputs
    learnt = inputs is not None and CALIBRATED in inputs.conditions
    yield desk.words(f"accuracy.{'' if learnt else 'not_'}calibrated", number=desk.last)
    yield desk.words("accuracy.not_text.beside")
    yield desk.words("accuracy.not_text.recorded")
    yield desk.words("accuracy.not_text.knock")


def _default(desk: Desk, key: str, default: Default) -> DefaultRow:
    name, _, condition = key.partition(", ")
    low = max(default.value - default.half_width, FLOORS.get(name, 0.0))
    high = min(default.value + default.half_width, CEILINGS.get(name, float("inf")))
    value, band = desk.formats.banded(default.value, low, high, name)
    return DefaultRow(
        what=capital(GLOSSARY[name].words),
        condition=condition,
        value=desk.words("accuracy.default_band", value=value, band=band) if band else value,
        reason=default.reason,
    )


def _lesson(desk: Desk, key: str, lesson: Default) -> DefaultRow:
    value = desk.words("accuracy.absolute", value=desk.formats.share(lesson.half_width))
    return DefaultRow(what=capital(key), condition="", value=value, reason=lesson.reason)


def _spreads(desk: Desk) -> Iterator[SpreadRow]:
    for name, spreads in SPREADS.items():
        bands = tuple(_spread(desk, spreads.get(each), name) for each in EVIDENCE)
        yield SpreadRow(
            what=capital(GLOSSARY[name].words), bands=bands, reason=SPREAD_REASONS[name]
        )
    bands = tuple(_spread(desk, GENERAL[each], "") for each in EVIDENCE)
    yield SpreadRow(
        what=capital(desk.words("accuracy.general")),
        bands=bands,
        reason=desk.words("accuracy.general_why"),
    )


def _spread(desk: Desk, spread: Spread | None, name: str) -> str:
    """Return half a band: a share of the value, or an amount in the unit of its quantity."""
    if spread is None:
        return ""
    if spread.relative:
        share = desk.formats.plain(100 * spread.half_width)
        return desk.words("accuracy.relative", share=desk.formats.in_percent(share))
    pieces = desk.formats.unit_pieces(name, in_formula=True)
    number = desk.formats.plain(spread.half_width / scale(desk.formats.unit(name)))
    return desk.words("accuracy.absolute", value=f"{number}{pieces['after']}")


def _limits(desk: Desk) -> Iterator[LimitRow]:
    known = {each.key.quantity for every in desk.figures.values() for each in every.figures}
    for quantity, each in THRESHOLDS.items():
        side = desk.words("figure.at_most" if each.side == AT_MOST else "figure.at_least")
        yield LimitRow(
            quantity=Link(
                text=desk.titles[quantity],
                # A car without pipes has no page of their velocities.
                address=links.workings(quantity) if quantity in known else links.WORKINGS,
            ),
            limit=f"{side} {desk.formats.quantity(each.at, quantity)}",
            near=desk.formats.quantity(each.near, quantity),
            reason=each.reason,
        )
