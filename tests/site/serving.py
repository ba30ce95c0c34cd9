"""A small file server for tests: under any sub-path, on loopback, remembering what was asked."""

from __future__ import annotations

import http.server
import mimetypes
import posixpath
import threading
import urllib.parse
from pathlib import Path
from types import TracebackType
from typing import Self

STRICT_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
    "media-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'; require-trusted-types-for 'script'"
)
"""W3C Content Security Policy Level 3 with Trusted Types, as strict as a host could send."""


class Served:
    """A folder served under `base` until the block ends."""

    def __init__(self, root: Path, base: str = "/", policy: str | None = None) -> None:
        self.asked: list[tuple[int, str]] = []
        self._httpd = http.server.ThreadingHTTPServer(
            ("127.0.0.1", 0), _handler(root, base, policy, self.asked)
        )
        self.origin = f"http://127.0.0.1:{self._httpd.server_address[1]}"
        self.url = self.origin + base

    def __enter__(self) -> Self:
        threading.Thread(target=self._httpd.serve_forever, daemon=True).start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._httpd.shutdown()
        self._httpd.server_close()

    def page(self, relative: str) -> str:
        """Return the address of one file of the folder."""
        return self.url + urllib.parse.quote(relative)


def _handler(
    root: Path, base: str, policy: str | None, asked: list[tuple[int, str]]
) -> type[http.server.BaseHTTPRequestHandler]:
    class Handler(http.server.BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"

        def log_message(self, format: str, *args: object) -> None:
            pass

        def do_GET(self) -> None:
            file = _find(root, base, self.path)
            status = 200 if file else 404
            body = file.read_bytes() if file else b"not found"
            asked.append((status, self.path))
            self.send_response(status)
            self.send_header("Content-Type", _media_type(file))
            self.send_header("Content-Length", str(len(body)))
            if policy:
                self.send_header("Content-Security-Policy", policy)
            self.end_headers()
            self.wfile.write(body)

    return Handler


def _find(root: Path, base: str, asked: str) -> Path | None:
    path = urllib.parse.unquote(urllib.parse.urlsplit(asked).path)
    if not path.startswith(base):
        return None
    file = root / posixpath.normpath("/" + path[len(base) :]).lstrip("/")
    if file.is_dir():
        file = file / "index.html"
    return file if file.is_file() else None


def _media_type(file: Path | None) -> str:
    kind = mimetypes.guess_type(file.name)[0] if file else "text/plain"
    return f"{kind}; charset=utf-8" if kind and kind.startswith("text/") else str(kind)
