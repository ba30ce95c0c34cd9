"""The whole site in memory, path by path: pages, charts, data, pictures, captions, assets."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator, Mapping
from pathlib import Path
from urllib.parse import unquote

from hoistbook.cautions.caution import Owed
from hoistbook.cautions.check import check_page
from hoistbook.pages import links
from hoistbook.pages.charts import chart_calls, chart_data
from hoistbook.pages.circuits import circuit_files
from hoistbook.pages.data import data_files
from hoistbook.pages.desk import desk_of
from hoistbook.pages.environment import Renderer, ThemeError
from hoistbook.pages.feeds import feed_files
from hoistbook.pages.own_numbers import script_files
from hoistbook.pages.page import Material, Page
from hoistbook.pages.pictures import pictures_of
from hoistbook.pages.site import site_pages
from hoistbook.problems import Place, Problem
from hoistbook.publish.cache import Cache
from hoistbook.publish.captions import render_vtt
from hoistbook.publish.checks import look_at, site_problems
from hoistbook.publish.pictures import publishable
from hoistbook.publish.themes import leading_out, theme_assets, theme_folders

TEMPLATE_HINT = "themes/README.md of hoistbook says what a template is given"


def site_tree(
    material: Material, folder: Path, cache: Cache
) -> tuple[dict[str, bytes], tuple[Problem, ...]]:
    """Return the site of a journal's material, and what forbids to publish it.

    Parameters
    ----------
    material : Material
        Everything worked out from the journal.
    folder : Path
        The journal's folder: its pictures are read from there, and templates of its own.
    cache : Cache
        Where charts that were drawn before are kept.
    """
    outside = tuple(leading_out(folder, material.journal.theme))
    if outside:
        return {}, outside
    desk = desk_of(material)
    themes = theme_folders(folder, material.journal.theme)
    with cache.remembering(chart_calls(desk)) as charts:
        pages, lacking = _pages(material, themes, folder)
        drawn = charts()
    tree = {
        **theme_assets(themes),
        **drawn,
        **chart_data(desk),
        **circuit_files(desk, cache.remember),
        **data_files(desk),
        **script_files(desk),
        **feed_files(desk, ("/" + path.removesuffix("index.html") for path in pages)),
        **_captions(material),
        **_pictures(material, folder, pages),
        **pages,
    }
    return dict(sorted(tree.items())), tuple(lacking) or site_problems(tree)


def _pages(
    material: Material, themes: tuple[Path, ...], folder: Path
) -> tuple[dict[str, bytes], list[Problem]]:
    renderer = Renderer(material, themes)
    tree: dict[str, bytes] = {}
    problems: list[Problem] = []
    for page in site_pages(material):
        try:
            content = renderer.render(page)
        except ThemeError as fault:
            return tree, [_bad_template(fault, folder)]
        tree[links.file_path(page.address)] = content
        lacking = check_page(content.decode(), material.owed.get(page.address, ()))
        problems += [_lacks(page, owed) for owed in lacking]
    return tree, problems


def _bad_template(fault: ThemeError, folder: Path) -> Problem:
    """Return what is wrong with a template of the journal's own; one of ours is our mistake."""
    template = Path(fault.template)
    if fault.line is None:
        return Problem("bad-template", str(fault), hint=TEMPLATE_HINT)
    if not template.is_relative_to(folder):
        raise fault
    lines = template.read_text(encoding="utf-8").split("\n")
    text = lines[fault.line - 1] if fault.line <= len(lines) else ""
    column = len(text) - len(text.lstrip()) + 1
    file = template.relative_to(folder).as_posix()
    message = f"this template cannot be used: {fault.why}"
    return Problem(
        "bad-template", message, Place(file, fault.line, column, text), hint=TEMPLATE_HINT
    )


def _lacks(page: Page, owed: Owed) -> Problem:
    how = "in full" if owed.full else "as a line"
    if owed.ahead:
        how += ", and as a line before the work"
    return Problem(
        "caution-missing",
        f'the page {page.address} lacks the caution "{owed.caution.title}", which it owes {how}',
        hint=f"put back what the template {page.template} of the theme prints of `owed`",
    )


def _pictures(material: Material, folder: Path, pages: Mapping[str, bytes]) -> dict[str, bytes]:
    """Return the pictures that pages show; one that no page shows is not published."""
    shown = set(_shown(pages))
    return {
        path: publishable(file, (folder / file).read_bytes())
        for path, file in _picture_paths(material)
        if path in shown
    }


def _picture_paths(material: Material) -> Iterator[tuple[str, str]]:
    """Yield the path in the site and in the journal of every picture beside an episode."""
    for episode in material.episodes:
        beside = posixpath.dirname(episode.file)
        for name, picture in pictures_of(material.journal, episode).items():
            file = posixpath.normpath(posixpath.join(beside, name))
            yield links.file_path(picture.address), file


def _shown(pages: Mapping[str, bytes]) -> Iterator[str]:
    for path, content in pages.items():
        for reference in look_at(content).references:
            address = unquote(reference.address)
            yield posixpath.normpath(posixpath.join(posixpath.dirname(path), address))


def _captions(material: Material) -> dict[str, bytes]:
    return {
        links.file_path(links.captions(episode.number)): render_vtt(episode.cues).encode()
        for episode in material.episodes
        if episode.cues
    }
