// <calc-course> is the page of a problem set: a sheet of one variant, checked one answer at a time.
// Only Python deals and judges; here stands what was tried, and it is sent again with each question.
// Every keystroke is kept at once, so a closed tab or an empty battery loses nothing.
import { ask } from "./python.js";
import { save } from "./save.js";
import { fleeting, store, stored } from "./stored.js";

const CLASS = "coursework-class"; // class, learner and the school's word are the same for all sets

customElements.define(
  "calc-course",
  class extends HTMLElement {
    #queue = Promise.resolve(); // each answer is judged after those before it
    #sheet; // {number, word} of the sheet that is shown
    #gone; // {id, was}: a sheet begun anew, as it was

    connectedCallback() {
      this.#part("desk").hidden = false;
      for (const [name, text] of Object.entries(read(CLASS))) this.#part(name).value = text;
      this.addEventListener("submit", (event) => {
        event.preventDefault();
        this.#try(() => this.#submitted(event.target));
      });
      this.addEventListener("input", ({ target }) => this.#typed(target));
      this.addEventListener("change", ({ target }) => {
        if (this.#sheet && target === this.#part("word")) this.#try(() => this.#show());
      });
      this.addEventListener("click", ({ target }) => this.#try(() => this.#clicked(target.closest("[data-do]"))));
      const { number } = read(this.#key);
      if (!number) return; // nobody's data plan is spent unasked
      this.#part("number").value = number;
      this.#try(() => this.#show());
    }

    #part(name) {
      return this.querySelector(`[data-part=${name}]`);
    }

    #try(what) {
      this.#queue = this.#queue.then(what).catch(({ message }) => {
        this.#say(`That did not work: ${message} What you typed still stands here.`);
      });
    }

    #say(text) {
      const lost = fleeting(this.#key) && "This browser keeps nothing: save your responses before you leave the page.";
      this.#part("said").textContent = [text, lost].filter(Boolean).join(" ");
    }

    get #key() {
      return `coursework-${this.dataset.set}`;
    }

    /** Under which name a sheet's tries are kept: another revision or word is another sheet. */
    get #id() {
      const { number, word } = this.#sheet;
      return JSON.stringify([this.dataset.revision, word, Number(number)]);
    }

    get #progress() {
      return read(this.#key).sheets?.[this.#id] ?? { tries: [], drafts: {} };
    }

    /** Changes what is kept of the sheet. Read anew each time: another tab may have the same one. */
    #change(how) {
      const progress = this.#progress;
      how(progress);
      const { sheets } = read(this.#key);
      const { number } = this.#sheet;
      store(this.#key, JSON.stringify({ number, sheets: { ...sheets, [this.#id]: progress } }));
    }

    #asked(what) {
      const { set, calculators } = this.dataset;
      const who = { section: this.#part("section").value, learner: this.#part("learner").value };
      const { tries } = this.#sheet ? this.#progress : { tries: [] };
      return { do: `course-${what}`, set, calculators: calculators.split(" "), ...who, ...this.#sheet, tries };
    }

    async #submitted(form) {
      if (form.dataset.problem) return this.#check(form);
      await this.#show();
    }

    async #clicked(button) {
      const does = { next: this.#next, anew: this.#anew, back: this.#back, deal: this.#deal, save: this.#save };
      await does[button?.dataset.do]?.call(this);
    }

    async #show() {
      const before = this.#sheet;
      this.#sheet = { number: this.#part("number").value.trim(), word: this.#part("word").value.trim() };
      this.#say("Dealing the sheet…");
      const reply = await ask(this.#asked("show"));
      if (reply.refused) {
        this.#sheet = before;
        return this.#say(reply.refused);
      }
      this.#part("sheet").innerHTML = reply.html;
      this.#part("score").textContent = reply.score;
      this.#part("number").value = reply.number;
      this.#part("back").hidden = this.#gone?.id !== this.#id;
      this.#part("example").hidden = true;
      for (const form of this.querySelectorAll("[data-problem]")) this.#draw(form);
      this.#change(() => {}); // that this is the sheet in use
      this.#say(`This is variant ${reply.number}. ${this.#former()}`);
    }

    /** Tries on another revision had other numbers, and count no more. */
    #former() {
      const revisions = Object.keys(read(this.#key).sheets).map((id) => JSON.parse(id)[0]);
      if (revisions.every((each) => each === this.dataset.revision)) return "";
      return "The set has been revised: what you did before had other numbers.";
    }

    /** Puts back what was typed and not yet checked. */
    #draw(form) {
      const draft = this.#progress.drafts[nameOf(form)];
      if (!draft) return;
      putIn(form, draft);
      form.dataset.changed = "";
    }

    #typed(control) {
      const form = control.closest("[data-problem]");
      if (form) {
        form.dataset.changed = ""; // what was said of another answer is not to be read beside this
        this.#change(({ drafts }) => { drafts[nameOf(form)] = answerIn(form); });
      } else if (control !== this.#part("number")) {
        const parts = ["section", "learner", "word"].map((name) => [name, this.#part(name).value]);
        store(CLASS, JSON.stringify(Object.fromEntries(parts)));
      }
    }

    async #check(form) {
      const answer = answerIn(form);
      const made = [form.dataset.problem, form.dataset.question, ...answer];
      const told = form.querySelector("[data-told]");
      told.replaceChildren(); // the same words once more are told once more
      const asked = this.#asked("check");
      const reply = await ask({ ...asked, tries: [...asked.tries, made] });
      if (reply.refused) return this.#say(reply.refused);
      const same = String(answerIn(form)) === String(answer);
      if (reply.counts) {
        this.#change(({ tries, drafts }) => {
          tries.push(made);
          if (same) delete drafts[nameOf(form)];
        });
      }
      if (same) delete form.dataset.changed;
      told.innerHTML = reply.told;
      for (const box of form.querySelectorAll("input")) box.toggleAttribute("aria-invalid", !reply.counts);
      this.querySelector(`[data-worked="${form.dataset.problem}"]`).innerHTML = reply.worked;
      this.#part("score").textContent = reply.score;
      this.#say("");
    }

    async #next() {
      const { number } = this.#sheet ?? { number: 0 };
      this.#part("number").value = (Number(number) % Number(this.dataset.variants)) + 1;
      await this.#show();
    }

    async #anew() {
      if (!this.#sheet) return this.#say("No sheet is shown yet.");
      this.#gone = { id: this.#id, was: this.#progress };
      this.#change((sheet) => Object.assign(sheet, { tries: [], drafts: {} }));
      await this.#show();
    }

    async #back() {
      const { was } = this.#gone;
      this.#gone = undefined;
      this.#change((sheet) => Object.assign(sheet, was));
      await this.#show();
    }

    async #deal() {
      const { number, refused } = await ask(this.#asked("deal"));
      if (refused) return this.#say(refused);
      this.#part("number").value = number;
      await this.#show();
    }

    async #save() {
      if (!this.#sheet) return this.#say("No sheet is shown yet.");
      const { file, name, refused, says } = await ask(this.#asked("response"));
      if (file) save(file, "application/json", name);
      this.#say(refused ?? says);
    }
  },
);

function nameOf({ dataset: { problem, question } }) {
  return `${problem}.${question}`;
}

/** [text, unit] as it stands in the boxes of a question. */
function answerIn(form) {
  const box = form.querySelector("input[type=text], input:checked");
  return [box?.value ?? "", form.querySelector("select")?.value ?? ""];
}

function putIn(form, [text, unit]) {
  for (const radio of form.querySelectorAll("input[type=radio]")) radio.checked = radio.value === text;
  for (const box of form.querySelectorAll("input[type=text]")) box.value = text;
  for (const select of form.querySelectorAll("select")) select.value = unit;
}

function read(name) {
  try {
    return JSON.parse(stored(name) ?? "{}");
  } catch {
    return {}; // written by another hand
  }
}
