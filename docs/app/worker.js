// Runs calc in Python. A classic worker, for only that starts from a Blob in every
// browser, as the copy read from a disk needs; so it is told where the runtime lies.
//
// The first message is {id, runtime}, runtime being {role: address} as in runtime.js; every later
// one is {id, request}; each is answered by {id, reply} or {id, fault}.

// Once Python runs, nothing is fetched any more: whatever a link or a job from a stranger
// brings, no request leaves here.

const HOME = "https://pyodide.invalid/"; // where Pyodide looks for its files, by its own names

let calculate;

async function boot({ engine, wasm, library, calc }) {
  const [binary, modules, ours] = [wasm, library, calc].map(fetched);
  importScripts(engine);
  const files = { "pyodide.asm.wasm": await binary, "python_stdlib.zip": await modules };
  const archive = new Uint8Array(await (await ours).arrayBuffer());
  self.fetch = async (url) => files[String(url).slice(HOME.length)] ?? Response.error();
  const python = await loadPyodide({
    indexURL: HOME,
    packageBaseUrl: HOME, // the default is another host
    lockFileContents: self.pyodideLock,
    env: { PYTHONPATH: "/lib/calc.zip" },
    fsInit: (disk) => disk.writeFile("/lib/calc.zip", archive),
  });
  const { learn_formulas, reply } = python.pyimport("calc.views.browser");
  learn_formulas(python.pyimport("pkgutil").get_data("calc", "formulas.json").decode());
  return reply;
}

/** Resolves to a file's response. Pyodide would wait for ever for one that is missing. */
function fetched(address) {
  const response = fetch(address).then((it) => {
    if (it.ok) return it;
    throw new Error(`${address.split("/").at(-1)}: ${it.status} ${it.statusText}`);
  });
  response.catch(() => {}); // told where it is awaited
  return response;
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
    self.postMessage({ id: data.id, fault: String(error) });
  }
};
