// Runs calc in Python. A classic worker, for only that starts from a Blob in every
// browser, as the copy read from a disk needs; so it is told where the runtime lies.
//
// The first message is {id, runtime}, every later one {id, request}; each is answered
// by {id, reply} or {id, fault}.

let calculate;

async function boot(runtime) {
  const archive = fetch(`${runtime}calc.zip`);
  importScripts(`${runtime}pyodide.js`, `${runtime}lock.js`);
  const python = await loadPyodide({
    indexURL: runtime,
    packageBaseUrl: runtime, // the default is another host
    lockFileContents: self.pyodideLock,
  });
  const response = await archive;
  if (!response.ok) throw new Error(`calc.zip: ${response.status} ${response.statusText}`);
  python.unpackArchive(await response.arrayBuffer(), "zip", { extractDir: "/home/pyodide" });
  return python.pyimport("calc.views.browser").reply;
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
