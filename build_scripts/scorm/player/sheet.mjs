// A sheet: one variant of each problem of a set, and how its questions stand after some tries.
// Rows are read as calc/coursework/package.py writes them; tries are replayed as record.py does.

import { judged } from "./grading.mjs";

export function sheet(set, number) {
  return {
    number,
    code: set.codes[number - 1],
    problems: set.problems.map((problem) => dealt(problem, problem.rows[number - 1], set.answers)),
  };
}

function dealt(problem, row, answers) {
  const about = { name: problem.name, form: problem.form };
  if (problem.facts) {
    return { ...about, text: "", known: {}, questions: row.map((each, at) => recalled(problem, each, at)) };
  }
  const [places, right = [], slipped = [], known = []] = row;
  const drawn = Object.entries(problem.draws).map(([name, words], at) => [name, words[places[at]]]);
  return {
    ...about,
    text: drawn.reduce((text, [name, words]) => text.replaceAll(`{${name}}`, words), problem.text),
    known: answers ? Object.fromEntries(problem.known.map((name, at) => [name, known[at]])) : {},
    questions: problem.questions.map(
      (question, at) => ({ ...question, right: right[at], slipped: slipped[at] }),
    ),
  };
}

function recalled(problem, [place, order, right], at) {
  const fact = problem.facts[place];
  const options = order.map((word, letter) => ["abcdef"[letter], fact.options[word]]);
  return {
    name: `q${at + 1}`,
    ask: fact.ask,
    section: fact.section,
    marks: 1,
    options: Object.fromEntries(options),
    right,
    because: fact.because,
    help: [`Read “${fact.section}” again.`, [], []],
  };
}

/** Standings by problem and question. A try is [problem, question, text, unit], names as in the set. */
export function replayed(sheet, tries, book) {
  const standings = new Map();
  for (const problem of sheet.problems) {
    for (const question of problem.questions) {
      const at = `${problem.name} ${question.name}`;
      standings.set(at, { problem, question, best: 0, tries: 0, misses: 0, last: null });
    }
  }
  for (const each of tries) tried(standings, each, book);
  return standings;
}

/** Judges a try by those before it and counts it, unless it cannot be read. */
export function tried(standings, [name, asked, text, unit], book) {
  const standing = standings.get(`${name} ${asked}`);
  const { problem, question } = standing;
  const verdict = judged(problem, question, text, unit, own(standings, problem), book);
  if (verdict.judged !== "ask") take(standing, verdict);
  return verdict;
}

/** The student's own figures of a problem, SI, by question. */
function own(standings, problem) {
  const figures = {};
  for (const { name } of problem.questions) {
    const value = standings.get(`${problem.name} ${name}`).last?.value;
    if (typeof value === "number") figures[name] = value;
  }
  return figures;
}

/** A guess among options costs what chance would have brought. */
function take(standing, verdict) {
  standing.last = verdict;
  standing.tries += 1;
  const { options } = standing.question;
  const left = options ? Math.max(0, 1 - standing.misses / (Object.keys(options).length - 1)) : 1;
  standing.best = Math.max(standing.best, verdict.marks * left);
  if (!["right", "digits", "kept"].includes(verdict.judged)) standing.misses += 1;
}

/** Share of the marks that are earned, 0 to 1. */
export function score(standings) {
  const many = [...standings.values()];
  const earned = many.reduce((sum, each) => sum + each.best * each.question.marks, 0);
  return earned / many.reduce((sum, each) => sum + each.question.marks, 0);
}

/** Help grows with misses: the step, its formula, another variant worked. */
export function helpAfter(misses, question) {
  if (!question.help) return [];
  const [step, formula, worked] = question.help;
  return [...(misses >= 1 ? [step] : []), ...(misses >= 2 ? formula : []), ...(misses >= 3 ? worked : [])];
}

export const done = ({ last, best }) => best === 1 || ["right", "kept"].includes(last?.judged);
