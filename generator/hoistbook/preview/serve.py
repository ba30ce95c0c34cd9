"""Shows a site on this machine alone, from memory, and tells open pages when it has changed."""

from __future__ import annotations

import asyncio
import mimetypes
import socket
import threading
from collections.abc import Mapping
from pathlib import PurePosixPath

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

HOST = "127.0.0.1"
_NAMES = frozenset(("127.0.0.1", "localhost"))
_STATE = "/-/state"
_SCRIPT = "/-/refresh.js"
_NEVER_KEPT = {"Cache-Control": "no-store"}
_POLICY = b"script-src 'self'"

_REFRESH = b"""\
(function () {
  "use strict";
  var known = null;
  function ask() {
    fetch("/-/state?known=" + known)
      .then(function (answer) { return answer.text(); })
      .then(function (state) {
        if (known !== null && known !== state) { location.reload(); }
        known = state;
        ask();
      })
      .catch(function () { setTimeout(ask, 1000); });
  }
  ask();
})();
"""
"""Waits for the next state of the site and loads the page again."""


class Shown:
    """The site that is shown; a new one takes its place at once and whole."""

    def __init__(self, tree: Mapping[str, bytes]) -> None:
        self._tree = tree
        self.problems: bytes | None = None
        """The page that stands for every other while the journal has problems."""
        self.state = 0
        self._changed = threading.Condition()

    @property
    def tree(self) -> Mapping[str, bytes]:
        """The site as it stands now."""
        return self._tree

    def show(self, tree: Mapping[str, bytes]) -> None:
        """Put another site in its place."""
        with self._changed:
            self._tree = tree
            self.problems = None
            self._next()

    def stop_at(self, problems: bytes) -> None:
        """Show a page of problems in the place of every page, until there is a site again."""
        with self._changed:
            self.problems = problems
            self._next()

    def _next(self) -> None:
        self.state += 1
        self._changed.notify_all()

    def wait(self, known: str, seconds: float) -> int:
        """Return the state once it is another than the known one, or after so many seconds."""
        with self._changed:
            self._changed.wait_for(lambda: str(self.state) != known, seconds)
            return self.state


def application(shown: Shown) -> Starlette:
    """Return the web application that shows a site."""

    async def page(request: Request) -> Response:
        if not _is_ours(request):
            return Response("This preview answers only to its own address.", 403)
        path = request.url.path.removeprefix("/")
        if path.endswith("/") or not path:
            path += "index.html"
        if shown.problems is not None and PurePosixPath(path).suffix in ("", ".html"):
            return _page(shown.problems)
        return _file(shown.tree, path)

    async def state(request: Request) -> Response:
        if not _is_ours(request):
            return Response(status_code=403)
        known = request.query_params.get("known", "")
        now = await asyncio.to_thread(shown.wait, known, 20.0)
        return Response(str(now), headers=_NEVER_KEPT)

    async def script(_: Request) -> Response:
        return Response(_REFRESH, media_type="text/javascript")

    return Starlette(
        routes=[Route(_STATE, state), Route(_SCRIPT, script), Route("/{path:path}", page)]
    )


def listen(port: int) -> socket.socket:
    """Return a socket that listens on this machine alone.

    Raises
    ------
    OSError
        When another program listens there.
    """
    try:
        return socket.create_server((HOST, port))
    except OSError as error:
        raise OSError(f"port {port} cannot be used; name another with --port") from error


def serve(shown: Shown, listening: socket.socket) -> None:
    """Show a site until it is stopped from the keyboard."""
    settings = uvicorn.Config(application(shown), log_level="warning")
    uvicorn.Server(settings).run(sockets=[listening])


def _is_ours(request: Request) -> bool:
    """Tell whether a request names this machine; a page of another site may not ask through it."""
    return request.url.hostname in _NAMES


def _file(tree: Mapping[str, bytes], path: str) -> Response:
    content = tree.get(path)
    if content is None:
        return _missing(tree, path)
    kind = mimetypes.guess_type(path)[0] or "application/octet-stream"
    if kind == "text/html":
        return _page(content)
    return Response(content, media_type=kind, headers=_NEVER_KEPT)


def _page(content: bytes) -> Response:
    return Response(_refreshing(content), media_type="text/html", headers=_NEVER_KEPT)


def _missing(tree: Mapping[str, bytes], path: str) -> Response:
    if f"{path}/index.html" in tree:
        return Response(status_code=308, headers={"Location": f"/{path}/"})
    return Response("There is no such page.", 404, media_type="text/plain")


def _refreshing(content: bytes) -> bytes:
    """Return a page that loads itself again when the site changes; only here, never as written."""
    script = f'<script src="{_SCRIPT}" defer></script></head>'.encode()
    allowed = content.replace(_POLICY, _POLICY + b"; connect-src 'self'", 1)
    return allowed.replace(b"</head>", script, 1)
