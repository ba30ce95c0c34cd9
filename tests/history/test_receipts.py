"""One receipt: its prices, and their shares of postage, tax, discount and what was charged."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

from hoistbook.authored.records import Journal
from tests.history.reckoning import RATE, entries, last_tally, receipt, reckoned

Written = Callable[..., Journal]


def test_postage_tax_and_discount_are_spread_over_the_parts_by_price(written: Written) -> None:
    # 30 and 10 EUR; 8 of postage, 4 of tax, 2 of discount: 10 more, of which 7.50 and 2.50.
    more = ", postage: 8 EUR, tax: 4 EUR, discount: 2 EUR"
    journal = written(receipt("'Pump, 30 EUR', 'Hose, 10 EUR'", more))
    assert entries(journal) == [
        "1 spent Pump: 30.00 EUR = 37.50 (7.50)",
        "1 spent Hose: 10.00 EUR = 12.50 (2.50)",
    ]


def test_shares_add_up_to_the_receipt_though_no_part_s_share_is_whole_cents(
    written: Written,
) -> None:
    # 10.00 EUR over three equal parts: 3.34, 3.33, 3.33.
    journal = written(receipt("'A, 5 EUR', 'B, 5 EUR', 'C, 5 EUR'", ", postage: 10 EUR"))
    assert entries(journal) == [
        "1 spent A: 5.00 EUR = 8.34 (3.34)",
        "1 spent B: 5.00 EUR = 8.33 (3.33)",
        "1 spent C: 5.00 EUR = 8.33 (3.33)",
    ]


def test_a_foreign_receipt_is_converted_as_a_whole_at_the_rate_the_journal_carries(
    written: Written,
) -> None:
    # 3 x 0.33 GBP + 0.02 GBP = 1.01 GBP = 1.2625 EUR, so 1.26; the parts alone are 1.24 EUR.
    journal = written(
        receipt("'A, 0.33 GBP', 'B, 0.33 GBP', 'C, 0.33 GBP'", ", postage: 0.02 GBP"), rates=RATE
    )
    assert entries(journal) == [
        "1 spent A: 0.33 GBP = 0.43 (0.01)",
        "1 spent B: 0.33 GBP = 0.42 (0.01)",
        "1 spent C: 0.33 GBP = 0.41",
    ]
    assert last_tally(journal).spent == Decimal("1.26")
    first = reckoned(journal).ledger.entries[0]
    assert (str(first.day), first.supplier) == ("2026-01-20", "Shop")
    assert first.rate == "0.8 GBP for 1 EUR, by hand"


def test_what_was_charged_beats_any_rate_and_is_spread_likewise(written: Written) -> None:
    # 60 + 20 GBP and 20 GBP of postage, for which 130 EUR left the account: 78, 26 and 26.
    more = ", postage: 20 GBP, charged: 130 EUR"
    journal = written(receipt("'Pump, 60 GBP', 'Hose, 20 GBP'", more), rates=RATE)
    assert entries(journal) == [
        "1 spent Pump: 60.00 GBP = 97.50 (19.50)",
        "1 spent Hose: 20.00 GBP = 32.50 (6.50)",
    ]
    assert reckoned(journal).ledger.entries[0].rate == "by what left the account"


def test_what_was_charged_stands_for_prices_that_are_not_given(written: Written) -> None:
    journal = written(receipt("Pump, Hose, 'Clip, with pump'", ", charged: 25.01 EUR"))
    assert entries(journal) == [
        "1 spent Pump: 12.51 EUR = 12.51",
        "1 spent Hose: 12.50 EUR = 12.50",
    ]
    assert last_tally(journal).unpriced == ()


def test_charged_in_two_currencies_weighs_them_by_the_rates(written: Written) -> None:
    more = ", postage: 10 EUR, charged: 66 EUR"
    journal = written(receipt("'Pump, 40 GBP'", more), rates=RATE)
    # 40 GBP are 50 EUR, with postage 60; the 66 EUR charged are 55 and 11.
    assert entries(journal) == ["1 spent Pump: 40.00 GBP = 66.00 (11.00)"]


def test_list_prices_are_taken_at_the_same_rate(written: Written) -> None:
    one = "{part: pump, paid: 40 GBP, list: 48 GBP}"
    at_rate = written(receipt(one, ", postage: 4 GBP"), rates=RATE)
    assert entries(at_rate) == ["1 spent Pump: 40.00 GBP = 55.00 (5.00), list 60.00"]
    # 66 EUR for 44 GBP: 1.50 EUR for each.
    charged = written(receipt(one, ", postage: 4 GBP, charged: 66 EUR"))
    assert entries(charged) == ["1 spent Pump: 40.00 GBP = 66.00 (6.00), list 72.00"]
    tally = last_tally(charged)
    assert (tally.spent, tally.list_total) == (Decimal("66.00"), Decimal("78.00"))


def test_of_a_shared_purchase_only_the_kept_share_is_entered(written: Written) -> None:
    one = "{part: strap, count: 3, kept: 1, paid: 10 EUR each, list: 36 EUR}"
    journal = written(receipt(one, ", postage: 5 EUR"))
    assert entries(journal) == ["1 spent Strap, 1 of 3 kept: 10.00 EUR = 11.67 (1.67), list 12.00"]


def test_a_kit_s_members_and_free_parts_cost_nothing(written: Written) -> None:
    parts = "'Kit, 50 EUR', 'Bearing, with kit', 'Cap, supplied free'"
    assert entries(written(receipt(parts, ", postage: 5 EUR"))) == [
        "1 spent Kit: 50.00 EUR = 55.00 (5.00)"
    ]


def test_a_refund_of_postage_alone_says_nothing_of_list_prices(written: Written) -> None:
    journal = written(
        receipt("{part: core, list: 120 EUR}", ", postage: 10 EUR"),
        "done: [{sent back: core, for: 5 EUR}]",
    )
    assert entries(journal) == [
        "1 spent Core: 0.00 EUR = 10.00 (10.00), list 120.00",
        "2 spent Core: -5 EUR = -5.00",
    ]


def test_a_journal_in_a_currency_without_cents_is_reckoned_in_whole_ones(written: Written) -> None:
    journal = written(
        receipt("'A, 1000 JPY', 'B, 500 JPY'", ", postage: 100 JPY"), build="currency: JPY"
    )
    assert entries(journal) == [
        "1 spent A: 1000 JPY = 1067 (67)",
        "1 spent B: 500 JPY = 533 (33)",
    ]
