"""What happens to the kept book: downloads that break off, damage, no room, storage refused."""

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.keeping import SLOW, Host, desk, keep, listed, state, whole
from tests.browser.using import change

pytestmark = pytest.mark.browser


def test_a_download_that_broke_off_goes_on_where_it_was(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    host.cut = biggest(host)
    page.get_by_role("button", name="Keep the whole book").click()
    expect(page.locator("[data-part=said]")).to_contain_text("does not answer", timeout=SLOW)
    arrived = state(page)["bytes"]
    host.cut = ""
    host.asked.clear()
    page.reload()  # what was asked for once goes on by itself
    whole(page)
    assert biggest(host) in host.asked
    files = listed(host)
    again = sum(files[path]["bytes"] for path in set(host.asked) & set(files))
    assert again <= sum(each["bytes"] for each in files.values()) - arrived


def biggest(host: Host) -> str:
    files = listed(host)
    return max(files, key=lambda path: int(files[path]["bytes"]))


DAMAGE = """async (part) => {
  const [name] = await caches.keys();
  const cache = await caches.open(name);
  let damaged = 0;
  for (const key of await cache.keys()) {
    if (!key.url.includes(part)) continue;
    const old = await cache.match(key);
    if (!old) continue; // found damaged and thrown out in the meantime
    const half = (await old.arrayBuffer()).slice(0, 100);
    await cache.put(key, new Response(half, { headers: old.headers }));
    damaged++;
  }
  return damaged;
}"""


@pytest.mark.parametrize("part", ["/runtime", "/balance.html", "/app/", "/"])
def test_damaged_files_are_not_used_and_heal(part: str, device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    keep(page)
    assert page.evaluate(DAMAGE, part) > 0
    page.goto(f"{host.url}balance.html")
    change(page, "outlet_setting", "outlet", "4.6")
    page.goto(f"{host.url}offline.html")
    page.evaluate("navigator.serviceWorker.controller.postMessage({ do: 'check' })")
    wait_for_all(page)
    host.stop()
    page.goto(f"{host.url}balance.html")
    change(page, "outlet_setting", "outlet", "4.7")


def wait_for_all(page: Page) -> None:
    for _ in range(60):
        if not state(page)["lacking"] and page.evaluate(INTACT):
            return
        page.wait_for_timeout(500)
    raise AssertionError("the cache has not healed in 30 s")


# Every entry is its hash: read by the test itself, not by the worker it tests.
INTACT = """async () => {
  const cache = await caches.open((await caches.keys())[0]);
  for (const key of await cache.keys()) {
    const wanted = key.url.split("?")[1];
    if (wanted === "wish") continue;
    const found = await cache.match(key);
    if (!found) return false; // thrown out in the meantime
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await found.arrayBuffer()));
    if ([...hash].map((it) => it.toString(16).padStart(2, "0")).join("") !== wanted) return false;
  }
  return true;
}"""


def test_a_damaged_page_is_not_shown_with_the_server_gone(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    keep(page)
    assert page.evaluate(DAMAGE, "/handbook/balance.html") == 1
    host.stop()
    page.goto(f"{host.url}balance.html")
    expect(page.locator("[data-part=asked]")).to_contain_text("not on this device")


def test_no_room_is_told_and_the_book_still_reads(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    session = device.new_cdp_session(page)
    room = {"origin": host.url.rstrip("/").removesuffix("/handbook"), "quotaSize": 1_000_000}
    session.send("Storage.overrideQuotaForOrigin", room)
    page.get_by_role("button", name="Keep the whole book").click()
    expect(page.locator("[data-part=said]")).to_contain_text("no room", timeout=SLOW)
    page.goto(f"{host.url}balance.html")
    change(page, "outlet_setting", "outlet", "4.6")


@pytest.mark.parametrize(
    ("script", "told"),
    [
        ("delete Navigator.prototype.serviceWorker", "keeps no pages"),
        ("delete globalThis.caches", "keeps no pages"),
        ("Object.defineProperty(globalThis, 'isSecureContext', { value: false })", "https"),
        (
            "if (isSecureContext) ServiceWorkerContainer.prototype.register ="
            " async () => { throw new Error('by test'); };",
            "refuses: by test",
        ),
    ],
)
def test_a_browser_that_cannot_says_so_in_one_line(
    script: str, told: str, device: BrowserContext, host: Host
) -> None:
    device.add_init_script(script)
    page = device.new_page()
    page.goto(f"{host.url}balance.html")
    expect(page.locator("offline-line")).to_contain_text(told, timeout=SLOW)
    change(page, "outlet_setting", "outlet", "4.6")


def test_storage_that_is_refused_to_the_worker_is_told(device: BrowserContext, host: Host) -> None:
    refuse = "caches.open = () => Promise.reject(new DOMException('', 'SecurityError'));\n"
    worker = host.folder / host.below / "sw.js"
    worker.write_text(refuse + worker.read_text(encoding="utf-8"), encoding="utf-8")
    page = device.new_page()
    page.goto(f"{host.url}balance.html")
    expect(page.locator("offline-line")).to_contain_text("Not kept for offline", timeout=SLOW)
    change(page, "outlet_setting", "outlet", "4.6")


def test_without_navigator_storage_the_book_is_kept(device: BrowserContext, host: Host) -> None:
    device.add_init_script("delete Navigator.prototype.storage")
    keep(desk(device, host))


def test_a_question_about_lasting_storage_that_is_never_answered_stops_nothing(
    device: BrowserContext, host: Host
) -> None:
    device.add_init_script(
        "if (isSecureContext) StorageManager.prototype.persist = () => new Promise(() => {})"
    )
    keep(desk(device, host))
