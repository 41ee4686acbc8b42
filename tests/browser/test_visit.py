"""One whole visit on a phone with the network off: started, left half-way, gone to its end.

Taps and minutes of the same walk are counted in DEVELOPERS.md.
"""

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.keeping import SLOW, Host, desk, keep

pytestmark = pytest.mark.browser

DRAFTS = "Object.entries(localStorage).filter(([key]) => key.startsWith('drafts '))"
VISIT = "visit/balance-and-commission.html"


class Hand:
    """A technician's thumb: fills, taps, and counts both."""

    def __init__(self, page: Page) -> None:
        self.page, self.taps, self.typed = page, 0, 0

    def tap(self, target: str) -> None:
        self.page.locator(target).first.click()
        self.taps += 1

    def pick(self, name: str, value: str) -> None:
        self.page.locator(f"[data-field={name}] label:has([value={value}])").first.click()
        self.taps += 1

    def fill(self, step: str, name: str, text: str) -> None:
        box = self.page.locator(f"[data-step={step}] [data-field={name}] input").first
        box.fill(text)
        self.taps, self.typed = self.taps + 1, self.typed + len(text)

    def kept(self) -> None:
        """Wait until nothing that was typed is still a draft."""
        for _ in range(100):
            if not self.page.evaluate(DRAFTS):
                return
            self.page.wait_for_timeout(300)
        raise AssertionError(f"still a draft after 30 s: {self.page.evaluate(DRAFTS)}")

    def tick(self, step: str) -> None:
        box = self.page.locator(f"[data-step={step}] [data-tick]")
        box.check()
        self.taps += 1
        expect(self.page.locator("[data-part=progress]")).to_contain_text("steps done")

    def catch(self, step: str, times: str) -> None:
        """Open the pail and timer from a step, put three runs in, keep the flow, come back."""
        self.tap(f"[data-step={step}] a.visit-open")
        form = self.page.locator("#pail_flow calc-form")
        expect(form.locator(".calc-return button")).to_be_visible(timeout=SLOW)
        expect(form).to_have_attribute("data-state", "answered", timeout=SLOW)
        for place, run in enumerate(times.split("; ")):
            form.locator("[data-field=runs] input").nth(place).fill(run)
            self.taps, self.typed = self.taps + 1, self.typed + len(run)
        self.back("#pail_flow")

    def back(self, form: str) -> None:
        page = self.page
        expect(page.locator(f"{form} calc-form")).to_have_attribute(
            "data-state", "answered", timeout=SLOW
        )
        self.tap(f"{form} .calc-return button")
        expect(page.locator("calc-visit")).to_be_visible(timeout=SLOW)
        expect(page.locator("[data-part=progress]")).to_contain_text("steps done", timeout=SLOW)


def first_half(hand: Hand) -> None:
    """From the name of the job to the flow in."""
    page = hand.page
    expect(page.locator("[data-part=progress]")).to_contain_text("0 of 12", timeout=SLOW)
    page.locator("[data-part=name]").fill("Quarry Road at Alder Ledge (invented)")
    hand.tap("[data-part=start] button")
    expect(page.locator("calc-visit [data-part=said]")).to_contain_text("Quarry Road", timeout=SLOW)
    hand.fill("ready", "pail", "5")
    hand.kept()
    hand.tick("ready")
    for name, text in GAUGES.items():
        hand.fill("gauges", name, text)
    hand.kept()
    hand.tick("gauges")
    hand.fill("inlet", "inlet_gauge", "44")
    hand.fill("inlet", "rise", "6")
    hand.kept()
    hand.catch("inlet", "53.6 s; 53.6 s; 53.6 s")


GAUGES = {
    "well_cut_in": "40",
    "cut_in": "30",
    "cut_out": "50",
    "house_tank": "20",
    "precharge": "28",
}


def second_half(hand: Hand) -> None:
    """From the promise of the service to the proof."""
    page = hand.page
    hand.fill("service", "service_at", "4.8")
    hand.pick("limit", "before")
    hand.fill("outlet", "house_gauge", "4")
    hand.kept()
    hand.catch("outlet", "50 s; 50 s; 50 s")
    hand.fill("setting", "float_open", "9.5")
    hand.kept()
    answer = page.locator("[data-part=answer-setting]")
    expect(answer).to_contain_text("Can run dry.", timeout=SLOW)
    hand.catch("set", "65 s; 65 s; 65 s")
    expect(answer).to_contain_text("Safe.", timeout=SLOW)
    hand.tap("[data-step=proof] a.visit-open")
    expect(page.locator("#outlet_setting .calc-return button")).to_be_visible(timeout=SLOW)
    hand.back("#outlet_setting")
    expect(page.locator("[data-part=answer-proof]")).to_contain_text("Safe.", timeout=SLOW)


def test_a_visit_is_gone_without_a_network_and_nothing_is_lost_half_way(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    keep(page)
    host.stop()
    page.goto(host.url + VISIT)
    hand = Hand(page)
    first_half(hand)
    page.locator("[data-step=service] [data-field=service_at] input").fill("4.")
    page.close()  # the phone dies while the figure is typed
    page = hand.page = device.new_page()
    page.goto(host.url + VISIT)
    typed = page.locator("[data-step=service] [data-field=service_at] input")
    expect(typed).to_have_value("4.", timeout=SLOW)
    expect(page.locator("[data-step=gauges] [data-tick]")).to_be_checked(timeout=SLOW)
    for name, text in GAUGES.items():
        box = page.locator(f"[data-step=gauges] [data-field={name}] input").first
        expect(box).to_have_value(text, timeout=SLOW)
    second_half(hand)
    expect(page.locator("[data-part=progress]")).to_contain_text("6 of 12")
    assert hand.taps <= 40
    page.goto(f"{host.url}house.html")
    expect(page.locator("calc-house [data-part=said]")).to_contain_text("Quarry Road", timeout=SLOW)
    expect(page.locator("calc-house svg desc")).to_contain_text("4.62", timeout=SLOW)


def test_a_trouble_call_ends_at_a_cause(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    keep(page)
    host.stop()
    page.goto(f"{host.url}visit/trouble-call.html")
    say(page, "The water stopped during laundry.")
    say(page, "The level falls below the intake, and the taps spit.")
    page.reload()
    expect(page.locator(".trouble-taken")).to_contain_text("taps spit", timeout=SLOW)
    say(page, "As in the record.")
    say(page, "Nothing. It has always done it.")
    found = page.locator(".trouble-found")
    expect(found).to_contain_text("never set for the worst inlet", timeout=SLOW)
    expect(found).to_contain_text("speaks for it")
    found.get_by_role("link", name="The chapter on the fix").click()
    expect(page).to_have_url(f"{host.url}open-tank/outlet.html", timeout=SLOW)


def say(page: Page, words: str) -> None:
    button = page.get_by_role("button", name=words, exact=True)
    button.click(timeout=SLOW)
    expect(button).to_have_count(0, timeout=SLOW)
