// <calc-form name="pail_flow"> makes a form live. The build has already drawn the form and
// a worked answer inside it, so without this file the page still reads and prints.
import { ask, start } from "./python.js";

const PAUSE = 900; // ms of quiet before a screen reader is told the finished sentence

customElements.define(
  "calc-form",
  class extends HTMLElement {
    #turn = 0;
    #typed = new Map(); // field -> {text, unit} as the reader typed it, whatever is shown
    #example = "";
    #speaking = 0;

    connectedCallback() {
      this.#example = this.#part(".calc-answer").innerHTML;
      this.addEventListener("input", (event) => this.#changed(event.target));
      this.addEventListener("focusin", warmUp, { once: true });
      this.addEventListener("submit", (event) => event.preventDefault());
    }

    /** Shows every field in the usual units of the set "us" or "si". */
    useUnits(set) {
      for (const radio of this.querySelectorAll("[data-units]")) radio.checked = radio.value === set;
      this.#work({ all: true });
    }

    #part(selector) {
      return this.querySelector(selector);
    }

    #changed(control) {
      if (control.dataset.units) {
        for (const form of document.querySelectorAll("calc-form")) form.useUnits(control.value);
        return;
      }
      const field = control.closest("[data-field]");
      const isUnit = control.tagName === "SELECT";
      // a text that means nothing cannot be converted: it is meant in the new unit
      if (!isUnit || field.querySelector("[aria-invalid]")) {
        this.#typed.set(field.dataset.field, shown(field));
      }
      this.#work({});
    }

    #request({ all }) {
      const fields = {};
      for (const field of this.querySelectorAll("[data-field]")) {
        const now = shown(field);
        const typed = this.#typed.get(field.dataset.field) ?? initial(field);
        fields[field.dataset.field] = { ...typed, show: all ? "" : now.unit };
      }
      const units = this.#part("[data-units]:checked")?.value ?? "us";
      const { key, root } = this.dataset;
      return { calculator: this.getAttribute("name"), key, root, units, fields };
    }

    async #work(what) {
      const turn = ++this.#turn;
      this.dataset.state = "working";
      clearTimeout(this.#speaking);
      const slow = setTimeout(() => this.#say("Starting the calculator…"), 250);
      try {
        const reply = await ask(this.#request(what));
        if (turn === this.#turn) this.#show(reply);
      } catch (fault) {
        if (turn === this.#turn) this.#fail(fault.message);
      } finally {
        clearTimeout(slow);
      }
    }

    #say(text) {
      this.#part(".calc-state").textContent = text;
    }

    #show(reply) {
      this.#part(".calc-answer").innerHTML = reply.answer;
      for (const field of this.querySelectorAll("[data-field]")) {
        mark(field, reply.fields[field.dataset.field]);
      }
      this.dataset.state = "answered";
      this.#say("");
      this.#speaking = setTimeout(() => this.#say(reply.says), PAUSE);
    }

    #fail(why) {
      this.#part(".calc-answer").innerHTML = this.#example;
      this.dataset.state = "failed";
      this.#say(`${why} What stands below is the worked example, not your figures.`);
    }
  },
);

function boxes(field) {
  return [...field.querySelectorAll("input[type=text]:not([data-sure])")];
}

function sureBox(field) {
  return field.querySelector("[data-sure]");
}

function joined(texts) {
  return texts.map((text) => text.trim()).filter(Boolean).join("; ");
}

/** What a field shows now: its text, and the unit chosen beside it. */
function shown(field) {
  const picked = field.querySelector("input[type=radio]:checked");
  if (picked) return { text: picked.value, unit: "" };
  const unit = field.querySelector("select")?.value ?? "";
  const sure = sureBox(field)?.value.trim() ?? "";
  return { text: joined(boxes(field).map((box) => box.value)), unit, sure };
}

/** What the build put there, in the unit the build chose. */
function initial(field) {
  const picked = field.querySelector("input[type=radio][checked]");
  if (picked) return { text: picked.defaultValue, unit: "" };
  const unit = field.querySelector("option[selected]")?.value ?? "";
  const sure = sureBox(field)?.defaultValue ?? "";
  return { text: joined(boxes(field).map((box) => box.defaultValue)), unit, sure };
}

/** Puts the reply for one field in place: error, reading, and the text if its unit changed. */
function mark(field, { text, unit, reading = "", sure, error }) {
  field.querySelector(".calc-error").textContent = error;
  for (const control of field.querySelectorAll("input")) {
    if (error) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
  }
  put(field.querySelector(".calc-reading"), "textContent", reading);
  if (unit === undefined) return;
  put(field.querySelector("select"), "value", unit);
  put(sureBox(field), "value", sure);
  if (text === shown(field).text) return;
  const texts = text.split(";");
  for (const [place, box] of boxes(field).entries()) box.value = (texts[place] ?? "").trim();
}

function put(element, property, value) {
  if (element && element[property] !== value) element[property] = value;
}

function warmUp() {
  start().catch(() => {}); // the first answer will say why
}

// Nobody's data plan is spent unasked: only a connection that says it is fast starts early.
if (navigator.connection?.effectiveType === "4g" && !navigator.connection.saveData) {
  (globalThis.requestIdleCallback ?? setTimeout)(() => {
    if (document.querySelector("calc-form")) warmUp();
  });
}
