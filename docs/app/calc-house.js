// <calc-house> shows the house of the job in use: schematic, figures, answers, and what if.
// The build has drawn the invented house inside it.
import { choose, current, head, keep, moment } from "./job-store.js";
import { ask } from "./python.js";
import { unitSet } from "./stored.js";

customElements.define(
  "calc-house",
  class extends HTMLElement {
    #copy = "";

    connectedCallback() {
      this.addEventListener("click", (event) => this.#try(() => this.#clicked(event.target)));
      this.addEventListener("submit", (event) => {
        event.preventDefault();
        this.#try(() => this.#whatIf());
      });
      this.#try(() => this.#show());
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

    #request(job) {
      return { job, units: unitSet(), root: this.dataset.root, places: JSON.parse(this.dataset.places) };
    }

    async #show() {
      const job = await current();
      if (!job) return;
      const reply = await ask({ ...this.#request(job[1]), do: "house-show" });
      if (reply.refused) return this.#say(reply.refused);
      this.#part("house").innerHTML = reply.html;
      this.#part("name").replaceChildren(...reply.choices.map(([name, label]) => new Option(label, name)));
      this.#part("ask").hidden = !reply.choices.length;
      this.#say(`This is ${head(job[1])}.`);
    }

    async #whatIf() {
      const [, job] = await current();
      const asked = { name: this.#part("name").value, text: this.#part("text").value, when: moment() };
      const reply = await ask({ ...this.#request(job), ...asked, do: "house-what-if" });
      this.#copy = reply.job;
      this.#part("changed").innerHTML = reply.html ?? "";
      this.#part("take").hidden = !reply.job;
      this.#say(reply.refused ?? "");
    }

    async #clicked(target) {
      if (target.closest("[data-do=take]")) {
        choose(await keep(this.#copy));
        this.#part("changed").replaceChildren();
        this.#part("take").hidden = true;
        await this.#show();
      }
    }
  },
);
