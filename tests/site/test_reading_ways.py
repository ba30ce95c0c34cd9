"""The site reads the same without scripts, from disk, under a sub-path and in print."""

from __future__ import annotations

import io
import re
import unicodedata
from collections import Counter
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser, Page

from tests.site.serving import STRICT_POLICY, Served

SHOWN = """() => {
  const out = [];
  const skip = 'script,style,template,button,[role=status],[aria-live],select';
  const walk = (node) => {
    if (node.nodeType === 3) out.push(node.data);
    else if (node.nodeType === 1 && node.checkVisibility() && !node.matches(skip))
      for (const child of node.childNodes) walk(child);
  };
  walk(document.querySelector('main'));
  return out.join(' ');
}"""
WRITTEN = """() => {
  const out = [];
  const walker = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
  while (walker.nextNode())
    // What a control offers is no text of the sheet; what was chosen is, as test_copying holds.
    if (!walker.currentNode.parentElement.closest(
        'script,style,template,button,select,nav,svg title'))
      out.push(walker.currentNode.data);
  return out.join(' ');
}"""


def words(text: str) -> Counter[str]:
    return Counter(re.findall(r"[^\W_]+", unicodedata.normalize("NFKC", text).lower()))


def complaints_of(page: Page, origin: str) -> list[str]:
    """Return a list that fills with each outside request, failure and console error of a page."""
    heard: list[str] = []
    page.on("request", lambda r: None if r.url.startswith(origin) else heard.append(r.url))
    page.on("requestfailed", lambda r: heard.append(f"failed: {r.url}"))
    page.on("response", lambda r: heard.append(f"{r.status} {r.url}") if r.status >= 400 else None)
    page.on("console", lambda m: heard.append(m.text) if m.type in {"error", "warning"} else None)
    page.on("pageerror", lambda e: heard.append(str(e)))
    return heard


def visit(browser: Browser, base: str, paths: list[str], origin: str) -> dict[str, list[str]]:
    """Open each page, scroll it to its end and open its details; return what went wrong."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    wrong = {}
    for path in paths:
        page = context.new_page()
        heard = complaints_of(page, origin)
        page.goto(base + path)
        for summary in page.query_selector_all("summary"):
            summary.click()
        page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
        page.wait_for_load_state("networkidle")
        heard += page.evaluate(
            "[...document.images].filter(i => i.complete && !i.naturalWidth).map(i => i.src)"
        )
        if heard:
            wrong[path] = heard
        page.close()
    context.close()
    return wrong


@pytest.mark.parametrize("base", ["/", "/x/y/"])
def test_nothing_fails_and_nothing_leaves_the_host_under_a_strict_policy(
    written_site: Path, visited: list[str], browser: Browser, base: str
) -> None:
    with Served(written_site, base, STRICT_POLICY) as served:
        assert visit(browser, served.url, visited, served.origin) == {}
        assert [path for status, path in served.asked if not path.startswith(base)] == []


def test_the_site_works_from_disk(
    written_site: Path, visited: list[str], browser: Browser
) -> None:
    assert visit(browser, written_site.as_uri() + "/", visited, written_site.as_uri()) == {}


def test_without_scripts_no_word_or_link_is_missing_and_no_button_is_dead(
    written_site: Path, visited: list[str], browser: Browser
) -> None:
    with_scripts = browser.new_context()
    without = browser.new_context(java_script_enabled=False)
    links = "[...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href'))"
    with Served(written_site) as served:
        a, b = with_scripts.new_page(), without.new_page()
        for path in visited:
            a.goto(served.page(path))
            b.goto(served.page(path))
            assert words(a.evaluate(SHOWN)) - words(b.evaluate(SHOWN)) == Counter(), path
            assert sorted(set(a.evaluate(links)) - set(b.evaluate(links))) == [], path
            assert b.query_selector_all("button") == [], path
    with_scripts.close()
    without.close()


def test_print_from_the_dark_holds_every_word_on_a4(
    written_site: Path, visited: list[str], browser: Browser
) -> None:
    context = browser.new_context(viewport={"width": 794, "height": 1123}, color_scheme="dark")
    with Served(written_site) as served:
        page = context.new_page()
        for path in visited:
            page.goto(served.page(path))
            written = set(words(page.evaluate(WRITTEN)))
            page.emulate_media(media="print")
            assert page.evaluate("document.documentElement.scrollWidth") <= 795, path
            sheets = pypdf.PdfReader(io.BytesIO(page.pdf(format="A4"))).pages
            page.emulate_media(media="screen")
            printed = "".join(sheet.extract_text() for sheet in sheets)
            flat = re.sub(r"\s+", "", unicodedata.normalize("NFKC", printed).lower())
            lost = sorted(word for word in written if word not in flat)
            # Text extraction loses some mathematical letters; 3 % covers them and nothing else.
            assert len(lost) <= 0.03 * len(written), (path, lost)
    context.close()
