// The jobs on this device: name -> text of a job file, as Python wrote it. Only Python reads
// what is in them; here they are kept, listed and handed on.
import { createStore, del, entries, get, set } from "./vendor/idb-keyval.js";

const jobs = createStore("pail-and-timer", "jobs");
const CURRENT = "current-job";

/** All jobs as [id, text], the newest first. */
export async function all() {
  return (await entries(jobs)).sort(([a], [b]) => (a < b ? 1 : -1));
}

/** The job in use as [id, text], or nothing. */
export async function current() {
  const id = localStorage.getItem(CURRENT);
  const text = id && (await get(id, jobs));
  return text ? [id, text] : undefined;
}

/** Keeps a job under its id, or under a new one, and returns the id. */
export async function keep(text, id = `${Date.now()}-${crypto.getRandomValues(new Uint32Array(1))}`) {
  await set(id, text, jobs);
  return id;
}

/**
 * Changes the job in use by what `made` makes of its text, {job} or {refused}, and returns why it
 * was refused, if it was. One change at a time, in whichever tab: none writes over another's.
 */
export async function change(made) {
  const work = async () => {
    const [id, text] = (await current()) ?? [];
    if (!id) return "No job is in use.";
    const { job, refused } = await made(text);
    if (!refused) await keep(job, id);
    return refused;
  };
  return navigator.locks ? navigator.locks.request("pail-and-timer-job", work) : work();
}

/** This moment in UTC, to the second, as a job writes it. */
export function now() {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}

export function choose(id) {
  localStorage.setItem(CURRENT, id);
}

export async function remove(id) {
  await del(id, jobs);
}

/** The day where the reader is, as 2026-11-25. Browsers differ in what a locale makes of one. */
export function today() {
  const now = new Date();
  const parts = [now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0"));
  return [now.getFullYear(), ...parts].join("-");
}

/** Name and date of a job, to list it by. */
export function head(text) {
  const { name, date } = JSON.parse(text);
  return `${name}, ${date}`;
}
