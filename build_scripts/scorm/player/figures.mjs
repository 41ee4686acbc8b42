// Figures as people write them: calc/figures.py, for a page without Python.

export class Refused extends Error {
  constructor(reason, facts = {}) {
    super(reason);
    this.reason = reason;
    this.facts = facts;
  }
}

const LONGEST = 40;
const TYPED = new Map(Object.entries({
  "\u2212": "-", "–": "-", "⁄": "/", "′": "'", "’": "'", "″": '"', "”": '"',
  "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3",
  "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
}));
const TYPESET = new RegExp(`[${[...TYPED.keys()].join("")}]`, "gu");

// JavaScript's \s is every blank there is; a number holds only those of a typewriter.
const BLANK = "[ \\t\\n\\r\\f\\v]";
const GROUP = "[ \\u2009\\u202f\\u00a0]";
const MIXED = `(?:(\\d+)(?:${BLANK}+|${BLANK}*-${BLANK}*))?(\\d+)${BLANK}*/${BLANK}*(\\d+)`;
const GROUPED = `\\d{1,3}(?:${GROUP}\\d{3})+`;
const NUMBER = `[-+]?${BLANK}*(?:${MIXED}|${GROUPED}(?:[.,]\\d+)?(?!\\d)`
  + "|(?:\\d+(?:[.,]\\d+)*[.,]?|[.,]\\d+)(?:[eE][-+]?\\d+)?)";
const AMBIGUOUS = /^[1-9]\d{0,2},\d{3}$/;
const THOUSANDS = /^(?:\d{1,3}(?:,\d{3})*,\d{3}\.\d+|\d{1,3}(?:,\d{3}){2,})$/;
const DECIMAL = /^(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?$/i;

export function plain(text) {
  return text.trim().replace(TYPESET, (sign) => TYPED.get(sign)).trim();
}

/** The number that stands at `place`, as it is written; null if none does. */
export function numberAt(text, place) {
  const number = new RegExp(NUMBER, "y");
  number.lastIndex = place;
  return number.exec(text)?.[0] ?? null;
}

export function readNumber(text) {
  let body = plain(text);
  let sign = 1;
  if (body.startsWith("-") || body.startsWith("+")) {
    sign = body[0] === "-" ? -1 : 1;
    body = body.slice(1).trim();
  }
  if (AMBIGUOUS.test(body)) throw new Refused("ambiguous", { text });
  const value = unsigned(body);
  if (!Number.isFinite(value)) throw new Refused("unreadable", { text });
  return sign * value;
}

function unsigned(body) {
  if (body.length > LONGEST) return NaN;
  const mixed = new RegExp(`^${MIXED}$`).exec(body);
  if (mixed) {
    const [whole, over, under] = mixed.slice(1).map((part) => Number(part ?? 0));
    return under ? whole + over / under : NaN;
  }
  let digits = THOUSANDS.test(body) ? body.replaceAll(",", "") : body;
  digits = digits.replace(new RegExp(`${GROUPED}(?!\\d)`, "g"), (group) => group.replace(/\D/g, ""));
  digits = digits.replaceAll(",", ".");
  return DECIMAL.test(digits) ? Number(digits) : NaN;
}

/** Significant figures typed; without end for a fraction or for several numbers. */
export function significant(text) {
  const numbers = plain(text).match(new RegExp(NUMBER, "g")) ?? [];
  if (numbers.length !== 1 || /\//.test(numbers[0]) || text.includes(":")) return Infinity;
  const digits = numbers[0].split(/e/i)[0].replace(/\D/g, "").replace(/^0+/, "");
  return digits.length || Infinity;
}
