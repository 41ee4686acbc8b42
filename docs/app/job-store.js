// The jobs on this device: name -> text of a job file, as Python wrote it. Only Python reads
// what is in them; here they are kept, listed and handed on.
//
// What storage refuses, because it is full or denied, stays in this page until it can be kept, and
// whoever asks is told. Nothing is written over what another tab has written meanwhile.
import { createStore, del, entries, get, update } from "./keyval.js";
import { store, stored } from "./stored.js";

const jobs = createStore("pail-and-timer", "jobs");
const CURRENT = "current-job";
const GONE = "The job is not on this device: none is chosen, or another tab removed it. Nothing was kept.";
const TRIES = 5; // against other tabs that change the same job

const unkept = new Map(); // id -> {text, base}: what only this page has, and what storage has
const news = globalThis.BroadcastChannel && new BroadcastChannel("pail-and-timer-jobs");
let refusal = ""; // why the last thing could not be kept

/** What to tell the reader while something is in this page alone; empty while all is kept. */
export function unsaved() {
  if (!unkept.size) return "";
  return `${refusal} It is in this page only: save the file of the job before you leave the page.`;
}

/** What to tell the reader before anything is kept, where the browser keeps nothing; else empty. */
export function warning() {
  return refusal && `${refusal} A job lasts as long as this page: save its file before you leave.`;
}

/** All jobs as [id, text], the newest first. */
export async function all() {
  const kept = await unlessDenied(() => entries(jobs), []);
  const here = [...unkept].map(([id, { text }]) => [id, text]);
  return [...new Map([...kept, ...here])].sort(([a], [b]) => (a < b ? 1 : -1));
}

/** The job in use as [id, text], or nothing. */
export async function current() {
  const id = stored(CURRENT);
  const text = id && (await read(id));
  return text ? [id, text] : undefined;
}

/** The job in use as [id, text]. Refused, in words, if there is none any more. */
export async function chosenJob() {
  const job = await current();
  if (!job) throw new Error(GONE);
  return job;
}

async function read(id) {
  return unkept.get(id)?.text ?? unlessDenied(() => get(id, jobs));
}

function chance() {
  return crypto.getRandomValues(new Uint32Array(1))[0];
}

/** Keeps a new job and returns its id. */
export async function keep(text, id = `${Date.now()}-${chance()}`) {
  await swap(id, undefined, text);
  return id;
}

/**
 * Changes a job to what `how` makes of its text, and again if another tab has changed it meanwhile.
 * Resolves to the text kept.
 */
export async function change(id, how) {
  for (let tries = 0; tries < TRIES; tries++) {
    const was = await read(id);
    if (was === undefined) throw new Error(GONE);
    const text = await how(was);
    if (text === was || (await swap(id, was, text))) return text;
  }
  throw new Error("Another tab keeps changing this job. Nothing was kept: try again.");
}

/**
 * Changes the job in use by what `made` makes of its text, {job} or {refused}. Resolves to why it was
 * refused, if it was.
 */
export async function changeChosen(made) {
  const [id] = await chosenJob();
  let refused;
  await change(id, async (text) => {
    const reply = await made(text);
    ({ refused } = reply);
    return reply.job ?? text;
  });
  return refused;
}

/** Puts `text` in the place of `was`. Resolves to whether `was` still stood there. */
async function swap(id, was, text) {
  const held = unkept.get(id);
  if (held && held.text !== was) return false; // another change of this page came between
  const base = held ? held.base : was;
  try {
    await update(id, (now) => {
      // what was refused may have been kept after all, as by a browser that answered too late
      if (now !== base && now !== held?.text) throw new Changed();
      return text;
    }, jobs);
    if (unkept.get(id) === held) unkept.delete(id);
    if (!unkept.size) refusal = "";
  } catch (fault) {
    if (unkept.get(id) !== held) return false;
    if (fault instanceof Changed) return parted(id);
    refusal = reason(fault);
    unkept.set(id, { text, base });
  }
  news?.postMessage(id);
  return true;
}

class Changed extends Error {}

/** A job that another tab has changed while this page could not keep its own: both must live. */
function parted(id) {
  if (!unkept.has(id)) return false;
  const { text } = unkept.get(id);
  unkept.delete(id);
  const copy = `${id}-${chance()}`; // another tab may part from the same job
  unkept.set(copy, { text, base: undefined });
  if (stored(CURRENT) === id) choose(copy);
  throw new Error("Another tab has changed this job while this one could not keep it. Both are in the list now.");
}

function reason({ name, message }) {
  if (name === "QuotaExceededError") return "The device has no room left, so the browser kept nothing.";
  return `This browser refuses to keep anything (${message}).`;
}

/** What storage gives, or `instead` where it is denied, as in some private windows. */
async function unlessDenied(ask, instead) {
  try {
    return await ask();
  } catch (fault) {
    refusal = reason(fault);
    return instead;
  }
}

export function choose(id) {
  store(CURRENT, id);
}

export async function remove(id) {
  unkept.delete(id);
  await unlessDenied(() => del(id, jobs));
  news?.postMessage(id);
}

/**
 * Hears when another tab changes a job, or chooses one; what comes while `tell` is at work it is told
 * as one. Returns how to stop hearing.
 */
export function onNews(tell) {
  const changed = oneAtATime(tell);
  // a choice is told by the storage that holds it: any other word may come before it
  const chosen = ({ key }) => key === CURRENT && changed();
  news?.addEventListener("message", changed);
  addEventListener("storage", chosen);
  return () => {
    news?.removeEventListener("message", changed);
    removeEventListener("storage", chosen);
  };
}

/** Does `work` when called, and once more afterwards if it was called meanwhile. */
function oneAtATime(work) {
  let working = false;
  let again = false;
  return async () => {
    again = true;
    if (working) return;
    working = true;
    try {
      while (again) {
        again = false;
        await work();
      }
    } finally {
      working = false;
    }
  };
}

/** The day where the reader is, as 2026-11-25. Browsers differ in what a locale makes of one. */
export function today() {
  const now = new Date();
  const parts = [now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0"));
  return [now.getFullYear(), ...parts].join("-");
}

/** Now in UTC, to the second, as a job has it. */
export function moment() {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}

/** Name and date of a job, to list it by. */
export function head(text) {
  try {
    const { name, date } = JSON.parse(text);
    return `${name}, ${date}`;
  } catch {
    return "a job that cannot be read";
  }
}

addEventListener("beforeunload", (event) => {
  if (unkept.size) event.preventDefault(); // the browser asks whether to leave
});
