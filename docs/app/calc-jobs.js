// <calc-jobs> lists the jobs on this device: start, choose, look at, compare, take out, hand on.
import { all, choose, current, head, keep, remove, today } from "./job-store.js";
import { printAlone } from "./print.js";
import { ask } from "./python.js";

customElements.define(
  "calc-jobs",
  class extends HTMLElement {
    connectedCallback() {
      this.hidden = false;
      this.addEventListener("click", (event) => this.#try(() => this.#clicked(event.target)));
      this.addEventListener("change", (event) => this.#try(() => this.#changed(event.target)));
      this.#try(() => this.#list());
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
      const name = this.#part("name").value;
      await this.#take(await ask({ do: "job-new", name, date: today() }));
      this.#part("name").value = "";
    }

    async #demo() {
      await keep((await ask({ do: "demo-job" })).job);
      await this.#take(await ask({ do: "demo-job", left: true }));
    }

    async #import(input) {
      const [file] = input.files;
      if (!file) return;
      const reply = await ask({ do: "job-read", text: await file.text() });
      input.value = "";
      await this.#take(reply);
    }

    async #take({ job, refused }) {
      if (refused) return this.#say(refused);
      choose(await keep(job));
      this.#say(`${head(job)} is the job in use.`);
      await this.#list();
    }

    async #export() {
      const [, job] = await current();
      const made = document.createElement("a");
      made.href = URL.createObjectURL(new Blob([job], { type: "application/json" }));
      made.download = `${head(job).replace(/[^\p{L}\p{N}]+/gu, "-")}.json`;
      made.click();
      setTimeout(() => URL.revokeObjectURL(made.href), 1000);
    }

    async #record() {
      const [, job] = await current();
      printAlone((await ask({ do: "job-record", job })).record);
    }

    async #remove() {
      const [id, job] = await current();
      if (!confirm(`Remove ${head(job)} from this device? Save its file first if you need it.`)) return;
      await remove(id);
      this.#say(`${head(job)} is removed.`);
      await this.#list();
    }

    async #drop(name) {
      const [id, job] = await current();
      await keep((await ask({ do: "job-drop", job, name })).job, id);
      await this.#show();
    }

    async #compare() {
      const texts = Object.fromEntries(await all());
      const [old, next] = ["second", "first"].map((part) => texts[this.#part(part).value]);
      const reply = await ask({ do: "job-compare", old, new: next, units: localStorage.getItem("units") ?? "us" });
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
