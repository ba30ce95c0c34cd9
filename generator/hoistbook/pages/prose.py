"""An episode's prose: CommonMark to HTML, with our own links resolved and others let through."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from urllib.parse import unquote

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markupsafe import Markup, escape

from hoistbook.pages.shown import Chart, Number, PartRef, Picture

FOREIGN_SCHEMES = ("http", "https", "mailto")
"""The schemes a link of the author's may have besides our own."""

FIRST_HEADING = 3
"""The prose stands under a second-level heading of the page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Targets:
    """What the links of one episode's prose lead to, by what stands after their colon."""

    href: Callable[[str], str]
    """Makes an address relative to the page."""
    parts: Callable[[str], PartRef | None]
    """Asked once for each naming of a part, in the order of the prose."""
    episodes: Callable[[str], str | None]
    """The address of an episode by its number as written."""
    figures: Callable[[str], Number | str | None]
    """A figure by its name, `power@1` as at episode 1; a string says that it is missing and leads
    nowhere."""
    charts: Mapping[str, Chart] = field(default_factory=dict)
    pictures: Mapping[str, Picture] = field(default_factory=dict)
    """By the path that the prose gives."""


def render_prose(text: str, targets: Targets, region: str) -> Markup:
    """Return prose as HTML.

    Parameters
    ----------
    text
        CommonMark with tables; raw HTML in it is shown as text.
    targets
        What its links lead to. A link to something unknown keeps its text and leads nowhere:
        reading has reported it.
    region
        The name of the box in which a wide table of the author's scrolls.
    """
    markdown = MarkdownIt("commonmark", {"html": False}).enable("table")
    tokens = markdown.parse(text)
    _shift_headings(tokens)
    _empty_headers(tokens)
    tokens = list(_boxed_tables(_framed_pictures(tokens), region))
    for token in tokens:
        if token.children is not None:
            token.children = list(_resolved(token.children, targets))
    return Markup(markdown.renderer.render(tokens, markdown.options, {}))


def _shift_headings(tokens: Sequence[Token]) -> None:
    """Move headings below the page's own, and close gaps: a reader by ear walks level by level."""
    open_levels: list[int] = []
    for token in tokens:
        if token.type == "heading_open":
            level = int(token.tag[1:])
            open_levels = [each for each in open_levels if each < level] + [level]
        if token.type in ("heading_open", "heading_close"):
            token.tag = f"h{min(FIRST_HEADING + len(open_levels) - 1, 6)}"


def _empty_headers(tokens: Sequence[Token]) -> None:
    """Make the empty corner of a table a plain cell: a header that says nothing heads nothing."""
    for opening, inside, closing in zip(tokens, tokens[1:], tokens[2:], strict=False):
        if opening.type == "th_open" and not inside.content.strip():
            opening.tag = closing.tag = "td"


def _framed_pictures(tokens: Sequence[Token]) -> Iterator[Token]:
    """Take pictures that are alone in their paragraph out of it: they become figures."""
    for before, token, after in zip([None, *tokens], tokens, [*tokens[1:], None], strict=False):
        inline = token if token.type == "inline" else after if token.nesting == 1 else before
        if inline is not None and _is_paragraph(token) and _only_pictures(inline):
            continue
        if token.type == "inline" and _only_pictures(token):
            for child in token.children or ():
                child.meta["framed"] = True
        yield token


def _is_paragraph(token: Token) -> bool:
    return token.type in ("paragraph_open", "paragraph_close")


def _only_pictures(token: Token) -> bool:
    children = token.children or ()
    return any(each.type == "image" for each in children) and all(
        each.type in ("image", "softbreak") for each in children
    )


def _boxed_tables(tokens: Iterator[Token], region: str) -> Iterator[Token]:
    """Put each table into a box of its own that scrolls where the page is too narrow for it."""
    for token in tokens:
        if token.type == "table_open":
            yield _html(
                Markup('<div class="wide" role="region" tabindex="0" aria-label="{}">').format(
                    region
                )
            )
        yield token
        if token.type == "table_close":
            yield _html(Markup("</div>"))


def _html(html: str | Markup) -> Token:
    return Token("html_inline", "", 0, content=str(html))


def _resolved(tokens: Sequence[Token], targets: Targets) -> Iterator[Token]:
    """Yield the tokens of a paragraph with links and pictures replaced by where they lead."""
    led = Led()
    for token in tokens:
        if token.type == "image":
            yield _picture(token, targets)
        elif token.type == "link_open":
            led = _led(str(token.attrs["href"]), targets)
            if led.href:
                token.attrs = {"href": led.href}
                yield token
        elif token.type == "link_close":
            yield _html(led.inside)
            if led.href:
                yield token
            yield _html(led.after)
        else:
            yield token


@dataclass(frozen=True, slots=True)
class Led:
    """Where a link of the prose leads (empty for nowhere), and what is added to its text."""

    href: str = ""
    inside: str | Markup = ""
    after: str | Markup = ""


def _led(href: str, targets: Targets) -> Led:
    scheme, _, name = href.partition(":")
    if scheme == "part":
        return _part(name, targets)
    if scheme == "figure":
        return _figure(name, targets)
    if scheme == "episode":
        address = targets.episodes(name)
        return Led(targets.href(address)) if address else Led()
    allowed = scheme.casefold() in FOREIGN_SCHEMES and href != scheme
    return Led(href) if allowed else Led()


def _part(name: str, targets: Targets) -> Led:
    part = targets.parts(name)
    if part is None:
        return Led()
    href = targets.href(part.address)
    if not part.mark:
        return Led(href)
    return Led(href, after=Markup(' <span class="fate">({})</span>').format(part.mark))


def _figure(name: str, targets: Targets) -> Led:
    figure = targets.figures(name)
    if figure is None:
        return Led()
    if isinstance(figure, str):
        return Led(after=Markup(" ({})").format(figure))
    return Led(
        targets.href(figure.address),
        Markup(" {}").format(figure.value),
        Markup(" ({})").format(
            ", ".join(each for each in (figure.evidence, figure.standard) if each)
        ),
    )


def _picture(token: Token, targets: Targets) -> Token:
    source = unquote(str(token.attrs.get("src", "")))
    text, caption = token.content, str(token.attrs.get("title", ""))
    scheme, _, name = source.partition(":")
    picture: Picture | Chart | None
    picture = targets.charts.get(name) if scheme == "chart" else targets.pictures.get(source)
    if picture is None:
        return _html(escape(text))
    if isinstance(picture, Chart):
        return _html(_chart(picture, text, caption, targets))
    image = Markup('<img src="{}" alt="{}" width="{}" height="{}" loading="lazy">').format(
        targets.href(picture.address), text or picture.text, picture.width, picture.height
    )
    if not token.meta.get("framed"):
        return _html(image)
    under = Markup("<figcaption>{}</figcaption>").format(caption) if caption else ""
    return _html(Markup("<figure>{}{}</figure>").format(image, under))


def _chart(chart: Chart, text: str, caption: str, targets: Targets) -> Markup:
    """Return a chart, on a phone as it is drawn for one: its letters must not shrink there."""
    return Markup(
        '<figure class="chart"><picture><source media="screen and (max-width: 47.99rem)"'
        ' srcset="{}" width="{}" height="{}">'
        '<img src="{}" alt="{}" width="{}" height="{}" loading="lazy"></picture>'
        '<figcaption>{} <a href="{}">{}</a></figcaption></figure>'
    ).format(
        targets.href(chart.narrow.address),
        chart.narrow.width,
        chart.narrow.height,
        targets.href(chart.address),
        chart.text,
        chart.width,
        chart.height,
        caption or chart.caption,
        targets.href(chart.data.address),
        chart.data.text,
    )
