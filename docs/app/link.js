// A case in the address: #outlet_setting&outlet=4.6+gpm. It stands after the #, so that
// no server ever sees it. A link from a stranger can hold anything: it is only ever text,
// which Python reads as it would read a field.

const LONGEST = 2000; // characters; a form of twenty fields needs a quarter of it

/** The words of the address, or none: a calculator's section id, then input=value. */
export function linked() {
  const hash = location.hash.slice(1);
  if (!hash.includes("&") || hash.length > LONGEST) return [];
  try {
    return hash.split("&").map((word) => decodeURIComponent(word.replaceAll("+", " ")));
  } catch {
    return []; // no words of ours: %-signs that mean nothing
  }
}

/** The address of this page with these words. */
export function linkTo(words) {
  const hash = words.map((word) => encodeURIComponent(word).replaceAll("%20", "+").replace("%3D", "="));
  return `${location.href.split("#")[0]}#${hash.join("&")}${hash.length > 1 ? "" : "&"}`;
}
