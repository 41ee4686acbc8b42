// The buttons under an answer: link, code, record, blank form, working backwards.
import { codeOf } from "./code.js";
import { current, head, today } from "./job-store.js";
import { jobKeep, jobPanel, jobUse } from "./job-panel.js";
import { linkTo } from "./link.js";
import { printAlone } from "./print.js";
import { ask } from "./python.js";

const TOOLS = {
  copy,
  code,
  record,
  blank: record,
  backwards,
  varied,
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
    form.say(fault.message);
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
  shown.hidden = !shown.hidden;
  if (!shown.hidden) shown.innerHTML = await codeOf(link(form));
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
