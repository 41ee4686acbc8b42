// The job inside a calculator: which of its figures fit here, and which to keep.
import { change, changeChosen, chosenJob, current, head, moment, unsaved } from "./job-store.js";
import { ask } from "./python.js";

const shownIn = new WeakMap(); // form -> the job of which its panel tells, as [id, text]

/** Opens or refreshes the panel that says what the job and this calculator have in common. */
export async function jobPanel(form) {
  await panelOf(form, await current());
}

async function panelOf(form, job) {
  const shown = form.part(".calc-job-inside");
  shownIn.set(form, job ?? []);
  if (!job) {
    shown.replaceChildren(paragraph("No job is chosen. "), linkToJobs(form));
    return;
  }
  const reply = await ask({ ...form.request(), do: "job-panel", job: job[1], touched: form.touched });
  shown.innerHTML = reply.html ?? "";
  if (reply.refused) shown.append(paragraph(reply.refused));
}

/** Refreshes the panel for what another tab has done. What was ticked stays ticked. */
export async function jobChanged(form) {
  if (!form.part(".calc-job").open) return;
  const job = await current();
  const [id, text] = shownIn.get(form) ?? [];
  if (job?.[0] === id && job?.[1] === text) return; // another job changed, or this is heard twice
  if (job && job[0] !== id) return otherJob(form, job);
  const ticked = [...form.querySelectorAll("[data-keep]:checked")].map(({ value }) => value);
  await panelOf(form, job);
  for (const box of form.querySelectorAll("[data-keep]")) box.checked ||= ticked.includes(box.value);
  tell(form, "Another tab has changed this job. Below stands what it holds now.");
}

/** Says something of the job where it is seen; the form's own line only a screen reader hears. */
export function tell(form, text) {
  const inside = form.part(".calc-job-inside");
  inside.querySelector("[data-told]")?.remove();
  const told = paragraph(text);
  told.dataset.told = "";
  inside.prepend(told);
  form.say(text);
}

/** Takes the figures of the job that the panel shows into the form. */
export async function jobUse(form) {
  await takeJob(form, await shownJob(form));
}

/** Takes a job's figures into the form. */
export async function takeJob(form, [, job]) {
  const reply = await ask({ ...form.request(), do: "job-use", job });
  form.take(reply.use, reply.origins);
}

/** Keeps what is ticked in the job. */
export async function jobKeep(form) {
  const [id] = await shownJob(form);
  const ticked = [...form.querySelectorAll("[data-keep]:checked")].map((box) => box.value);
  const { text, says } = await keepIn(id, form, ticked, form.part("[data-origin]").value);
  await jobPanel(form);
  tell(form, `Kept in ${head(text)}. ${says} ${unsaved()}`);
}

/** Keeps inputs by name and answers as output>input in a job, and says what they replaced. */
export async function keepIn(id, form, ticked, origin) {
  const asked = { ...form.request(), do: "job-keep", ticked, origin, when: moment() };
  let says = "";
  const text = await change(id, async (job) => {
    const reply = await ask({ ...asked, job });
    if (reply.refused) throw new Error(reply.refused);
    says = reply.says;
    return reply.job;
  });
  return { text, says };
}

/** The job of which the panel tells. Another tab may have chosen a different one since. */
async function shownJob(form) {
  const job = await chosenJob();
  if (job[0] === shownIn.get(form)?.[0]) return job;
  await otherJob(form, job);
  throw new Error(`Another tab has chosen ${head(job[1])}. Nothing was kept: tick again what goes there.`);
}

/** Shows another job in the panel. Nothing stays ticked: it was meant for the one before. */
async function otherJob(form, job) {
  await panelOf(form, job);
  for (const box of form.querySelectorAll("[data-keep]")) box.checked = false;
  tell(form, `Another tab has chosen ${head(job[1])}. What you tick now goes there.`);
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
  const asked = { ticked: [...typed, ...keeps], origin: "measured", when: moment() };
  const request = { ...form.request(), ...asked, mark, says: form.says };
  const refused = await changeChosen((job) => ask({ ...request, do: "job-keep-all", job }));
  if (refused) form.say(refused);
  return !refused;
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
