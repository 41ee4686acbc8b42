// Keeps the book on the device. The build puts BOOK before this text: edition, date, and of
// every file its kind, bytes and sha256.
//
// A file is kept under its path and its hash, all in one cache. So an edition never gets a file
// of another, what has not changed is not fetched again, and a download that broke off goes on
// where it stopped. No file goes in, and none comes out, before its hash is right.

const SCOPE = self.registration.scope;
const CACHE = `book ${SCOPE}`; // other sites may share this host
const WISH = `${SCOPE}?wish`; // in the cache when the reader wants the whole book
const DESK = "offline.html"; // tells why a page cannot be shown
const AT_ONCE = 4; // downloads

const files = new Map(Object.entries(BOOK.files));
const underway = new Map(); // path -> the response to come, so that two who ask fetch once
let filling; // the download that is going on

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => event.waitUntil(obey(event)));
self.addEventListener("fetch", (event) => {
  const { method, mode, url } = event.request;
  const path = pathOf(url);
  if (method !== "GET" || path === undefined) return;
  if (mode === "navigate") event.respondWith(page(path, event.request));
  else if (files.has(path)) event.respondWith(file(path));
});

/** What is needed before this edition may replace another: all that the other had kept. */
async function install() {
  const had = (await keys()).map(({ url }) => pathOf(url));
  const engine = had.some((path) => path?.startsWith(BOOK.engine));
  await fill(await wants() ? [...files.keys()] : [...files.keys()].filter((path) => {
    const { kind } = files.get(path);
    return kind === "shell" || (kind === "engine" ? engine : had.includes(path));
  }));
}

async function activate() {
  const cache = await book();
  const ours = new Set([WISH, ...[...files.keys()].map(keyOf)]);
  const old = (await keys()).filter(({ url }) => !ours.has(url));
  await Promise.all(old.map((key) => cache.delete(key)));
  await self.clients.claim();
}

async function obey({ data, source }) {
  try {
    if (data.do === "load") await self.skipWaiting();
    if (data.do === "read") await fill(data.urls.map(pathOf).filter((path) => files.has(path)));
    if (data.do === "engine") await fill(paths("engine"));
    if (data.do === "book") await keepBook();
    if (data.do === "remove") await remove();
    if (data.do === "check") await check();
    source.postMessage(await state());
  } catch (fault) {
    source.postMessage({ fault: wording(fault) });
  }
}

async function keepBook() {
  await (await book()).put(WISH, new Response());
  const each = async () => tell(await state());
  filling ??= fill([...files.keys()], each).finally(() => {
    filling = undefined;
  });
  await filling;
}

/** Leaves what the pages need to work at all. */
async function remove() {
  const cache = await book();
  const shell = new Set(paths("shell").map(keyOf));
  await Promise.all((await keys()).filter(({ url }) => !shell.has(url)).map((key) => cache.delete(key)));
}

/** Reads all that is kept, and fetches again what is damaged or missing. */
async function check() {
  const before = await keptPaths();
  for (const path of before) await kept(path);
  await fill((await wants()) ? [...files.keys()] : [...before, ...paths("shell")]);
}

async function state() {
  const have = new Set(await keptPaths());
  const lacking = [...files.keys()].filter((path) => !have.has(path));
  const isPage = (path) => path.endsWith(".html");
  return {
    edition: BOOK.edition,
    date: BOOK.date,
    wanted: await wants(),
    filling: Boolean(filling),
    engine: paths("engine").every((path) => have.has(path)),
    pages: [...have].filter(isPage).length,
    ofPages: [...files.keys()].filter(isPage).length,
    bytes: sum([...have], "bytes"),
    lacking: sum(lacking, "bytes"),
    fetching: sum(lacking, "packed"),
  };
}

/** A page as it is kept or served, or the way to the desk, which says why there is none. */
async function page(path, request) {
  try {
    return await (files.has(path) ? file(path) : fetch(request));
  } catch (fault) {
    const why = fault instanceof Other ? "other" : "away";
    const hash = new URL(request.url).hash;
    return Response.redirect(`${SCOPE}${DESK}?${new URLSearchParams({ [why]: path })}${hash}`);
  }
}

async function file(path) {
  return (await kept(path)) ?? fetched(path);
}

/** The kept file, or nothing: what has been damaged is thrown away. */
async function kept(path) {
  try {
    const cache = await book();
    const found = await cache.match(keyOf(path));
    if (!found || (await isRight(path, found.clone()))) return found;
    await cache.delete(keyOf(path));
  } catch {
    // storage refused: as if nothing were kept
  }
  return undefined;
}

/** The file from the server. It is kept if the device lets us, or `must` it be kept. */
async function fetched(path, must = false) {
  if (!underway.has(path)) {
    underway.set(path, download(path).finally(() => underway.delete(path)));
  }
  const response = (await underway.get(path)).clone();
  const keeping = book().then((cache) => cache.put(keyOf(path), response.clone()));
  await (must ? keeping : keeping.catch(() => {}));
  return response;
}

async function download(path) {
  // a file of the engine has its hash in its name: what the page has just fetched is the one
  const ways = files.get(path).kind === "engine" ? ["default", "reload"] : ["no-cache"];
  for (const cache of ways) {
    const response = await fetch(SCOPE + path, { cache });
    if (response.status === 404) throw new Other(path);
    if (!response.ok) throw new Error(`${path}: ${response.status}`);
    if (!(await isRight(path, response.clone()))) continue;
    // a navigation refuses what was redirected, as some hosts do with .html
    return response.redirected ? new Response(response.body, { headers: response.headers }) : response;
  }
  throw new Other(path);
}

async function isRight(path, response) {
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0"));
  return hex.join("") === files.get(path).sha256;
}

/** Fetches what is not yet kept of these, a few at once, and calls `each` after every file. */
async function fill(wanted, each = () => {}) {
  const have = new Set(await keptPaths());
  const queue = wanted.filter((path) => !have.has(path));
  const work = async () => {
    for (let path = queue.shift(); path; path = queue.shift()) {
      await fetched(path, true);
      await each();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
}

async function tell(message) {
  for (const client of await self.clients.matchAll()) client.postMessage(message);
}

/** The server has this file in another edition. */
class Other extends Error {}

function wording(fault) {
  if (fault instanceof Other) return "The server has a newer edition. Load the page again to get it.";
  if (fault.name === "QuotaExceededError") return "The device has no room left for it.";
  if (fault instanceof TypeError) return "The server does not answer. What has arrived is kept; try again later.";
  return `That did not work: ${fault.message}`;
}

function pathOf(url) {
  const bare = url.split(/[?#]/)[0];
  if (!bare.startsWith(SCOPE)) return undefined;
  const path = bare.slice(SCOPE.length);
  return path === "" || path.endsWith("/") ? `${path}index.html` : path;
}

function book() {
  return caches.open(CACHE);
}

async function keys() {
  return (await book()).keys();
}

async function keptPaths() {
  const held = new Set((await keys()).map(({ url }) => url));
  return [...files.keys()].filter((path) => held.has(keyOf(path)));
}

async function wants() {
  return Boolean(await (await book()).match(WISH));
}

function keyOf(path) {
  return `${SCOPE}${path}?${files.get(path).sha256}`;
}

function paths(kind) {
  return [...files.keys()].filter((path) => files.get(path).kind === kind);
}

function sum(some, what) {
  return some.reduce((total, path) => total + files.get(path)[what], 0);
}
