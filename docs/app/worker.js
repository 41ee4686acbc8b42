// Runs calc in Python. A classic worker, for only that starts from a Blob in every
// browser, as the copy read from a disk needs.
//
// The page sends the parts of the runtime as they come, each as {role, content}; and {id, boot},
// {id, role, archive} with the code of a calculator, or {id, request}, each of which is answered by
// {id, reply} or {id, fault}.

// Nothing is fetched here: whatever a link or a job from a stranger brings, no request leaves.

const HOME = "https://pyodide.invalid/"; // where Pyodide looks for its files, by its own names

const take = {}; // role -> what is done with a part that comes
const parts = {}; // role -> the promise of it
for (const role of ["engine", "wasm", "library", "calc"]) {
  parts[role] = new Promise((settle) => {
    take[role] = settle;
  });
}

let started;

async function boot() {
  importScripts(await parts.engine);
  const files = { "pyodide.asm.wasm": new Response(), "python_stdlib.zip": library() };
  self.fetch = async (url) => files[String(url).slice(HOME.length)] ?? Response.error();
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const module = await parts.wasm; // the page compiles it
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  const python = await loadPyodide({
    indexURL: HOME,
    packageBaseUrl: HOME, // the default is another host
    lockFileContents: self.pyodideLock,
    env: { PYTHONPATH: "/lib/calc.zip" },
    fsInit: async (disk) => disk.writeFile("/lib/calc.zip", new Uint8Array(await parts.calc)),
  });
  const { reply, take: takeIn } = python.pyimport("calc.views.browser");
  return { disk: python.FS, reply, takeIn };
}

async function library() {
  return new Response(await parts.library);
}

async function answer({ boot: starts, role, archive, request }) {
  if (starts) started = boot();
  const { disk, reply, takeIn } = await started;
  if (request) return JSON.parse(reply(JSON.stringify(request)));
  if (role) {
    const path = `/lib/${role.replace("/", "-")}.zip`;
    disk.writeFile(path, new Uint8Array(archive));
    takeIn(path);
  }
  return true;
}

self.onmessage = async ({ data }) => {
  if (data.content) return take[data.role](data.content);
  try {
    self.postMessage({ id: data.id, reply: await answer(data) });
  } catch (error) {
    self.postMessage({ id: data.id, fault: error.message ?? String(error) });
  }
};
