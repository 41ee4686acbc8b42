// <calc-jobs> lists the jobs on this device: start, choose, look at, compare, take out, hand on.
import { all, change, choose, chosenJob, current, head, keep, onNews, remove, today, unsaved, warning } from "./job-store.js";
import { printAlone } from "./print.js";
import { ask } from "./python.js";
import { unitSet } from "./stored.js";
import { fileName, save } from "./save.js";

const LARGEST = 200_000; // bytes; Python refuses more, but a film picked by mistake must not be read

customElements.define(
  "calc-jobs",
  class extends HTMLElement {
    #deaf = () => {};

    connectedCallback() {
      this.hidden = false;
      this.addEventListener("click", (event) => this.#try(() => this.#clicked(event.target)));
      this.addEventListener("change", (event) => this.#try(() => this.#changed(event.target)));
      this.#deaf = onNews(() => this.#try(() => this.#changedElsewhere()));
      this.#try(() => this.#list());
    }

    disconnectedCallback() {
      this.#deaf();
    }

    async #changedElsewhere() {
      await this.#list();
      this.#say("Another tab has changed a job. Below stands what is kept now.");
    }

    #part(name) {
      return this.querySelector(`[data-part=${name}]`);
    }

    async #try(what) {
      try {
        await what();
      } catch (fault) {
        this.#say(`That did not work: ${fault.message}`);
      }
    }

    #say(text) {
      this.#part("said").textContent = text;
    }

    async #clicked(target) {
      const { do: what, drop } = target.closest("button")?.dataset ?? {};
      if (drop) return this.#drop(drop);
      const does = {
        start: this.#start,
        demo: this.#demo,
        export: this.#export,
        record: this.#record,
        remove: this.#remove,
        compare: this.#compare,
      };
      await does[what]?.call(this);
    }

    async #changed(target) {
      if (target.type === "file") return this.#import(target);
      if (target.name !== "job") return;
      choose(target.value);
      await this.#list();
    }

    async #list() {
      const jobs = await all();
      this.#part("kept").textContent = unsaved() || warning();
      const chosen = (await current())?.[0];
      this.#part("list").replaceChildren(...jobs.map(([id, text]) => option(id, text, id === chosen)));
      for (const part of ["first", "second"]) {
        this.#part(part).replaceChildren(...jobs.map(([id, text]) => new Option(head(text), id)));
      }
      this.#part("second").selectedIndex = Math.min(1, jobs.length - 1);
      this.#part("chosen").hidden = !chosen;
      this.#part("pair").hidden = jobs.length < 2;
      await this.#show();
    }

    async #show() {
      const job = await current();
      const reply = job && (await ask({ do: "job-show", job: job[1] }));
      this.#part("values").innerHTML = reply?.html ?? "";
      if (reply?.refused) this.#say(reply.refused);
    }

    async #start() {
      const box = this.#part("name");
      const made = await ask({ do: "job-new", name: box.value, date: today() });
      if (made.job) box.value = ""; // before it is said: the next name may be typed then
      await this.#take(made);
    }

    async #demo() {
      await keep((await ask({ do: "house-demo-job" })).job);
      await this.#take(await ask({ do: "house-demo-job", left: true }));
    }

    async #import(input) {
      const [file] = input.files;
      if (!file) return;
      if (file.size > LARGEST) {
        input.value = "";
        return this.#say(`The file is larger than ${LARGEST} bytes. No job is. Nothing was changed.`);
      }
      const reply = await ask({ do: "job-read", text: await file.text() });
      input.value = "";
      if (reply.refused) return this.#say(`${reply.refused} Nothing was changed.`);
      await this.#take(reply);
    }

    async #take({ job, refused }) {
      if (refused) return this.#say(refused);
      choose(await keep(job));
      this.#say(`${head(job)} is the job in use.`);
      await this.#list();
    }

    async #export() {
      const [, job] = await chosenJob();
      save(job, "application/json", `${fileName(job)}.json`);
    }

    async #record() {
      const [, job] = await chosenJob();
      printAlone((await ask({ do: "job-record", job })).record);
    }

    async #remove() {
      const [id, job] = await chosenJob();
      if (!confirm(`Remove ${head(job)} from this device? Save its file first if you need it.`)) return;
      await remove(id);
      this.#say(`${head(job)} is removed.`);
      await this.#list();
    }

    async #drop(name) {
      const [id] = await chosenJob();
      await change(id, async (job) => (await ask({ do: "job-drop", job, name })).job);
      await this.#list();
    }

    async #compare() {
      const texts = Object.fromEntries(await all());
      const [old, next] = ["second", "first"].map((part) => texts[this.#part(part).value]);
      const reply = await ask({ do: "job-compare", old, new: next, units: unitSet() });
      this.#part("compared").innerHTML = reply.html ?? "";
      if (reply.refused) this.#say(reply.refused);
    }
  },
);

function option(id, text, chosen) {
  const label = document.createElement("label");
  const radio = document.createElement("input");
  Object.assign(radio, { type: "radio", name: "job", value: id, checked: chosen });
  const words = document.createElement("span");
  words.textContent = head(text);
  label.append(radio, words);
  return label;
}
