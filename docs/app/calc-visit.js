// <calc-visit> wakes up a visit's sheet or the trouble call. Whatever is typed or ticked goes into
// the job at once; what cannot be kept yet, because it is no figure, waits in a draft. So a closed
// tab loses nothing, an empty battery what was typed in its last seconds.
import { fill, initial, shown } from "./fields.js";
import { changeChosen, choose, current, head, keep, moment, onNews, today } from "./job-store.js";
import { ask } from "./python.js";
import { store, stored, unitSet } from "./stored.js";

const PAUSE = 400; // ms of quiet after which a figure is kept

customElements.define(
  "calc-visit",
  class extends HTMLElement {
    #waiting = new Map(); // field's name -> timer
    #figures = {}; // field's name -> {text, unit, when} of the job as it was last shown
    #deaf = () => {};

    connectedCallback() {
      this.addEventListener("input", ({ target }) => this.#typed(target.closest("[data-field]")));
      this.addEventListener("change", ({ target }) => this.#try(() => this.#changed(target)));
      this.addEventListener("click", ({ target }) => this.#try(() => this.#clicked(target.closest("button"))));
      this.addEventListener("submit", (event) => {
        event.preventDefault();
        this.#try(() => this.#start(this.#part("name").value));
      });
      document.addEventListener("visibilitychange", this.#again);
      this.#deaf = onNews(this.#again);
      this.#try(() => this.#open());
    }

    disconnectedCallback() {
      document.removeEventListener("visibilitychange", this.#again);
      this.#deaf();
    }

    // another tab may have filled the same job meanwhile, or chosen another
    #again = async () => {
      if (document.visibilityState === "visible") await this.#try(() => this.#show());
    };

    #part(name) {
      return this.querySelector(`[data-part=${name}]`);
    }

    async #try(what) {
      try {
        await what();
      } catch (fault) {
        this.#say(`That was not kept: ${fault.message}. What you typed still stands here.`);
      }
    }

    #say(text) {
      this.#part("said").textContent = text;
    }

    #request() {
      const { do: what, visit, root, places, table } = this.dataset;
      return { do: what, visit, root, places: JSON.parse(places), table: JSON.parse(table), units: unitSet() };
    }

    async #open() {
      await this.#show();
      const job = await current();
      const older = [];
      for (const [name, draft] of job ? drafts() : []) {
        const field = this.querySelector(`[data-field="${CSS.escape(name)}"]`);
        if (!field) continue;
        if (outdated(draft, this.#figures[name])) {
          forget(name, draftKey());
          await this.#show();
          if (draft.text !== this.#figures[name].text) older.push(`“${draft.text}”`);
        } else {
          fill(field, draft);
          await this.#keep(field, draftKey());
        }
      }
      if (older.length) this.#say(`Typed earlier, and not kept because the job has newer figures: ${older.join(", ")}.`);
      const step = document.getElementById(location.hash.slice(1));
      if (this.contains(step)) step.scrollIntoView();
    }

    /** Shows how far the job is. What stands in a field with a draft is left alone. */
    async #show() {
      const job = await current();
      this.#part("start").hidden = Boolean(job) || !this.dataset.visit;
      const reply = await ask(job ? { ...this.#request(), job: job[1] } : { ...this.#request(), job: await blank() });
      if (reply.refused) return this.#say(reply.refused);
      if (job) this.#say(`Job: ${head(job[1])}.`);
      this.#figures = reply.fields ?? {};
      for (const [name, html] of Object.entries(reply.parts)) put(this.#part(name), html);
      const pending = new Map(job ? drafts() : []);
      for (const field of this.querySelectorAll("[data-field]")) {
        if (!reply.fields || pending.has(field.dataset.field)) continue;
        // another step may ask for the same figure: there it appears as well; what was refused or
        // picked there may have been of another job
        fill(field, reply.fields[field.dataset.field] ?? initial(field));
        flag(field, "");
      }
      for (const box of this.querySelectorAll("[data-tick]")) {
        box.checked = reply.done.includes(box.closest("[data-step]").dataset.step);
      }
    }

    async #start(name) {
      const { job } = await ask({ do: "job-new", name, date: today() });
      choose(await keep(job));
      await this.#show();
    }

    /** Notes what is typed at once, and keeps it when the typing pauses. */
    #typed(field) {
      if (!field) return;
      const { field: name } = field.dataset;
      const key = draftKey();
      note(name, { ...shown(field), over: this.#figures[name]?.when, when: moment() });
      clearTimeout(this.#waiting.get(name));
      this.#waiting.set(name, setTimeout(() => this.#try(() => this.#keep(field, key)), PAUSE));
    }

    /** Keeps what stands in a field, and in a draft under `key`, in the job for which it was typed. */
    async #keep(field, key) {
      const { field: name } = field.dataset;
      const given = shown(field);
      if (!given.text) return forget(name, key);
      if (!(await current())) await this.#start("");
      if (key !== draftKey() && key !== NO_JOB) {
        await this.#show();
        return this.#say("Another tab has chosen another job. What you typed waits for the one before.");
      }
      const wish = { do: "visit-fill-in", name, text: given.text, unit: given.unit, when: moment() };
      const refused = await changeChosen((job) => ask({ ...this.#request(), ...wish, job })).catch((fault) => {
        follow(name, shown(field), key);
        throw fault;
      });
      flag(field, refused ?? "");
      if (refused || shown(field).text !== given.text) return;
      forget(name, key);
      await this.#show();
    }

    async #changed(target) {
      const { tick } = target.dataset;
      if (tick) return this.#mark(tick, target.checked ? "done" : "", "");
      if (target.tagName === "SELECT") this.#typed(target.closest("[data-field]"));
    }

    async #clicked(button) {
      const { mark, value = "", note: said = "" } = button?.dataset ?? {};
      if (mark) await this.#mark(mark, value, said);
    }

    async #mark(mark, value, said) {
      if (!(await current())) await this.#start(this.dataset.visit ? "" : "Trouble call");
      const refused = await changeChosen((job) =>
        ask({ do: "job-mark", job, mark, value, note: said, when: moment() }));
      await this.#show();
      if (refused) this.#say(refused);
    }
  },
);

/** Says why a field's figure is refused, or takes that back. */
function flag(field, why) {
  field.querySelector(".calc-error").textContent = why;
  for (const box of field.querySelectorAll("input")) {
    if (why) box.setAttribute("aria-invalid", "true");
    else box.removeAttribute("aria-invalid");
  }
}

function put(part, html) {
  if (part && part.innerHTML !== html) part.innerHTML = html;
}

/** A job that nothing is in yet and that is not kept, to show a sheet by. */
async function blank() {
  return (await ask({ do: "job-new", name: "", date: today() })).job;
}

// Drafts: what is typed and not kept, by job and field. Written at once, unlike the job itself.
const NO_JOB = "drafts "; // what is typed first starts one

function draftKey() {
  return NO_JOB + (stored("current-job") ?? "");
}

/**
 * Whether a draft is older than the figure that the job has by now, and was not typed over it. A
 * browser that is killed may forget that a draft was taken away, and a clock may be set back.
 */
function outdated({ over, when }, now) {
  return now?.when > when && now.when !== over;
}

function drafts(key = draftKey()) {
  return Object.entries(JSON.parse(stored(key) ?? "{}"));
}

function note(name, value) {
  store(draftKey(), JSON.stringify({ ...Object.fromEntries(drafts()), [name]: value }));
}

function forget(name, key) {
  const left = drafts(key).filter(([each]) => each !== name);
  store(key, left.length ? JSON.stringify(Object.fromEntries(left)) : "");
}

/** A draft goes along when its job was parted from what another tab has made of it. */
function follow(name, value, key) {
  if (key === draftKey()) return;
  note(name, value);
  forget(name, key);
}
