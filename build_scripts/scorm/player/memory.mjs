// What the LMS keeps for us between two sittings: cmi.suspend_data, at most 4096 characters.
// "1~revision~variant~floor~" and then a try each: places of problem, question and unit in the
// set, and the text. All ASCII, so that it is as long in bytes. The floor is the score held when
// there was no more room, in hundredths of a per cent.

import { plain } from "./figures.mjs";

const FORMAT = "1";
const MOST = 4096;
const FLOOR = 5; // characters, 10000 at most
const NO_UNIT = "-";

const escaped = (text) =>
  text.replace(/[^ -}]|[%~]/gu, (sign) => (sign === "~" ? "%7E" : encodeURIComponent(sign)));

/**
 * `full`: that these tries do not all fit. Those kept are then the first ones, and the score is
 * kept beside them; `floor` is a score so kept before.
 */
export function written(sheet, revision, tries, score, floor) {
  const head = [FORMAT, revision, sheet.number].join("~");
  const told = tries.map((each) => tried(sheet, each));
  let room = MOST - head.length - FLOOR - 2;
  const kept = [];
  for (const each of told) {
    room -= each.length + 1;
    if (room < 0) break;
    kept.push(each);
  }
  const full = kept.length < told.length;
  const held = full || floor ? Math.round(score * 1e4) : "";
  return { full, text: [head, held, ...kept].join("~") };
}

function tried(sheet, [name, asked, text, unit]) {
  const problem = sheet.problems.findIndex((each) => each.name === name);
  const { questions } = sheet.problems[problem];
  const question = questions.findIndex((each) => each.name === asked);
  const units = questions[question].units ?? [];
  const at = units.findIndex(([symbol]) => symbol === unit);
  const places = [problem, question].map((each) => each.toString(36)).join("");
  return places + (at < 0 ? NO_UNIT : at.toString(36)) + escaped(plain(text));
}

/** Variant, floor and the tries in names; null for nothing of ours. `sheetOf` makes the sheet. */
export function read(text, revision, sheetOf) {
  const [format, of, number, floor, ...told] = text.split("~");
  if (format !== FORMAT || !/^[1-9]\d*$/.test(number ?? "")) return null;
  if (of !== revision) return { outdated: true };
  try {
    const sheet = sheetOf(Number(number));
    const tries = told.map((each) => triedBefore(sheet, each));
    return { number: Number(number), floor: Number(floor) / 1e4, tries };
  } catch {
    return null; // cut short or altered
  }
}

function triedBefore(sheet, told) {
  const problem = sheet.problems[parseInt(told[0], 36)];
  const question = problem.questions[parseInt(told[1], 36)];
  const unit = told[2] === NO_UNIT ? "" : question.units[parseInt(told[2], 36)][0];
  return [problem.name, question.name, decodeURIComponent(told.slice(3)), unit];
}
