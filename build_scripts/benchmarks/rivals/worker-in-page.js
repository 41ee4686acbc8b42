// Chromium slows down pages, but not workers. So for slowed figures a worker that
// calculates runs in the page itself, whoever wrote it: run before all else, this stands in for Worker.
(() => {
  const Native = globalThis.Worker;
  // as a worker's message comes, which no timer's least delay holds back
  const queue = (work) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = work;
    port2.postMessage(0);
  };
  const fetch = globalThis.fetch.bind(globalThis);
  // a worker's own fetch answers for the addresses it has made up, and the page goes on fetching
  const isInvented = (url) => new URL(url, location).hostname.endsWith(".invalid");

  function importScripts(address) {
    const request = new XMLHttpRequest();
    request.open("GET", address, false);
    request.send();
    if (request.status !== 200) throw new Error(`${address}: ${request.status}`);
    (0, eval)(request.responseText);
  }

  globalThis.Worker = class {
    constructor(address, { type } = {}) {
      if (String(address).includes("assets/")) return new Native(address); // the theme's search
      const inside = { onmessage: null, postMessage: (data) => queue(() => this.onmessage({ data })) };
      const own = (name) => name in inside;
      const self = new Proxy(globalThis, {
        get: (page, name) => (own(name) ? inside[name] : page[name]),
        set: (page, name, value) => {
          if (name === "fetch") page.fetch = (url, ...rest) => (isInvented(url) ? value : fetch)(url, ...rest);
          else (own(name) ? inside : page)[name] = value;
          return true;
        },
      });
      this.started = this.#start(String(address), type, self);
      this.postMessage = async (data) => {
        await this.started;
        queue(() => inside.onmessage({ data }));
      };
    }

    async #start(address, type, self) {
      if (type === "module") {
        const { postMessage } = globalThis;
        globalThis.postMessage = self.postMessage;
        await import(address);
        globalThis.postMessage = postMessage;
        return;
      }
      const source = await (await fetch(address)).text();
      const inside = new Function("self", "location", "importScripts", source);
      inside(self, new URL(address), importScripts);
    }

    terminate() {}
  };
})();
