"""The demo journal holds one of everything that an author can meet; each test names what."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from hoistbook.authored.records import (
    BoostBySpeed,
    Came,
    Done,
    Episode,
    Journal,
    Part,
    PowerRun,
    Reading,
    Receipt,
    Verb,
)
from hoistbook.compare.verdicts import Result
from hoistbook.figures.figure import Figure, LimitState
from hoistbook.history.known import all_episodes, parts_written
from hoistbook.history.ledger import EntryKind
from hoistbook.history.state import Outcome
from hoistbook.pages.page import Material

CONTENT = Path(__file__).parents[2] / "content"


def receipts(journal: Journal) -> list[Receipt]:
    return [receipt for episode in journal.episodes for receipt in episode.bought]


def parts(journal: Journal) -> dict[str, Part]:
    return {part.id: part for each in all_episodes(journal) for part in parts_written(each)}


def deeds(journal: Journal, *verbs: Verb) -> list[Done]:
    return [done for each in journal.episodes for done in each.done if done.verb in verbs]


def runs(journal: Journal) -> list[PowerRun]:
    return [
        each
        for episode in journal.episodes
        for each in episode.measured
        if isinstance(each, PowerRun)
    ]


def readings(journal: Journal, what: str) -> list[Reading]:
    return [
        each
        for episode in journal.episodes
        for each in episode.measured
        if isinstance(each, Reading) and each.what == what
    ]


def currencies(journal: Journal) -> set[str]:
    prices = [part.paid for part in parts(journal).values() if part.paid is not None]
    return {price.currency for price in prices}


def published(journal: Journal) -> list[Episode]:
    return [each for each in journal.episodes if each.published is not None]


def months(journal: Journal) -> float:
    days = [each.published for each in published(journal) if each.published is not None]
    return (max(days) - min(days)).days / 30.44


def joined_parts(journal: Journal) -> set[str]:
    joins = [join for episode in journal.episodes for join in episode.joins]
    return {end.part for join in joins for end in (join.a, join.b)}


def test_at_least_nine_episodes_are_published_over_eight_months(journal: Journal) -> None:
    assert len(published(journal)) >= 9
    assert months(journal) >= 8


def test_one_episode_is_not_published_yet(journal: Journal) -> None:
    assert [each.number for each in journal.episodes if each.published is None] == [10]


def test_there_are_seventy_parts_of_eight_suppliers_in_three_currencies(journal: Journal) -> None:
    assert len(parts(journal)) >= 70
    assert len({receipt.supplier for receipt in receipts(journal)}) >= 8
    assert currencies(journal) == {"EUR", "GBP", "USD"}


FEATURES: dict[str, Callable[[Journal], object]] = {
    "a receipt with postage": lambda j: [r for r in receipts(j) if r.postage],
    "a receipt with tax": lambda j: [r for r in receipts(j) if r.tax],
    "a receipt with a discount": lambda j: [r for r in receipts(j) if r.discount],
    "a receipt that says what was charged": lambda j: [r for r in receipts(j) if r.charged],
    "a sale price": lambda j: [p for p in parts(j).values() if p.list_price and p.paid],
    "a shared purchase": lambda j: [p for p in parts(j).values() if p.kept],
    "a refund": lambda j: [d for d in deeds(j, Verb.SENT_BACK) if d.amount],
    "a part sold": lambda j: [d for d in deeds(j, Verb.SOLD) if d.amount],
    "a part made from bought pieces": lambda j: [
        p for p in parts(j).values() if len(p.made_from) >= 3
    ],
    "a kit": lambda j: [p for p in parts(j).values() if p.came is Came.WITH],
    "a part supplied free": lambda j: [p for p in parts(j).values() if p.came is Came.FREE],
    "a part given": lambda j: [p for p in parts(j).values() if p.came is Came.GIVEN],
    "a part already owned": lambda j: [p for p in parts(j).values() if p.came is Came.OWNED],
    "a used part": lambda j: [p for p in parts(j).values() if p.came is Came.USED],
    "a part that expires": lambda j: [p for p in parts(j).values() if p.good_until],
    "a part that had to meet something": lambda j: [p for p in parts(j).values() if p.must],
    "money that is not a part": lambda j: [s for e in j.episodes for s in e.spent],
    "money that came back": lambda j: [
        s for e in j.episodes for s in e.spent if s.amount.amount < 0
    ],
    "two changes of mind": lambda j: (
        len([d for d in deeds(j, Verb.FITTED) if d.instead_of and d.because]) >= 2
    ),
    "a part that did not fit": lambda j: deeds(j, Verb.TRIED),
    "a part planned and not bought": lambda j: (
        {d.part for d in deeds(j, Verb.PLANNED)}
        - {d.part for d in deeds(j, Verb.FITTED, Verb.ORDERED)}
    ),
    "a breakage": lambda j: [d for d in deeds(j, Verb.BROKE) if d.because],
    "a correction after publication": lambda j: [
        c for e in j.episodes for c in e.corrections if e.published and c.date > e.published
    ],
    "claims": lambda j: [c for e in j.episodes for c in e.claims],
    "decisions": lambda j: [d for e in j.episodes for d in e.decisions if d.because],
    "a compression test of four cylinders": lambda j: [
        r for r in readings(j, "compression") if len(r.values) == 4 and r.before_work
    ],
    "an event day, timed": lambda j: [r for r in readings(j, "run time") if len(r.values) == 4],
    "captions of two episodes": lambda j: len([e for e in j.episodes if len(e.cues) >= 10]) == 2,
    "chapters in every published episode": lambda j: all(e.chapters for e in published(j)),
    "a poster with words for every episode": lambda j: all(
        e.poster and e.poster_text for e in j.episodes
    ),
}


@pytest.mark.parametrize("feature", FEATURES)
def test_the_journal_has(feature: str, journal: Journal) -> None:
    assert FEATURES[feature](journal)


def test_boost_and_mass_change_over_the_episodes(journal: Journal) -> None:
    boosts = [
        max(each.value for each in boost.pressures) / 1e5
        for episode in journal.episodes
        if isinstance(boost := episode.settings.get("boost"), BoostBySpeed)
    ]
    masses = [reading.values[-1].value for reading in readings(journal, "mass")]
    assert boosts == pytest.approx([0.5, 0.8])
    assert masses == [942, 914, 933, 911]


@pytest.mark.parametrize(
    "circuit",
    [
        ("feed-hose", "drain-hose"),
        ("water-hose",),
        ("fuel-hose",),
        ("elbow-hot", "hot-pipe", "cold-pipe"),
    ],
    ids=["oil", "water", "fuel", "charge air"],
)
def test_there_are_joins_in(circuit: tuple[str, ...], journal: Journal) -> None:
    assert joined_parts(journal) >= set(circuit)


def test_the_oil_feed_is_a_look_alike_that_a_later_episode_puts_right(journal: Journal) -> None:
    known = parts(journal)
    at_the_block = [
        (episode.number, join.b.part, known[join.b.part].ends[join.b.end].text)
        for episode in journal.episodes
        for join in episode.joins
        if (join.a.part, join.a.end) == ("engine-block", "oil gallery")
    ]
    assert known["engine-block"].ends["oil gallery"].text == "1/8 BSPT female"
    assert at_the_block == [
        (5, "oil-adapter", "1/8 NPT male"),
        (6, "oil-adapter-taper", "1/8 BSPT male"),
    ]


def words(prose: str) -> Iterator[str]:
    return (word for word in prose.split() if re.search(r"\w", word))


def test_every_episode_has_500_to_1200_words(journal: Journal) -> None:
    counts = {each.number: len(list(words(each.prose))) for each in journal.episodes}
    assert {number: count for number, count in counts.items() if not 500 <= count <= 1200} == {}


def test_the_prose_leads_to_parts_figures_and_charts(journal: Journal) -> None:
    kinds = {link.kind for each in journal.episodes for link in each.links}
    assert kinds == {"part", "figure", "chart", "episode"}


def test_there_is_a_baseline_run_and_boosted_ones(journal: Journal) -> None:
    logs = [journal.logs[run.log] for run in runs(journal)]
    assert ["boost" in log.columns for log in logs] == [False, True, True]
    assert {run.at for run in runs(journal)} == {"wheels"}


def test_the_logs_are_physically_consistent(journal: Journal) -> None:
    # The power of a shaft is its torque times its angular speed; the logs round to 0.1 kW.
    for log in journal.logs.values():
        for speed, torque, power in zip(
            log.columns["speed"], log.columns["torque"], log.columns["power"], strict=True
        ):
            assert power == pytest.approx(torque * speed * 2 * math.pi / 60, abs=60)
        assert all(a < b for a, b in pairwise(log.columns["time"]))


LOSSES = 25.0
"""Torque that friction, pumping and gearbox take: about 2 bar of mean pressure in 1.6 litres
[N m]; motored friction of small engines, from memory: J. B. Heywood, Internal Combustion Engine
Fundamentals, chapter 13."""
NOT_BOOSTED = (98.6e3 * 0.97) / (12 + 10 + 273.15)
"""Pressure over temperature in the manifold of run 1: its air, 3 % lost in filter and throttle,
10 K warmer; common practice, no source [Pa/K]."""


@pytest.mark.parametrize(("which", "air"), [(1, 99.1e3), (2, 98.9e3)], ids=["run 2", "run 3"])
def test_boost_makes_as_much_more_torque_as_it_brings_air(
    which: int, air: float, journal: Journal
) -> None:
    # A charge burns to work in proportion to its mass, which at equal volume is pressure over
    # temperature (the gas law); friction is taken off both runs first. A tenth is left for
    # mixture, ignition and back pressure (common practice, no source).
    logs = [journal.logs[run.log].columns for run in runs(journal)]
    at = [2000.0, 3000.0, 4000.0, 5000.0, 6000.0]

    def read(column: str, log: int) -> np.ndarray:
        return np.interp(at, logs[log]["speed"], logs[log][column])

    denser = (air + read("boost", which)) / read("charge temperature", which) / NOT_BOOSTED
    stronger = (read("torque", which) + LOSSES) / (read("torque", 0) + LOSSES)
    assert stronger == pytest.approx(denser, rel=0.1)


def test_mixture_is_richer_where_there_is_boost_and_never_lean_at_full_load(
    journal: Journal,
) -> None:
    logs = [journal.logs[run.log].columns for run in runs(journal)]
    at_5000 = [float(np.interp(5000, log["speed"], log["lambda"])) for log in logs]
    assert at_5000[0] > at_5000[1] > at_5000[2]
    assert all(max(log["lambda"]) < 1 for log in logs)


def test_measured_wheel_power_lies_honestly_below_the_estimate_at_the_crank(
    material: Material,
) -> None:
    for comparison in material.comparisons:
        figures = next(each for each in material.figures if each.episode == comparison.episode)
        crank = figures.get("power")
        assert isinstance(crank, Figure)
        share = max(comparison.measured.values) / crank.value
        # The drivetrain takes 10 to 20 % (common practice, no source), and the demo's engine
        # breathes up to a tenth worse than the estimate assumes.
        assert 0.70 <= share <= 0.90


def test_one_claim_does_not_hold_and_most_do(material: Material) -> None:
    failing = [each.claim.text for each in material.claims if each.result is Result.FAILS]
    assert failing == ["pump margin above 20 % at boost 0.8 bar gauge"]
    assert all(each.result is not Result.UNKNOWN for each in material.claims)


def test_the_old_pump_nears_its_limit_and_the_new_one_is_within(material: Material) -> None:
    def pump(episode: int) -> LimitState | None:
        figures = next(each for each in material.figures if each.episode == episode)
        margin = figures.get("pump_margin")
        assert isinstance(margin, Figure)
        return margin.limit.state if margin.limit else None

    assert pump(7) is not LimitState.WITHIN
    assert pump(8) is LimitState.WITHIN


def test_what_was_planned_is_partly_not_bought(material: Material) -> None:
    waiting = [id_ for id_, fate in material.fates.items() if fate.outcome is Outcome.NOT_YET]
    assert "differential" in waiting


def test_a_refund_and_sales_stand_in_the_tally(material: Material) -> None:
    kinds = {entry.kind for entry in material.ledger.entries}
    assert kinds == set(EntryKind)


PRIVATE = (
    "telephone number",
    "settled",
    "take cake",
    "shed account",
    "rather not",
    "invoice",
    "brother's",
)
"""A few words of each private note of the demo."""


def test_private_notes_reach_no_record(journal: Journal) -> None:
    notes = "".join(path.read_text(encoding="utf-8") for path in sorted(CONTENT.rglob("*.md")))
    assert [each for each in PRIVATE if each not in notes] == []
    front_matter = repr([replace(each, prose="") for each in journal.episodes])
    assert [each for each in PRIVATE if each in front_matter] == []
