// What storage.html does: it keeps jobs and choices for the pages, which cannot share them.
import { createStore, del, entries, get, set } from "idb-keyval";

const stores = new Map();

function store(names) {
  const name = names.join("/");
  if (!stores.has(name)) stores.set(name, createStore(...names));
  return stores.get(name);
}

const DOES = {
  choices: () => ({ ...localStorage }),
  choose: (name, value) => localStorage.setItem(name, value),
  del: (key, names) => del(key, store(names)),
  entries: (names) => entries(store(names)),
  get: (key, names) => get(key, store(names)),
  set: (key, value, names) => set(key, value, store(names)),
};

function serve(port) {
  port.onmessage = async ({ data: { number, what, words } }) => {
    try {
      port.postMessage({ number, answer: await DOES[what](...words) });
    } catch (fault) {
      port.postMessage({ number, fault: `this browser refuses to keep anything (${fault.message})` });
    }
  };
  addEventListener("storage", () => port.postMessage({ choices: DOES.choices() }));
}

addEventListener("message", ({ ports: [port] }) => serve(port), { once: true });
