// The LMS as SCORM 1.2 shows it to a page. What the standard limits is limited here: a runtime may
// take more and lose it.

const UP = 10; // frames to look through; the standard asks for seven
const STRING255 = 255;

/** The API of a window around this one, or of the one that opened it; null if there is none. */
function api(window) {
  return above(window) ?? (reach(() => window.top.opener) ? above(window.top.opener) : null);
}

function above(window) {
  let place = window;
  for (let up = 0; up <= UP && place; up += 1) {
    const found = reach(() => place.API);
    if (found) return found;
    if (reach(() => place.parent) === place) return null;
    place = reach(() => place.parent);
  }
  return null;
}

/** A frame of another origin throws when it is looked into. */
function reach(look) {
  try {
    return look() ?? null;
  } catch {
    return null;
  }
}

export class Lms {
  #api;
  #started = Date.now();
  refused = new Set(); // elements that it did not take
  open = true;

  constructor(found) {
    this.#api = found;
  }

  /** The LMS once it has said yes; null where there is none or it says no. */
  static found(window) {
    const found = api(window);
    return found && reach(() => String(found.LMSInitialize(""))) === "true" ? new Lms(found) : null;
  }

  value(element) {
    return String(reach(() => this.#api.LMSGetValue(element)) ?? "");
  }

  set(element, value) {
    const text = String(value);
    const most = element === "cmi.suspend_data" ? 4096 : STRING255;
    const taken = text.length <= most
      && String(reach(() => this.#api.LMSSetValue(element, text))) === "true";
    if (!taken) this.refused.add(element);
    return taken;
  }

  /** Whether all that was set is kept. */
  commit() {
    return String(reach(() => this.#api.LMSCommit(""))) === "true";
  }

  finish() {
    if (!this.open) return;
    this.open = false;
    this.set("cmi.core.session_time", span(Date.now() - this.#started));
    this.commit();
    reach(() => this.#api.LMSFinish(""));
  }
}

/** HHHH:MM:SS.SS */
export function span(milliseconds) {
  const hundredths = Math.min(Math.round(milliseconds / 10), 9999 * 360000);
  const two = (number) => String(number).padStart(2, "0");
  const [hours, minutes, seconds] = [
    Math.floor(hundredths / 360000), Math.floor(hundredths / 6000) % 60, Math.floor(hundredths / 100) % 60,
  ];
  return `${String(hours).padStart(4, "0")}:${two(minutes)}:${two(seconds)}.${two(hundredths % 100)}`;
}
