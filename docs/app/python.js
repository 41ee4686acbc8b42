// Asks calc, which runs in one worker per page. A worker that is silent for too long
// is ended, and the next question starts another.

import { code, codeFor, parts } from "./runtime-files.js";

const BOOT_LIMIT = 60_000; // ms; Pyodide that cannot instantiate its WebAssembly stays silent
const REQUEST_LIMIT = 10_000; // ms

let engine;

/** Starts Python, once per page. Resolves when it is ready for questions on these calculators. */
export async function start(calculators = []) {
  engine ??= launch();
  const roles = calculators.flatMap((calculator) => codeFor({ calculator }));
  await Promise.all([engine.ready, ...roles.map(engine.give)]);
}

/** Resolves to what calc.views.browser replies to `request`. */
export async function ask(request) {
  engine ??= launch();
  const { ready, give, send } = engine;
  await Promise.all([ready, ...codeFor(request).map(give)]);
  return send({ request }, REQUEST_LIMIT, "The calculation took too long and was stopped.");
}

function launch() {
  const missing = ["WebAssembly", "Worker"].find((name) => !(name in globalThis));
  if (missing) {
    const ready = refusal(`This browser has no ${missing}: it cannot calculate.`);
    return { ready, give: () => ready };
  }

  const worker = new Worker(new URL("worker.js", import.meta.url));
  const waiting = new Map(); // number -> who waits, in the order in which the worker takes them up
  const held = new Map(); // role of a calculator's code -> the promise that the worker has it
  let asked = 0;
  let timer; // of the first that waits: the others' time has not begun
  let giveUp;
  const stopped = new Promise((_, refuse) => {
    giveUp = refuse;
  });

  function send(message, limit, late, handedOver = []) {
    return new Promise((settle, refuse) => {
      const id = ++asked;
      waiting.set(id, { settle, refuse, limit, late });
      if (waiting.size === 1) time();
      worker.postMessage({ id, ...message }, handedOver);
    });
  }

  function time() {
    clearTimeout(timer);
    const [first] = waiting.values();
    if (first) timer = setTimeout(stop, first.limit, first.late);
  }

  function give(role) {
    if (!held.has(role)) held.set(role, given(role).catch((fault) => { held.delete(role); throw fault; }));
    return held.get(role);
  }

  async function given(role) {
    const [archive] = await Promise.all([code(role), ready]);
    return send({ role, archive }, REQUEST_LIMIT, "Python took too long and was stopped.", [archive]);
  }

  function stop(why) {
    worker.terminate();
    if (engine === launched) engine = undefined;
    for (const { refuse } of waiting.values()) refuse(new Error(why));
    waiting.clear();
    time();
    giveUp(new Error(why));
  }

  worker.onmessage = ({ data: { id, reply, fault } }) => {
    const { settle, refuse } = waiting.get(id);
    waiting.delete(id);
    time();
    if (fault === undefined) settle(reply);
    else refuse(new Error(fault));
  };
  worker.onerror = (event) => {
    event.preventDefault();
    stop(`Python did not start: ${event.message ?? "its worker could not be loaded"}.`);
  };

  const { right, ...coming } = parts();
  const sent = Object.entries(coming).map(async ([role, part]) => {
    const content = await part;
    worker.postMessage({ role, content }, content instanceof ArrayBuffer ? [content] : []);
  });
  const booted = send({ boot: true }, BOOT_LIMIT, "Python did not start within a minute.");
  booted.catch(() => {}); // a part that is wrong says better why
  const ready = Promise.race([stopped, Promise.all([right, ...sent]).then(() => booted)]);
  ready.catch(({ message }) => stop(message));
  const launched = { ready, give, send };
  return launched;
}

/** A rejected promise that a caller of start() may ignore. */
function refusal(why) {
  const ready = Promise.reject(new Error(why));
  ready.catch(() => {});
  return ready;
}
