// Pyodide as it is shipped, and calc as source in a zip.
const here = new URL("./", location.href).href;

(async () => {
  const archive = fetch(`${here}calc.zip`);
  importScripts(`${here}stock/pyodide.js`);
  const python = await loadPyodide({ indexURL: `${here}stock/`, packageBaseUrl: `${here}stock/` });
  python.unpackArchive(await (await archive).arrayBuffer(), "zip", { extractDir: "/home/pyodide" });
  const { reply } = python.pyimport("calc.views.browser");
  const request = { calculator: "pail_flow", fields: {}, units: "us" };
  self.postMessage(JSON.parse(reply(JSON.stringify(request))).says);
})();
