"""Whatever an author writes, what follows is states, sums and problems, never an exception."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from hoistbook.authored.records import (
    Came,
    Done,
    Episode,
    Join,
    JoinEnd,
    Journal,
    Part,
    PieceUsed,
    Rate,
    Receipt,
    Verb,
)
from hoistbook.history.differences import differences
from hoistbook.history.fates import fates
from hoistbook.history.fold import fold
from hoistbook.history.money import ledger
from hoistbook.history.spread import rounded
from hoistbook.problems import Place
from hoistbook.values.money import Money

AT = Place("episodes/01-test.md")
DAY = date(2026, 1, 20)
IDS = st.sampled_from(["turbo", "pump", "hose", "stud", "car", "nothing"])
COUNTS = st.none() | st.integers(1, 4)
MONEY = st.builds(
    Money,
    st.decimals("0", "999.99", places=2),
    st.sampled_from(["EUR", "EUR", "GBP", "XYZ"]),
)
HOME = st.builds(Money, st.decimals("0", "999.99", places=2), st.just("EUR"))


@st.composite
def parts(draw: st.DrawFn) -> Part:
    count = draw(st.integers(1, 4))
    return Part(
        id=draw(IDS),
        name="A part",
        place=AT,
        count=count,
        kept=draw(st.none() | st.integers(0, count)),
        paid=draw(st.none() | MONEY),
        list_price=draw(st.none() | MONEY),
        came=draw(st.sampled_from(Came)),
        came_with=draw(st.none() | IDS),
    )


@st.composite
def deeds(draw: st.DrawFn) -> Done:
    verb = draw(st.sampled_from(Verb))
    new = draw(st.none() | parts()) if verb in (Verb.PLANNED, Verb.ORDERED) else None
    return Done(
        verb=verb,
        part=new.id if new else draw(IDS),
        place=AT,
        count=draw(COUNTS),
        instead_of=draw(st.none() | IDS),
        because=draw(st.none() | st.just("so it was")),
        amount=draw(st.none() | MONEY),
        charged=draw(st.none() | HOME),
        new_part=new,
    )


RECEIPTS = st.builds(
    Receipt,
    supplier=st.just("Shop"),
    date=st.just(DAY),
    place=st.just(AT),
    parts=st.lists(parts(), min_size=1, max_size=4).map(tuple),
    postage=st.none() | MONEY,
    discount=st.none() | MONEY,
    charged=st.none() | HOME,
)
MADE = st.builds(
    replace,
    parts(),
    made_from=st.lists(
        st.builds(PieceUsed, part=IDS, count=st.integers(1, 3), place=st.just(AT)), max_size=2
    ).map(tuple),
)
ENDS = st.builds(JoinEnd, part=IDS, end=st.sampled_from(["in", "out"]))
EPISODES = st.builds(
    Episode,
    number=st.just(0),
    title=st.just("Any"),
    file=st.just(AT.file),
    place=st.just(AT),
    prose=st.just(""),
    prose_line=st.just(1),
    filmed=st.none() | st.just(DAY),
    bought=st.lists(RECEIPTS, max_size=2).map(tuple),
    got=st.lists(parts(), max_size=2).map(tuple),
    made=st.lists(MADE, max_size=2).map(tuple),
    done=st.lists(deeds(), max_size=6).map(tuple),
    joins=st.lists(st.builds(Join, a=ENDS, b=ENDS, place=st.just(AT)), max_size=3).map(tuple),
)
JOURNALS = st.lists(EPISODES, min_size=1, max_size=4).map(
    lambda episodes: Journal(
        title="Any",
        place=AT,
        episodes=tuple(
            replace(episode, number=number) for number, episode in enumerate(episodes, 1)
        ),
        rates=(Rate(day=DAY, currency="GBP", rate="0.8", source="by hand"),),
    )
)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(JOURNALS)
def test_any_journal_comes_to_states_sums_and_problems(journal: Journal) -> None:
    folded = fold(journal)
    assert len(folded.states) == len(journal.episodes) + 1
    reckoned = ledger(journal, folded.states)
    assert len(reckoned.ledger.tallies) == len(folded.states)
    for before, after in pairwise(folded.states):
        differences(before, after)
        differences(after, before)
    assert set(fates(folded.states)) == set(folded.states[-1].parts)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(JOURNALS)
def test_counts_stay_between_nothing_and_what_was_bought(journal: Journal) -> None:
    for state in fold(journal).states:
        for part in state.parts.values():
            assert 0 <= part.pieces_fitted <= (part.pieces_left or 0) <= part.part.count
            assert (part.status == "fitted") == (part.pieces_fitted > 0)
            assert (part.status == "gone") == (part.pieces_left == 0)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(RECEIPTS)
def test_the_entries_of_a_receipt_add_up_to_it(receipt: Receipt) -> None:
    whole = tuple(replace(part, kept=None, came=Came.BOUGHT) for part in receipt.parts)
    bought = replace(receipt, parts=whole)
    episode = Episode(
        number=1, title="", file="", place=AT, prose="", prose_line=1, bought=(bought,)
    )
    rate = Rate(day=DAY, currency="GBP", rate="0.8", source="by hand")
    journal = Journal(title="", place=AT, episodes=(episode,), rates=(rate,))
    reckoned = ledger(journal, fold(journal).states)
    if reckoned.problems:
        return
    signs = [*((1, part.paid) for part in whole), (1, bought.postage), (-1, bought.discount)]
    total = sum(
        (
            sign * money.amount / (Decimal("0.8") if money.currency == "GBP" else 1)
            for sign, money in signs
            if money is not None
        ),
        Decimal(0),
    )
    expected = bought.charged.amount if bought.charged else rounded(Fraction(total), "EUR")
    assert sum(entry.home for entry in reckoned.ledger.entries) == expected
