// Stands in for keyval.js and localStorage. Firefox counts every file on a disk as a site of its
// own, so that no page sees what another has kept; therefore one hidden page, storage.html, keeps
// everything for all of them.

const LIMIT = 10_000; // ms; a page goes on whose storage.html is gone, or whose browser leaves a write unanswered

const awaited = new Map(); // number of a question -> who waits for its answer
let asked = 0;
let port;
let choices = {}; // what localStorage holds, for it is read without waiting
let refused = "storage.html does not answer"; // so far

handout.choices = {
  getItem(name) {
    if (refused) throw new Error(refused);
    return choices[name] ?? null;
  },
  setItem(name, value) {
    if (refused) throw new Error(refused);
    choices[name] = String(value);
    send("choose", name, choices[name]).catch(() => {}); // as localStorage, which never says so later
  },
};

export const createStore = (...names) => names;
export const del = (key, names) => ask("del", key, names);
export const entries = (names) => ask("entries", names);
export const get = (key, names) => ask("get", key, names);

/** As the library's, but what `change` makes is put there only if nobody else came between. */
export async function update(key, change, names) {
  const was = await ask("get", key, names);
  if (await ask("swap", key, was, change(was), names)) return;
  return update(key, change, names);
}

/** Resolves when what is kept can be asked for, or it is clear that it cannot for now. */
export const opened = Promise.race([open(), new Promise((settle) => setTimeout(settle, LIMIT))]);

async function open() {
  const frame = document.createElement("iframe");
  frame.hidden = true;
  frame.title = "What this copy keeps";
  frame.src = `${handout.root}storage.html`;
  await new Promise((settle) => {
    frame.onload = settle;
    document.body.append(frame);
  });
  const { port1, port2 } = new MessageChannel();
  port = port1;
  port.onmessage = heard;
  // what the frame writes for this page is news to the browser; what is news here, the frame tells
  addEventListener("storage", (event) => event.isTrusted && event.stopImmediatePropagation(), true);
  frame.contentWindow.postMessage("", "*", [port2]); // a file has no origin that could be named
  addEventListener("pageshow", ({ persisted }) => persisted && refresh());
  await refresh();
}

async function refresh() {
  try {
    choices = await send("choices");
    refused = "";
  } catch (fault) {
    refused = fault.message;
  }
}

async function ask(what, ...words) {
  if (refused) throw new Error(refused);
  return send(what, ...words);
}

function send(what, ...words) {
  return new Promise((settle, refuse) => {
    awaited.set(++asked, { settle, refuse });
    setTimeout(refuse, LIMIT, new Error("storage.html does not answer"));
    port.postMessage({ number: asked, what, words });
  });
}

function heard({ data }) {
  if (data.choices) return changedElsewhere(data.choices);
  const waiting = awaited.get(data.number);
  awaited.delete(data.number);
  if (data.fault) waiting?.refuse(Object.assign(new Error(data.fault), { name: data.name }));
  else waiting?.settle(data.answer);
}

function changedElsewhere(now) {
  const before = choices;
  choices = now;
  for (const key of new Set([...Object.keys(before), ...Object.keys(now)])) {
    if (before[key] !== now[key]) {
      dispatchEvent(new StorageEvent("storage", { key, newValue: now[key] ?? null }));
    }
  }
}
