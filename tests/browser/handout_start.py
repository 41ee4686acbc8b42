"""Prints how long a first answer takes from a server and from a disk, in each engine:

    .venv/bin/python -m tests.browser.handout_start SITE

From opening the page to the answer, by the page's own clock, medians; SITE is a built handbook.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from threading import Thread

from playwright.sync_api import sync_playwright

from build_scripts import handout
from tests.browser.engines import ENGINES, STEPS, Chromium, Engine
from tests.browser.test_handout import unzip
from tests.conftest import Handler, Server

RUNS = 5
ANSWER = 'await change("outlet_setting", "outlet", "4.6"); return performance.now();'


def main() -> None:
    site = Path(sys.argv[1]).resolve()
    print(f"{'ms to a first answer':22}{'served':>8}{'disk':>8}{'ratio':>8}")
    with TemporaryDirectory(ignore_cleanup_errors=True) as scratch, served(site) as url:
        book = Path(scratch) / "book.zip"
        handout.write(site, book)
        copy = unzip(book, Path(scratch)).as_uri() + "/"
        starts = {"Chromium": chromium} | {name: start for name, (_, start) in ENGINES.items()}
        for name, start in starts.items():
            profile = Path(scratch) / name
            profile.mkdir()
            with start(profile) as engine:
                # in turn, so that a busy spell hits both
                both = [(taken(engine, url), taken(engine, copy)) for _ in range(RUNS)]
            from_server, from_disk = (median(times) for times in zip(*both, strict=True))
            print(f"{name:22}{from_server:8.0f}{from_disk:8.0f}{from_disk / from_server:8.2f}")


def taken(engine: Engine, root: str) -> float:
    engine.open("about:blank")
    engine.open(f"{root}balance.html")
    return float(engine.run(STEPS + ANSWER))


@contextmanager
def served(site: Path) -> Iterator[str]:
    with Server(("127.0.0.1", 0), partial(Handler, directory=site)) as server:
        Thread(target=server.serve_forever).start()
        yield f"http://127.0.0.1:{server.server_port}/"
        server.shutdown()


@contextmanager
def chromium(_profile: Path) -> Iterator[Engine]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path="/usr/bin/chromium", args=["--no-sandbox"]
        )
        yield Chromium(browser.new_page())
        browser.close()


if __name__ == "__main__":
    main()
