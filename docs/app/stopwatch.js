// One watch for this device. It keeps the moment of the start, never ticks: a screen that locks, a
// page that reloads and a phone that sleeps cost it nothing. What it cannot know it says: when the
// device's clock jumps, the time by the clock and the running time of the page no longer agree.

const KEPT = "pail-watch";
const NEW = { started: null, slip: 0, slept: false, runs: [], where: "" };
const MOST_PAST = 20; // steps that can be undone
const JUMP = 200; // ms; a clock that is set right little by little moves far less between two looks
const BOUNCE = 350; // ms; a wet thumb touches twice
const GONE = 3000; // ms; a page that has not looked for so long is gone
const LONGEST = 3_600_000; // ms; the calculator takes runs of an hour

const me = `${Date.now()}-${Math.random()}`; // this page, among several that show the watch
let memory = ""; // where the browser keeps nothing
let refused = false;
let gap; // the clock less the running time, at the last look
let pressed = -Infinity;

/** The running time of this page, as if the clock had not been touched since it was loaded. */
function running() {
  return performance.timeOrigin + performance.now();
}

/** What the watch knows: {started, slip, slept, runs, where, past}. */
export function watch() {
  const text = kept() || memory;
  try {
    return { ...NEW, past: [], ...JSON.parse(text || "{}") };
  } catch {
    return { ...NEW, past: [] }; // spoiled by something else
  }
}

/** Whether the browser refuses to keep the watch, so that it ends with the page. */
export function isLost() {
  return refused;
}

function kept() {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    refused = true;
    return "";
  }
}

function keep(state) {
  memory = JSON.stringify(state);
  try {
    localStorage.setItem(KEPT, memory);
    refused = false;
  } catch {
    refused = true;
  }
}

/** The next state, with the way back to the one before. */
function step(state, change) {
  const { past, ...before } = state;
  keep({ ...before, ...change, past: [...past, before].slice(-MOST_PAST) });
}

/**
 * Looks whether the clock was touched since the last look, and notes it for the run under way.
 * Called often, for what sleep does and what a changed clock does is told apart by `wasHidden`:
 * whether nobody could look. One page looks for all.
 */
export function look(wasHidden) {
  const now = Date.now() - running();
  const jump = gap === undefined ? 0 : now - gap;
  gap = now;
  const state = watch();
  if (state.started === null) return;
  const since = Date.now() - state.seen; // negative: put back while no page looked
  const mine = state.owner === me;
  if (!mine && Math.abs(since) < GONE) return;
  const jumped = mine ? jump : Math.min(0, since);
  const slip = Math.abs(jumped) > JUMP ? jumped : 0;
  keep({
    ...state,
    owner: me,
    seen: Date.now(),
    slip: state.slip + slip,
    slept: state.slept || (wasHidden && slip > 0),
    closed: state.closed || (!mine && slip !== 0),
  });
}

/** The time of the run under way: by which reckoning, and what the other would say. */
export function elapsed(state, at = Date.now()) {
  const byClock = at - state.started;
  const byPage = byClock - state.slip;
  // a phone that sleeps stops the page's time, not the clock
  const ms = state.slip > 0 && state.slept ? byClock : byPage;
  const other = state.slip > 0 ? byClock + byPage - ms : null;
  return { ms, other, why: reason(state), out: Boolean(state.closed) };
}

function reason({ slip, slept, closed }) {
  if (!slip) return "";
  if (closed) return "closed";
  return slip < 0 ? "back" : slept ? "slept" : "ahead";
}

/** Starts, or ends the run. Returns whether it counted as a press. */
export function press(most, where) {
  if (performance.now() - pressed < BOUNCE) return false;
  pressed = performance.now();
  look(false);
  const state = watch();
  if (state.started === null) {
    if (counted(state).length >= most) return false;
    step(state, { ...fresh(), where });
  } else {
    step(state, { started: null, runs: [...state.runs, elapsed(state)] });
  }
  return true;
}

/** Ends one run and starts the next at the same moment: the pails are changed under the stream. */
export function lap(most) {
  look(false);
  const state = watch();
  if (state.started === null || counted(state).length + 1 >= most) return;
  step(state, { runs: [...state.runs, elapsed(state)], ...fresh() });
}

function fresh() {
  return { started: Date.now(), seen: Date.now(), owner: me, slip: 0, slept: false, closed: false };
}

/** Goes back one step: a stop undone runs on as if it had never been pressed. */
export function undo() {
  const { past } = watch();
  const before = past.at(-1);
  if (before) keep({ ...before, seen: Date.now(), owner: me, past: past.slice(0, -1) });
}

/** Leaves a run out, or takes it in again. */
export function leaveOut(place) {
  const state = watch();
  step(state, { runs: state.runs.map((run, n) => (n === place ? { ...run, out: !run.out } : run)) });
}

/** Reckons a run the other way. */
export function otherWay(place) {
  const state = watch();
  const swapped = (run) => ({ ...run, ms: run.other, other: run.ms, out: false });
  step(state, { runs: state.runs.map((run, n) => (n === place ? swapped(run) : run)) });
}

/** All runs away; undo brings them back. */
export function anew() {
  step(watch(), { ...NEW });
}

/** The runs that count. */
export function counted({ runs }) {
  return runs.filter(({ out, ms }) => !out && ms > 0 && ms <= LONGEST);
}

/** Mean, and scatter of one run as a share of it: the standard deviation, as Python has it. */
export function spread(runs) {
  const mean = runs.reduce((sum, { ms }) => sum + ms, 0) / runs.length;
  const squares = runs.reduce((sum, { ms }) => sum + (ms - mean) ** 2, 0);
  return { mean, scatter: runs.length > 1 ? Math.sqrt(squares / (runs.length - 1)) / mean : null };
}

/** Hears when another tab moves the watch. Returns how to stop hearing. */
export function onMoved(tell) {
  const heard = ({ key }) => key === KEPT && tell();
  addEventListener("storage", heard);
  return () => removeEventListener("storage", heard);
}
