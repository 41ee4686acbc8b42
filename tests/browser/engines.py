"""Three engines, as Debian packages them, reading files from a disk.

Playwright drives only the first, and Debian has no geckodriver: Firefox is asked over WebDriver
BiDi, WebKit over classic WebDriver. Each is told only to open a page and to run a script in it.
"""

import json
import os
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Protocol
from urllib.error import HTTPError
from urllib.request import Request, urlopen

from playwright.sync_api import Page
from websockets.sync.client import ClientConnection, connect

START = 60  # s, for a browser to start on a busy machine
PATIENCE = 200  # s, for a page to load, or a script with several waits of its own to end
ON_DISK = ("file:", "blob:", "data:", "about:")
# The first is what a reader has; drivers tend to switch it off. The others keep Firefox still.
FIREFOX_SETTINGS = {
    "security.fileuri.strict_origin_policy": True,
    "app.normandy.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",
}

# Steps of a reader, for a script to begin with: it is the page that clicks and types.
STEPS = Path(__file__).with_name("steps.js").read_text(encoding="utf-8")

# For a page to begin with. What goes wrong is then in `faults` of that page, in any browser.
RECORDER = """<script>
  window.faults = [];
  for (const level of ["error", "warn"]) {
    const log = console[level];
    console[level] = (...words) => (faults.push(words.join(" ")), log.apply(console, words));
  }
  const note = ({ message, target }) => faults.push(message ?? target.outerHTML);
  addEventListener("error", note, true);
  addEventListener("unhandledrejection", ({ reason }) => faults.push(String(reason)));
</script>
"""


class Engine(Protocol):
    faults: list[str]

    def open(self, url: str) -> None:
        """Load a page."""

    def run(self, script: str) -> Any:
        """Run the body of an async function in the page; what it returns, as JSON has it."""


class Chromium:
    def __init__(self, page: Page) -> None:
        self.page = page
        self.faults: list[str] = []
        page.on("console", lambda said: self.faults.append(f"{said.type}: {said.text}"))
        page.on("request", lambda request: self.note(request.url))

    def open(self, url: str) -> None:
        self.page.goto(url)

    def run(self, script: str) -> Any:
        return self.page.evaluate(f"async () => {{ {script} }}")

    def note(self, url: str) -> None:
        if not url.startswith(ON_DISK):
            self.faults.append(f"left the disk for {url}")


class Firefox:
    def __init__(self, connection: ClientConnection) -> None:
        self.connection = connection
        self.asked = 0
        self.faults: list[str] = []
        self.command("session.new", capabilities={})
        events = ["log.entryAdded", "network.beforeRequestSent"]
        self.command("session.subscribe", events=events)
        self.tab = self.command("browsingContext.getTree")["contexts"][0]["context"]

    def open(self, url: str) -> None:
        self.command("browsingContext.navigate", context=self.tab, url=url, wait="complete")

    def run(self, script: str) -> Any:
        text = f"(async () => {{ {script} }})().then((it) => JSON.stringify(it ?? null))"
        found = self.command(
            "script.evaluate", expression=text, target={"context": self.tab}, awaitPromise=True
        )
        if found["type"] != "success":
            raise RuntimeError(found["exceptionDetails"]["text"])
        return json.loads(found["result"]["value"])

    def command(self, method: str, **params: Any) -> Any:
        self.asked += 1
        self.connection.send(json.dumps({"id": self.asked, "method": method, "params": params}))
        while True:
            message = json.loads(self.connection.recv(timeout=PATIENCE))
            if message["type"] == "event":
                self.note(message["method"], message["params"])
            elif message["id"] == self.asked:
                break
        if message["type"] == "error":
            raise RuntimeError(f"{method}: {message['message']}")
        return message["result"]

    def note(self, event: str, params: dict[str, Any]) -> None:
        if event == "log.entryAdded":
            if params["level"] in ("warn", "error"):
                self.faults.append(f"{params['level']}: {params['text']}")
        elif not params["request"]["url"].startswith(ON_DISK):
            self.faults.append(f"left the disk for {params['request']['url']}")


class WebKit:
    def __init__(self, address: str) -> None:
        self.address = address
        self.faults: list[str] = []  # it tells of none: see RECORDER
        browser = next(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))
        options = {"binary": str(browser), "args": ["--automation"]}
        capabilities = {"alwaysMatch": {"webkitgtk:browserOptions": options}}
        made = self.command("POST", "/session", {"capabilities": capabilities})
        self.session = f"/session/{made['sessionId']}"
        limits = {"script": PATIENCE * 1000, "pageLoad": PATIENCE * 1000}
        self.command("POST", f"{self.session}/timeouts", limits)

    def open(self, url: str) -> None:
        self.command("POST", f"{self.session}/url", {"url": url})

    def run(self, script: str) -> Any:
        text = f"return (async () => {{ {script} }})()"
        asked = {"script": text, "args": []}
        return self.command("POST", f"{self.session}/execute/sync", asked)

    def command(self, method: str, path: str, body: dict[str, Any] | None = None) -> Any:
        data = None if body is None else json.dumps(body).encode()
        request = Request(self.address + path, data, method=method)
        try:
            with urlopen(request, timeout=PATIENCE) as response:
                return json.load(response)["value"]
        except HTTPError as refusal:
            raise RuntimeError(refusal.read().decode()) from None


@contextmanager
def firefox(folder: Path) -> Iterator[Engine]:
    settings = (
        f"user_pref({json.dumps(k)}, {json.dumps(v)});" for k, v in FIREFOX_SETTINGS.items()
    )
    (folder / "user.js").write_text("\n".join(settings))
    port = free_port()
    command = ["firefox-esr", "--headless", "--no-remote", "--profile", str(folder)]
    command.append(f"--remote-debugging-port={port}")
    address = f"ws://127.0.0.1:{port}/session"
    with running(command, port, {"HOME": str(folder)}), connect(address, max_size=None) as tunnel:
        yield Firefox(tunnel)


@contextmanager
def webkit(folder: Path) -> Iterator[Engine]:
    port = free_port()
    command = ["xvfb-run", "--auto-servernum", "WebKitWebDriver", f"--port={port}"]
    environment = {
        "HOME": str(folder),
        "LIBGL_ALWAYS_SOFTWARE": "1",
        "TMPDIR": str(folder),  # xvfb-run leaves its folder behind
        "WEBKIT_DISABLE_COMPOSITING_MODE": "1",
        "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1",  # as root it has none
    }
    with running(command, port, environment):
        engine = WebKit(f"http://127.0.0.1:{port}")
        yield engine
        engine.command("DELETE", engine.session)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


# What a reader calls it -> the program that must be there, and how it starts with a folder.
ENGINES = {"Firefox": ("firefox-esr", firefox), "WebKitGTK": ("WebKitWebDriver", webkit)}


@contextmanager
def running(command: list[str], port: int, environment: dict[str, str]) -> Iterator[None]:
    """A program that listens on a port, ended with all it has started."""
    process = subprocess.Popen(
        command,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        env=os.environ | environment,
        process_group=0,
    )
    try:
        wait_for(port, command)
        yield
    finally:
        os.killpg(process.pid, 15)
        process.wait(10)


def wait_for(port: int, command: list[str]) -> None:
    for _ in range(START * 10):
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.1)
    raise TimeoutError(f"{command} did not start within {START} s.")
