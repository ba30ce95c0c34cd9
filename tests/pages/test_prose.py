"""Prose becomes HTML (CommonMark 0.31.2): our links resolved, foreign ones let through or not."""

from __future__ import annotations

import pytest
from markupsafe import Markup

from hoistbook.pages.prose import Targets, render_prose
from hoistbook.pages.shown import Chart, Link, Number, PartRef, Picture

PARTS = {
    "turbo": PartRef(text="Turbocharger", address="/parts/turbo/"),
    "pump": PartRef(
        text="Pump",
        address="/parts/pump/",
        fate="sold in episode 4",
        mark="until episode 4",
        dropped=True,
    ),
}
FIGURES = {
    "injector_duty": Number(
        value="82 %", evidence="estimated", address="/workings/injector_duty/#engine-episode-3"
    ),
    "pump_margin": "not known yet",
}
PICTURE = Picture(address="/episodes/3/bench.jpg", width=800, height=600, text="")
CHART = Chart(
    address="/charts/power.svg",
    width=720,
    height=420,
    text="Chart: power.",
    caption="Power over engine speed",
    data=Link(text="its data", address="/charts/power.csv"),
    narrow=Picture(
        address="/charts/power-narrow.svg", width=330, height=360, text="Chart: power."
    ),
)
TARGETS = Targets(
    href=lambda address: f"..{address}",
    parts=PARTS.get,
    episodes={"2": "/episodes/2/"}.get,
    figures=FIGURES.get,
    charts={"power": CHART},
    pictures={"bench.jpg": PICTURE},
)


def rendered(text: str) -> Markup:
    return render_prose(text, TARGETS, "Table")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[the turbo](part:turbo)", '<p><a href="../parts/turbo/">the turbo</a></p>\n'),
        (
            "[the pump](part:pump)",
            '<p><a href="../parts/pump/">the pump</a> <span class="fate">(until episode 4)'
            "</span></p>\n",
        ),
        ("[no such](part:none)", "<p>no such</p>\n"),
        ("[before](episode:2)", '<p><a href="../episodes/2/">before</a></p>\n'),
        ("[later](episode:9)", "<p>later</p>\n"),
        (
            "[injector duty](figure:injector_duty)",
            '<p><a href="../workings/injector_duty/#engine-episode-3">injector duty 82 %</a>'
            " (estimated)</p>\n",
        ),
        ("[pump margin](figure:pump_margin)", "<p>pump margin (not known yet)</p>\n"),
        ("[power](figure:none)", "<p>power</p>\n"),
        (
            "[shop](https://shop.example/a?b=1&c=2)",
            '<p><a href="https://shop.example/a?b=1&amp;c=2">shop</a></p>\n',
        ),
        (
            "[write](mailto:me@journal.example)",
            '<p><a href="mailto:me@journal.example">write</a></p>\n',
        ),
    ],
)
def test_a_link_leads_where_its_name_says(text: str, expected: str) -> None:
    assert rendered(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "[run](javascript:alert(1))",
        "[run](JaVaScRiPt:alert(1))",
        "[run](vbscript:x)",
        "[run](data:text/html,x)",
        "[run](file:///etc/passwd)",
        "[run](ftp://host.example/x)",
        "[run](//host.example/x)",
        "[run](../../secret)",
        "[run](/absolute)",
        "<script>alert(1)</script>",
        '<img src="x" onerror="alert(1)">',
        "![run](https://host.example/x.png)",
        "![run](../../etc/passwd)",
        "![run](data:image/svg+xml,x)",
    ],
)
def test_nothing_runs_and_nothing_leads_or_loads_from_elsewhere(text: str) -> None:
    html = rendered(text)
    assert "<a" not in html
    assert "<img" not in html
    assert "<script" not in html
    assert "run" in html or "alert(1)" in html


def test_headings_stand_below_the_page_and_leave_no_gap() -> None:
    text = "# One\n\n#### Deep\n\n## Two\n\n# Three\n\n##### Deeper"
    tags = [line[1:3] for line in rendered(text).splitlines()]
    assert tags == ["h3", "h4", "h4", "h3", "h4"]


def test_a_picture_alone_is_a_figure_with_its_size_and_caption() -> None:
    assert rendered('![The bench](bench.jpg "A bench & a vice")') == (
        '<figure><img src="../episodes/3/bench.jpg" alt="The bench" width="800" height="600"'
        ' loading="lazy"><figcaption>A bench &amp; a vice</figcaption></figure>'
    )


def test_a_picture_in_a_sentence_stays_in_it() -> None:
    assert rendered("See ![the bench](bench.jpg) here.") == (
        '<p>See <img src="../episodes/3/bench.jpg" alt="the bench" width="800" height="600"'
        ' loading="lazy"> here.</p>\n'
    )


def test_a_chart_brings_its_own_text_and_its_data() -> None:
    assert rendered("![Power](chart:power)") == (
        '<figure class="chart"><picture><source media="screen and (max-width: 47.99rem)"'
        ' srcset="../charts/power-narrow.svg" width="330" height="360">'
        '<img src="../charts/power.svg" alt="Chart: power."'
        ' width="720" height="420" loading="lazy"></picture><figcaption>Power over engine speed'
        ' <a href="../charts/power.csv">its data</a></figcaption></figure>'
    )


def test_the_empty_corner_of_a_table_is_no_header() -> None:
    html = rendered("| | b |\n| --- | --- |\n| 1 | 2 |")
    assert "<tr>\n<td></td>\n<th>b</th>\n</tr>" in html


def test_a_table_scrolls_in_a_box_of_its_own() -> None:
    html = rendered("| a | b |\n| --- | --- |\n| 1 | 2 |")
    assert html.startswith(
        '<div class="wide" role="region" tabindex="0" aria-label="Table"><table>'
    )
    assert html.endswith("</table>\n</div>")
