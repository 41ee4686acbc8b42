// Workers and fetch for pages read from a disk. Browsers start no worker from a file there, nor let
// a page or a worker fetch one; they do run a script that lies beside the page. So the build packs
// what Python and a worker need into scripts. Here `Worker` is replaced by one that starts from a
// Blob, is given its files, and runs its own script as if it had been served; and `fetch` by one
// that answers from those scripts.

const root = new URL("..", document.currentScript.src).href;
const NativeWorker = globalThis.Worker;
const start = NativeWorker && URL.createObjectURL(new Blob([`${unpack}\n(${insideWorker})()`]));
const NEEDS = WORKER_FILES; // script of a worker -> all files it may ask for; the build knows them
const underway = new Map(); // name of a file -> the promise of it, for page and worker may both ask
const awaited = new Map(); // name of a file -> who is told its contents

globalThis.handout = {
  root,
  moduleUrl: `${root}app/handout.js`, // for import.meta.url, which a classic script has not
  take(name, packed) {
    awaited.get(name)(packed);
  },
  /** No hash is asked for: whoever can change a file on this disk can change the page as well. */
  async fetch(url) {
    const [, packed] = await load(url.slice(root.length));
    const type = url.endsWith(".wasm") ? "application/wasm" : "application/octet-stream";
    return new Response(await unpack(packed), { headers: { "Content-Type": type } });
  },
};

if (NativeWorker) {
  globalThis.Worker = function Worker(url) {
    const worker = new NativeWorker(start);
    const script = new URL(url, document.baseURI).href.slice(root.length);
    const { port1, port2 } = new MessageChannel();
    worker.postMessage(root + script, [port2]);
    Promise.all(NEEDS[script].map(load)).then(
      (files) => port1.postMessage({ files }),
      (fault) => port1.postMessage({ fault: fault.message }),
    );
    return worker;
  };
}

/** Resolves to [address, packed file]. Nothing is kept: a worker that starts again reads it again. */
function load(name) {
  if (!underway.has(name)) underway.set(name, read(name).finally(() => underway.delete(name)));
  return underway.get(name);
}

async function read(name) {
  const packed = await new Promise((settle, refuse) => {
    const script = document.createElement("script");
    awaited.set(name, settle);
    script.src = `${root}embedded/${name}.js`;
    script.onload = () => script.remove();
    script.onerror = () => refuse(new Error(`embedded/${name}.js is missing: unzip the whole folder`));
    document.head.append(script);
  });
  return [root + name, packed];
}

/** Used in the worker as well, from its source text. */
async function unpack(packed) {
  const bytes =
    Uint8Array.fromBase64?.(packed) ?? Uint8Array.from(atob(packed), (it) => it.charCodeAt(0));
  const { readable, writable } = new DecompressionStream("gzip");
  const writer = writable.getWriter(); // WebKit reads no Blob in a worker of such a page
  writer.write(bytes).catch(() => {}); // a damaged file is told where it is read
  writer.close().catch(() => {});
  return new Response(readable).arrayBuffer();
}

/** Runs in the worker, from its source text: nothing outside it but unpack can be named here. */
function insideWorker() {
  const files = new Map(); // address -> contents
  const held = []; // what the page sends before the worker's own script can listen

  self.addEventListener("message", begin, { once: true });

  async function begin({ data: script, ports: [port] }) {
    self.addEventListener("message", hold);
    try {
      await receive(port);
      const runScripts = self.importScripts.bind(self);
      self.importScripts = (...urls) => runScripts(...urls.map(asData));
      self.importScripts(script);
    } catch (fault) {
      setTimeout(() => {
        throw fault; // so that the page's onerror hears of it, as of any script that fails
      });
      return;
    }
    self.removeEventListener("message", hold);
    for (const data of held) self.dispatchEvent(new MessageEvent("message", { data }));
  }

  function hold({ data }) {
    held.push(data);
  }

  async function receive(port) {
    const sent = await new Promise((settle) => {
      port.onmessage = ({ data }) => settle(data);
    });
    if (sent.fault) throw new Error(sent.fault);
    await Promise.all(sent.files.map(async ([url, packed]) => files.set(url, await unpack(packed))));
  }

  /** The only kind of address from which every browser lets a worker of such a page run a script. */
  function asData(url) {
    const contents = files.get(String(url));
    if (!contents) throw new Error(`${url} is not in this copy`);
    return `data:text/javascript;charset=utf-8,${encodeURIComponent(new TextDecoder().decode(contents))}`;
  }
}
