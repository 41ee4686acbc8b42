// One sitting at a sheet: whose it is, what was tried, and what the LMS is told of it.

import { seat, VARIANTS } from "./deck.mjs";
import { Lms, span } from "./lms.mjs";
import * as memory from "./memory.mjs";
import { done, replayed, score as earned, sheet, tried } from "./sheet.mjs";

const PASSED = ["passed", "completed"];

export class Sitting {
  tries = [];
  notes = [];
  #floor = 0;
  #asked = Date.now();

  /** `number` is a variant for practice; an LMS deals one by its own id of the learner. */
  constructor(book, window, number) {
    this.book = book;
    this.lms = Lms.found(window);
    const mode = this.lms?.value("cmi.core.lesson_mode");
    this.mode = this.lms ? (["review", "browse"].includes(mode) ? mode : "normal") : "practice";
    this.learner = this.lms?.value("cmi.core.student_id") ?? "";
    const kept = this.#kept();
    this.tries = kept?.tries ?? [];
    this.#floor = kept?.floor ?? 0;
    this.sheet = sheet(book.set, kept?.number ?? (this.lms ? this.#seat() : number));
    this.standings = replayed(this.sheet, this.tries, book);
    if (this.mode === "normal") this.#begin();
  }

  #kept() {
    const { set } = this.book;
    const text = this.lms?.value("cmi.suspend_data") ?? "";
    const kept = text && memory.read(text, set.revision, (number) => sheet(set, number));
    if (text && !kept) this.notes.push("What the LMS kept of this sheet cannot be read. You begin anew.");
    if (kept?.outdated) {
      this.notes.push("The set has been revised since you were here. You begin anew, with other numbers.");
    }
    return kept?.tries ? kept : null;
  }

  /** An LMS that names nobody gets a variant by chance; what it keeps holds the number. */
  #seat() {
    return this.learner ? seat(this.book.section, this.learner) : byChance();
  }

  #begin() {
    this.lms.set("cmi.core.exit", "suspend");
    if (!PASSED.includes(this.lms.value("cmi.core.lesson_status"))) {
      this.lms.set("cmi.core.lesson_status", "incomplete");
    }
    this.#keep();
    this.lms.commit();
  }

  get changes() {
    return this.mode === "practice" || (this.mode === "normal" && this.lms.open);
  }

  get score() {
    return Math.max(this.#floor, earned(this.standings));
  }

  get finished() {
    return [...this.standings.values()].every(done);
  }

  /** Judges an answer; one that can be read counts, and the LMS is told. */
  answer(standing, text, unit) {
    const { problem, question } = standing;
    const each = [problem.name, question.name, text, unit];
    const verdict = tried(this.standings, each, this.book);
    if (verdict.judged === "ask") return verdict;
    this.tries.push(each);
    if (this.mode === "normal") this.#report(standing);
    return verdict;
  }

  #report(standing) {
    this.lms.refused.clear();
    this.notes = [];
    if (this.book.set.answers) this.#grade();
    else if (this.finished) this.lms.set("cmi.core.lesson_status", "completed");
    this.#keep();
    this.#interaction(standing);
    this.#asked = Date.now();
    if (!this.lms.commit()) this.notes.push("The LMS did not keep this. Stay on the page and check once more.");
    if (this.lms.refused.has("cmi.suspend_data")) {
      this.notes.push("The LMS does not take your answers: they will not be here when you come back.");
    }
    if (this.lms.refused.has("cmi.core.score.raw")) this.notes.push("The LMS does not take the score.");
  }

  #grade() {
    this.lms.set("cmi.core.score.min", 0);
    this.lms.set("cmi.core.score.max", 100);
    this.lms.set("cmi.core.score.raw", decimal(this.score * 100));
    const mastery = parseFloat(this.lms.value("cmi.student_data.mastery_score"));
    if (this.score * 100 >= (Number.isNaN(mastery) ? this.book.mastery : mastery)) {
      this.lms.set("cmi.core.lesson_status", "passed");
    }
  }

  #keep() {
    const { set } = this.book;
    const { sheet, tries, score } = this;
    const { full, text } = memory.written(sheet, set.revision, tries, score, this.#floor);
    this.lms.set("cmi.suspend_data", text);
    if (full) {
      this.notes.push(
        "The room that an LMS has for one sheet is full. The score stays and still counts what you "
        + "try now, but these tries will not be here when you come back.",
      );
    }
  }

  /** An LMS may do without interactions, so nothing hangs on them. */
  #interaction({ problem, question, tries, last }) {
    const count = parseInt(this.lms.value("cmi.interactions._count"), 10);
    if (Number.isNaN(count)) return;
    const options = Object.keys(question.options ?? {});
    const told = {
      id: `${problem.name}.${question.name}.try${tries}`,
      type: options.length ? "choice" : "numeric",
      student_response: options.length ? "abcdef"[options.indexOf(last.value)] : decimal(last.value),
      ...(this.book.set.answers && { result: result(last) }),
      weighting: question.marks,
      latency: span(Date.now() - this.#asked),
      time: new Date().toTimeString().slice(0, 8),
    };
    for (const [name, value] of Object.entries(told)) {
      this.lms.set(`cmi.interactions.${count}.${name}`, value);
    }
  }

  /** The response file that `python -m calc regrade` takes. */
  response() {
    const { set, section } = this.book;
    return {
      format: "pail-and-timer responses",
      version: 1,
      set: set.set,
      revision: set.revision,
      section,
      learner: this.learner,
      variant: this.sheet.number,
      code: this.sheet.code,
      claimed: set.answers ? Math.round(this.score * 1e4) / 1e4 : null,
      tries: this.tries,
    };
  }
}

export const byChance = () => 1 + Math.floor(Math.random() * VARIANTS);

function result({ judged: how, marks }) {
  if (how === "right") return "correct";
  return marks ? decimal(marks) : "wrong";
}

/** A SCORM decimal has no exponent. */
function decimal(number) {
  const text = String(Number(number.toPrecision(7)));
  return text.includes("e") ? Number(text).toFixed(12).replace(/\.?0+$/, "") : text;
}
