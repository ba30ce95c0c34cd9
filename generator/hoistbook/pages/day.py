"""What a day in the workshop came to: things done and made, work, readings, choices and claims."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from hoistbook.authored.records import Done, Episode, Part, Reading, Verb
from hoistbook.compare.verdicts import ClaimVerdict, Result
from hoistbook.engineering.formula import FORMULAS
from hoistbook.pages import links
from hoistbook.pages.desk import Desk, NamePart
from hoistbook.pages.formula_list import formula_address
from hoistbook.pages.shown import Link, PartRef
from hoistbook.values.evidence import Evidence


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeRow:
    """Something built by the author."""

    part: PartRef
    pieces: tuple[Link, ...]
    """What it was built from; the text says how many: "4 off 48 mm bend"."""
    hours: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DoneRow:
    """One thing done to a part, or to several."""

    verb: str
    """"Fitted"."""
    parts: tuple[PartRef, ...]
    """Several where the same was done to parts one after another, with nothing to add."""
    details: str
    """"2 off, instead of the first pump, for 40.00 EUR"; empty where there is nothing to add."""
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkRow:
    """A piece of work."""

    what: str
    hours: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRow:
    """Something measured."""

    what: str
    values: str
    evidence: str
    since: Link
    """The episode that measured it."""
    when: str
    """"before the work" or empty."""
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionShown:
    """A choice and its reason."""

    question: str
    chose: str
    over: str
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimRow:
    """A claim and its result."""

    text: str
    result: str
    """"holds", "does not hold" or "cannot tell"."""
    fails: bool
    """True when it does not hold."""
    why: str
    address: str
    """Of the workings of its figure; empty without."""


def made_of(desk: Desk, episode: Episode, name: NamePart) -> tuple[MadeRow, ...]:
    """Return what was built in an episode."""
    return tuple(_made(desk, each, name) for each in episode.made)


def _made(desk: Desk, part: Part, name: NamePart) -> MadeRow:
    pieces = (
        Link(
            text=desk.words("part.pieces", count=each.count, part=desk.part_name(each.part)),
            address=links.part(each.part),
        )
        for each in part.made_from
    )
    return MadeRow(
        part=name(part.id),
        pieces=tuple(pieces),
        hours=desk.hours(part.hours),
        note=part.note or "",
    )


def done_of(desk: Desk, episode: Episode, name: NamePart) -> tuple[DoneRow, ...]:
    """Return what was done to parts, in the order of the file."""
    rows: list[DoneRow] = []
    for each in episode.done:
        row = DoneRow(
            verb=_verb(desk, episode, each),
            parts=(name(each.part),),
            details=", ".join(_details(desk, each)),
            because=each.because or "",
        )
        if rows and row.verb == rows[-1].verb and not (_adds(row) or _adds(rows[-1])):
            row = replace(row, parts=(*rows.pop().parts, *row.parts))
        rows.append(row)
    return tuple(rows)


def _verb(desk: Desk, episode: Episode, done: Done) -> str:
    """Return the word for what was done; who scraps a plan that was never bought gives it up."""
    state = desk.states[episode.number].parts.get(done.part)
    given_up = done.verb is Verb.SCRAPPED and state is not None and state.how_gone == "given up"
    return desk.words("done.gave_up" if given_up else f"done.{done.verb.name.lower()}")


def _adds(row: DoneRow) -> bool:
    return bool(row.details or row.because)


def _details(desk: Desk, done: Done) -> Iterator[str]:
    if done.count is not None:
        yield desk.words("part.number_off", count=done.count)
    if done.instead_of:
        yield desk.words("done.instead", part=desk.part_name(done.instead_of))
    if done.amount is not None:
        yield desk.words("done.for", amount=desk.formats.money(done.amount))
    if done.to:
        yield desk.words("done.to", person=done.to)
    if done.date is not None:
        yield desk.formats.date(done.date)


def work_of(desk: Desk, episode: Episode) -> tuple[tuple[WorkRow, ...], str]:
    """Return the work of an episode and its hours together, those of things made included."""
    rows = tuple(WorkRow(what=each.what, hours=desk.hours(each.hours)) for each in episode.work)
    hours = [each.hours for each in episode.work] + [each.hours for each in episode.made]
    known = [each for each in hours if each is not None]
    return rows, desk.hours(sum(known)) if known else ""


def readings_of(desk: Desk, episode: Episode) -> tuple[ReadingRow, ...]:
    """Return what was measured in an episode, power runs apart."""
    return tuple(
        reading_row(desk, each, episode.number)
        for each in episode.measured
        if isinstance(each, Reading)
    )


def reading_row(desk: Desk, reading: Reading, number: int) -> ReadingRow:
    """Return what was measured in an episode as a row; a reading is measured if not said else."""
    said = (each.evidence for each in reading.values if each.evidence is not None)
    return ReadingRow(
        what=reading.what[:1].upper() + reading.what[1:],
        values=desk.formats.given_together(reading.values) or reading.text,
        evidence=desk.word("evidence", next(said, Evidence.MEASURED)),
        since=desk.episode(number),
        when=desk.words("episode.before_work") if reading.before_work else "",
        note=reading.note or "",
    )


def decisions_of(episode: Episode) -> tuple[DecisionShown, ...]:
    """Return the choices of an episode."""
    return tuple(
        DecisionShown(
            question=each.question,
            chose=each.chose,
            over=", ".join(each.over),
            because=each.because or "",
        )
        for each in episode.decisions
    )


def claims_of(desk: Desk, number: int) -> tuple[ClaimRow, ...]:
    """Return the claims of one episode with their results."""
    return tuple(_claim(desk, each) for each in desk.material.claims if each.episode == number)


def claim_workings(desk: Desk, verdict: ClaimVerdict) -> str:
    """Return where the figure of a claim is worked out as at its episode; empty without one."""
    if verdict.figure is None:
        return ""
    key = verdict.figure
    found = desk.figures[verdict.episode].get(key.quantity, key.subject)
    if found is not None:
        return desk.workings(found)
    # A figure that only the claim's own conditions give has no workings: its formula says it all.
    return formula_address(key.quantity) if key.quantity in FORMULAS else ""


def claim_in_words(desk: Desk, verdict: ClaimVerdict) -> str:
    """Return a claim as pages print it, its figure, part and units in words; else as written."""
    claim, key = verdict.claim, verdict.figure
    if key is None or key.quantity not in desk.titles:
        return claim.text
    subject = desk.subject(key)
    what = desk.titles[key.quantity]
    if subject is not None:
        what = f"{what} {desk.words('figures.of')} {subject.text}"
    low, high = (desk.formats.given(claim.bounds[at]) for at in (0, -1))
    text = desk.words(f"claim.{claim.relation}", what=what, low=low, high=high)
    if not claim.conditions:
        return text
    conditions = ", ".join(
        f"{name} {desk.formats.given(wanted)}" for name, wanted in claim.conditions.items()
    )
    return desk.words("claim.at", claim=text, conditions=conditions)


def _claim(desk: Desk, verdict: ClaimVerdict) -> ClaimRow:
    return ClaimRow(
        text=claim_in_words(desk, verdict),
        result=desk.word("result", verdict.result),
        fails=verdict.result is Result.FAILS,
        why=verdict.why,
        address=claim_workings(desk, verdict),
    )
