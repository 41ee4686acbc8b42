// Keeps the book on this device, if the browser can, and says how that stands: in a line at the
// foot of every page, on the page offline.html, and in a bar when a newer edition is ready.
// What is fetched unasked is small (the program and the page that is read); the engine of the
// calculators is kept when it is used, the whole book when the reader says so.

const ROOT = new URL("../", import.meta.url);
const QUIET = 3000; // ms after the page has loaded: reading comes first
const STALL = 30_000; // ms without news: the browser may have ended the worker
const workers = navigator.serviceWorker;

let registration;
let loading = false; // the reader has asked for the newer edition
let stalled;
export const now = { why: missing(), state: undefined, said: "", total: 0 }; // total: bytes to fetch

const shows = new Set();

/** Calls `show` now and whenever something has changed, until the element has gone. */
export function follow(element, show) {
  shows.add({ element, show });
  show(now);
}

function changed(news) {
  Object.assign(now, news);
  for (const entry of shows) {
    if (entry.element.isConnected) entry.show(now);
    else shows.delete(entry);
  }
}

/** Why this browser cannot keep the book here, in a sentence, or "". */
function missing() {
  if (location.protocol === "file:") return "This copy is read from a disk, and is whole as it is.";
  if (!document.documentElement.dataset.program) return "This is a writer’s copy, which is never kept.";
  if (!isSecureContext) return "The address is not a secure one (https), and only such pages can be kept.";
  if (!workers || !globalThis.caches) return "This browser keeps no pages; in a private window few do.";
  return "";
}

/** Asks the worker that keeps the book for something. */
export function order(what, more = {}) {
  registration?.active?.postMessage({ do: what, ...more });
}

export function keepBook() {
  // not awaited: a browser may ask the reader, and leave the answer open for ever
  navigator.storage?.persist?.().catch(() => {});
  changed({ said: "", total: now.state.lacking });
  watch();
  order("book");
}

export async function lookForNewer() {
  changed({ said: "Looking…" });
  try {
    const { installing, waiting } = await registration.update();
    const found = "A newer edition is there. It is fetched first, then offered.";
    changed({ said: installing || waiting ? found : "This is the newest edition." });
  } catch {
    changed({ said: "The server does not answer." });
  }
}

/** Asks again for the whole book when the worker has fallen silent in the middle of it. */
function watch() {
  clearTimeout(stalled);
  stalled = setTimeout(() => now.total && navigator.onLine && keepBook(), STALL);
}

function heard({ data, source }) {
  if (source === registration?.waiting) return offer(`A newer edition is ready: ${named(data)}.`);
  if (data.fault) return changed({ said: data.fault, total: 0 });
  const first = !now.state;
  changed({ state: data, total: data.filling ? now.total || data.lacking : 0 });
  if (data.filling) return watch();
  clearTimeout(stalled);
  if (first && data.wanted && data.lacking && navigator.onLine) keepBook();
}

export function named({ edition, date }) {
  const day = new Date(date).toLocaleDateString("en", { dateStyle: "long", timeZone: "UTC" });
  return `edition ${edition} of ${day}`;
}

async function begin() {
  if (now.why) return;
  workers.addEventListener("message", heard);
  workers.startMessages();
  const before = workers.controller;
  workers.addEventListener("controllerchange", () => {
    if (loading) location.reload();
    else if (before) offer("A newer edition was loaded in another window.");
  });
  try {
    const options = { scope: ROOT.pathname, updateViaCache: "none" };
    registration = await workers.register(new URL("sw.js", ROOT), options);
  } catch (fault) {
    return changed({ why: `The browser refuses: ${fault.message}` });
  }
  registration.addEventListener("updatefound", () => arriving(registration.installing));
  arriving(registration.installing);
  if (registration.waiting) registration.waiting.postMessage({ do: "state" });
  if (registration.active) settled();
}

function arriving(worker) {
  worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && registration.active) worker.postMessage({ do: "state" });
    if (worker.state === "activated") settled();
    if (worker.state === "redundant" && !registration.active) {
      changed({ why: "The device has refused the room for it, or the server broke off." });
    }
  });
}

/** There is a worker: it keeps what is read and used from now on, and what was read before it came. */
function settled() {
  order("read", { urls: [location.href, ...[...document.images].map(({ src }) => src)] });
  if (connectionIsFast() && document.querySelector("calc-form")) order("engine");
  if (!looked()) setTimeout(order, QUIET, "check");
}

// As calc-form.js: where the engine is fetched early anyway, it is kept.
function connectionIsFast() {
  return navigator.connection?.effectiveType === "4g" && !navigator.connection.saveData;
}

/** Whether what is kept was already looked through in this window. */
function looked() {
  try {
    const before = sessionStorage.getItem("book-checked");
    sessionStorage.setItem("book-checked", "yes");
    return before;
  } catch {
    return true; // storage refused
  }
}

function offer(text) {
  document.querySelector(".offline-offer")?.remove();
  const bar = document.createElement("aside");
  bar.className = "offline-offer";
  bar.setAttribute("aria-label", "Newer edition");
  const words = document.createElement("p");
  words.setAttribute("role", "status");
  const load = button("Load it", () => {
    loading = true;
    if (registration.waiting) registration.waiting.postMessage({ do: "load" });
    else location.reload();
  });
  bar.append(words, load, button("Later", () => bar.remove()));
  document.body.append(bar);
  words.textContent = `${text} Loading it empties the forms of this page.`;
}

function button(text, does) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", does);
  return made;
}

// On the first visit the engine is asked for past the worker, which is not there yet.
document.addEventListener("input", ({ target }) => {
  if (target.closest("calc-form") && now.state && !now.state.engine) order("engine");
});

const idle = globalThis.requestIdleCallback ?? setTimeout;
const wait = document.querySelector("offline-desk") ? 0 : QUIET;
if (document.readyState === "complete") setTimeout(idle, wait, begin);
else addEventListener("load", () => setTimeout(idle, wait, begin), { once: true });
