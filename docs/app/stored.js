// Small things that the browser remembers by name. What it refuses to lasts as long as the page.
const here = new Map(); // name -> text that storage refused

export function stored(name) {
  if (here.has(name)) return here.get(name);
  try {
    return localStorage.getItem(name) ?? undefined;
  } catch {
    return undefined; // denied
  }
}

/** Remembers a text, or forgets the name if there is none. */
export function store(name, text) {
  try {
    if (text) localStorage.setItem(name, text);
    else localStorage.removeItem(name);
    here.delete(name);
  } catch {
    here.set(name, text || undefined); // denied, or full: the older text there counts no more
  }
}

/** Whether what is remembered under a name lasts only as long as the page. */
export function fleeting(name) {
  return here.has(name);
}

/** The units the reader chose on any page. */
export function unitSet() {
  return stored("units") === "si" ? "si" : "us";
}
