// A quantity read from what was typed: Kind.read of calc/quantity.py.
// A unit is [symbol, scale, zero, other ways to write it]: SI = number * scale + zero.

import { numberAt, plain, readNumber, Refused } from "./figures.mjs";

const CLOCK = /^(\d{1,4}):([0-5]?\d(?:[.,]\d+)?)$/;
const MINUTE = 60;
const LONGEST = 60;
const NONE = ["", NaN, 0, []]; // a bare number then comes to no number

export const intoSi = ([, scale, zero], number) => number * scale + zero;
export const outOfSi = ([, scale, zero], value) => (value - zero) / scale;

// The micro sign and the Greek letter are one; Python's casefold knows, toLowerCase does not.
const folded = (text) => text.toLowerCase().replaceAll("\u00b5", "\u03bc");

export function unitNamed(units, symbol) {
  const wanted = folded(symbol);
  return units.find(([own, , , also]) => [own, ...also].some((each) => folded(each) === wanted));
}

/** SI value of an answer and its unit. `kinds` are [name, its symbols] of all that is measured. */
export function read(question, text, symbol, kinds) {
  if ([...text].length > LONGEST) {
    throw new Refused("unreadable", { text: `${[...text].slice(0, LONGEST).join("")}…` });
  }
  const chosen = unitNamed(question.units, symbol);
  if (!chosen && symbol) throw new Refused("unknown unit", { text: symbol });
  const [value, given] = quantity(question, text, chosen ?? NONE, kinds);
  if (Number.isNaN(value)) throw new Refused("no unit");
  return [value, given];
}

function quantity(question, text, unit, kinds) {
  const body = plain(text);
  if (!body) throw new Refused("blank");
  const clock = question.kind === "time" && CLOCK.exec(body);
  if (clock) return [Number(clock[1]) * MINUTE + readNumber(clock[2]), unit];
  const [[number, first], ...rest] = pairs(question, body, unit, kinds);
  let value = intoSi(first, number);
  for (const [more, each] of rest) {
    if (each[2] || more < 0) throw new Refused("unreadable", { text });
    value += (body[0] === "-" ? -1 : 1) * more * each[1];
  }
  if (Math.abs(value) === Infinity) throw new Refused("unreadable", { text });
  return [value, rest.length ? unit : first];
}

function pairs(question, body, unit, kinds) {
  const found = [];
  const symbols = new Set(kinds.flatMap(([, many]) => many.map(folded)));
  for (let place = 0; place < body.length;) {
    const start = place;
    const number = numberAt(body, place);
    if (number === null) throw new Refused("unreadable", { text: body });
    place += number.length;
    const symbol = symbolAt(body, place, symbols);
    if (!symbol) {
      const text = body.slice(place).trim() || body;
      if (place < body.length || start) throw new Refused("unknown unit", { text });
      return [...found, [readNumber(number), unit]];
    }
    place = symbol.end;
    found.push([readNumber(number), own(question, symbol.text, kinds)]);
  }
  return found;
}

function own(question, symbol, kinds) {
  const unit = unitNamed(question.units, symbol);
  if (unit) return unit;
  const [kind] = kinds.find(([, many]) => many.some((each) => folded(each) === folded(symbol)));
  throw new Refused("wrong kind", { unit: symbol, kind });
}

/** The longest symbol that stands at `place`, and where it ends, blanks and a comma skipped. */
function symbolAt(body, place, symbols) {
  const start = place + /^\s*/u.exec(body.slice(place))[0].length;
  const longest = Math.max(...[...symbols].map((each) => each.length));
  for (let end = Math.min(body.length, start + longest); end > start; end -= 1) {
    const splitsWord = /^\p{L}\p{L}/u.test(body.slice(end - 1, end + 1));
    if (!splitsWord && symbols.has(folded(body.slice(start, end)))) {
      return { text: body.slice(start, end), end: end + /^[\s,]*/u.exec(body.slice(end))[0].length };
    }
  }
  return null;
}
