"""Themes: what a template is given, overriding single ones, and what both of ours must hold."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest

from hoistbook.figures.inputs import inputs_of
from hoistbook.pages.environment import Renderer, ThemeError
from hoistbook.pages.page import Page
from hoistbook.pages.shown import Sheet
from hoistbook.pages.site import site_pages
from tests.figures.states import state
from tests.pages.sample import JOURNAL, sample_material

THEMES = Path(__file__).resolve().parents[2] / "themes"
MATERIAL = sample_material()
WITH_A_CHAIN = tuple(
    replace(each, inputs=inputs_of(state())) for each in sample_material().figures
)
PAGES = site_pages(replace(MATERIAL, figures=WITH_A_CHAIN))


def page(address: str) -> Page:
    return next(each for each in PAGES if each.address == address)


def rendered(address: str, *folders: Path) -> str:
    return Renderer(MATERIAL, folders or (THEMES / "jobsheet",)).render(page(address)).decode()


class Seen(HTMLParser):
    """The tags of a page in their order, with their attributes."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def values(self, name: str) -> list[str]:
        return [each[name] or "" for _, each in self.tags if name in each]


@pytest.fixture(params=["jobsheet", "bare"])
def theme(request: pytest.FixtureRequest) -> Path:
    return THEMES / str(request.param)


def test_a_journal_overrides_a_single_template(tmp_path: Path) -> None:
    (tmp_path / "home.html").write_text(
        '{% extends "base.html" %}{% block content %}<p>My own {{ page.about }}</p>{% endblock %}'
    )
    folders = (tmp_path, THEMES / "jobsheet")
    assert "<p>My own A small car with a plan.</p>" in rendered("/", *folders)
    assert rendered("/tally/", *folders) == rendered("/tally/")


def test_a_name_that_the_context_lacks_is_an_error(tmp_path: Path) -> None:
    (tmp_path / "home.html").write_text("{{ page.colour }}")
    with pytest.raises(ThemeError, match=r"home\.html, line 1, cannot be used: .* 'colour'"):
        rendered("/", tmp_path)


def test_what_an_author_writes_is_text_and_no_markup() -> None:
    journal = replace(JOURNAL, title='<b>"Mine" & yours</b>')
    renderer = Renderer(sample_material(journal), (THEMES / "jobsheet",))
    html = renderer.render(page("/tally/")).decode()
    assert "&lt;b&gt;&#34;Mine&#34; &amp; yours&lt;/b&gt;" in html
    assert "<b>" not in html


def test_structured_data_cannot_end_its_script() -> None:
    hostile = replace(page("/"), structured={"name": "</script><!-- & -->"})
    html = Renderer(MATERIAL, (THEMES / "jobsheet",)).render(hostile).decode()
    assert '{"name": "\\u003c/script\\u003e\\u003c!-- \\u0026 --\\u003e"}' in html


def test_the_head_names_the_page_its_address_and_its_picture() -> None:
    html = rendered("/episodes/2/")
    assert "<title>Episode 2: The second pump · A car for the hill</title>" in html
    assert '<link rel="canonical" href="https://journal.example/hill/episodes/2/">' in html
    assert (
        '<meta property="og:image" content="https://journal.example/hill/episodes/2/poster.svg">'
        '\n<meta property="og:image:alt" content="Two pumps on a bench.">'
    ) in html


def test_a_long_description_is_cut_at_a_word() -> None:
    long = replace(page("/"), description="word " * 100)
    html = Renderer(MATERIAL, (THEMES / "jobsheet",)).render(long).decode()
    (description,) = re.findall(r'name="description" content="([^"]*)"', html)
    assert len(description) <= 300
    assert description.endswith(" word…")


def test_without_an_address_nothing_absolute_is_claimed() -> None:
    renderer = Renderer(sample_material(replace(JOURNAL, address=None)), (THEMES / "jobsheet",))
    html = renderer.render(page("/")).decode()
    assert "canonical" not in html
    assert "og:" not in html
    assert "feed" not in html


@pytest.mark.parametrize("address", [each.address for each in PAGES])
def test_every_page_is_whole_in_both_themes(address: str, theme: Path) -> None:
    seen = Seen(rendered(address, theme))
    names = [tag for tag, _ in seen.tags]
    assert names.count("h1") == 1
    levels = [int(name[1]) for name in names if re.fullmatch(r"h[1-6]", name)]
    assert all(low <= high + 1 for high, low in zip([0, *levels], levels, strict=False)), levels
    ids = seen.values("id")
    assert len(ids) == len(set(ids))
    assert "style" not in [key for _, attributes in seen.tags for key in attributes]
    for link in seen.values("href") + seen.values("src"):
        assert not link.startswith("/")
        assert re.match(r"https?:", link) or "." in link.rpartition("/")[2] or link[0] == "#"
        if link.startswith("#"):
            assert link[1:] in ids


@pytest.mark.parametrize("address", [each.address for each in PAGES])
def test_every_section_of_the_contents_is_on_the_page(address: str, theme: Path) -> None:
    context = page(address).context
    assert isinstance(context, Sheet)
    ids = Seen(rendered(address, theme)).values("id")
    assert [link.address for link in context.contents if link.address[1:] not in ids] == []


def test_cautions_are_printed_as_they_are_owed(theme: Path) -> None:
    full = rendered("/episodes/2/", theme)
    assert "Take the pressure out first." in full
    assert "Follow local codes." in full
    line = rendered("/parts/", theme)
    assert "Fuel vapour burns: no flame, moving air." in line
    assert 'href="../cautions/index.html#fuel"' in line


def test_what_became_of_a_part_stands_beside_it_on_earlier_pages_too(theme: Path) -> None:
    fate = "replaced in episode 2 by Larger fuel pump: ran out at 0.5 bar"
    addresses = ("/episodes/1/", "/parts/", "/spec/1/", "/tally/", "/changes/", "/index-a-z/")
    assert [each for each in addresses if fate not in rendered(each, theme)] == []


def test_a_page_refuses_all_but_its_own_files(theme: Path) -> None:
    html = rendered("/", theme)
    (policy,) = re.findall(r'Content-Security-Policy" content="([^"]*)"', html)
    assert "default-src 'none'" in policy
    assert "require-trusted-types-for 'script'" in policy
    assert "unsafe" not in policy


def test_the_guide_names_every_template_with_its_context() -> None:
    guide = (THEMES / "README.md").read_text(encoding="utf-8")
    listed = dict(re.findall(r"^\| `([\w-]+\.html)` \| `(\w+)` \|", guide, re.MULTILINE))
    used = {each.template: type(each.context).__name__ for each in PAGES}
    # Only a journal longer than the sample files its amounts; that is tried in journeys.
    assert listed == used | {"amounts.html": "AmountsContext"}


def test_both_themes_have_every_template(theme: Path) -> None:
    names = {each.template for each in PAGES}
    assert sorted(each for each in names if not (theme / each).is_file()) == []
