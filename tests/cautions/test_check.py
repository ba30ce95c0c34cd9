"""A rendered page is looked over for the cautions that it owes."""

from __future__ import annotations

import html

import pytest

from hoistbook.cautions.caution import Owed
from hoistbook.cautions.check import check_page
from hoistbook.cautions.texts import CAUTIONS, Caution

FUEL = next(caution for caution in CAUTIONS if caution.id == "fuel")


def page(body: str) -> str:
    return f"<!doctype html><html><head><title>T</title></head><body>{body}</body></html>"


def full(caution: Caution) -> str:
    paragraphs = "".join(f"<p>{html.escape(text)}</p>" for text in caution.text)
    return f"<section><h2>{html.escape(caution.title)}</h2>{paragraphs}</section>"


IN_FULL = Owed(caution=FUEL, full=True, because=())
AS_A_LINE = Owed(caution=FUEL, full=False, because=())


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.id)
def test_a_page_that_carries_what_it_owes_lacks_nothing(caution: Caution) -> None:
    owed = (Owed(caution=caution, full=True, because=()),)
    assert check_page(page(full(caution)), owed) == ()


def test_a_line_is_carried_wherever_it_stands_and_however_it_is_wrapped() -> None:
    wrapped = FUEL.line.replace(" ", "\n   ").replace("flame", "<strong>fl&#97;me</strong>")
    assert check_page(page(f"<ul><li>{wrapped}<br></li></ul>"), [AS_A_LINE]) == ()


def test_a_paragraph_left_out_is_found() -> None:
    lacking = full(FUEL).replace(html.escape(FUEL.text[2]), "")
    assert check_page(page(lacking), [IN_FULL, AS_A_LINE]) == (IN_FULL, AS_A_LINE)


def test_the_line_does_not_stand_for_the_full_text() -> None:
    assert check_page(page(f"<p>{FUEL.line}</p>"), [IN_FULL]) == (IN_FULL,)


@pytest.mark.parametrize(
    "hidden",
    [
        "<!-- {} -->",
        "<script>{}</script>",
        "<style>{}</style>",
        "<template><p>{}</p></template>",
        "<div hidden><div><p>{}</p><img src='x'></div></div>",
        "<div hidden><p>{}</div>",
        "<img alt='{}'>",
        '<p title="> {}">x</p>',
        "<script>if (a < b) {{ '<p>' }} {}</script>",
        "<SCRIPT>{}</SCRIPT>",
        "<div class='a' hidden='hidden'><svg><path/></svg>{}</div>",
    ],
)
def test_what_a_reader_cannot_see_is_not_carried(hidden: str) -> None:
    assert check_page(page(hidden.format(FUEL.line)), [AS_A_LINE]) == (AS_A_LINE,)
    after = hidden.format("x") + f"<p>{FUEL.line}</p>"
    assert check_page(page(after), [AS_A_LINE]) == ()


AHEAD = Owed(caution=FUEL, full=True, ahead=True, because=())


@pytest.mark.parametrize("section", ["work", "joins", "story"])
def test_what_is_owed_ahead_of_the_work_is_read_before_it(section: str) -> None:
    line = f"<ul><li>{FUEL.line}</li></ul>"
    work = f"<section id='{section}'><h2>Work</h2><img id='x'></section>"
    assert check_page(page(line + work + full(FUEL)), [AHEAD]) == ()
    assert check_page(page(work + line + full(FUEL)), [AHEAD]) == (AHEAD,)
    assert check_page(page(work + full(FUEL)), [AHEAD]) == (AHEAD,)
    assert check_page(page(line + work), [AHEAD]) == (AHEAD,)


def test_a_word_in_an_attribute_hides_nothing() -> None:
    said = f"<p class='not hidden' title=\"it is hidden here\" data-hidden>{FUEL.line}</p>"
    assert check_page(page(said), [AS_A_LINE]) == ()
