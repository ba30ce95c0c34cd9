"""What the pages of one journal are made at: the material, its formats and words, by episode."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from decimal import Decimal
from typing import TypeAlias

from hoistbook.authored.kinds import kinds
from hoistbook.authored.parts import CAR
from hoistbook.authored.records import BoostBySpeed, Episode, Fact, Given, Join
from hoistbook.cautions.caution import Owed
from hoistbook.engineering import GLOSSARY
from hoistbook.figures.catalogue import BESIDE, QUANTITIES
from hoistbook.figures.figure import Figure, Figures, Input, Key, LimitState, Missing
from hoistbook.fit.joins import JoinVerdict
from hoistbook.history.ledger import Entry, EntryKind, Stage, Tally
from hoistbook.history.state import Change, Fate, Outcome, State
from hoistbook.history.words import join_words
from hoistbook.pages import links
from hoistbook.pages.became import became, became_in_short
from hoistbook.pages.formats import Formats
from hoistbook.pages.page import Material
from hoistbook.pages.shown import FigureRow, Link, Margin, Number, PartRef
from hoistbook.pages.words import Words, load_words
from hoistbook.values.evidence import Evidence
from hoistbook.values.money import Money
from hoistbook.values.quantity import Quantity

NamePart: TypeAlias = Callable[[str], PartRef]
"""Names a part in a section of a page, with what became of it where that has to be said."""


_TERMS: Mapping[str, str] = {
    "manifold_absolute_pressure": "manifold-pressure",
    "pressure_ratio": "pressure-ratio",
    "charge_temperature": "charge-air",
    "brake_mean_effective_pressure": "mean-pressure",
    "power": "crank-and-wheels",
    "torque": "crank-and-wheels",
    "wheel_power": "crank-and-wheels",
    "wheel_torque": "crank-and-wheels",
    "power_to_mass": "power-to-mass",
    "injector_duty": "duty",
    "pump_margin": "pump-margin",
    "mach_number": "mach",
}
"""Figure -> the word of its title that the glossary explains."""


class Desk:
    """A journal's material with what every page needs at hand.

    Parameters
    ----------
    material
        Everything worked out from the journal.
    formats
        How it prints numbers, dates and money.
    words
        The words of ours in its language.
    titles
        For each quantity its title in tables: "injector_duty" -> "Injector duty".
    """

    def __init__(
        self, material: Material, formats: Formats, words: Words, titles: Mapping[str, str]
    ) -> None:
        self.material = material
        self.formats = formats
        self.words = words
        self.titles = titles
        self.episodes: Mapping[int, Episode] = {each.number: each for each in material.episodes}
        self.states: Mapping[int, State] = {each.episode: each for each in material.states}
        self.tallies: Mapping[int, Tally] = {
            each.episode: each for each in material.ledger.tallies
        }
        self.figures: Mapping[int, Figures] = {each.episode: each for each in material.figures}
        self._verdicts: Mapping[int, tuple[JoinVerdict, ...]] = dict(
            zip(self.states, material.joins, strict=False)
        )
        self.changes: Mapping[int, tuple[Change, ...]] = dict(
            zip(self.states, material.changes, strict=True)
        )
        self.joins: Mapping[str, Join] = {
            join_words(each.value): each.value for state in material.states for each in state.joins
        }
        """Every join that ever held, by the words in which changes name it."""
        self.last = max(self.states)
        """The episode that the journal is as at."""
        self.currency = material.ledger.currency
        self.paid: Mapping[str, Entry] = {
            each.part: each
            for each in material.ledger.entries
            if each.part and each.kind is EntryKind.PART and each.stage is Stage.SPENT
        }
        """By part, the entry of the tally that paid for it."""
        self.priced: Mapping[str, Entry] = {
            each.part: each
            for each in material.ledger.entries
            if each.part and each.kind is EntryKind.PART
        } | self.paid
        """By part, the entry that says its price: paid, or else as ordered or planned."""

    def verdicts(self, number: int) -> tuple[JoinVerdict, ...]:
        """Return the joins that hold at an episode, judged."""
        return self._verdicts.get(number, ())

    def before(self, number: int) -> int:
        """Return the episode shown before one, 0 for the first."""
        return max((each for each in self.states if each < number), default=0)

    def home_money(self, amount: Decimal) -> str:
        """Return an amount in the journal's currency."""
        return self.formats.money(Money(amount, self.currency))

    def system(self, system: str | None) -> str:
        """Return the title of a system of the car."""
        return self.words(f"system.{system or 'other'}")

    def word(self, table: str, value: str) -> str:
        """Return the word of pages for one of a set of values: evidence, results, limits."""
        return self.words(f"{table}.{value.replace(' ', '_')}")

    def evidence(self, given: Given | BoostBySpeed, *, setting: bool = False) -> str:
        """Return how what an author gave is known; empty for words without a number in them.

        A setting that the author does not say otherwise of is as it was set: nobody states it.
        """
        stated = given.evidence is Evidence.STATED
        words = given.value if isinstance(given, Given) and isinstance(given.value, str) else None
        # Tyres, gears and oil are written as words, and are numbers all the same.
        if words is not None and stated and not any(each.isdigit() for each in words):
            return ""
        as_set = setting and stated
        return self.words("evidence.as_set") if as_set else self.word("evidence", given.evidence)

    def known(self, given: Input) -> str:
        """Return how a number that went into a figure is known."""
        as_set = given.evidence is Evidence.STATED and given.origin.startswith("settings: ")
        return self.words("evidence.as_set") if as_set else self.word("evidence", given.evidence)

    def kind(self, kind: str | None) -> str:
        """Return the title of a kind of part; empty where the author gives none."""
        known = kinds().get(kind or "")
        return known.title if known else ""

    def fact(self, value: Fact) -> str:
        """Return a stated property as it is printed."""
        if isinstance(value, Quantity):
            return self.formats.given(value)
        return value if isinstance(value, str) else self.formats.plain(value)

    def hours(self, hours: float | None) -> str:
        """Return a time as worked: "2.5 h"; empty where it is not given."""
        if hours is None:
            return ""
        return self.formats.given(Quantity(value=hours * 3600, unit="h", text=""))

    def spec_sheet(self) -> Link:
        """Return a link to the spec sheet as at the last episode."""
        return Link(text=self.words("spec.link"), address=links.SPEC)

    def files(self, name: str) -> tuple[Link, ...]:
        """Return links to the data of a page, as CSV and as JSON."""
        return tuple(
            Link(text=self.words(f"data.{suffix}"), address=f"{links.DATA}{name}.{suffix}")
            for suffix in ("csv", "json")
        )

    def owed(self, address: str) -> tuple[Owed, ...]:
        """Return the cautions that the page at an address owes."""
        return self.material.owed.get(address, ())

    def fate(self, part_id: str) -> Fate:
        """Return what became of a part."""
        return self.material.fates.get(part_id, Fate(outcome=Outcome.IN_USE))

    def became(self, part_id: str) -> str:
        """Return what became of a part, in words; empty while it is in use."""
        return became(self.words, self.formats.money, self.fate(part_id))

    def part_name(self, part_id: str) -> str:
        """Return a part's name, or its id where the journal does not know the part."""
        known = self.states[self.last].parts.get(part_id)
        return known.part.name if known else part_id

    def part(self, part_id: str) -> PartRef:
        """Return a part as it is named on a page; the car itself leads to its spec sheet."""
        if part_id == CAR:
            return PartRef(text=self.words("spec.car"), address=links.SPEC)
        return PartRef(
            text=self.part_name(part_id),
            address=links.part(part_id),
            fate=self.became(part_id),
            mark=became_in_short(self.words, self.fate(part_id)),
            dropped=self.fate(part_id).dropped,
        )

    def naming(self, number: int | None = None, on_page: set[str] | None = None) -> NamePart:
        """Return what names the parts of one section of a page.

        What became of a part is said where the section first names it. On a page about an episode
        only what that episode did not know is said: all else stands there as the day's work. A
        part has the name there that it had then, whatever a later receipt calls it.

        Parameters
        ----------
        number
            The episode that the page is about; None for a page as at the last.
        on_page
            The parts of which sections above have said it, which is added to: of these only the
            short mark is repeated. None where the section stands for itself.
        """
        then = {} if number is None else self.states[number].parts
        told: set[str] = set()
        told_above = set() if on_page is None else on_page

        def name(part_id: str) -> PartRef:
            known = number is not None and (
                number == self.last or self.fate(part_id).known_by(number)
            )
            ref = self.part(part_id)
            if part_id in then:
                ref = replace(ref, text=then[part_id].part.name)
            if known or part_id in told:
                return replace(ref, fate="", mark="")
            told.add(part_id)
            if part_id in told_above:
                return replace(ref, fate=ref.mark)
            told_above.add(part_id)
            return ref

        return name

    def episode(self, number: int) -> Link:
        """Return a link to an episode, or to the spec sheet of the car as bought for episode 0."""
        if number not in self.episodes:
            return Link(text=self.words("episode.bought_car"), address=links.spec(number))
        text = self.words("episode.number", number=number)
        return Link(text=text, address=links.episode(number))

    def number(self, figure: Figure, address: str | None = None) -> Number:
        """Return a figure with all that must stand beside it.

        Parameters
        ----------
        figure
            The figure.
        address
            Of its workings, where they are not those of the car as it was then.
        """
        text = self.formats.figure(figure)
        return Number(
            value=text.value,
            evidence=text.evidence,
            band=text.band,
            headline=text.headline,
            standard=text.standard,
            limit=text.limit,
            kept=figure.limit is None or figure.limit.state is LimitState.WITHIN,
            passed=figure.limit is not None and figure.limit.state is LimitState.OVER,
            limit_at=text.limit_at,
            limit_detail=text.limit_detail,
            address=self.workings(figure) if address is None else address,
        )

    def listed(self, number: int) -> tuple[Figure | Missing, ...]:
        """Return the figures that stand in lists at an episode; steps stand in workings alone."""
        return tuple(
            each for each in self.figures[number].figures if each.key.quantity in self.titles
        )

    def on_the_way(self, number: int) -> tuple[Figure | Missing, ...]:
        """Return those of the figures in lists that stand on the way to power and fuel."""
        return tuple(each for each in self.listed(number) if each.key.quantity not in BESIDE)

    def beside(self, number: int) -> tuple[Figure | Missing, ...]:
        """Return those of the figures in lists that the car asks beside its power."""
        return tuple(each for each in self.listed(number) if each.key.quantity in BESIDE)

    def workings(self, figure: Figure | Missing) -> str:
        """Return where a figure is worked out, or for a missing one where its lacks are listed."""
        if isinstance(figure, Missing):
            return f"{links.NEXT}#missing"
        return links.figure(figure.key, figure.episode)

    def subject(self, key: Key) -> Link | None:
        """Return the part or the gear that a figure is of, None for the engine."""
        if key.subject.startswith("gear-") and key.quantity == "road_speed":
            text = self.words("figures.gear", number=key.subject.removeprefix("gear-"))
            return Link(text=text, address=f"{links.workings(key.quantity)}")
        if key.subject not in self.states[self.last].parts:
            return None
        return Link(text=self.part_name(key.subject), address=links.part(key.subject))

    def row(self, figure: Figure | Missing, before: Figure | Missing | None = None) -> FigureRow:
        """Return a figure as a row of a table, with what it was before if given."""
        return FigureRow(
            title=self.titles[figure.key.quantity],
            subject=self.subject(figure.key),
            now=self.number(figure) if isinstance(figure, Figure) else None,
            before=self.number(before) if isinstance(before, Figure) else None,
            inside=_inside(figure, before),
            missing=figure.give if isinstance(figure, Missing) else (),
            term=self.term(figure.key.quantity),
        )

    def term(self, quantity: str) -> str:
        """Return where the word for a figure is explained; empty where it needs no explaining."""
        return links.term(_TERMS[quantity]) if quantity in _TERMS else ""

    def margin(self, number: int | None = None) -> Margin:
        """Return what runs along the margin: of one episode, or of the journal as at its last."""
        shown = self.last if number is None else number
        key = "margin.as_at" if number is None else "margin.episode"
        if shown == 0:
            key = "margin.bought"
        tally = self.tallies[shown]
        episode = self.episodes.get(shown)
        filmed = episode.filmed if episode else None
        return Margin(
            label=self.words(key, number=shown),
            address=links.episode(shown) if episode else links.spec(shown),
            number=shown,
            date=self.formats.date(filmed) if filmed else "",
            total=self.home_money(tally.spent),
            budget=self.of_budget(tally, "margin"),
        )

    def of_budget(self, tally: Tally, page: str) -> str:
        """Return how what was spent stands to the budget, in a page's words; empty without one."""
        if tally.budget is None:
            return ""
        left = tally.budget - tally.spent
        return self.words(
            f"{page}.over" if left < 0 else f"{page}.left",
            amount=self.home_money(abs(left)),
            budget=self.home_money(tally.budget),
        )


def desk_of(material: Material) -> Desk:
    """Return the desk at which the pages of a journal are made."""
    words = load_words(material.journal.language)
    formats = Formats(words, GLOSSARY, material.journal.units)
    return Desk(material, formats, words, QUANTITIES)


def _inside(now: Figure | Missing, before: Figure | Missing | None) -> bool:
    """Return whether a figure lies inside the band that it had before, if it had one."""
    if not isinstance(now, Figure) or not isinstance(before, Figure):
        return False
    return before.low < before.high and before.low <= now.value <= before.high


def sections(words: Words, page: str, present: Iterable[str]) -> tuple[Link, ...]:
    """Return the contents of a long page: the ids of its sections, with their headings."""
    return tuple(Link(text=words(f"{page}.{each}"), address=f"#{each}") for each in present)
