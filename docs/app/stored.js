// Small things that the browser remembers by name. Where it refuses to, they last as long as the page.
const here = new Map();

export function stored(name) {
  try {
    return localStorage.getItem(name) ?? here.get(name);
  } catch {
    return here.get(name);
  }
}

/** Remembers a text, or forgets the name if there is none. */
export function store(name, text) {
  if (text) here.set(name, text);
  else here.delete(name);
  try {
    if (text) localStorage.setItem(name, text);
    else localStorage.removeItem(name);
  } catch {
    // denied, or full
  }
}

/** The units the reader chose on any page. */
export function unitSet() {
  return stored("units") === "si" ? "si" : "us";
}
