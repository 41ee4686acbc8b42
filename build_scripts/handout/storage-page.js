// What storage.html does: it keeps jobs and choices for the pages, which cannot share them.
import { createStore, del, entries, get, update } from "./keyval.js";

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
  swap: (key, was, value, names) => swap(key, was, value, store(names)),
};

/** Puts `value` in the place of `was`. Resolves to whether `was` still stood there. */
async function swap(key, was, value, at) {
  const changed = new Error("changed meanwhile");
  const put = update(key, (now) => {
    if (now !== was) throw changed;
    return value;
  }, at);
  return put.then(() => true, (fault) => {
    if (fault !== changed) throw fault;
    return false;
  });
}

function serve(port) {
  port.onmessage = async ({ data: { number, what, words } }) => {
    try {
      port.postMessage({ number, answer: await DOES[what](...words) });
    } catch (fault) {
      port.postMessage({ number, fault: fault.message, name: fault.name });
    }
  };
  addEventListener("storage", () => port.postMessage({ choices: DOES.choices() }));
}

addEventListener("message", ({ ports: [port] }) => serve(port), { once: true });
