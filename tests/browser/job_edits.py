"""Random edits of jobs, and everything that may happen to a browser meanwhile.

    python -m tests.browser.job_edits SITE --edits 10000 --seed 5

SITE is the folder of a built handbook. Two tabs change the same jobs, by the page's own modules
and by typing on a visit's sheet; they are reloaded, closed, their clock jumps, the browser is
killed and started again on the same profile, its storage is full. After each disturbance what a
page had said is kept must be there. Prints counts; ends with 1 and the first loss if there is one.
"""

import argparse
import json
import sys
import tempfile
from collections import Counter
from functools import partial
from pathlib import Path
from random import Random
from threading import Thread
from time import monotonic
from typing import Any

from playwright.sync_api import expect, sync_playwright

from calc.model import Choice, Input
from calc.visits.all_visits import VISITS
from calc.vocabulary import words
from tests.browser.chromium import Chromium
from tests.browser.job_model import Lost, Model, held
from tests.browser.job_tab import AT_ONCE, REFUSE, SLOW, TAKE, Tab
from tests.conftest import Handler, Server

VISIT = "balance-and-commission"
FIELDS = ("pail", "well_cut_in", "cut_in", "cut_out", "house_tank", "precharge", "rise")
MOST_JOBS = 4


class Edits:
    """One run: browser, tabs, model, and the dice."""

    def __init__(self, chromium: Chromium, url: str, dice: Random) -> None:
        self.chromium, self.url, self.dice = chromium, url, dice
        self.model, self.counts = Model(), Counter[str]()
        self.values = [each for each in words().values() if each.once]
        self.steps = [f"{VISIT}.{step.name}" for step in VISITS[VISIT].steps]
        self.start()

    def start(self) -> None:
        self.context = self.chromium.start()
        # before any page: the clock that `jump` sets clears no timer that began without it
        self.context.clock.install()
        self.tabs = [Tab(self.context.new_page(), self.url) for _ in range(2)]

    def edit(self) -> tuple[dict[str, Any], str, str | None]:
        """A change of some job: what to ask Python for, the key it changes, what it then says."""
        id_ = self.dice.choice(sorted(self.model.jobs))
        what = self.dice.random()
        self.counts["edits"] += 1
        if what < 0.15:
            step, value = self.dice.choice(self.steps), self.dice.choice(("done", "2", ""))
            asked = {"do": "job-mark", "mark": step, "value": value, "note": ""}
            return {"id": id_, **asked}, step, value or None
        each = self.dice.choice(self.values)
        if what < 0.25:
            return {"id": id_, "do": "job-drop", "name": each.name}, each.name, None
        text, unit = figure(each, self.dice)
        asked = {"do": "visit-fill-in", "name": each.name, "text": text, "unit": unit}
        return (
            {"id": id_, **asked},
            each.name,
            json.dumps([text, None if isinstance(each, Choice) else unit]),
        )

    def one(self) -> None:
        """One edit, waited for."""
        tab = self.dice.choice(self.tabs)
        asked, key, said = self.edit()
        self.take(tab, asked, key, said, tab.done("change", **asked))

    def both(self) -> None:
        """An edit in each tab at the same time: neither may undo the other."""
        edits = [self.edit() for _ in self.tabs]
        for tab, (asked, key, said) in zip(self.tabs, edits, strict=True):
            self.model.begun(asked["id"], key, said)
            tab.begin("change", **asked)
        told = [tab.settled() for tab in self.tabs]
        (first, second) = [(asked["id"], key) for asked, key, _ in edits]
        for tab, (asked, key, said), reply in zip(self.tabs, edits, told, strict=True):
            if first != second:  # else either may be the later
                self.take(tab, asked, key, said, reply)
        self.counts["at the same time"] += 1

    def take(
        self, tab: Tab, asked: dict[str, Any], key: str, said: str | None, told: dict[str, Any]
    ) -> None:
        """What the page said of an edit, into the model."""
        id_ = asked["id"]
        if "Both are in the list" in told.get("fault", ""):
            self.parted(tab, id_)
            return
        if why := told.get("fault") or told.get("refused"):
            raise Lost(f"a good edit failed: {why}: {asked}")
        tab.texts[id_] = told["text"]
        if told["unsaved"]:
            self.counts["in the page only"] += 1
            tab.own.setdefault(id_, {})[key] = said
            self.model.begun(id_, key, said)
            return
        for each, says in (tab.own.pop(id_, {}) | {key: said}).items():
            self.model.changed(id_, each, says)

    def parted(self, tab: Tab, id_: str) -> None:
        """Two tabs kept apart what storage had refused: this one's is a job of its own now."""
        there = tab.done("all")["all"]
        copies = {each for each in there if each.startswith(f"{id_}-")} - self.model.jobs.keys()
        if not any(there[each] == tab.texts[id_] for each in copies):
            raise Lost(f"of {id_} the tab's own is not in the list")
        del tab.own[id_]
        for copy in copies:
            self.model.kept(copy, there[copy])
            self.model.perhaps.add(copy)
            tab.own[copy] = held(there[copy])
        self.counts["parted"] += 1

    def compare(self) -> None:
        told = self.tabs[0].done("all")
        self.model.compare(told["all"])
        self.counts["compared"] += 1


def figure(each: Input | Choice, dice: Random) -> tuple[str, str]:
    """A figure that the input takes, and its unit."""
    if isinstance(each, Choice):
        return dice.choice(list(each.options)), ""
    unit = dice.choice((each.usual("us"), each.usual("si")))
    readings = dice.randint(1, min(each.several, 3))
    many = [unit.out_of_si(dice.uniform(each.low, each.high)) for _ in range(readings)]
    return "; ".join(f"{one:.9f}" for one in many), unit.symbol


class Disturbed(Edits):
    """Edits, and what may happen between them or in the middle of one."""

    def step(self) -> None:
        """One edit or two, or a disturbance and what must be there after it."""
        what = self.dice.random()
        if not self.model.jobs or (what < 0.01 and len(self.model.jobs) < MOST_JOBS):
            self.new()
        elif what < 0.85:
            self.one()
        elif what < 0.95:
            self.both()
        elif what < 0.96 and len(self.model.jobs) > MOST_JOBS:
            self.remove()
        else:
            self.disturb()

    def disturb(self) -> None:
        happens = (
            self.reload,
            self.close,
            self.kill,
            self.jump,
            self.fill_up,
            self.refuse,
            self.type,
        )
        what = self.dice.choice(happens)
        what()
        self.counts[what.__name__] += 1
        self.compare()

    def new(self) -> None:
        told = self.dice.choice(self.tabs).done("new", name=f"House {self.dice.random()}")
        self.model.kept(told["id"], told["text"])
        self.counts["new"] += 1

    def remove(self) -> None:
        id_ = self.dice.choice(sorted(self.model.jobs))
        self.dice.choice(self.tabs).done("remove", id=id_)
        del self.model.jobs[id_]
        self.counts["removed"] += 1

    def in_the_middle(self, tab: Tab) -> None:
        """Begins an edit that nobody waits for: how far it comes is left to chance."""
        if self.dice.random() < 0.3:
            return
        asked, key, said = self.edit()
        self.model.begun(asked["id"], key, said)
        tab.begin("change", **asked)
        tab.page.wait_for_timeout(self.dice.choice((0, 0, 5, 30, 120)))
        self.counts["left in the middle"] += 1

    def reload(self) -> None:
        tab = self.dice.choice(self.tabs)
        self.in_the_middle(tab)
        tab.page.reload()
        tab.ready()

    def close(self) -> None:
        place = self.dice.randrange(2)
        self.in_the_middle(self.tabs[place])
        self.tabs[place].page.close()
        self.tabs[place] = Tab(self.context.new_page(), self.url)

    def kill(self) -> None:
        for tab in self.tabs:
            self.in_the_middle(tab)
        self.chromium.kill()
        self.start()

    def jump(self) -> None:
        """The device's clock is set, and edits go on."""
        year = self.dice.randint(1999, 2099)
        self.dice.choice(self.tabs).page.clock.set_fixed_time(f"{year}-03-01T10:00:00Z")
        self.one()

    def fill_up(self) -> None:
        """No room on the device. Chromium has to be started for it: it asks for room only then,
        every half minute, and when it is short."""
        self.chromium.kill()
        self.start()
        devtools = self.context.new_cdp_session(self.tabs[0].page)
        origin = {"origin": self.url.rstrip("/")}
        devtools.send("Storage.overrideQuotaForOrigin", {**origin, "quotaSize": 1})
        self.without_room(self.dice.choice(self.tabs))
        devtools.send("Storage.overrideQuotaForOrigin", origin)
        self.room_again()

    def refuse(self) -> None:
        """One tab's storage refuses while the other's takes: what each has must live."""
        tab = self.dice.choice(self.tabs)
        tab.page.evaluate(REFUSE)
        self.without_room(tab)
        tab.page.evaluate(TAKE)
        self.room_again()

    def without_room(self, tab: Tab) -> None:
        """Two edits of one page at once, as from a sheet's two fields, then some of either tab."""
        id_, steps = self.dice.choice(sorted(self.model.jobs)), self.dice.sample(self.steps, 2)
        many = [{"id": id_, "do": "job-mark", "mark": each, "value": "done"} for each in steps]
        told = tab.page.evaluate(AT_ONCE, many)
        for asked, reply in zip(many, told, strict=True):
            self.take(tab, asked, asked["mark"], "done", reply)
        tab.texts[id_] = tab.done("all")["all"][id_]  # whichever came last
        if held(tab.texts[id_]) | dict.fromkeys(steps, "done") != held(tab.texts[id_]):
            raise Lost(f"of two edits at once, {steps} of {id_}, one is gone")
        for _ in range(self.dice.randint(0, 6)):
            self.one()

    def room_again(self) -> None:
        if self.dice.random() < 0.2:
            self.reload()  # the page had said what that costs
        for tab in self.tabs:
            self.have_kept(tab)

    def have_kept(self, tab: Tab) -> None:
        """Changes each job of which this page alone has news, so that all of it is kept."""
        end = monotonic() + SLOW / 1000
        while tab.own:
            id_, step = self.dice.choice(sorted(tab.own)), self.dice.choice(self.steps)
            asked = {"id": id_, "do": "job-mark", "mark": step, "value": "room", "note": ""}
            self.take(tab, asked, step, "room", tab.done("change", **asked))
            if monotonic() > end:
                raise Lost(f"there is room again, and {id_} is still not kept")

    def type(self) -> None:
        """A figure typed on a visit's sheet; the page may end before it is kept."""
        tab = self.dice.choice(self.tabs)
        id_ = self.dice.choice(sorted(self.model.jobs))
        each = words()[self.dice.choice(FIELDS)]
        assert isinstance(each, Input)
        tab.page.evaluate("(id) => localStorage.setItem('current-job', id)", id_)
        tab.page.goto(f"{self.url}visit/{VISIT}.html")
        # another process of the browser may hear of the choice a little later
        tab.page.wait_for_function("(id) => localStorage.getItem('current-job') === id", arg=id_)
        tab.page.reload()
        expect(tab.page.locator("[data-part=said]")).to_contain_text("Job: ", timeout=SLOW)
        field = tab.page.locator(f"[data-field={each.name}]").first
        unit = each.kind.unit(field.locator("select").input_value())
        text = f"{unit.out_of_si(self.dice.uniform(each.low, each.high)):.6f}"
        field.locator("input").fill(text)
        if self.dice.random() < 0.5:  # as a draft, it is there again and is kept then
            tab.page.reload()
        self.wait_until_kept(tab, id_)
        self.model.changed(id_, each.name, json.dumps([text, unit.symbol]))
        self.counts["edits"] += 1
        tab.open()

    def wait_until_kept(self, tab: Tab, id_: str) -> None:
        """Another job's draft may be there again: a kill loses that it was taken away."""
        end = monotonic() + SLOW / 1000
        while drafts := tab.page.evaluate(DRAFTS, id_):
            if monotonic() > end:
                raise Lost(f"typed, and still a draft: {drafts}; {tab.page.evaluate(SEEN)}")
            tab.page.wait_for_timeout(100)

    def to_the_end(self, edits: int, minutes: float) -> str:
        """Runs so many edits, or for so long. Returns the first loss, or nothing."""
        end = monotonic() + 60 * minutes
        try:
            while self.counts["edits"] < edits and monotonic() < end:
                self.step()
            self.kill()
            self.counts["kill"] += 1
            self.compare()
        except Lost as lost:
            return str(lost)
        return ""


SEEN = """() => ({
  says: document.querySelector("[data-part=said]").textContent,
  errors: [...document.querySelectorAll(".calc-error")].map((it) => it.textContent).join(" "),
  fields: [...document.querySelectorAll("[data-field] input[type=text]")].map((it) => it.value),
  job: localStorage.getItem("current-job"), now: Date(), visible: document.visibilityState,
})"""
DRAFTS = "(id) => localStorage.getItem(`drafts ${id}`)"


def edited(site: Path, edits: int, seed: int, minutes: float = 40) -> tuple[Counter[str], str]:
    """The counts of a run, and the first loss or nothing."""
    served = partial(Handler, directory=site)
    with (
        Server(("127.0.0.1", 0), served) as server,
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        sync_playwright() as playwright,
        Chromium(playwright, Path(profile)) as chromium,
    ):
        Thread(target=server.serve_forever).start()
        try:
            run = Disturbed(chromium, f"http://127.0.0.1:{server.server_port}/", Random(seed))
            return run.counts, run.to_the_end(edits, minutes)
        finally:
            server.shutdown()


def main() -> int:
    """The command."""
    parser = argparse.ArgumentParser(prog="python -m tests.browser.job_edits")
    parser.add_argument("site", type=Path, help="folder of a built handbook")
    parser.add_argument("--edits", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--minutes", type=float, default=40, help="stop then at the latest")
    asked = parser.parse_args()
    start = monotonic()
    counts, lost = edited(asked.site, asked.edits, asked.seed, asked.minutes)
    for what, times in counts.most_common():
        print(f"{times:7}  {what.replace('_', ' ')}")
    print(f"in {monotonic() - start:.0f} s. {f'Lost: {lost}' if lost else 'Nothing was lost.'}")
    return int(bool(lost))


if __name__ == "__main__":
    sys.exit(main())
