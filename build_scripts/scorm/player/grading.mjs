// What an answer is worth and what to say of it: calc/coursework/grading.py.

import { Refused, significant } from "./figures.mjs";
import { intoSi, outOfSi, read } from "./quantity.mjs";

const FEW_DIGITS = 0.9;
const OTHER_UNIT = 0.5;

/**
 * `problem` and `question` are of a sheet (sheet.mjs), `own` the student's earlier figures of
 * the problem, SI, by question. `book` has what is the same for all sets: kinds and reasons.
 */
export function judged(problem, question, text, unit, own, book) {
  if (question.options) return picked(question, text.trim(), book);
  let value, given;
  try {
    [value, given] = read(question, text, unit, book.kinds);
  } catch (refused) {
    if (!(refused instanceof Refused)) throw refused;
    return { judged: "ask", marks: 0, says: askedBack(question, refused, book) };
  }
  if (!book.set.answers) return { judged: "kept", marks: 0, says: "Kept.", value };
  const verdict = weighed(problem, question, text, value, own, book);
  if (verdict.judged === "wrong" && inAnotherUnit(question, outOfSi(given, value))) {
    return { judged: "unit", marks: OTHER_UNIT, says: "The number is right. Check the unit.", value };
  }
  return verdict;
}

function picked(question, option, book) {
  if (!Object.hasOwn(question.options, option)) return { judged: "ask", marks: 0, says: "Pick one." };
  if (!book.set.answers) return { judged: "kept", marks: 0, says: "Kept.", value: option };
  if (option === question.right) {
    return { judged: "right", marks: 1, says: `Right. ${question.because}`, value: option };
  }
  return { judged: "wrong", marks: 0, says: "No.", value: option };
}

function askedBack(question, refused, book) {
  if (refused.reason === "no unit") {
    return "In which unit? Choose one, or write it behind the number.";
  }
  const facts = { example: "For example 4.63.", wanted: question.kind, ...refused.facts };
  return book.reasons[refused.reason].replace(/\{(\w+)\}/g, (_, name) => facts[name] ?? "");
}

function weighed(problem, question, text, value, own, book) {
  const right = near(question, value);
  if (right || nearOwn(problem, question, value, own, book)) {
    const rest = { value, own: !right };
    if (significant(text) < question.digits) {
      const says = `The value is right. Give ${question.digits} significant figures.`;
      return { judged: "digits", marks: FEW_DIGITS, says, ...rest };
    }
    const says = right ? "Right." : "Right for your own earlier figure. That one is not.";
    return { judged: "right", marks: 1, says, ...rest };
  }
  for (const [hint, marks, wrong] of slips(question)) {
    if (near(question, value, wrong)) {
      return { judged: "slip", marks, says: hint, value };
    }
  }
  return { judged: "wrong", marks: 0, says: "Not yet.", value };
}

function slips(question) {
  const own = question.slips.map(([hint, marks], at) => [hint, marks, question.slipped[at]]);
  const common = question.common.map(
    ([hint, marks, factor, added]) => [hint, marks, question.right * factor + added],
  );
  return [...own.filter((each) => each[2] !== null), ...(question.right ? common : [])];
}

const absolute = (question) => question.band !== undefined;
const band = (question) => question.band ?? question.tolerance * Math.abs(question.right);
const EDGE = 1 + 1e-4; // what lies on the edge is within; these figures have seven digits

function near(question, value, about = question.right) {
  const share = absolute(question) || !question.right ? 1 : Math.abs(about / question.right);
  return Math.abs(value - about) <= band(question) * share * EDGE;
}

function inAnotherUnit(question, number) {
  return question.units.some((unit) => near(question, intoSi(unit, number)));
}

function nearOwn(problem, question, value, own, book) {
  if (!question.follows.length || !Object.keys(own).length) return false;
  const follows = followed(problem, question, own, book);
  return Number.isFinite(follows) && near(question, value, follows);
}

/** What the steps give for a question with the student's own figures, SI. */
export function followed(problem, question, own, book) {
  const k = { ...problem.known };
  for (const before of problem.questions) {
    if (before === question) break;
    k[before.name] = own[before.name] ?? before.right;
  }
  for (const [letter, script] of question.follows) k[letter] = book.steps[script](k);
  return k[question.name];
}
