"""A server of one's own, and a device that reads from it."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.browser.keeping import Host
from tests.conftest import PHONE, Site


@pytest.fixture
def host(site: Site, tmp_path: Path) -> Iterator[Host]:
    shutil.copytree(site.folder, tmp_path / "handbook")
    served = Host(tmp_path, below="handbook/")
    yield served
    served.stop()


@pytest.fixture
def device(browser: Browser, host: Host, faults: list[str]) -> Iterator[BrowserContext]:
    context = browser.new_context(**PHONE)
    context.on("weberror", lambda error: faults.append(f"page error: {error.error}"))
    context.on(
        "request",
        lambda asked: faults.append(asked.url) if not asked.url.startswith(inside(host)) else None,
    )
    yield context
    context.close()


def inside(host: Host) -> tuple[str, ...]:
    return (host.url, "blob:", "data:")
