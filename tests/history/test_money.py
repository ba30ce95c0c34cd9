"""The running cost: entries to the cent, rates that the journal carries, tallies by episode."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from hoistbook.authored.records import Journal
from hoistbook.history.fold import fold
from hoistbook.history.money import missing_rates
from tests.history.reckoning import RATE, entries, last_tally, receipt, reckoned

Written = Callable[..., Journal]


def test_a_part_already_owned_counts_when_a_price_is_written(written: Written) -> None:
    journal = written("got: ['Jack, 30 EUR, already owned', 'Stands, already owned']")
    assert entries(journal) == ["1 spent Jack: 30.00 EUR = 30.00"]


def test_money_that_is_not_a_part(written: Written) -> None:
    journal = written(
        """
        spent:
          - Decking the head, machine shop, 90 EUR
          - {what: Deposit back, amount: -8 GBP, date: 2026-01-20}
          - {what: Entry, amount: 80 GBP, charged: 101 EUR}
          - {what: Paint back, amount: -8 GBP, charged: 11 EUR}
        """,
        rates=RATE,
    )
    assert entries(journal) == [
        "1 spent Deposit back: -8 GBP = -10.00",
        "1 spent Decking the head: 90 EUR = 90.00",
        "1 spent Entry: 80 GBP = 101",
        "1 spent Paint back: -8 GBP = -11",
    ]
    tally = last_tally(journal)
    assert (tally.spent, tally.came_back) == (Decimal("170.00"), Decimal("21.00"))


def test_the_price_of_the_car_is_the_first_entry(written: Written) -> None:
    journal = written("summary: s", build="car: {paid: 850 EUR, date: 2025-08-30}")
    first = reckoned(journal).ledger.entries[0]
    assert (first.episode, first.home, str(first.day)) == (0, Decimal("850.00"), "2025-08-30")
    assert [tally.spent for tally in reckoned(journal).ledger.tallies] == [Decimal(850)] * 2


def test_the_car_itself_stands_before_the_systems(written: Written) -> None:
    journal = written(
        "got: ['Fuel pump, 20 EUR, already owned', 'Cup, 1 EUR, already owned']",
        "done: [{sold: car, for: 50 EUR}]",
        build="car: {paid: 850 EUR, date: 2025-08-30}",
    )
    assert last_tally(journal).by_system == (
        ("car as bought", Decimal("800.00")),
        ("fuel", Decimal("20.00")),
        ("other", Decimal("1.00")),
    )


def test_entries_stand_in_the_order_of_their_days(written: Written) -> None:
    journal = written(
        """
        filmed: 2026-01-22
        spent: ['Tea, 1 EUR', {what: Paint, amount: 2 EUR, date: 2026-01-21}]
        bought: [{from: Shop, date: 2026-01-20, parts: ['Pump, 30 EUR']}]
        """,
        "bought: [{from: Shop, date: 2026-01-10, parts: ['Hose, 3 EUR']}]\nspent: ['Tea, 1 EUR']",
    )
    assert [line.split(":")[0] for line in entries(journal)] == [
        "1 spent Pump",
        "1 spent Paint",
        "1 spent Tea",
        "2 spent Hose",
        "2 spent Tea",
    ]


def test_sales_and_refunds_come_back(written: Written) -> None:
    journal = written(
        receipt(
            "{part: core, paid: 100 EUR, list: 120 EUR, system: cooling}", ", postage: 10 EUR"
        ),
        """
        done:
          - {sent back: core, for: 50 EUR}
          - {sold: box, for: 8 GBP, date: 2026-01-20}
        """,
        build="parts: [{part: box, system: induction}]",
        rates=RATE,
    )
    # The refund of half the price takes half the list price off the total at list prices.
    assert entries(journal)[1:] == [
        "2 spent Box: -8 GBP = -10.00",
        "2 spent Core: -50 EUR = -50.00, list -60.00",
    ]
    assert [str(entry.kind) for entry in reckoned(journal).ledger.entries] == [
        "part",
        "sale",
        "refund",
    ]
    tally = last_tally(journal)
    assert (tally.spent, tally.spent_here, tally.came_back) == (
        Decimal("50.00"),
        Decimal("-60.00"),
        Decimal("60.00"),
    )
    assert tally.list_total == Decimal("60.00")
    assert tally.by_system == (("induction", Decimal("-10.00")), ("cooling", Decimal("60.00")))


def test_money_follows_prices_and_not_statuses(written: Written) -> None:
    journal = written(
        "done: [{planned: 'Cooler, 80 EUR'}, {planned: 'Differential, 500 EUR'}]",
        "done: [{ordered: cooler}]",
        receipt("'Cooler, 85 EUR'") + "\ndone: [{ordered: cooler}]",
        "done: [{arrived: cooler}, {scrapped: differential}]",
    )
    assert entries(journal) == [
        "1 planned until 2 Cooler: 80.00 EUR = 80.00",
        "1 planned until 4 Differential: 500.00 EUR = 500.00",
        "2 committed until 3 Cooler: 80.00 EUR = 80.00",
        "3 spent Cooler: 85.00 EUR = 85.00",
    ]
    tallies = reckoned(journal).ledger.tallies
    assert [(tally.planned, tally.committed, tally.spent) for tally in tallies] == [
        (Decimal(0), Decimal(0), Decimal(0)),
        (Decimal(580), Decimal(0), Decimal(0)),
        (Decimal(500), Decimal(80), Decimal(0)),
        (Decimal(500), Decimal(0), Decimal(85)),
        (Decimal(0), Decimal(0), Decimal(85)),
    ]


def test_a_plan_stands_at_its_list_price_until_a_part_is_had_for_nothing(written: Written) -> None:
    journal = written(
        "done: [{planned: {part: cooler, list: 80 EUR}}]", "got: [{part: cooler, came: given}]"
    )
    assert entries(journal) == ["1 planned until 2 Cooler: 80.00 EUR = 80.00, list 80.00"]


def test_a_plan_without_a_price_is_no_money(written: Written) -> None:
    assert entries(written("done: [{planned: {part: cooler, system: cooling}}]")) == []


def test_a_plan_that_stands_is_no_notice(written: Written) -> None:
    assert reckoned(written("done: [{planned: 'Cooler, 80 EUR'}]")).notices == ()


def test_what_is_here_and_was_never_paid_is_noticed(written: Written) -> None:
    journal = written("done: [{ordered: 'Cooler, 80 EUR'}]", "done: [{fitted: cooler}]")
    (notice,) = reckoned(journal).notices
    assert (notice.code, notice.message, notice.hint) == (
        "no-receipt",
        "`cooler` is fitted since episode 2 and no receipt says what was paid: 80.00 EUR count as "
        "committed, not as spent",
        "write it under `bought`, or under `got` if it cost nothing",
    )


def test_a_missing_price_is_noticed_and_named(written: Written) -> None:
    journal = written(receipt("Pump, 'Hose, 3 EUR'"))
    (notice,) = reckoned(journal).notices
    assert (notice.code, notice.message) == (
        "no-price",
        "`pump` was bought and has no price; the tally leaves it out",
    )
    assert last_tally(journal).unpriced == ("pump",)


def test_selling_the_car_closes_the_tally(written: Written) -> None:
    journal = written(
        "spent: ['Paint, 10 EUR']\ndone: [{sold: car, for: 3000 EUR}]", "spent: ['Wax, 5 EUR']"
    )
    assert [tally.spent for tally in reckoned(journal).ledger.tallies] == [
        Decimal(0),
        Decimal(-2990),
        Decimal(-2990),
    ]
    (notice,) = reckoned(journal).notices
    assert notice.message == (
        "Wax: this was spent after the car was sold in episode 1 and is not in the tally"
    )


def test_a_missing_rate_asks_for_the_command_that_finds_it(written: Written) -> None:
    journal = written(receipt("'Pump, 60 GBP', 'Hose, 20 GBP'", ", postage: 2 GBP"))
    (problem,) = reckoned(journal).problems
    assert (problem.code, problem.message, problem.hint) == (
        "missing-rate",
        "rates.csv has no rate of GBP for 2026-01-20",
        "run `hoistbook rates`, which looks it up and writes it there",
    )
    assert len(reckoned(journal).needs) == 1
    found = missing_rates(journal)
    assert [(str(rate.day), rate.currency) for rate in found.rates] == [("2026-01-20", "GBP")]
    complete = replace(journal, rates=found.rates)
    assert reckoned(complete).problems == ()
    assert missing_rates(complete).rates == ()


def test_rates_are_found_although_the_journal_contradicts_itself(written: Written) -> None:
    journal = written(
        """
        filmed: 2026-01-20
        got: ['Jack, 30 SEK, already owned']
        done:
          - {sold: nothing, for: 8 GBP}
          - {ordered: nothing}
          - {planned: 'Cooler, 80 USD'}
        """
    )
    assert fold(journal).problems
    assert [rate.currency for rate in missing_rates(journal).rates] == ["GBP", "SEK", "USD"]


def test_a_foreign_amount_without_a_day_asks_for_one(written: Written) -> None:
    (problem,) = reckoned(written("spent: ['Entry, 80 GBP']")).problems
    assert (problem.code, problem.message, problem.hint) == (
        "no-day-for-rate",
        "an amount in GBP has no day whose rate could turn it into EUR",
        "add `date:`, or what left the account, as `charged: 100.00 EUR`",
    )


def test_an_episode_s_own_day_serves_where_an_amount_has_none(written: Written) -> None:
    journal = written("filmed: 2026-01-20\nspent: ['Entry, 80 GBP']", rates=RATE)
    assert entries(journal) == ["1 spent Entry: 80 GBP = 100.00"]


def test_totals_are_shown_in_other_currencies_at_the_rate_of_the_day(written: Written) -> None:
    journal = written(
        "filmed: 2026-01-20\nspent: ['Paint, 10 EUR']",
        build="also show: [GBP, USD]",
        rates=RATE,
    )
    done = reckoned(journal)
    assert done.problems == ()
    (shown,) = done.ledger.tallies[-1].also_shown
    assert (shown.amount, shown.currency) == (Decimal("8.00"), "GBP")
    (notice,) = done.notices
    assert notice.message == (
        "rates.csv has no rate of USD for 2026-01-20; the total of that day is not shown in USD"
    )


@pytest.mark.parametrize(
    ("episode", "build", "message", "hint"),
    [
        (
            "got: ['Cap, 3 EUR, supplied free']",
            "",
            "`cap` came supplied free and has a price of its own",
            "leave the price out (`list:` says what it is worth), or change how it came",
        ),
        (
            "summary: s",
            "budget: 100 GBP",
            "the budget is in GBP and the journal is in EUR",
            "write the budget in EUR",
        ),
    ],
)
def test_money_that_contradicts_itself_is_a_problem(
    written: Written, episode: str, build: str, message: str, hint: str
) -> None:
    (problem,) = reckoned(written(episode, build=build)).problems
    assert (problem.message, problem.hint) == (message, hint)


@pytest.mark.parametrize(
    ("parts", "more", "said"),
    [
        ("'Pump, 30 EUR'", ", postage: 5 EUR, charged: 35 EUR", []),
        (
            "'Pump, 30 EUR'",
            ", postage: 5 EUR, discount: 1 EUR, charged: 35 EUR",
            ["the lines of the receipt from Shop come to 34 EUR, and 35 EUR was charged"],
        ),
        # At 0.8, 8 GBP are 10 EUR; a bank's fee and duty are not a slip, a digit too many is.
        ("'Pump, 8 GBP'", ", charged: 12 EUR", []),
        (
            "'Pump, 8 GBP'",
            ", charged: 100 EUR",
            [
                "the lines of the receipt from Shop come to 8 GBP, about 10.00 EUR, and 100 EUR "
                "was charged"
            ],
        ),
        ("'Pump, 8 GBP', 'Hose, 5 EUR'", ", charged: 100 EUR", []),
        ("Pump, Hose", ", charged: 100 EUR", []),
    ],
)
def test_a_receipt_that_does_not_add_up_to_what_was_charged_is_noticed(
    written: Written, parts: str, more: str, said: list[str]
) -> None:
    journal = written(receipt(parts, more), rates=RATE)
    assert [notice.message for notice in reckoned(journal).notices] == said
