// Goes from page to page of the book without loading a new one, so that Python, once started,
// answers on every page. The theme's own way of doing this needs a fixed address of the site,
// stops at drawings with <use>, and empties the forms at the first link within a page.
//
// A link stays a link where this cannot help: from a disk, to another edition, to a file.

const ROOT = new URL("../", import.meta.url).href;
const SWAPPED = ["container", "header-topic", "logo", "skip"]; // the theme's names
const REST = 150; // ms without scrolling before the place is noted

let shown = bare(location.href);
let leaving; // ends a journey when the next one begins

function clicked(event) {
  const link = event.target.closest("a[href]");
  if (!link || event.defaultPrevented || event.button || event.metaKey || event.ctrlKey) return;
  if (event.shiftKey || event.altKey || link.target || link.hasAttribute("download")) return;
  if (link instanceof SVGElement || !isPage(link)) return;
  if (bare(link.href) === shown) return; // within the page
  event.preventDefault();
  note();
  go(link.href, () => history.pushState(null, "", link.href));
}

function isPage({ href, pathname }) {
  return href.startsWith(ROOT) && /(\/|\.html)$/.test(pathname);
}

/** Fetches a page and shows it, once the address is right. */
async function go(href, address = () => {}) {
  leaving?.abort();
  leaving = new AbortController();
  document.body.dataset.travelling = "";
  try {
    const response = await fetch(href, { signal: leaving.signal });
    const next = new DOMParser().parseFromString(await response.text(), "text/html");
    if (!response.ok || !fits(next)) throw new Error("not ours");
    address();
    shown = bare(href);
    swap(next);
    arrive();
  } catch (fault) {
    if (fault.name !== "AbortError") location.assign(href);
  }
}

/** Whether the scripts that run here are those the other page was built with. */
function fits(next) {
  return next.documentElement.dataset.program === document.documentElement.dataset.program
    && Boolean(part("container", next));
}

function part(name, page = document) {
  return page.querySelector(`[data-md-component=${name}]`);
}

function swap(next) {
  for (const name of SWAPPED) {
    const [old, fresh] = [part(name), part(name, next)];
    if (old && fresh) old.replaceWith(document.adoptNode(fresh));
  }
  document.title = next.title;
  for (const old of document.head.querySelectorAll("[rel=prev], [rel=next]")) old.remove();
  document.head.append(...next.head.querySelectorAll("[rel=prev], [rel=next]"));
  delete document.body.dataset.travelling;
  globalThis.location$?.next(new URL(location.href)); // the theme closes its drawer and its search
  document$.next(document); // the theme and our own line at the foot wake up
}

function arrive() {
  const target = document.getElementById(named(location.hash.slice(1).split("&")[0]));
  if (history.state?.y !== undefined) scrollTo(0, history.state.y);
  else if (target) target.scrollIntoView();
  else scrollTo(0, 0);
  const heading = target ?? document.querySelector("article h1");
  heading?.setAttribute("tabindex", "-1"); // a screen reader goes on from here
  heading?.focus({ preventScroll: true });
}

function named(id) {
  try {
    return decodeURIComponent(id);
  } catch {
    return ""; // %-signs that mean nothing
  }
}

function bare(href) {
  return href.split(/[?#]/)[0];
}

/** Notes how far the page is scrolled, for whoever comes back to it. */
function note() {
  if (bare(location.href) === shown) history.replaceState({ ...history.state, y: scrollY }, "");
}

function returned() {
  if (bare(location.href) !== shown) go(location.href);
  else if (history.state?.y !== undefined) scrollTo(0, history.state.y);
}

// Without the theme's document$ nothing would wake the new page.
if (location.protocol !== "file:" && globalThis.document$) {
  // what stands outside of the parts that are swapped must not move when the address does
  for (const link of document.head.querySelectorAll("[rel=icon]")) link.href = link.href;
  document.addEventListener("click", clicked);
  addEventListener("popstate", returned);
  let resting;
  addEventListener("scroll", () => {
    clearTimeout(resting);
    resting = setTimeout(note, REST);
  }, { passive: true });
  history.scrollRestoration = "manual";
  addEventListener("pagehide", () => { history.scrollRestoration = "auto"; });
}
