// Runs calc in Python. A classic worker, for only that starts from a Blob in every
// browser, as the copy read from a disk needs; so it is told where the runtime lies.
//
// The first message is {id, runtime}, runtime being {role: {url, integrity}}; every later one is
// {id, request}; each is answered by {id, reply} or {id, fault}.

// Once Python runs, nothing is fetched any more: whatever a link or a job from a stranger
// brings, no request leaves here.

const HOME = "https://pyodide.invalid/"; // where Pyodide looks for its files, by its own names

const load = self.fetch.bind(self); // Pyodide gets another in its place

let calculate;

async function boot({ engine, wasm, library, calc }) {
  const [script, modules, ours] = [engine, library, calc].map(whole);
  const [binary, right] = await streamed(wasm);
  await script; // importScripts checks no hash, and finds in the browser's cache what was checked
  importScripts(engine.url);
  const files = { "pyodide.asm.wasm": binary, "python_stdlib.zip": await modules };
  const archive = new Uint8Array(await (await ours).arrayBuffer());
  self.fetch = async (url) => files[String(url).slice(HOME.length)] ?? Response.error();
  const loading = loadPyodide({
    indexURL: HOME,
    packageBaseUrl: HOME, // the default is another host
    lockFileContents: self.pyodideLock,
    env: { PYTHONPATH: "/lib/calc.zip" },
    fsInit: (disk) => disk.writeFile("/lib/calc.zip", archive),
  });
  loading.catch(() => {}); // told where it is awaited
  await right; // before that, for a damaged one may leave Pyodide silent
  const python = await loading;
  const { learn_formulas, reply } = python.pyimport("calc.views.browser");
  learn_formulas(python.pyimport("pkgutil").get_data("calc", "formulas.json").decode());
  return reply;
}

/** Resolves to a file's response when its hash is right. Pyodide would wait for ever for none. */
function whole(file) {
  const response = load(file.url, { integrity: file.integrity }).catch(() => again(file));
  response.catch(() => {}); // told where it is awaited
  return response;
}

/**
 * Resolves to a response and a promise that its hash is right. Checked by the browser, WebAssembly
 * would not compile while it comes, which is 0.1 s of a start.
 */
async function streamed(file) {
  if (!self.crypto?.subtle) return [await whole(file)]; // not over https
  const response = await load(file.url).catch(() => {});
  if (!response?.ok) return [await again(file)];
  const right = proven(response.clone(), file);
  right.catch(() => {}); // told where it is awaited
  return [response, right];
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
  const found = await load(url, { cache: "reload" }).catch(() => { throw unfit(file, "does not come"); });
  if (!found.ok) throw unfit(file, `does not come: ${found.status} ${found.statusText}`);
  return load(url, { integrity }).catch(() => { throw unfit(file, "comes damaged"); });
}

function unfit({ url }, why) {
  return new Error(`Python did not start: ${url.split("/").at(-1)} ${why}.`);
}

async function answer({ runtime, request }) {
  if (runtime) calculate = boot(runtime);
  const reply = await calculate;
  return runtime ? true : JSON.parse(reply(JSON.stringify(request)));
}

self.onmessage = async ({ data }) => {
  try {
    self.postMessage({ id: data.id, reply: await answer(data) });
  } catch (error) {
    self.postMessage({ id: data.id, fault: error.message ?? String(error) });
  }
};
