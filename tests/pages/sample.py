"""A small journal made by hand: an invented car, two episodes, and what the stages make of it."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from itertools import pairwise

from hoistbook.authored.records import (
    Came,
    Chapter,
    Claim,
    Correction,
    Cue,
    Decision,
    Done,
    End,
    Episode,
    Given,
    Join,
    JoinEnd,
    Journal,
    Part,
    PieceUsed,
    PowerRun,
    ProseLink,
    Rate,
    Reading,
    Receipt,
    Spent,
    Verb,
    Work,
)
from hoistbook.cautions.caution import Caution, Owed
from hoistbook.compare.verdicts import ClaimVerdict, Comparison, Result
from hoistbook.figures.figure import (
    Curve,
    Figure,
    Figures,
    Input,
    Key,
    Limit,
    LimitState,
    Missing,
)
from hoistbook.figures.service import judged_joins
from hoistbook.history.differences import differences
from hoistbook.history.fates import fates
from hoistbook.history.fold import fold
from hoistbook.history.money import ledger
from hoistbook.pages.page import Material
from hoistbook.problems import Place
from hoistbook.units import from_unit
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity

PLACE = Place("episodes/01-first/episode.md", 7, 3, "part: pump")

PROSE = """\
# Why a second pump

[The first pump](part:pump) sings; [the second](part:pump-2) hums. See [episode one](episode:1),
the [injector duty](figure:injector_duty) and [the shop](https://shop.example/pump).
[The first pump](part:pump) again, [the run](javascript:alert(1)) and <b>no markup</b>.

#### A step too deep

![The pump on the bench](bench.jpg "The pump, dry")

| place | gap |
| --- | --- |
| left | 0.3 mm |

![Power](chart:power)
"""


def quantity(value: float, unit: str, **more: object) -> Quantity:
    return Quantity(value=from_unit(value, unit), unit=unit, text=f"{value} {unit}", **more)  # type: ignore[arg-type]


def given(value: float | str, unit: str | None = None) -> Given:
    return Given(value=quantity(value, unit) if unit else value, place=PLACE)  # type: ignore[arg-type]


def euro(amount: str) -> Money:
    return Money(Decimal(amount), "EUR")


def part(id_: str, name: str, **more: object) -> Part:
    return Part(id=id_, name=name, place=PLACE, **more)  # type: ignore[arg-type]


START = Episode(
    number=0,
    title="As bought",
    file="build.yaml",
    place=PLACE,
    prose="",
    prose_line=1,
    car={
        "mass": given(950, "kg"),
        "engine displacement": given(1598, "cc"),
        "driven wheels": given("front"),
    },
    settings={"boost": given("none"), "fuel": given("petrol")},
    got=(part("airbox", "Airbox", system="induction", came=Came.WITH),),
    done=(Done(verb=Verb.FITTED, part="airbox", place=PLACE),),
    spent=(Spent(what="The car", amount=euro("900"), place=PLACE, date=date(2025, 8, 30)),),
)

FIRST = Episode(
    number=1,
    title="The first pump",
    file="episodes/01-first/episode.md",
    place=PLACE,
    prose="It began with a noise.",
    prose_line=30,
    filmed=date(2025, 10, 11),
    published=date(2025, 10, 17),
    summary="A pump, a hose and a plan.",
    bought=(
        Receipt(
            supplier="Fuel counter",
            date=date(2025, 9, 13),
            number="FC-12",
            place=PLACE,
            postage=euro("6.90"),
            parts=(
                part(
                    "pump",
                    "Fuel pump",
                    kind="fuel pump",
                    system="fuel",
                    paid=euro("89.00"),
                    list_price=euro("99.00"),
                    facts={"flow": given(95, "L/h")},
                    ends={"outlet": End(name="outlet", text="8 mm barb", place=PLACE)},
                ),
                part("hose", "Fuel hose, 8 mm", system="fuel", count=2, paid=euro("12.40")),
            ),
        ),
    ),
    done=(
        Done(verb=Verb.FITTED, part="pump", place=PLACE),
        Done(
            verb=Verb.PLANNED,
            part="cooler",
            place=PLACE,
            new_part=part("cooler", "Charge cooler", system="charge air", paid=euro("140")),
        ),
    ),
    work=(Work(what="Renew the fuel lines", hours=2.5, place=PLACE),),
)

RUN = PowerRun(log="episodes/02-second/run.csv", at="wheels", power_standard="none", place=PLACE)

SECOND = Episode(
    number=2,
    title="The second pump",
    file="episodes/02-second/episode.md",
    place=PLACE,
    prose=PROSE,
    prose_line=40,
    links=(ProseLink(kind="chart", target="power", text="Power", place=PLACE),),
    filmed=date(2025, 11, 8),
    published=date(2025, 11, 14),
    summary="The first pump ran out, so there is a second.",
    video="https://video.example/watch?v=2",
    poster="episodes/02-second/poster.svg",
    poster_text="Two pumps on a bench.",
    captions="captions.vtt",
    cues=(Cue(start=0.5, end=3, text="Two pumps."), Cue(start=64, end=66, text="One hums.")),
    chapters=(Chapter(seconds=0, title="On the bench"), Chapter(seconds=250, title="Fitting")),
    settings={"boost": given(0.5, "bar")},
    bought=(
        Receipt(
            supplier="Pump bench",
            date=date(2025, 11, 1),
            place=PLACE,
            parts=(
                part(
                    "pump-2",
                    "Larger fuel pump",
                    kind="fuel pump",
                    system="fuel",
                    paid=Money(Decimal("120.00"), "GBP"),
                    came=Came.USED,
                    good_until=date(2030, 1, 1),
                    must="flow for 100 kW",
                    link="https://shop.example/pump-2",
                    ends={"outlet": End(name="outlet", text="8 mm barb", place=PLACE)},
                ),
                part(
                    "bracket",
                    "Bracket",
                    system="chassis",
                    ends={"in": End(name="in", text="8 mm bore", place=PLACE)},
                ),
            ),
        ),
    ),
    got=(part("gloves", "Fuel-proof gloves", system="workshop", came=Came.OWNED),),
    spent=(Spent(what="Day on the rollers", to="Rollers", amount=euro("95"), place=PLACE),),
    made=(
        part(
            "cradle",
            "Pump cradle",
            system="fuel",
            came=Came.MADE,
            hours=1.5,
            made_from=(PieceUsed(part="hose", count=1, place=PLACE),),
        ),
    ),
    done=(
        Done(
            verb=Verb.FITTED,
            part="pump-2",
            instead_of="pump",
            because="ran out at 0.5 bar",
            place=PLACE,
        ),
    ),
    joins=(
        Join(
            a=JoinEnd(part="pump-2", end="outlet"),
            b=JoinEnd(part="bracket", end="in"),
            place=PLACE,
            sealed_with="two clips",
        ),
    ),
    measured=(
        Reading(
            what="compression",
            values=tuple(quantity(each, "bar") for each in (12.1, 12.3, 12.0, 12.2)),
            before_work=True,
            place=PLACE,
        ),
        RUN,
    ),
    decisions=(
        Decision(
            question="Which pump?",
            chose="the larger",
            over=("two small ones",),
            because="one wire less",
            place=PLACE,
        ),
    ),
    work=(Work(what="Weld the cradle", hours=2, place=PLACE),),
    corrections=(
        Correction(date=date(2026, 1, 5), text="the pump gives 255 L/h, not 225", place=PLACE),
    ),
)

JOURNAL = Journal(
    title="A car for the hill",
    place=PLACE,
    episodes=(FIRST, SECOND),
    author="The owner",
    about="A small car with a plan.",
    goal="100 kW at the wheels",
    address="https://journal.example/hill/",
    budget=euro("2000"),
    car_name="Small car 1.6",
    start=START,
    rates=(Rate(day=date(2025, 11, 1), currency="GBP", rate="0.8", source="invented"),),
    pictures={
        "episodes/02-second/poster.svg": (960, 540),
        "episodes/02-second/bench.jpg": (800, 600),
    },
)

DUTY = Key("injector_duty")
SPEEDS = (2000.0, 4000.0, 6000.0)


def curve(*values: float) -> Curve:
    return Curve(
        speeds=SPEEDS,
        values=values,
        low=tuple(each * 0.9 for each in values),
        high=tuple(each * 1.1 for each in values),
    )


def figure(quantity_: str, value: float, half: float, episode: int, **more: object) -> Figure:
    return Figure(
        key=Key(quantity_),
        value=value,
        low=value - half,
        high=value + half,
        evidence=Evidence.ESTIMATED,
        inputs=(
            Input(
                name="displacement",
                value=1.598e-3,
                low=1.598e-3,
                high=1.598e-3,
                evidence=Evidence.STATED,
                origin="car: engine displacement",
                place=PLACE,
                share=0.0,
            ),
        ),
        formula="",
        episode=episode,
        **more,  # type: ignore[arg-type]
    )


def figures_at(number: int, duty: float) -> Figures:
    limit = Limit(
        state=LimitState.OVER if duty > 0.9 else LimitState.WITHIN,
        threshold=0.85,
        side="at most",
        reason="common practice, no source",
    )
    power = figure(
        "power", 80e3, 9e3, 0, curve=curve(25e3, 60e3, 80e3), headline="highest", at_speed=6000.0
    )
    missing = Missing(key=Key("pump_margin"), give=("flow of pump-2",), episode=number)
    last_changed = 2 if number == 2 else 0
    return Figures(
        episode=number,
        figures=(power, figure("injector_duty", duty, 0.06, last_changed, limit=limit), missing),
    )


FUEL = Caution(
    id="fuel",
    title="Fuel",
    line="Fuel vapour burns: no flame, moving air.",
    text=("Take the pressure out first.", "Follow local codes."),
)


def claim_that_fails() -> ClaimVerdict:
    """Return the verdict on the claim of episode 2."""
    claim = Claim(
        text="injector duty below 85 %",
        place=PLACE,
        quantity="injector duty",
        relation="below",
        bounds=(quantity(85, "%"),),
    )
    return ClaimVerdict(
        claim=claim,
        episode=2,
        result=Result.FAILS,
        figure=DUTY,
        margin=-0.1,
        why="It is 95 % there.",
        found=figure("injector_duty", 0.95, 0.12, 2),
        spare="10 points",
        across=True,
    )


def sample_material(journal: Journal = JOURNAL) -> Material:
    """Return the material of the journal: states and money by the stages, figures by hand."""
    states = fold(journal).states
    changes = [differences(a, b) for a, b in pairwise(states)]
    figures = tuple(figures_at(n, d) for n, d in ((0, 0.7), (1, 0.7), (2, 0.95)))
    return Material(
        journal=journal,
        episodes=journal.episodes,
        states=states,
        changes=((), *changes),
        fates=fates(states),
        ledger=ledger(journal, states).ledger,
        figures=figures,
        joins=tuple(map(judged_joins, states, figures)),
        claims=(claim_that_fails(),),
        comparisons=(
            Comparison(
                episode=2,
                run=RUN,
                measured=curve(20e3, 48e3, 66e3),
                said_then=curve(21e3, 50e3, 68e3),
                same_conditions=curve(21e3, 49e3, 65e3),
                inside=3,
                out_of=3,
            ),
        ),
        cautions=(FUEL,),
        owed={
            "/episodes/1/": (Owed(caution=FUEL, full=True, because=("Fuel pump",)),),
            "/episodes/2/": (Owed(caution=FUEL, full=True, because=("Larger fuel pump",)),),
            "/parts/": (Owed(caution=FUEL, full=False, because=()),),
        },
    )
