"""The preview shows pages from memory, to this machine alone, and says when they have changed."""

from __future__ import annotations

import asyncio
import threading

import pytest

from hoistbook.preview.serve import Shown, application

PAGE = b"<html><head><meta content=\"script-src 'self'\"></head><body>Home</body></html>"
REFRESHED = (
    b"<html><head><meta content=\"script-src 'self'; connect-src 'self'\">"
    b'<script src="/-/refresh.js" defer></script></head><body>Home</body></html>'
)
TREE = {"index.html": PAGE, "parts/turbo/index.html": PAGE, "data/parts.csv": b"part\n"}


def ask(
    shown: Shown, target: str, host: str = "127.0.0.1:8000"
) -> tuple[int, dict[str, str], bytes]:
    """Ask the application as a web server does (ASGI 3.0, HTTP connection scope)."""
    path, _, query = target.partition("?")
    sent: list[dict[str, object]] = []

    async def receive() -> dict[str, object]:
        return {"type": "http.request", "body": b"", "more_body": False}

    async def send(message: dict[str, object]) -> None:
        sent.append(message)

    scope = {
        "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "GET",
        "scheme": "http", "path": path, "raw_path": path.encode(), "query_string": query.encode(),
        "root_path": "", "headers": [(b"host", host.encode())], "server": ("127.0.0.1", 8000),
    }  # fmt: skip
    asyncio.run(application(shown)(scope, receive, send))
    headers = {name.decode(): value.decode() for name, value in sent[0]["headers"]}
    return sent[0]["status"], headers, b"".join(each.get("body", b"") for each in sent[1:])


@pytest.mark.parametrize("path", ["/", "/index.html", "/parts/turbo/", "/parts/turbo/index.html"])
def test_a_page_is_shown_with_the_script_that_refreshes_it(path: str) -> None:
    status, headers, body = ask(Shown(TREE), path)

    assert (status, body) == (200, REFRESHED)
    assert headers["content-type"] == "text/html; charset=utf-8"
    assert headers["cache-control"] == "no-store"


def test_other_files_are_shown_as_they_are() -> None:
    status, headers, body = ask(Shown(TREE), "/data/parts.csv")

    assert (status, body) == (200, b"part\n")
    assert headers["content-type"] == "text/csv; charset=utf-8"


@pytest.mark.parametrize("path", ["/nothing", "/../secret", "/parts/", "//etc/passwd"])
def test_what_is_not_of_the_site_is_not_there(path: str) -> None:
    assert ask(Shown(TREE), path)[0] == 404


def test_a_folder_without_its_slash_leads_to_its_page() -> None:
    status, headers, _ = ask(Shown(TREE), "/parts/turbo")

    assert (status, headers["location"]) == (308, "/parts/turbo/")


@pytest.mark.parametrize("path", ["/", "/data/parts.csv", "/-/state"])
@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1.evil.example:8000"])
def test_a_request_under_another_name_is_refused(path: str, host: str) -> None:
    assert ask(Shown(TREE), path, host)[0] == 403


@pytest.mark.parametrize("host", ["localhost:8000", "127.0.0.1"])
def test_a_request_under_the_name_of_this_machine_is_answered(host: str) -> None:
    assert ask(Shown(TREE), "/", host)[0] == 200


def test_problems_stand_for_every_page_and_for_nothing_else_until_there_is_a_site_again() -> None:
    shown = Shown(TREE)
    shown.stop_at(PAGE.replace(b"Home", b"1 problem"))

    for path in ("/", "/parts/turbo/", "/episodes/11/", "/index.html", "/parts/turbo"):
        assert ask(shown, path)[2] == REFRESHED.replace(b"Home", b"1 problem"), path
    assert ask(shown, "/data/parts.csv")[2] == b"part\n"
    assert ask(shown, "/-/state?known=0")[2] == b"1"

    shown.show(TREE)

    assert ask(shown, "/")[2] == REFRESHED
    assert ask(shown, "/-/state?known=1")[2] == b"2"


def test_whoever_waits_is_told_of_the_next_site() -> None:
    shown = Shown(TREE)
    assert ask(shown, "/-/state?known=null")[2] == b"0"

    threading.Timer(0.05, shown.show, [TREE | {"index.html": b"new"}]).start()

    assert ask(shown, "/-/state?known=0")[2] == b"1"
    assert ask(shown, "/")[2] == b"new"
