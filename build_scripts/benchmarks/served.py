"""Serves a built site in brotli, for a browser to keep, and as slowly as a poor line carries it."""

import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

SLOW_LINE = (1.6e6 / 8, 0.150)  # bytes/s, round trip in s
CHUNK = 4096


@dataclass
class Served:
    """A served site. `line` is None, or what all its connections share: bytes/s, round trip."""

    url: str
    line: tuple[float, float] | None = None
    turn: threading.Lock = field(default_factory=threading.Lock)


def sent(file: Path) -> Path:
    """The copy of a file that goes over the line: the packed one, if it has one."""
    packed = file.with_name(f"{file.name}.br")
    return packed if packed.exists() else file


class Handler(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # as web servers do: it holds each answer's end back for 40 ms
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
    }

    def __init__(self, *given: Any, served: Served, **named: Any) -> None:
        self.served = served
        super().__init__(*given, **named)

    def setup(self) -> None:
        super().setup()
        self._wait()  # for the connection itself

    def do_GET(self) -> None:
        self._wait()
        path = Path(self.translate_path(self.path))
        if not path.is_file():
            self.send_error(404)
            return
        file = sent(path)
        state = file.stat()
        tag = f'"{state.st_mtime_ns:x}-{state.st_size:x}"'
        if self.headers.get("If-None-Match") == tag:  # as any web server answers
            self.send_response(304)
            self.end_headers()
            return
        content = file.read_bytes()
        self.send_response(200)
        self.send_header("ETag", tag)
        self.send_header("Content-Type", self.guess_type(path))
        self.send_header("Content-Length", str(len(content)))
        if file != path:
            self.send_header("Content-Encoding", "br")
        self.send_header("Cache-Control", "public, max-age=31536000, immutable")
        self.end_headers()
        self._send(content)

    def _wait(self) -> None:
        if self.served.line:
            time.sleep(self.served.line[1])

    def _send(self, content: bytes) -> None:
        if not self.served.line:
            self.wfile.write(content)
            return
        for start in range(0, len(content), CHUNK):
            with self.served.turn:
                time.sleep(CHUNK / self.served.line[0])
            self.wfile.write(content[start : start + CHUNK])

    def log_message(self, format: str, *args: object) -> None:
        pass


class Server(ThreadingHTTPServer):
    def handle_error(self, request: Any, client_address: Any) -> None:
        pass  # a browser that is closed breaks its connections


@contextmanager
def served(site: Path) -> Iterator[Served]:
    told = Served("")
    with Server(("127.0.0.1", 0), partial(Handler, directory=site, served=told)) as server:
        told.url = f"http://127.0.0.1:{server.server_port}/"
        threading.Thread(target=server.serve_forever).start()
        try:
            yield told
        finally:
            server.shutdown()
