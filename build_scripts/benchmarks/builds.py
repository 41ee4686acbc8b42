"""How long the whole site takes to build, and a change to show while a writer watches."""

import os
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

from build_scripts.bundle import ROOT

# what is changed: its file, and what is put where in it
EDITS = {
    "a chapter": ("docs/balance.md", "\n\n", "\n\n{}\n\n"),
    "calc": ("calc/calculators/pail_flow.py", 'label="', 'label="{} '),
}
PATIENCE = 300  # s, of a busy machine that builds the whole book
ENVIRONMENT = os.environ | {"NO_MKDOCS_2_WARNING": "1"}


def timed() -> Iterator[tuple[str, float]]:
    """Seconds of two builds, the first with empty caches, and of changes until they show."""
    with copied() as project:
        for which in ("first", "again"):
            yield f"build, s: whole site, {which}", build(project, project / "site")
        yield from shown(project)


@contextmanager
def copied() -> Iterator[Path]:
    """A copy of the project to build and to change."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "book"
        left_out = shutil.ignore_patterns(".*", "node_modules", "site", "editions", "__pycache__")
        shutil.copytree(ROOT, copy, ignore=left_out)
        (copy / "node_modules").symlink_to(ROOT / "node_modules")
        yield copy


def build(project: Path, site: Path) -> float:
    """Build a project into a folder. Seconds."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"]
    start = time.perf_counter()
    subprocess.run([*command, "--site-dir", site], cwd=project, env=ENVIRONMENT, check=True)
    return time.perf_counter() - start


def shown(project: Path) -> Iterator[tuple[str, float]]:
    """Change a served project. Seconds until each change shows."""
    with serving(project) as url:
        for what in EDITS:
            yield f"serve, s: {what} changed", changed(project, url, what)


def changed(project: Path, url: str, what: str) -> float:
    """Make one of the changes. Seconds from saving its file to its text on the served page."""
    name, old, new = EDITS[what]
    file = project / name
    text = file.read_text(encoding="utf-8")
    assert old in text, f"{name} has no {old!r} to change."
    mark = f"Changed in {what}."
    start = time.perf_counter()
    file.write_text(text.replace(old, new.format(mark), 1), encoding="utf-8")
    wait_for(f"{url}balance.html", mark)
    return time.perf_counter() - start


@contextmanager
def serving(project: Path) -> Iterator[str]:
    with socket.create_server(("127.0.0.1", 0)) as free:
        address = f"127.0.0.1:{free.getsockname()[1]}"
    command = [sys.executable, "-m", "mkdocs", "serve", "--quiet", "--no-strict", "-a", address]
    server = subprocess.Popen(command, cwd=project, env=ENVIRONMENT)
    try:
        wait_for(f"http://{address}/balance.html", "</html>")
        yield f"http://{address}/"
    finally:
        server.terminate()
        server.wait()


def wait_for(url: str, text: str) -> None:
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        try:
            with urlopen(url, timeout=PATIENCE) as page:
                if text in page.read().decode():
                    return
        except (URLError, ConnectionError):
            pass  # not yet, or not while it builds
        time.sleep(0.02)
    raise TimeoutError(f"{url} does not show {text!r}.")
