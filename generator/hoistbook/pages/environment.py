"""Renders pages by the templates of a theme: the only home of Jinja."""

from __future__ import annotations

import json
import traceback
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from jinja2 import (
    ChoiceLoader,
    Environment,
    FileSystemLoader,
    StrictUndefined,
    TemplateError,
    TemplateNotFound,
    TemplateSyntaxError,
    select_autoescape,
)
from markupsafe import Markup

from hoistbook.pages import links
from hoistbook.pages.page import Material, Page
from hoistbook.pages.shown import Link, Picture
from hoistbook.pages.words import Words, load_words

NAVIGATION = (
    ("home", links.HOME),
    ("episodes", links.EPISODES),
    ("parts", links.PARTS),
    ("next", links.NEXT),
    ("spec", links.SPEC),
    ("tally", links.TALLY),
    ("circuits", links.CIRCUITS),
    ("workings", links.WORKINGS),
    ("claims", links.CLAIMS),
    ("changes", links.CHANGES),
    ("cautions", links.CAUTIONS),
    ("index", links.INDEX),
)


LONGEST_DESCRIPTION = 300
"""Search engines show about half of it; what is longer helps nobody."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Feed:
    """A feed of the journal."""

    type: str
    name: str
    """"Atom"."""
    title: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """What is true of every page; a template knows it as `site`."""

    title: str
    author: str
    language: str
    base: str
    """The journal's own address; empty where it has none yet."""
    last: int
    """The episode that the site is as at."""
    navigation: tuple[Link, ...]
    feeds: tuple[Feed, ...]
    card: Picture
    """The picture of a page that has none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """What stands in a page's head; a template knows it as `head`."""

    title: str
    description: str
    address: str
    """Of this page in the site."""
    canonical: str
    """Full URL; empty where the journal has no address of its own."""
    picture: Picture
    picture_url: str
    """Full URL of the picture; empty where the journal has no address of its own."""
    structured: str
    """JSON-LD, safe inside a script element; empty where the page has none."""


class Renderer:
    """Turns pages into HTML.

    Parameters
    ----------
    material
        The journal's material: its title, language and address stand on every page.
    folders
        Where templates are looked for, in this order: the journal's own theme folder, then the
        theme that comes with hoistbook. The first that has a file of the name wins.
    """

    def __init__(self, material: Material, folders: Sequence[Path]) -> None:
        self.site = _site(material)
        self._environment = Environment(
            loader=ChoiceLoader([FileSystemLoader(each) for each in folders]),
            undefined=StrictUndefined,
            autoescape=select_autoescape(default=True),
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )
        self._words = load_words(material.journal.language)

    def render(self, page: Page) -> bytes:
        """Return a page as HTML.

        Raises
        ------
        ThemeError
            When the theme has no such template, or the template cannot be used.
        """
        try:
            template = self._environment.get_template(page.template)
            html = template.render(
                page=page.context,
                head=_head(page, self.site),
                site=self.site,
                owed=page.owed,
                words=self._words,
                href=lambda address: links.relative(page.address, address),
                fragment=lambda address: address.partition("#")[2],
            )
        except Exception as error:
            raise _theme_error(error, page.template) from error
        return html.encode()


class ThemeError(Exception):
    """A template of the theme that cannot be used: where in it, and why not."""

    def __init__(self, template: str, line: int | None, why: str) -> None:
        where = f"{template}, line {line}," if line else template
        super().__init__(f"the template {where} cannot be used: {why}")
        self.template = template
        """Its path, or its name where it was not found."""
        self.line = line
        self.why = why


def _theme_error(error: Exception, template: str) -> Exception:
    """Return what is wrong with a template; what no template had a hand in stays as it is."""
    if isinstance(error, TemplateSyntaxError):
        return ThemeError(error.filename or template, error.lineno, error.message or "")
    frames = traceback.extract_tb(error.__traceback__)
    inside = [each for each in frames if each.filename.endswith(".html")]
    if isinstance(error, TemplateNotFound):
        why = f"there is no template {error.name}"
    else:
        why = str(error.args[0]) if error.args else type(error).__name__
    if inside:
        return ThemeError(inside[-1].filename, inside[-1].lineno, why)
    return ThemeError(template, None, why) if isinstance(error, TemplateError) else error


def _site(material: Material) -> Site:
    journal = material.journal
    words = load_words(journal.language)
    return Site(
        title=journal.title,
        author=journal.author or "",
        language=journal.language,
        base=journal.address or "",
        last=max(each.episode for each in material.states),
        navigation=tuple(
            Link(text=words(f"navigation.{key}"), address=address) for key, address in NAVIGATION
        ),
        feeds=_feeds(words, journal.title) if journal.address else (),
        card=Picture(address="/assets/card.png", width=1200, height=630, text=words("site.card")),
    )


def _feeds(words: Words, title: str) -> tuple[Feed, ...]:
    kinds = (
        ("application/atom+xml", "atom", links.ATOM),
        ("application/feed+json", "json", links.JSON_FEED),
    )
    return tuple(
        Feed(
            type=kind,
            name=words(f"site.{name}"),
            title=words(f"site.{name}_title", title=title),
            address=address,
        )
        for kind, name, address in kinds
    )


def _head(page: Page, site: Site) -> Head:
    own = getattr(page.context, "picture", None)
    picture = own if isinstance(own, Picture) else site.card
    same = page.title == site.title
    return Head(
        title=page.title if same else f"{page.title} · {site.title}",
        description=_cut(page.description),
        address=page.address,
        canonical=links.absolute(site.base, page.address) if site.base else "",
        picture=picture,
        picture_url=links.absolute(site.base, picture.address) if site.base else "",
        structured=_script_text(page.structured) if page.structured is not None else "",
    )


def _cut(text: str) -> str:
    """Return a text cut at a word where it is longer than a description may be."""
    if len(text) <= LONGEST_DESCRIPTION:
        return text
    return text[: LONGEST_DESCRIPTION - 1].rpartition(" ")[0] + "…"


def _script_text(data: object) -> Markup:
    """Return JSON that cannot end the script element it stands in."""
    text = json.dumps(data, ensure_ascii=False, sort_keys=True)
    for character in "<>&":
        text = text.replace(character, f"\\u{ord(character):04x}")
    return Markup(text)
