// The page: one question at a time. All words of the set go in as text.

import { question as questionView } from "./question.mjs";
import { done } from "./sheet.mjs";
import { button, element as el } from "./element.mjs";

const MODES = {
  normal: "Your answers and your score go to the LMS as you check them.",
  review: "You are looking back: nothing can be changed and nothing is sent.",
  browse: "The LMS shows this sheet without taking answers: nothing can be changed.",
  practice: "No LMS was found, so this is practice: nothing is sent, and nothing is kept when you "
    + "leave the page.",
  left: "Finished. Everything is with the LMS; you can close this page.",
};

export function draw(sitting, practise) {
  const { set } = sitting.book;
  const notices = el("div", { role: "status", className: "notices" });
  const questions = el("ol");
  const main = el("main");
  const marks = el("p", { role: "status", className: "marks" });
  const many = () => [...sitting.standings.values()];
  let at = Math.max(many().findIndex((each) => !done(each)), 0);

  function refresh() {
    const mode = sitting.lms && !sitting.lms.open ? "left" : sitting.mode;
    notices.replaceChildren(...[MODES[mode], ...sitting.notes].map((words) => el("p", {}, words)));
    questions.replaceChildren(...many().map(step));
    marks.textContent = set.answers ? marked(many(), sitting.score) : kept(many());
  }

  function step(standing, place) {
    const look = button(`${place + 1}${sign(standing)}`, () => show(place));
    look.setAttribute("aria-label", `Question ${place + 1}: ${state(standing)}`);
    if (place === at) look.setAttribute("aria-current", "step");
    return el("li", {}, look);
  }

  function show(place) {
    at = place;
    const ways = el("p", { className: "ways" });
    if (at > 0) ways.append(button("Previous", () => show(at - 1)));
    if (at < many().length - 1) ways.append(button("Next", () => show(at + 1)));
    main.replaceChildren(questionView(sitting, at, refresh), ways);
    refresh();
    main.querySelector("h2").focus();
  }

  const heading = el("header", {},
    el("p", {}, "Pail and Timer"),
    el("h1", {}, set.title),
    el("p", {}, `Variant ${sitting.sheet.number} of 400, revision ${set.revision}, check code ${sitting.sheet.code}`),
  );
  const finish = button("Finish", () => { sitting.lms.finish(); show(at); finish.remove(); });
  const foot = el("footer", {}, marks, button("Save my answers as a file", () => save(sitting)));
  if (sitting.mode === "normal") foot.append(finish);
  if (sitting.mode === "practice") foot.append(anotherVariant(practise));
  const about = el("nav", { "aria-label": "Questions" }, questions);
  document.body.replaceChildren(heading, notices, about, main, foot);
  show(at);
}

function state({ last, best, question }) {
  if (!last) return "not yet answered";
  if (last.judged === "kept") return "answered";
  return `${number(best * question.marks)} of ${question.marks} marks`;
}

function sign(standing) {
  if (!standing.last) return "";
  if (done(standing)) return "\u00a0✓";
  return "\u00a0…";
}

function marked(many, score) {
  const earned = many.reduce((sum, each) => sum + each.best * each.question.marks, 0);
  const full = many.reduce((sum, each) => sum + each.question.marks, 0);
  return `Marks: ${number(earned)} of ${full}. Score: ${number(score * 100)} %.`;
}

function kept(many) {
  return `Answered: ${many.filter((each) => each.last).length} of ${many.length}. Your instructor grades them.`;
}

const number = (value) => String(Math.round(value * 100) / 100);

function save(sitting) {
  const text = JSON.stringify(sitting.response());
  const href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const name = `${sitting.book.set.set}-${sitting.sheet.number}.json`;
  el("a", { href, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(href), 60000);
}

function anotherVariant(practise) {
  const field = el("input", { id: "variant", inputMode: "numeric", autocomplete: "off" });
  const label = el("label", { htmlFor: "variant" }, "Another variant, 1 to 400");
  const form = el("form", { className: "variant" }, label, field, el("button", {}, "Open"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    practise(Number(field.value));
  });
  return form;
}
