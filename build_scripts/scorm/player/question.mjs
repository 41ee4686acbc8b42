// One question: its words, a field for the answer, what was said of it, help, and the working.

import { element as el } from "./element.mjs";
import { done, helpAfter } from "./sheet.mjs";

/** `told` is called when an answer has been judged. */
export function question(sitting, at, told) {
  const standing = [...sitting.standings.values()][at];
  const { problem, question: asked } = standing;
  const place = problem.questions.indexOf(asked) + 1;
  const verdict = el("div", { role: "status", className: "verdict" });
  const help = el("div", { className: "help" });
  const form = el("form", { noValidate: true });

  function refresh(says) {
    const over = !sitting.changes || (done(standing) && sitting.book.set.answers);
    form.querySelector("fieldset").disabled = over;
    form.querySelector("button").hidden = over;
    verdict.replaceChildren(...(says ? [el("p", {}, says)] : []));
    verdict.dataset.judged = standing.last?.judged ?? "";
    const lines = done(standing) ? [] : helpAfter(standing.misses, asked);
    help.replaceChildren(...lines.map((line) => el("p", {}, line)), ...working(sitting, problem));
  }

  form.append(field(asked, sitting.tries.findLast(
    ([name, question]) => name === problem.name && question === asked.name,
  )), el("button", { className: "check" }, sitting.book.set.answers ? "Check" : "Keep"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const typed = new FormData(form);
    const { judged, says } = sitting.answer(
      standing, typed.get("answer") ?? "", typed.get("unit") ?? "",
    );
    refresh(says);
    verdict.dataset.judged = judged;
    told();
  });
  refresh(standing.last?.says);
  return el("section", {},
    el("h2", { tabIndex: -1 }, `Question ${at + 1} of ${sitting.standings.size}`),
    el("p", { className: "form" }, `${problem.form}, part ${place} of ${problem.questions.length}`),
    ...(problem.text ? [el("p", { className: "story" }, problem.text)] : []),
    form, verdict, help,
  );
}

function field(asked, [, , text, unit] = ["", "", "", ""]) {
  const marks = asked.marks > 1 ? ` (${asked.marks} marks)` : "";
  const legend = el("legend", {}, `${asked.ask}${marks}`);
  const controls = asked.options ? choice(asked, text) : figure(asked, text, unit);
  return el("fieldset", {}, legend, ...controls);
}

function choice(asked, picked) {
  return Object.entries(asked.options).map(([value, words]) => el("label", { className: "option" },
    el("input", { type: "radio", name: "answer", value, checked: value === picked }),
    el("span", {}, words),
  ));
}

function figure(asked, text, unit) {
  const digits = asked.digits > 1 ? `, to ${asked.digits} significant figures` : "";
  const input = el("input", { name: "answer", value: text, autocomplete: "off", spellcheck: false });
  const symbols = asked.units.map(([symbol]) => symbol);
  const made = [el("label", {}, el("span", {}, `Answer${digits}`), input)];
  if (symbols.some(Boolean)) {
    const select = el("select", { name: "unit" }, el("option", { value: "" }, "choose"),
      ...symbols.filter(Boolean).map((symbol) => el("option", { value: symbol }, symbol)));
    select.value = unit;
    made.push(el("label", {}, el("span", {}, "Unit"), select));
  }
  return made;
}

/** The problem's working with the student's own numbers, once all of it is done. */
function working(sitting, problem) {
  const lines = sitting.book.working?.[problem.name];
  const all = [...sitting.standings.values()].filter((each) => each.problem === problem);
  if (!lines || !all.every(done)) return [];
  const [shape, ...figures] = lines.rows[sitting.sheet.number - 1];
  const words = lines.shapes[shape].map((text, place) => text + (figures[place] ?? ""));
  return [el("details", { open: true }, el("summary", {}, "The working"),
    ...words.join("").split("\n").map((line) => el("p", {}, line)))];
}
