// The buttons under an answer: link, code, record, blank form, working backwards, counting longer.
import { codeOf } from "./code.js";
import { current, head, today } from "./job-store.js";
import { jobKeep, jobPanel, jobUse, tell } from "./job-panel.js";
import { linkTo } from "./link.js";
import { printAlone } from "./print.js";
import { ask } from "./python.js";

const PIECE = 1000; // ms that one piece of a longer count may take, well under the worker's limit
const FIRST_WEEKS = 8; // a slow phone should be done with them before the limit

const TOOLS = {
  copy,
  code,
  record,
  blank: record,
  backwards,
  varied,
  longer,
  enough,
  "job-panel": jobPanel,
  "job-use": jobUse,
  "job-keep": jobKeep,
};

/** Does what a button of the form is for, and says so if it cannot be done. */
export async function useTool(form, button) {
  if (!button) return;
  if (button.dataset.use) return form.use(button.dataset.use, button.dataset.value);
  try {
    await TOOLS[button.dataset.do]?.(form, button.dataset.do);
  } catch (fault) {
    if (button.closest(".calc-job")) tell(form, fault.message);
    else form.say(fault.message);
  }
}

function link(form) {
  return linkTo(form.words ?? [form.dataset.key]);
}

async function copy(form) {
  try {
    await navigator.clipboard.writeText(link(form));
    form.say("The link is copied. It holds the figures.");
  } catch {
    form.say("This browser does not let the page copy. The link stands in the address bar.");
    location.replace(link(form));
  }
}

async function code(form) {
  const shown = form.part(".calc-code");
  showCode(form, shown.hidden);
  if (!shown.hidden) shown.innerHTML = await codeOf(link(form));
}

/** Shows or hides the code, and tells a reader of the screen which. */
export function showCode(form, isOn) {
  form.part(".calc-code").hidden = !isOn;
  form.part("[data-do=code]").ariaExpanded = String(isOn);
}

async function record(form, what) {
  const blank = what === "blank";
  const job = await current().catch(() => undefined);
  const top = {
    job: job ? head(job[1]) : "",
    date: blank ? "" : today(),
    link: link(form),
  };
  const request = { ...form.request(), do: "record", blank, origins: form.origins, ...top };
  const reply = await ask(request);
  if (!reply.record) return form.say("There is no answer to record yet.");
  const sheet = document.createElement("div");
  sheet.innerHTML = reply.record;
  sheet.querySelector(".record-code").innerHTML = await codeOf(top.link);
  printAlone(sheet.innerHTML);
}

function picked(form, parts) {
  const value = (part) => form.part(`#${CSS.escape(form.dataset.key)}-${part}`).value;
  return Object.fromEntries(parts.map((part) => [part, value(part)]));
}

async function varied(form) {
  const asked = picked(form, ["varied", "seen"]);
  const reply = await ask({ ...form.request(), do: "varied", ...asked });
  form.part(".calc-drawn").innerHTML = reply.drawn;
}

async function backwards(form) {
  const asked = picked(form, ["wanted", "target", "free"]);
  const reply = await ask({ ...form.request(), do: "backwards", ...asked });
  form.part(".calc-found").innerHTML = reply.found;
}

/** Counts on, piece by piece, until it is stopped or the form has another question. */
async function longer(form) {
  const { turn } = form;
  const request = { ...form.request(), do: "longer" };
  let reply;
  let weeks = FIRST_WEEKS;
  atWork(form, true);
  try {
    while (form.isConnected && form.dataset.counting) {
      const start = performance.now();
      const next = await ask({ ...request, tally: reply?.tally ?? null, weeks });
      if (form.turn !== turn) return;
      if (!next.tally) return form.say("Mend the figures above first.");
      reply = next;
      form.put(reply.answer);
      form.part(".calc-counted").textContent = reply.counted;
      const pace = PIECE / (performance.now() - start);
      weeks = Math.max(1, Math.round(weeks * Math.min(2, pace)));
    }
    form.say(reply.says);
  } finally {
    atWork(form, false);
  }
}

function enough(form) {
  delete form.dataset.counting;
}

function atWork(form, isOn) {
  if (isOn) form.dataset.counting = "yes";
  else delete form.dataset.counting;
  form.part("[data-do=longer]").disabled = isOn;
  form.part("[data-do=enough]").disabled = !isOn;
}
