"""All pages of the site, in order; each kind of page has a module of its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hoistbook.pages.accuracy import accuracy_page
from hoistbook.pages.bench import bench_page
from hoistbook.pages.cautions import cautions_page
from hoistbook.pages.chain import chain_page
from hoistbook.pages.changes import changes_pages
from hoistbook.pages.circuits import circuits_page
from hoistbook.pages.claims import claims_page
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.episode import episode_page
from hoistbook.pages.episodes import episodes_page
from hoistbook.pages.formula_list import formula_pages
from hoistbook.pages.glossary import glossary_page
from hoistbook.pages.home import home_page
from hoistbook.pages.index_a_z import index_page
from hoistbook.pages.next import next_page
from hoistbook.pages.page import Material, Page
from hoistbook.pages.part import part_pages
from hoistbook.pages.parts import parts_pages
from hoistbook.pages.spec import spec_pages
from hoistbook.pages.structured import structured_of
from hoistbook.pages.tally import tally_pages
from hoistbook.pages.workings import workings_pages


def site_pages(material: Material) -> tuple[Page, ...]:
    """Return every page of the site, not yet rendered."""
    desk = desk_of(material)
    return tuple(replace(page, structured=structured_of(desk, page)) for page in _pages(desk))


def _pages(desk: Desk) -> Iterator[Page]:
    yield home_page(desk)
    yield episodes_page(desk)
    for episode in desk.material.episodes:
        yield episode_page(desk, episode)
    yield from parts_pages(desk)
    yield from part_pages(desk)
    yield next_page(desk)
    yield from spec_pages(desk)
    yield from tally_pages(desk)
    yield circuits_page(desk)
    yield bench_page(desk)
    yield from workings_pages(desk)
    yield from chain_page(desk)
    yield from formula_pages(desk)
    yield accuracy_page(desk)
    yield claims_page(desk)
    yield from changes_pages(desk)
    yield cautions_page(desk)
    yield index_page(desk)
    yield glossary_page(desk)
