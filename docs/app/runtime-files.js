// Fetches what Python is made of, each file once, and gives out none whose hash is wrong. Here and
// not in the worker: while that one starts and reads the engine's script, files come and
// WebAssembly compiles; and a browser keeps what it compiled for a page better than for a worker.
//
// The build puts RUNTIME before this text: of every part its path from the book's root and its hash.

const OWN = "calculators/"; // begins the role of what only one calculator needs
const COURSEWORK = "coursework/problems"; // the role of what only pages of problem sets need

/**
 * Starts to fetch, and returns a promise for each part of a start: the address of the engine's
 * script, the compiled WebAssembly, two archives; `right` settles when WebAssembly has its hash.
 */
export function parts() {
  const every = { ...program(described("wasm")), engine: script(described("engine")) };
  for (const role of ["library", "calc"]) every[role] = content(described(role));
  for (const part of Object.values(every)) part.catch(() => {}); // told where it is awaited
  return every;
}

/**
 * The parts that a request needs besides: its calculator's own code; for a problem set that of the
 * calculators it stands on. What concerns a job has a room in its name, as in house-show, and needs
 * the code of all.
 */
export function codeFor({ calculator, calculators, do: what = "" }) {
  const roles = Object.keys(RUNTIME).filter((role) => role.startsWith(OWN));
  if (what.startsWith("course-")) return [COURSEWORK, ...calculators.map((name) => OWN + name)];
  return what.includes("-") ? roles : roles.filter((role) => role === OWN + calculator);
}

/** Resolves to the content of a part when its hash is right. */
export function code(role) {
  return content(described(role));
}

function described(role) {
  const [path, integrity] = RUNTIME[role];
  return { url: new URL(`../${path}`, import.meta.url).href, integrity };
}

/** A worker's importScripts checks no hash, and finds in the browser's cache what was checked. */
async function script(file) {
  await content(file);
  return file.url;
}

async function content(file) {
  return (await whole(file)).arrayBuffer();
}

/** Resolves to a file's response when its hash is right. */
function whole({ url, integrity }) {
  return fetch(url, { integrity }).catch(() => again({ url, integrity }));
}

/**
 * WebAssembly, and a promise that its hash is right. Checked by the browser, it would not compile
 * while it comes, which is 0.1 s of a start.
 */
function program(file) {
  const streams = globalThis.crypto?.subtle && WebAssembly.compileStreaming; // the first only over https
  const response = streams ? fetch(file.url).then(sound).catch(() => again(file)) : whole(file);
  const right = streams ? response.then((it) => proven(it.clone(), file)) : response;
  const compile = async () => WebAssembly.compile(await (await response).arrayBuffer());
  // what is damaged does not compile, and is better told by its hash
  const wasm = streams ? response.then((it) => WebAssembly.compileStreaming(it)) : compile();
  return { wasm: wasm.catch(async (fault) => { await right; throw fault; }), right };
}

function sound(response) {
  if (!response.ok) throw new Error(response.statusText);
  return response;
}

async function proven(response, file) {
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  const hash = btoa(String.fromCharCode(...new Uint8Array(digest)));
  if (file.integrity === `sha256-${hash}`) return;
  await again(file);
  throw unfit(file, "came damaged, and has been fetched again. Change a figure to start once more");
}

/** Asks the server once more, past what the browser keeps, and says what is wrong. */
async function again(file) {
  const { url, integrity } = file;
  const found = await fetch(url, { cache: "reload" }).catch(({ message }) => {
    throw unfit(file, `does not come: ${message}`);
  });
  if (!found.ok) throw unfit(file, `does not come: ${found.status} ${found.statusText}`);
  return fetch(url, { integrity }).catch(() => { throw unfit(file, "comes damaged"); });
}

function unfit({ url }, why) {
  return new Error(`Python did not start: ${url.split("/").at(-1)} ${why}.`);
}
