"""The watching server: pages for this machine's own browser, on the loopback address alone."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from mimetypes import guess_type
from pathlib import Path
from typing import cast
from urllib.parse import parse_qs, unquote, urlsplit

from kerfolio.pages.policy import WATCHING_POLICY
from kerfolio.publishing.say import Say, silent
from kerfolio.watching.editor import EditorError, open_in_editor
from kerfolio.watching.excerpt import excerpt
from kerfolio.watching.guard import LOOPBACK, is_ours
from kerfolio.watching.page import (
    SCRIPT,
    STYLE,
    lines_page,
    maker_page,
    readers_page,
    script,
    style_of,
)
from kerfolio.watching.places import listed
from kerfolio.watching.watch import Stage
from kerfolio.writing.webfont import whole_font

_MOST_SENT, _MOST_READ = 4_096, 2_000_000
"""Bytes of a request's body, and of a maker's file of which lines are shown."""

_PATIENCE = 60.0
"""How long a line is kept on which nothing comes, s."""

_BEAT = 15.0
"""A listening browser hears from us at least so often, s."""

_HEADERS = {
    "Cache-Control": "no-store",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
}
_OWN = {"Content-Security-Policy": f"{WATCHING_POLICY}; frame-ancestors 'none'"}
_FRAMED = {"Content-Security-Policy": "frame-ancestors 'self'"}
"""Beside the policy that stands in each of the readers' pages."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """What the server serves: a stage, the workshop's folder, the readers' pages, an editor.

    ``say`` tells the maker of faults.
    """

    stage: Stage
    folder: Path
    site: Path | None = None
    editor: Sequence[str] = ()
    say: Say = silent


class WatchServer(ThreadingHTTPServer):
    """Serves ``served`` on a port of the loopback address; 0 takes one that is free."""

    def __init__(self, served: Served, port: int = 0) -> None:
        self.served = served
        self.daemon_threads, self.block_on_close = True, False  # a listening browser holds nothing
        super().__init__((LOOPBACK, port), _Handler)

    def handle_error(self, request: object, client_address: object) -> None:  # noqa: ARG002
        """Say in a sentence what kept a page from being made; a browser that goes is none."""
        fault = sys.exc_info()[1]
        if not isinstance(fault, OSError):
            self.served.say(f"error: a fault of the program itself ({type(fault).__name__})")

    @property
    def address(self) -> str:
        """Where a browser finds it."""
        return f"http://{LOOPBACK}:{self.server_port}/"


class _Handler(BaseHTTPRequestHandler):
    """Answers one request."""

    def setup(self) -> None:
        """Keep lines open for further requests, but not for one that never comes."""
        super().setup()
        self.protocol_version = "HTTP/1.1"
        self.connection.settimeout(_PATIENCE)

    def version_string(self) -> str:
        """Say who answers, and nothing of what it runs on."""
        return "kerfolio"

    def do_GET(self) -> None:
        if not is_ours(self.headers, self._ours.server_port):
            return self._refuse(HTTPStatus.FORBIDDEN)
        asked = urlsplit(self.path)
        if asked.path.startswith("/site/"):
            return self._site(unquote(asked.path.removeprefix("/site/")))
        if asked.path.startswith("/fonts/"):
            return self._font(asked.path.removeprefix("/fonts/"))
        match asked.path:
            case "/":
                self._page(maker_page(self._ours.served.stage.seen))
            case "/readers":
                self._page(readers_page(self._ours.served.stage.seen))
            case "/lines":
                self._lines(parse_qs(asked.query).get("at", [""])[0])
            case "/events":
                self._events()
            case path if path == f"/{STYLE}":
                self._send(style_of(self._ours.served.stage.seen.identity), "text/css")
            case path if path == f"/{SCRIPT}":
                self._send(script(), "text/javascript")
            case _:
                self._refuse(HTTPStatus.NOT_FOUND)
        return None

    def do_POST(self) -> None:
        self.close_connection = True
        if not is_ours(self.headers, self._ours.server_port, writes=True):
            return self._refuse(HTTPStatus.FORBIDDEN)
        sent = self.headers.get("Content-Length", "")
        if self.path != "/open" or not sent.isdecimal() or int(sent) > _MOST_SENT:
            return self._refuse(HTTPStatus.NOT_FOUND)
        body = self.rfile.read(int(sent)).decode("utf-8", "replace")
        return self._open(parse_qs(body).get("at", [""])[0])

    def log_message(self, *words: object) -> None:
        """Say nothing of requests: the terminal is for what was saved."""

    @property
    def _ours(self) -> WatchServer:
        return cast("WatchServer", self.server)

    def _page(self, text: str) -> None:
        self._send(text, "text/html")

    def _send(self, text: str, kind: str) -> None:
        self._answer(HTTPStatus.OK, text.encode(), f"{kind}; charset=utf-8", _OWN)

    def _refuse(self, why: HTTPStatus) -> None:
        self.close_connection = True
        self._answer(why, f"{why.phrase}.\n".encode(), "text/plain; charset=utf-8", _OWN)

    def _answer(self, why: HTTPStatus, body: bytes, kind: str, more: dict[str, str]) -> None:
        self.send_response(why)
        for name, value in {**_HEADERS, **more, "Content-Type": kind}.items():
            self.send_header(name, value)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def _lines(self, key: str) -> None:
        served = self._ours.served
        place = listed(served.stage.seen).get(key)
        if place is None:
            return self._refuse(HTTPStatus.NOT_FOUND)
        lines = excerpt(_text_of(served.folder, place.file), place.line)
        editor = bool(served.editor)
        return self._page(lines_page(served.stage.seen, key, lines, editor=editor))

    def _open(self, key: str) -> None:
        served = self._ours.served
        place = listed(served.stage.seen).get(key)
        file = _within(served.folder, place.file) if place else None
        if place is None or file is None or not served.editor:
            return self._refuse(HTTPStatus.NOT_FOUND)
        try:
            open_in_editor(served.editor, file, place.line, max(1, place.column))
        except EditorError:
            return self._refuse(HTTPStatus.INTERNAL_SERVER_ERROR)
        return self._answer(HTTPStatus.NO_CONTENT, b"", "text/plain", _OWN)

    def _site(self, name: str) -> None:
        site = self._ours.served.site
        asked = f"{name}index.html" if not name or name.endswith("/") else name
        file = _within(site, asked) if site else None
        if file is None:
            return self._refuse(HTTPStatus.NOT_FOUND)
        kind = guess_type(file.name)[0] or "application/octet-stream"
        text = kind.startswith("text/") or kind.endswith(("javascript", "json"))
        try:
            body = file.read_bytes()
        except OSError:
            return self._refuse(HTTPStatus.NOT_FOUND)
        kind = f"{kind}; charset=utf-8" if text else kind
        return self._answer(HTTPStatus.OK, body, kind, _FRAMED)

    def _font(self, name: str) -> None:
        """Send a face whole, whatever its name says: browsers go by what a file holds."""
        try:
            face = whole_font(name)
        except KeyError:
            return self._refuse(HTTPStatus.NOT_FOUND)
        return self._answer(HTTPStatus.OK, face, "font/ttf", _OWN)

    def _events(self) -> None:
        """Tell the version of what is shown, and every one that comes, until the browser goes."""
        self.close_connection = True
        self.send_response(HTTPStatus.OK)
        for name, value in {**_HEADERS, **_OWN, "Content-Type": "text/event-stream"}.items():
            self.send_header(name, value)
        self.end_headers()
        stage = self._ours.served.stage
        version: int | None = stage.seen.version
        try:
            while version is not None:
                self.wfile.write(f"data: {version}\n\n".encode())
                self.wfile.flush()
                version = stage.newer(version, _BEAT)
        except OSError:  # the browser has gone
            return


def _within(folder: Path, name: str) -> Path | None:
    """Return a file of a folder, None for one that is not there or lies outside it."""
    try:
        file = (folder / name).resolve()
        inside = file.is_relative_to(folder.resolve()) and file.is_file()
    except (OSError, ValueError, RuntimeError):
        return None
    return file if inside else None


def _text_of(folder: Path, name: str) -> str:
    """Return a maker's file as text; nothing of what is none, or is too long."""
    file = _within(folder, name)
    if file is None:
        return ""
    try:
        with file.open("rb") as opened:
            return opened.read(_MOST_READ).decode()
    except (OSError, UnicodeDecodeError):
        return ""
