// <calc-record> is the page of the record: sheets, the dates to come back, the next visit, files.
import { all, choose, chosenJob, current, head, keep, moment, onNews, today, unsaved } from "./job-store.js";
import { printAlone } from "./print.js";
import { ask } from "./python.js";
import { store, stored, unitSet } from "./stored.js";
import { fileName, save } from "./save.js";

customElements.define(
  "calc-record",
  class extends HTMLElement {
    #deaf = () => {};

    connectedCallback() {
      this.hidden = false;
      this.addEventListener("click", ({ target }) => this.#try(() => this.#clicked(target.closest("button"))));
      this.addEventListener("change", ({ target }) => this.#try(() => this.#dated(target)));
      this.#deaf = onNews(() => this.#try(() => this.#show()));
      this.#try(() => this.#show());
    }

    disconnectedCallback() {
      this.#deaf();
    }

    #part(name) {
      return this.querySelector(`[data-part=${name}]`);
    }

    #say(text) {
      this.#part("said").textContent = text;
    }

    async #try(what) {
      try {
        await what();
      } catch ({ message }) {
        this.#say(`That did not work: ${message}`);
      }
    }

    async #clicked(button) {
      const { sheet, do: what } = button?.dataset ?? {};
      if (sheet) return this.#print(sheet);
      const does = { csv: this.#csv, json: this.#json, calendar: this.#calendar, next: this.#next };
      await does[what]?.call(this);
    }

    /** What Python needs to know: the job, the others of the device, dates set by hand, units. */
    async #asked(job) {
      const others = (await all()).map(([, text]) => text);
      return { job: job?.[1] ?? "", others, units: unitSet(), dates: job ? dates(job[0]) : {}, now: today() };
    }

    async #show() {
      const job = await current();
      this.#part("whose").textContent = job
        ? `${head(job[1])} is the job in use. ${unsaved()}`
        : "No job is chosen: the sheets print as blank forms.";
      this.#part("chosen").hidden = !job;
      this.#part("shown").replaceChildren();
      if (!job) return;
      const reply = await ask({ do: "sheet-show", ...(await this.#asked(job)) });
      this.#part("shown").innerHTML = reply.html ?? "";
      if (reply.refused) this.#say(reply.refused);
    }

    async #print(sheet) {
      const asked = await this.#asked(await current());
      const reply = await ask({ do: "sheet-printed", sheet, ...asked });
      if (reply.refused) return this.#say(reply.refused);
      printAlone(reply.record);
    }

    async #dated({ dataset, value }) {
      if (!dataset.due) return;
      const [id] = await chosenJob();
      const set = { ...dates(id), [dataset.due]: value };
      store(`dates-${id}`, JSON.stringify(set));
      await this.#show();
      this.querySelector(`[data-due="${dataset.due}"]`)?.focus();
    }

    async #json() {
      const [, job] = await chosenJob();
      save(job, "application/json", `${fileName(job)}.json`);
    }

    async #csv() {
      const [, job] = await chosenJob();
      const { csv } = await ask({ do: "sheet-csv", job });
      save(`\ufeff${csv}`, "text/csv", `${fileName(job)}.csv`);
    }

    async #calendar() {
      const job = await chosenJob();
      const asked = { ...(await this.#asked(job)), when: moment() };
      const { ics, count } = await ask({ do: "sheet-calendar", ...asked });
      if (!count) return this.#say("There is no date yet: measure, or set one by hand.");
      save(ics, "text/calendar", `${fileName(job[1])}.ics`);
      this.#say(`${count} dates are in the file. Open it on the phone or computer that has your calendar.`);
    }

    async #next() {
      const [, job] = await chosenJob();
      const reply = await ask({ do: "sheet-next", job, date: today() });
      if (reply.refused) return this.#say(reply.refused);
      choose(await keep(reply.job));
      await this.#show();
      this.#say(`${head(reply.job)} is the job in use. Every figure kept its day: measure anew what can change.`);
    }
  },
);

function dates(id) {
  const text = stored(`dates-${id}`);
  return text ? JSON.parse(text) : {};
}
