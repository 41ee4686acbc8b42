"""A Chromium of one's own, on a profile that outlives it: to be killed and started again."""

import os
import signal
import subprocess
from pathlib import Path
from time import monotonic, sleep
from types import TracebackType

from playwright.sync_api import BrowserContext, Playwright

FLAGS = (
    "--headless=new", "--no-sandbox", "--no-first-run", "--remote-debugging-port=0",
    "--disable-background-networking", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
)  # fmt: skip
PATIENCE = 60  # s, for a busy machine


class Chromium:
    """Starts with `start`, ends with `kill`: no farewell, as when a battery is empty."""

    def __init__(self, playwright: Playwright, profile: Path) -> None:
        self.playwright, self.profile = playwright, profile
        self.process: subprocess.Popen[bytes] | None = None

    def start(self) -> BrowserContext:
        """The profile's own context, with what it has kept."""
        port = self.profile / "DevToolsActivePort"
        port.unlink(missing_ok=True)
        command = ["/usr/bin/chromium", *FLAGS, f"--user-data-dir={self.profile}", "about:blank"]
        self.process = subprocess.Popen(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
        )
        end = monotonic() + PATIENCE
        while not (port.exists() and port.read_text().count("\n")):
            assert monotonic() < end, "Chromium does not start"
            sleep(0.05)
        number = port.read_text().split("\n")[0]
        browser = self.playwright.chromium.connect_over_cdp(f"http://127.0.0.1:{number}")
        return browser.contexts[0]

    def kill(self) -> None:
        """Ends every process of it at once."""
        if self.process:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
        self.process = None

    def __enter__(self) -> "Chromium":
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.kill()
