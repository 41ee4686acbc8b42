// The job inside a calculator: which of its figures fit here, and which to keep.
import { current, head, keep } from "./job-store.js";
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
  const when = `${new Date().toISOString().slice(0, 19)}Z`;
  const reply = await ask({ ...form.request(), do: "job-keep", job, ticked, origin, when });
  if (reply.refused) return form.say(reply.refused);
  await keep(reply.job, id);
  await jobPanel(form);
  form.say(`Kept in ${head(reply.job)}.`);
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
