// A calculator that was opened from a job: it takes the job's figures, and what is found goes
// back into the job. The address says so behind the calculator: #tank_draw&job=house.
import { jobKeepAll, takeJob } from "./job-panel.js";
import { current, head } from "./job-store.js";

const BACK = /^job=(house|visit\.([a-z-]+)\.([a-z_]+))$/;

/** Where the words of an address lead back to, or nothing: {page, mark, keeps, words}. */
export function returning(words) {
  const found = words.map((word) => BACK.exec(word)).find(Boolean);
  if (!found) return undefined;
  const [job, back, visit, step] = found;
  const asks = words.filter((word) => word.startsWith("keeps="));
  return {
    page: visit ? `visit/${visit}.html#${step}` : `${back}.html`,
    mark: visit ? `${visit}.${step}` : "",
    keeps: asks.map((word) => word.slice("keeps=".length)),
    words: [job, ...asks],
  };
}

/** Takes the job's figures into a form, if there is a job. */
export async function useJob(form) {
  const job = await current();
  if (job) await takeJob(form, job);
  form.scrollIntoView();
}

/** Offers the way back under a form. */
export async function fromJob(form, way) {
  const job = await current();
  form.querySelector(".calc-return")?.remove();
  form.append(bar(form, way, job));
}

function bar(form, way, job) {
  const made = document.createElement("p");
  made.className = "calc-return calc-actions";
  const back = document.createElement("a");
  back.href = form.dataset.root + way.page;
  back.textContent = job ? "Back" : "No job is in use: back";
  made.append(back);
  if (!job) return made;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Keep in the job and go back";
  button.title = head(job[1]);
  button.addEventListener("click", async () => {
    button.disabled = true;
    try {
      if (await jobKeepAll(form, way)) back.click();
    } catch (fault) {
      form.say(`That did not work: ${fault.message}`);
    }
    button.disabled = false;
  });
  made.prepend(button);
  return made;
}
