"""How long Chromium takes from navigation to the first computed answer, and to each next one."""

import shutil
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median, quantiles

from playwright.sync_api import BrowserContext, Page, sync_playwright

from build_scripts import bundle
from build_scripts.benchmarks.served import SLOW_LINE, Served
from build_scripts.runtime import packed

HERE = Path(__file__).parent / "rivals"
MODULES = bundle.ROOT / "node_modules"
OURS, STOCK = "ours", "stock Pyodide"
PAGES = {
    OURS: "rivals/ours.html",
    STOCK: "rivals/rival.html#stock",
    "MicroPython": "rivals/rival.html#micropython",
    "plain JavaScript": "rivals/rival.html#plain",
    "ours, with a chapter around it": "balance.html#pail_flow&pail=5",
}
SLOWED = 4  # a phone of some years, as often reckoned
SETTLED = 1000  # ms; a browser that has just started is busy with itself
KEPT_BY_THEN = 2000  # ms; what a browser keeps of a page, compiled code too, it keeps later
WARM_STARTS = 3  # of each fresh browser
KEYS = 60
RUNS = 7
SIMULATED = ("system_run", "year_of_draws")

# a rival's page says when it had its answer; a chapter shows it
TOOK = """() => {
  if (window.fault) throw new Error(window.fault);
  const form = document.querySelector("calc-form[data-state=answered]");
  return window.took ?? (form && performance.now());
}"""
FAULTS = """
addEventListener("error", ({ message }) => { window.fault ??= message; });
addEventListener("unhandledrejection", ({ reason }) => { window.fault ??= String(reason); });
"""


def add_rivals(site: Path) -> None:
    """Put what we compare with beside a built site."""
    rivals = site / "rivals"
    shutil.copytree(HERE, rivals)
    shutil.copytree(MODULES / "pyodide", rivals / "stock")
    name = "@micropython/micropython-webassembly-pyscript"
    shutil.copytree(MODULES / name, rivals / "micropython")
    with zipfile.ZipFile(rivals / "calc.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        for file, content in bundle.package().items():
            archive.writestr(file, content)
    packed.write(rivals)


def timed(server: Served, runs: int) -> Iterator[tuple[str, float]]:
    """Milliseconds to the first answer, medians; and how often ours goes into stock's."""
    for slowed in (1, SLOWED):
        fewer = runs if slowed == 1 else max(1, runs // 3)  # they take long, and scatter less
        for state, took in both(server, fewer, slowed).items():
            kind = f"{state}{about(slowed)}"
            for name, times in took.items():
                yield f"start, ms, {kind}: {name}", median(times)
            turns = zip(took[STOCK], took[OURS], strict=True)
            yield f"start, {kind}: stock / ours", median(stock / ours for stock, ours in turns)
    server.line = SLOW_LINE
    for name, address in PAGES.items():
        with fresh_browser() as context:
            once = started(prepared(context, 1), server.url + address)
            yield f"start, ms, cold at 1.6 Mbit/s: {name}", once
    server.line = None


def about(slowed: int) -> str:
    return f", CPU slowed {slowed}x" if slowed > 1 else ""


type Times = dict[str, list[float]]


def both(server: Served, runs: int, slowed: int) -> dict[str, Times]:
    """Cold and warm starts. All take turns, so that a busy spell hits all alike."""
    cold: Times = {name: [] for name in PAGES}
    warm: Times = {name: [] for name in PAGES}
    for _ in range(runs):
        for name, address in PAGES.items():
            url = server.url + address
            with fresh_browser() as context:
                page = prepared(context, slowed)
                cold[name].append(started(page, url))
                page.wait_for_timeout(KEPT_BY_THEN)
                started(page, url)  # it keeps compiled code of the second visit
                page.wait_for_timeout(KEPT_BY_THEN)
                warm[name].append(median(started(page, url) for _ in range(WARM_STARTS)))
    return {"cold": cold, "warm": warm}


@contextmanager
def fresh_browser() -> Iterator[BrowserContext]:
    """Chromium with a profile on disk, as a reader has; a private window keeps less."""
    with tempfile.TemporaryDirectory() as profile, sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            profile,
            executable_path="/usr/bin/chromium",
            args=["--no-sandbox"],  # which it refuses to root
            bypass_csp=True,  # for worker-in-page.js
        )
        yield context
        context.close()


def prepared(context: BrowserContext, slowed: int) -> Page:
    page = context.new_page()
    page.set_default_timeout(120_000)
    page.add_init_script(FAULTS)
    page.wait_for_timeout(SETTLED)
    if slowed > 1:
        page.add_init_script(path=HERE / "worker-in-page.js")
        cdp = context.new_cdp_session(page)
        cdp.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    return page


def started(page: Page, url: str) -> float:
    """Milliseconds from navigation until the page has an answer."""
    page.goto("about:blank")
    page.goto(url)
    took: float = page.wait_for_function(TOOK).json_value()
    return took


def chapters(server: Served) -> Iterator[tuple[str, Page]]:
    """A chapter that has settled, in a browser of its own: as it is, then slowed."""
    for slowed in (1, SLOWED):
        with fresh_browser() as context:
            page = prepared(context, slowed)
            page.goto(f"{server.url}balance.html")
            page.evaluate("navigator.serviceWorker.ready.then(() => true)")
            yield about(slowed), page


def simulations(server: Served) -> Iterator[tuple[str, float]]:
    """Milliseconds of an answer that is simulated, asked for as a page does; medians."""
    for how, page in chapters(server):
        for name in SIMULATED:
            yield f"browser, ms{how}: {name}", median(page.evaluate(ASK, [name, RUNS]))


def keystrokes(server: Served) -> Iterator[tuple[str, float]]:
    """Milliseconds from a keystroke to its answer on the page, which 95 of a hundred keep."""
    for how, page in chapters(server):
        names = "all => all.map((form) => form.getAttribute('name'))"
        for name in page.locator("calc-form").evaluate_all(names):
            took = page.evaluate(TYPE, [name, KEYS])
            yield f"keystroke, ms, p95{how}: {name}", quantiles(took, n=20)[-1]


# The first answers start Python and have it compiled.
ASK = """async ([calculator, times]) => {
  const { ask } = await import("/app/python.js");
  const took = [];
  for (let time = -2; time < times; time++) {
    const start = performance.now();
    await ask({ calculator, key: calculator, root: "", units: "us", fields: {} });
    if (time >= 0) took.push(performance.now() - start);
  }
  return took;
}"""

# Types digits into the first number of a form; what is timed ends when the frame is painted.
TYPE = """async ([name, keys]) => {
  const form = document.querySelector(`calc-form[name="${name}"]`);
  const box = form.querySelector("[data-field] input[type=text]");
  box.scrollIntoView(); // what is out of sight costs no paint
  const was = box.value, took = [];
  const settled = () => new Promise((done) => {
    const seen = new MutationObserver(() => {
      if (form.dataset.state !== "answered") return;
      seen.disconnect();
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => done(performance.now());
      requestAnimationFrame(() => port2.postMessage(0));
    });
    seen.observe(form, { attributes: true, attributeFilter: ["data-state"] });
  });
  for (let key = -20; key < keys; key++) {
    box.value = key % 2 ? was : `${was}${was.includes(".") ? "" : "."}1`;
    const start = performance.now();
    const end = settled();
    box.dispatchEvent(new InputEvent("input", { bubbles: true }));
    const spent = (await end) - start;
    if (key >= 0) took.push(spent); // the first ones start Python and have it compiled
    await new Promise((rest) => setTimeout(rest, 30));
  }
  return took;
}"""
