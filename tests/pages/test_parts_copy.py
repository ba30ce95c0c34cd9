"""The copied list, whole, in all its forms: what became of a part travels with it."""

import csv
import io
from dataclasses import replace
from decimal import Decimal

from hoistbook.cautions.caution import Owed
from hoistbook.figures.figure import Limit, LimitState
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.parts_copy import copies_of, parts_in_lines, parts_list_files
from tests.pages.sample import (
    FIRST,
    FUEL,
    JOURNAL,
    SECOND,
    euro,
    figure,
    part,
    sample_material,
)

CAUTION = (
    "Caution: this is the record of one car, not advice for another. What fits and holds here may "
    "not do so elsewhere: check every size, rating and instruction yourself. Estimates are "
    "estimates. Local codes and licensed practice come first."
)

SHORT = f"""\
Parts list: A car for the hill, as at episode 2

INDUCTION
Airbox
    with the car

FUEL
Larger fuel pump
    bought used
    120.00_GBP (150.00_EUR), Pump bench, 2025-11-01, https://shop.example/pump-2
    ends: outlet: 8 mm barb
    had to meet: flow for 100 kW

WORKSHOP
Fuel-proof gloves
    already owned

Left out: 5 parts that are not in the build, replaced, gone or not there yet.
Together 150.00_EUR, where a price is given.
Good for: displacement 1,598_cc, boost 0.5_bar, fuel petrol.
{CAUTION}
Fuel: Fuel vapour burns: no flame, moving air.
"""

WHOLE = f"""\
Parts list: A car for the hill, as at episode 2

INDUCTION
Airbox
    with the car

CHARGE AIR
Charge cooler
    140.00_EUR
    what became of it: planned, not bought

FUEL
Fuel pump
    bought new
    89.00_EUR, Fuel counter, 2025-09-13
    facts: flow 95_L/h, stated
    ends: outlet: 8 mm barb
    what became of it: replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar
Fuel hose, 8 mm (2 off)
    bought new
    12.40_EUR for both, 6.20_EUR each, Fuel counter, 2025-09-13
    what became of it: built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, \
not fitted
Larger fuel pump
    bought used
    120.00_GBP (150.00_EUR), Pump bench, 2025-11-01, https://shop.example/pump-2
    ends: outlet: 8 mm barb
    had to meet: flow for 100 kW
Pump cradle
    made here
    what became of it: on hand, not fitted

CHASSIS
Bracket
    bought new
    ends: in: 8 mm bore
    what became of it: on hand, not fitted

WORKSHOP
Fuel-proof gloves
    already owned

Of the 8 parts above, 5 are not in the build: what became of each stands beside it.
Together 391.40_EUR, where a price is given; with postage, tax and discount 398.30_EUR.
Good for: displacement 1,598_cc, boost 0.5_bar, fuel petrol.
{CAUTION}
Fuel: Fuel vapour burns: no flame, moving air.
"""

MARKDOWN = f"""\
# Parts list: A car for the hill, what came in episode 2

## Fuel

- **Larger fuel pump**
  - bought used
  - 120.00_GBP (150.00_EUR), Pump bench, 2025-11-01, https://shop.example/pump-2
  - ends: outlet: 8 mm barb
  - had to meet: flow for 100 kW

## Workshop

- **Fuel-proof gloves**
  - already owned

Left out: 2 parts that are not in the build, replaced, gone or not there yet.

Together 150.00_EUR, where a price is given.

Good for: displacement 1,598_cc, boost 0.5_bar, fuel petrol.

{CAUTION}

Fuel: Fuel vapour burns: no flame, moving air.
"""

SHORT_CAUTION = (
    "The record of one car, not advice for another: check every size and rating yourself."
)

CSV = f"""\
System,Name,Count,Unit price in EUR,Price in EUR,"Postage, tax and discount in EUR",Price as paid,\
Date,Supplier,New or used,Maker,Part number,Facts,Ends,Had to meet,Figures and limits,\
What became of it,Link,Good for,Cautions
Fuel,Fuel pump,1,89.00,89.00,6.06,89.00 EUR,2025-09-13,Fuel counter,bought new,,,\
"flow 95 L/h, stated",outlet: 8 mm barb,,,\
replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar,,\
"displacement 1,598 cc, boost none, fuel petrol",\
"{SHORT_CAUTION} Fuel: Fuel vapour burns: no flame, moving air."
Fuel,"Fuel hose, 8 mm",2,6.20,12.40,0.84,12.40 EUR,2025-09-13,Fuel counter,bought new,,,,,,,\
"built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, not fitted",,\
"displacement 1,598 cc, boost none, fuel petrol",\
"{SHORT_CAUTION}"
"""


def files() -> dict[str, str]:
    made = parts_list_files(desk_of(sample_material()))
    return {
        path.removeprefix("data/parts-list"): content.decode().replace("\N{NO-BREAK SPACE}", "_")
        for path, content in made.items()
    }


def test_a_list_leaves_out_what_is_no_longer_in_the_build_and_says_how_many() -> None:
    assert files()[".txt"] == SHORT


def test_a_list_with_all_parts_says_what_became_of_each() -> None:
    assert files()["-whole.txt"] == WHOLE


def test_the_list_of_an_episode_as_markdown() -> None:
    assert files()["-episode-2.md"] == MARKDOWN


def test_as_csv_a_list_is_a_table_of_parts_alone_whose_rows_carry_its_cautions() -> None:
    material = sample_material()
    owed = {**material.owed, "/parts/pump/": (Owed(caution=FUEL, full=False, because=()),)}
    made = parts_list_files(desk_of(replace(material, owed=owed)))
    table = made["data/parts-list-episode-1-whole.csv"].decode()
    assert table == CSV.replace("\n", "\r\n")


def test_numbers_of_a_csv_add_up_in_a_spreadsheet() -> None:
    rows = list(csv.DictReader(io.StringIO(files()["-whole.csv"], newline="")))
    assert [row["Count"] for row in rows] == ["1", "1", "1", "2", "1", "1", "1", "1"]
    prices = [Decimal(row["Price in EUR"]) for row in rows if row["Price in EUR"]]
    assert sum(prices) == Decimal("391.40")  # as the list in words says


def test_a_pump_has_the_figure_that_it_had_to_meet_with_its_limit() -> None:
    limit = Limit(
        state=LimitState.NEAR, threshold=0.15, side="at least", reason="common practice, no source"
    )
    margin = figure("pump_margin", 0.2, 0.1, 2, limit=limit)
    material = sample_material()
    *_, last = material.figures
    figures = (*material.figures[:-1], replace(last, figures=(margin,)))
    text = parts_list_files(desk_of(replace(material, figures=figures)))["data/parts-list.txt"]
    assert (
        "    figures: Fuel pump margin 20_%, 95 % band 10 to 30_%, estimated, near its limit "
        "(at least 15_%)\n"
    ) in text.decode().replace("\N{NO-BREAK SPACE}", "_")


def test_of_parts_bought_with_a_friend_a_list_has_the_own_ones() -> None:
    mine = part("injectors", "Injectors", count=8, kept=4, paid=euro("100.00"))
    receipt = replace(SECOND.bought[0], parts=(*SECOND.bought[0].parts, mine))
    desk = desk_of(
        sample_material(replace(JOURNAL, episodes=(FIRST, replace(SECOND, bought=(receipt,)))))
    )
    text = parts_list_files(desk)["data/parts-list-whole.txt"].decode()
    assert (
        "Injectors (4 off)\n    bought new\n    50.00_EUR for 4, 12.50_EUR each"
        in text.replace("\N{NO-BREAK SPACE}", "_")
    )


def desk_with_gloves(**more: str) -> Desk:
    gloves = part("gloves", more.pop("name", "Gloves"), system="workshop", **more)
    journal = replace(JOURNAL, episodes=(FIRST, replace(SECOND, got=(gloves,))))
    return desk_of(sample_material(journal))


def test_marks_of_markdown_in_a_name_are_printed_as_they_are() -> None:
    desk = desk_with_gloves(must="*not* [slip] <b>")
    made = parts_list_files(desk)["data/parts-list.md"].decode()
    assert r"  - had to meet: \*not\* \[slip\] \<b\>" in made


def test_the_clipboard_gets_the_same_pieces_as_the_files() -> None:
    list_ = copies_of(desk_of(sample_material()))
    text = list_.copies[0]
    assert (text.file, text.whole) == ("/data/parts-list.txt", "/data/parts-list-whole.txt")
    assert '<span data-when="asked">Fuel pump\n' in text.body
    assert '<span data-when="unasked">Left out: 5 parts' in text.body
    assert list_.left_out == (
        "Left out: 5 parts that are not in the build, replaced, gone or not there yet."
    )


def test_no_part_gives_markup_to_the_page() -> None:
    desk = desk_with_gloves(name="Gloves </template><script>")
    assert "Gloves &lt;/template&gt;&lt;script&gt;" in copies_of(desk).copies[0].body


def test_the_description_of_a_video_has_a_line_for_each_part() -> None:
    lines = parts_in_lines(desk_of(sample_material()), 1)
    assert [each.replace("\N{NO-BREAK SPACE}", "_") for each in lines] == [
        "Fuel pump, 89.00_EUR, Fuel counter, "
        "replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar",
        "Fuel hose, 8 mm (2 off), 12.40_EUR for both, 6.20_EUR each, Fuel counter, "
        "built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, not fitted",
    ]
