// Runs docs/app/worker.js in Node as in a browser: node worker_in_node.js WORKER < messages
//
// The first line in is {role: path of a file}, every later one a message as a page posts it, in
// JSON; each line out is what the worker posts back.
const { readFileSync } = require("node:fs");
const { runInThisContext } = require("node:vm");

const { stdout, exit } = process;
const [runtime, ...messages] = readFileSync(0, "utf8").trim().split("\n").map(JSON.parse);
const source = (file) => readFileSync(file, "utf8");

Object.assign(globalThis, {
  self: globalThis,
  WorkerGlobalScope: Object,
  location: new URL("https://book.invalid/app/worker.js"),
  importScripts: (file) => runInThisContext(source(file)),
  postMessage: (reply) => stdout.write(`${JSON.stringify(reply)}\n`),
});
const worker = process.argv[2];
delete globalThis.process; // by which Pyodide knows Node
runInThisContext(source(worker));
const content = {
  engine: (file) => file, // as a page gives its address
  wasm: (file) => new WebAssembly.Module(readFileSync(file)),
};
const calculators = Object.entries(runtime).filter(([role]) => role.includes("/"));
for (const [role, file] of Object.entries(runtime)) {
  if (!role.includes("/")) {
    self.onmessage({ data: { role, content: (content[role] ?? readFileSync)(file) } });
  }
}
(async () => {
  const [boot, ...requests] = messages;
  const codes = calculators.map(([role, file]) => ({ id: role, role, archive: readFileSync(file) }));
  for (const data of [boot, ...codes, ...requests]) await self.onmessage({ data });
  stdout.write("", () => exit()); // Pyodide would keep Node waiting
})();
