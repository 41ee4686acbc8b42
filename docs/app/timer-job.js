// The runs of the watch on their way into the job, and back out.
import { change, current, head, unsaved } from "./job-store.js";
import { keepIn } from "./job-panel.js";
import { counted, watch } from "./stopwatch.js";
import { button } from "./timer-runs.js";

const lately = new WeakMap(); // timer -> what was kept last: {id, from, to}
const warned = new WeakMap(); // timer -> the place for which it said that an input is the example's

/** Keeps the flow of the runs in the job at `place`, output>input. Resolves to what to say. */
export async function keepRuns(timer, place) {
  const fewest = Number(timer.dataset.fewest);
  const more = fewest - counted(watch()).length;
  if (more > 0) return `${more} more: a flow from fewer than ${fewest} runs is no measurement.`;
  const job = await current();
  if (!job) return "No job is chosen: start one on the page of jobs. The runs stay here until you begin anew.";
  const asked = timer.dataset.asks.split(" ").filter(Boolean);
  const example = asked.find((name) => !timer.form.touched.includes(name));
  if (example && warned.get(timer) !== place) {
    warned.set(timer, place);
    return `${timer.form.labelOf(example)}: that is still the example's. Write yours, or press once more if it is the same.`;
  }
  const { text, says } = await keepIn(job[0], timer.form, [place, ...asked], "measured");
  lately.set(timer, { id: job[0], from: job[1], to: text });
  offerBack(timer);
  return `Kept in ${head(text)}. ${says} ${unsaved()}`.trim();
}

function offerBack(timer) {
  if (timer.querySelector("[data-watch=back]")) return;
  timer.querySelector("[data-part=keep]").append(button("back", "Take it out of the job again"));
}

/** The job as it was before the last keeping, if nothing else has changed it since. */
export async function putBack(timer) {
  const { id, from, to } = lately.get(timer);
  await change(id, (now) => {
    if (now !== to) throw new Error("The job has changed since: take the figure out on the page of jobs.");
    return from;
  });
  timer.querySelector("[data-watch=back]").remove();
  return "The job is as it was before.";
}
