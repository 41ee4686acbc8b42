// Runs docs/app/worker.js in Node as in a browser: node worker_in_node.js WORKER < messages
//
// Each line in is a message as a page posts it, in JSON, each line out what the worker posts back.
// The addresses of files are their paths.
const { readFileSync } = require("node:fs");
const { runInThisContext } = require("node:vm");

const { stdout, exit } = process;
const messages = readFileSync(0, "utf8").trim().split("\n").map(JSON.parse);
const source = (file) => readFileSync(file, "utf8");

Object.assign(globalThis, {
  self: globalThis,
  WorkerGlobalScope: Object,
  location: new URL("https://book.invalid/app/worker.js"),
  importScripts: (file) => runInThisContext(source(file)),
  fetch: async (file) => {
    const type = file.endsWith(".wasm") ? "application/wasm" : "application/octet-stream";
    return new Response(readFileSync(file), { headers: { "Content-Type": type } });
  },
  postMessage: (reply) => stdout.write(`${JSON.stringify(reply)}\n`),
});
const worker = process.argv[2];
delete globalThis.process; // by which Pyodide knows Node
runInThisContext(source(worker));
(async () => {
  for (const data of messages) await self.onmessage({ data });
  stdout.write("", () => exit()); // Pyodide would keep Node waiting
})();
