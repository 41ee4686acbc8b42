"""Using a calculator on a page, as a technician would."""

from pathlib import Path

from playwright.sync_api import Locator, Page, expect

AXE = Path(__file__).resolve().parents[2] / "node_modules/axe-core/axe.min.js"


def form(page: Page, name: str) -> Locator:
    return page.locator(f"#{name} calc-form")


def change(page: Page, name: str, field: str, text: str) -> Locator:
    """Type into a field and wait for the answer. Returns the form."""
    page.locator(f"#{name}-{field}").fill(text)
    answered = form(page, name)
    expect(answered).to_have_attribute("data-state", "answered", timeout=30_000)
    return answered


def output(page: Page, name: str, wanted: str) -> str:
    found = page.locator(f"#{name} [data-output={wanted}] dd").inner_text()
    return found.replace("\u00a0", " ").split("\n")[0]


def axe(page: Page) -> list[str]:
    """Names of what axe finds serious or critical, with where."""
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    return [
        f"{each['id']}: {node['html'][:120]}"
        for each in found["violations"]
        if each["impact"] in ("serious", "critical")
        for node in each["nodes"]
    ]
