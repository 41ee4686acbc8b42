// The job inside a calculator: which of its figures fit here, and which to keep.
import { change, current, head, keep, now } from "./job-store.js";
import { ask } from "./python.js";

/** Opens or refreshes the panel that says what the job and this calculator have in common. */
export async function jobPanel(form) {
  const shown = form.part(".calc-job-inside");
  const job = await currentOrNothing();
  if (!job) {
    shown.replaceChildren(paragraph("No job is chosen. "), linkToJobs(form));
    return;
  }
  const reply = await ask({ ...form.request(), do: "job-panel", job: job[1], touched: form.touched });
  shown.innerHTML = reply.html ?? "";
  if (reply.refused) shown.append(paragraph(reply.refused));
}

/** Takes the job's figures into the form. */
export async function jobUse(form) {
  const [, job] = await current();
  const reply = await ask({ ...form.request(), do: "job-use", job });
  form.take(reply.use, reply.origins);
}

/** Keeps what is ticked in the job. */
export async function jobKeep(form) {
  const [id, job] = await current();
  const ticked = [...form.querySelectorAll("[data-keep]:checked")].map((box) => box.value);
  const origin = form.part("[data-origin]").value;
  const reply = await ask({ ...form.request(), do: "job-keep", job, ticked, origin, when: now() });
  if (reply.refused) return form.say(reply.refused);
  await keep(reply.job, id);
  await jobPanel(form);
  form.say(`Kept in ${head(reply.job)}.`);
}

/**
 * Keeps what was typed here and what the way back asks for, and marks its step with the answer.
 * Says whether it is done; if not, why not stands in the form.
 */
export async function jobKeepAll(form, { mark, keeps }) {
  if (form.dataset.state !== "answered") {
    form.say("There is no answer yet. Mend the figures above, or go back without one.");
    return false;
  }
  const typed = form.touched.filter((name) => form.origins[name] === "typed here");
  const asked = { ticked: [...typed, ...keeps], origin: "measured", when: now() };
  const request = { ...form.request(), ...asked, mark, says: form.says };
  const refused = await change((job) => ask({ ...request, do: "job-keep-all", job }));
  if (refused) form.say(refused);
  return !refused;
}

async function currentOrNothing() {
  return current().catch(() => undefined);
}

function paragraph(text) {
  const made = document.createElement("p");
  made.textContent = text;
  return made;
}

function linkToJobs(form) {
  const made = document.createElement("a");
  made.href = `${form.dataset.root}jobs.html`;
  made.textContent = "Start a job";
  return made;
}
