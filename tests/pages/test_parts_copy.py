"""The copied list, whole, in all its forms: what became of a part travels with it."""

from dataclasses import replace

from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.parts_copy import copies_of, parts_in_lines, parts_list_files
from tests.pages.sample import FIRST, JOURNAL, SECOND, part, sample_material

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
    120.00_GBP, Pump bench, 2025-11-01, https://shop.example/pump-2
    ends: outlet: 8 mm barb
    had to meet: flow for 100 kW

WORKSHOP
Fuel-proof gloves
    already owned

Left out: 5 parts that are not in the build, replaced, gone or not there yet.
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
    ends: outlet: 8 mm barb
    what became of it: replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar
Fuel hose, 8 mm (2 off)
    bought new
    12.40_EUR for all 2, Fuel counter, 2025-09-13
    what became of it: built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, \
not fitted
Larger fuel pump
    bought used
    120.00_GBP, Pump bench, 2025-11-01, https://shop.example/pump-2
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

Of these, 5 parts are not in the build: what became of each stands beside it.
Good for: displacement 1,598_cc, boost 0.5_bar, fuel petrol.
{CAUTION}
Fuel: Fuel vapour burns: no flame, moving air.
"""

MARKDOWN = f"""\
# Parts list: A car for the hill, what came in episode 2

## Fuel

- **Larger fuel pump**
  - bought used
  - 120.00_GBP, Pump bench, 2025-11-01, https://shop.example/pump-2
  - ends: outlet: 8 mm barb
  - had to meet: flow for 100 kW

## Workshop

- **Fuel-proof gloves**
  - already owned

Left out: 2 parts that are not in the build, replaced, gone or not there yet.

Good for: displacement 1,598_cc, boost 0.5_bar, fuel petrol.

{CAUTION}

Fuel: Fuel vapour burns: no flame, moving air.
"""

CSV = f"""\
System,Count,Name,Maker,Part number,New or used,Ends,Price,Date,Supplier,Link,Had to meet,\
Figures,What became of it
Fuel,1,Fuel pump,,,bought new,outlet: 8 mm barb,89.00 EUR,2025-09-13,Fuel counter,,,,\
replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar
Fuel,2 off,"Fuel hose, 8 mm",,,bought new,,12.40 EUR for all 2,2025-09-13,Fuel counter,,,,\
"built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, not fitted"
"Of these, 2 parts are not in the build: what became of each stands beside it.",,,,,,,,,,,,,
"Good for: displacement 1,598 cc, boost none, fuel petrol.",,,,,,,,,,,,,
"{CAUTION}",,,,,,,,,,,,,
"Fuel: Fuel vapour burns: no flame, moving air.",,,,,,,,,,,,,
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


def test_the_list_of_an_episode_as_csv() -> None:
    assert files()["-episode-1-whole.csv"] == CSV.replace("\n", "\r\n")


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
        "Fuel hose, 8 mm (2 off), 12.40_EUR for all 2, Fuel counter, "
        "built into Pump cradle in episode 2, 1 of 2 left; Pump cradle: on hand, not fitted",
    ]
