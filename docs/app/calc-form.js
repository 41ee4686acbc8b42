// <calc-form name="pail_flow"> makes a form live. The build has already drawn the form and
// a worked answer inside it, so without this file the page still reads and prints.
import { fill, initial, mark, shown } from "./fields.js";
import { jobChanged } from "./job-panel.js";
import { fromJob, returning, useJob } from "./job-return.js";
import { onNews } from "./job-store.js";
import { linked, linkTo } from "./link.js";
import { turnInto } from "./morph.js";
import { ask, start } from "./python.js";
import { store, unitSet } from "./stored.js";
import { showCode, useTool } from "./tools.js";

const PAUSE = 900; // ms of quiet before a screen reader is told the finished sentence
const REST = 350; // ms of quiet before the working is written and the plus-or-minus worked out
const STALE = 150; // ms that an answer may stand beside newer figures

customElements.define(
  "calc-form",
  class extends HTMLElement {
    #turn = 0;
    #typed = new Map(); // field -> {text, unit, sure} as the reader typed it, whatever is shown
    #example = "";
    #later = [];
    #complete = () => {};
    #deaf = () => {};
    way = []; // words of the address that lead back to a job
    says = ""; // the answer in a sentence
    origins = {}; // field -> where its figure came from, as the record says it

    connectedCallback() {
      this.#example = this.part(".calc-answer").innerHTML;
      this.part(".calc-tools").hidden = false;
      this.addEventListener("input", (event) => this.#changed(event.target));
      this.addEventListener("click", (event) => useTool(this, event.target.closest("button")));
      this.addEventListener("focusin", warmUp, { once: true });
      this.part(".calc-job").addEventListener("toggle", ({ target }) => {
        if (target.open) useTool(this, target);
      });
      this.part(".calc-answer").addEventListener("toggle", ({ target }) => {
        if (target.open && target.matches(".calc-working") && !target.querySelector("ol")) this.#complete();
      }, true); // it does not bubble
      this.addEventListener("submit", (event) => event.preventDefault());
      addEventListener("hashchange", this.#obey);
      this.#deaf = onNews(() => jobChanged(this).catch(({ message }) => this.say(message)));
      const brings = this.#obey();
      if (!brings && unitSet() !== this.part("[data-units]:checked").value) this.useUnits(unitSet());
    }

    disconnectedCallback() {
      removeEventListener("hashchange", this.#obey);
      this.#deaf();
    }

    /** Does what the address asks for, if it means this calculator, and says whether it brings figures. */
    #obey = () => {
      const words = linked();
      const isMeant = words[0] === this.dataset.key;
      const way = isMeant && returning(words);
      this.way = way?.words ?? [];
      if (way) fromJob(this, way).catch((fault) => this.say(fault.message));
      // figures beside the way back are those of before a reload, and stand for the job's
      const brings = isMeant && words.length > 1 + this.way.length;
      if (brings) this.#follow(words);
      else if (way) useJob(this).catch((fault) => this.say(fault.message));
      return brings;
    };

    part(selector) {
      return this.querySelector(selector);
    }

    field(name) {
      return this.part(`[data-field="${CSS.escape(name)}"]`);
    }

    /** What a field is called. */
    labelOf(name) {
      return this.field(name).querySelector("label, legend").textContent;
    }

    /** Shows every field in the usual units of the set "us" or "si". */
    useUnits(set) {
      for (const radio of this.querySelectorAll("[data-units]")) radio.checked = radio.value === set;
      this.#work({ all: true });
    }

    /** Puts a value into a field, as if it had been typed. */
    use(name, text) {
      this.take({ [name]: { text } }, {});
    }

    /** Puts values into fields, each with its unit and plus-or-minus, and where it came from. */
    take(values, origins) {
      for (const [name, value] of Object.entries(values)) {
        fill(this.field(name), value);
        this.#typed.set(name, shown(this.field(name)));
      }
      Object.assign(this.origins, origins);
      this.#work({});
    }

    /** The fields whose figures are the reader's own, not the example's. */
    get touched() {
      return [...this.#typed.keys()];
    }

    /** Another number with every new question. */
    get turn() {
      return this.#turn;
    }

    /** What Python needs to know of this form, for the answer or for anything else. */
    request({ all } = {}) {
      const fields = {};
      for (const field of this.querySelectorAll("[data-field]")) {
        const now = shown(field);
        const typed = this.#typed.get(field.dataset.field) ?? initial(field);
        fields[field.dataset.field] = { ...typed, show: all ? "" : now.unit };
      }
      return { ...this.#whoAsks(), fields };
    }

    #whoAsks() {
      const units = this.part("[data-units]:checked").value;
      const { key, root } = this.dataset;
      return { calculator: this.getAttribute("name"), key, root, units };
    }

    #changed(control) {
      if (control.dataset.units) return useUnitsEverywhere(control.value);
      const field = control.closest("[data-field]");
      if (!field) return;
      const isUnit = control.matches("select:not([data-pick])");
      // a text that means nothing cannot be converted: it is meant in the new unit
      if (!isUnit || field.querySelector("[aria-invalid]")) {
        this.#typed.set(field.dataset.field, shown(field));
        this.origins[field.dataset.field] = "typed here";
      }
      this.#work({});
    }

    async #follow(words) {
      const request = { ...this.#whoAsks(), units: unitSet(), words };
      const reply = await this.#work({ request });
      if (!reply) return;
      for (const [name, value] of Object.entries(reply.fields)) {
        fill(this.field(name), value);
        this.#typed.set(name, shown(this.field(name)));
      }
      for (const word of words.slice(1)) this.origins[word.split("=")[0]] = "typed here";
      this.scrollIntoView();
    }

    async #work({ all, request = this.request({ all }) }) {
      const turn = ++this.#turn;
      this.dataset.state = "working";
      for (const timer of this.#later) clearTimeout(timer);
      const slow = setTimeout(() => this.#hide("Starting the calculator…"), STALE);
      // what is counted says itself how sure it is
      const isCounted = this.part(".calc-longer");
      const brief = !isCounted && !this.part(".calc-working[open]");
      try {
        const reply = await ask({ ...request, brief });
        if (reply.refused) throw new Error(reply.refused);
        if (turn !== this.#turn) return;
        this.#show(reply);
        this.#later = [setTimeout(() => this.say(reply.says), PAUSE)];
        this.#complete = () => this.#finish(turn, request, brief ? ["answer", "sure"] : ["sure"]);
        if (!isCounted) this.#later.push(setTimeout(() => this.#complete(), REST));
        return reply;
      } catch (fault) {
        if (turn === this.#turn) this.#fail(fault.message);
      } finally {
        clearTimeout(slow);
      }
    }

    say(text) {
      this.part(".calc-state").textContent = text;
    }

    /** Takes an answer away that no longer belongs to the fields. */
    #hide(why) {
      this.dataset.slow = "";
      this.say(why);
    }

    #show(reply) {
      delete this.dataset.slow;
      this.says = reply.says;
      this.put(reply.answer);
      for (const field of this.querySelectorAll("[data-field]")) {
        mark(field, reply.fields[field.dataset.field]);
      }
      this.dataset.state = "answered";
      this.say("");
      for (const told of this.querySelectorAll(".calc-found, .calc-drawn, .calc-counted")) {
        told.replaceChildren();
      }
      showCode(this, false);
      this.words = [this.dataset.key, ...reply.words.slice(1)];
      // an answer may come when the reader has gone on to another page
      if (this.isConnected) {
        history.replaceState(history.state, "", linkTo([...this.words, ...this.way]));
      }
    }

    /** The same answer again with its working, then with its plus-or-minus, which takes longer. */
    async #finish(turn, request, wanted) {
      this.#complete = () => {};
      for (const what of wanted) {
        const reply = await ask({ ...request, do: what }).catch(() => undefined);
        if (!reply || turn !== this.#turn) return;
        this.put(reply.answer);
      }
    }

    /** New answer in place of the old; what the reader had opened stays open. */
    put(html) {
      const answer = this.part(".calc-answer");
      const open = [...answer.querySelectorAll("details[open]")].map((it) => it.className);
      turnInto(answer, html);
      for (const it of answer.querySelectorAll("details")) it.open = open.includes(it.className);
    }

    #fail(why) {
      delete this.dataset.slow;
      this.part(".calc-answer").innerHTML = this.#example;
      this.dataset.state = "failed";
      this.say(`${why} What stands below is the worked example, not your figures.`);
    }
  },
);

function useUnitsEverywhere(set) {
  store("units", set);
  for (const form of document.querySelectorAll("calc-form")) form.useUnits(set);
}

function warmUp() {
  const names = [...document.querySelectorAll("calc-form")].map((form) => form.getAttribute("name"));
  start(names).catch(() => {}); // the first answer will say why
}

// Nobody's data plan is spent unasked: only a connection that says it is fast starts early.
if (navigator.connection?.effectiveType === "4g" && !navigator.connection.saveData) {
  (globalThis.requestIdleCallback ?? setTimeout)(() => {
    if (document.querySelector("calc-form")) warmUp();
  });
}
