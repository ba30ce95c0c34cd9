"""Notices of what is worked out: about the car, never about the record."""

from __future__ import annotations

from dataclasses import replace

from hoistbook.authored.records import ProseLink
from hoistbook.notices import notices_of
from hoistbook.pages.page import Material
from tests.pages.sample import PLACE, SECOND, sample_material


def with_links(*targets: str) -> Material:
    links = tuple(
        ProseLink(kind="figure", target=each, text="it", place=PLACE) for each in targets
    )
    material = sample_material()
    first = material.episodes[0]
    return replace(material, episodes=(first, replace(SECOND, links=links)))


def test_a_link_to_a_figure_that_the_car_does_not_have_then_is_noticed() -> None:
    material = with_links("injector_duty", "injector_duty@1", "mach_number", "mach_number@1")
    told = [each for each in notices_of(material) if each.code == "no-number"]
    assert [(each.message, each.hint, each.episode) for each in told] == [
        (
            "`figure:mach_number` prints no number: there is none as at episode 2",
            "with `@` and a number it is as at an earlier episode: `figure:power@1`",
            2,
        ),
        (
            "`figure:mach_number@1` prints no number: there is none as at episode 1",
            "with `@` and a number it is as at an earlier episode: `figure:power@1`",
            2,
        ),
    ]
