"""A page of the handbook that changes jobs by its own modules, in a browser's storage."""

from typing import Any

from playwright.sync_api import Page

from tests.browser.job_model import Held

SLOW = 60_000  # ms, for a busy machine

# One change by the page's own modules. Without `wait` it is only begun, and `settled` is asked for.
HANDS = """async () => {
  const from = (name) => import(new URL(`app/${name}.js`, document.baseURI));
  const [store, python] = await Promise.all([from("job-store"), from("python")]);
  const act = {
    async new({ name }) {
      const { job } = await python.ask({ do: "job-new", name, date: store.today() });
      return { id: await store.keep(job), text: job };
    },
    async remove({ id }) {
      await store.remove(id);
      return {};
    },
    async change({ id, ...asked }) {
      let refused;
      const text = await store.change(id, async (job) => {
        const reply = await python.ask({ when: store.moment(), units: "us", ...asked, job });
        ({ refused } = reply);
        return reply.job ?? job;
      });
      return { text, refused };
    },
    async all() {
      return { all: Object.fromEntries(await store.all()) };
    },
  };
  globalThis.once = ({ act: what, ...asked }) =>
    act[what](asked).then(
      (told) => ({ ...told, unsaved: store.unsaved() }),
      ({ message }) => ({ fault: message }),
    );
  globalThis.begin = (asked) => {
    globalThis.settled = once(asked);
  };
}"""

AT_ONCE = "(many) => Promise.all(many.map((asked) => once({ act: 'change', ...asked })))"
REFUSE = """() => {
  globalThis.put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => { throw new DOMException("by test", "QuotaExceededError"); };
}"""
KEEP_AND_REFUSE = """() => {
  globalThis.put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...what) {
    put.apply(this, what);
    throw new DOMException("by test", "QuotaExceededError");
  };
}"""
TAKE = "() => { if (globalThis.put) IDBObjectStore.prototype.put = put; }"


class Tab:
    """A page of the handbook, and the changes that only it has while storage is full."""

    def __init__(self, page: Page, url: str) -> None:
        self.page, self.url = page, url
        self.own: dict[str, Held] = {}  # job -> the changes that only this page has
        self.texts: dict[str, str] = {}  # job -> its text as this page last had it
        page.on("dialog", lambda dialog: dialog.accept())
        self.open()

    def open(self, path: str = "jobs.html") -> None:
        self.page.goto(self.url + path)
        self.ready()

    def ready(self) -> None:
        self.own.clear()
        self.texts.clear()
        self.page.evaluate(HANDS)

    def begin(self, act: str, **asked: Any) -> None:
        self.page.evaluate("(asked) => begin(asked)", {"act": act, **asked})

    def settled(self) -> dict[str, Any]:
        told: dict[str, Any] = self.page.evaluate("() => settled")
        return told

    def done(self, act: str, **asked: Any) -> dict[str, Any]:
        self.begin(act, **asked)
        return self.settled()
