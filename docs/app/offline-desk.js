// <offline-desk> is the page on which a reader keeps the book; <offline-line> says at the foot
// of every page how that stands.
import { follow, keepBook, lookForNewer, named, order } from "./offline.js";

const DESK = new URL("../offline.html", import.meta.url);
const size = (bytes) => `${(bytes / 1e6).toFixed(1)}\u00a0MB`;

customElements.define(
  "offline-desk",
  class extends HTMLElement {
    connectedCallback() {
      this.hidden = false;
      this.addEventListener("click", ({ target }) => this.#do(target.closest("button")?.dataset.do));
      this.#tellWhatWasAsked();
      follow(this, (now) => this.#show(now));
    }

    #part(name) {
      return this.querySelector(`[data-part=${name}]`);
    }

    #do(what) {
      const does = { keep: keepBook, look: lookForNewer, remove: () => order("remove") };
      does[what]?.();
    }

    /** Which page the reader wanted who was sent here, and why there is none. */
    #tellWhatWasAsked() {
      const asked = new URLSearchParams(location.search);
      const path = asked.get("away") ?? asked.get("other");
      this.#part("asked").hidden = !path;
      if (!path) return;
      this.#part("why").textContent = asked.has("away")
        ? "That page is not on this device, and the server does not answer."
        : "That page has changed in a newer edition. It can be read once that edition is loaded.";
      // only ever a page of this book, whatever stands in the address
      this.#part("again").href = new URL(`./${path.replace(/^[/\\]+/, "")}`, DESK).href;
    }

    #show({ why, state, said, total }) {
      this.#part("said").textContent = said;
      this.#part("state").textContent = why || (state ? stands(state) : "Looking at what is kept…");
      this.#part("can").hidden = Boolean(why) || !state;
      this.#part("progress").hidden = !total;
      if (total) this.#progress(total - state.lacking, total);
      if (state) this.#offer(state, total > 0);
    }

    #progress(done, total) {
      Object.assign(this.#part("bar"), { max: total, value: done });
      this.#part("done").textContent = `${size(done)} of ${size(total)} have arrived.`;
    }

    #offer({ lacking, fetching, bytes, edition, date }, busy) {
      this.#part("edition").textContent = named({ edition, date }).replace(/^./, (it) => it.toUpperCase());
      this.#part("space").textContent = size(bytes);
      this.#part("lacking").textContent = lacking ? costs(lacking, fetching) : "Nothing: the book is whole.";
      this.querySelector("[data-do=keep]").hidden = !lacking;
      this.querySelector("[data-do=keep]").disabled = busy;
    }
  },
);

customElements.define(
  "offline-line",
  class extends HTMLElement {
    connectedCallback() {
      follow(this, ({ why, state }) => {
        this.hidden = !why && !state;
        const link = document.createElement("a");
        link.href = DESK;
        link.textContent = "Keep the book";
        const words = why ? `Not kept for offline: ${why}` : state ? told(state) : "";
        this.replaceChildren(`${words} `, link);
      });
    }
  },
);

function stands({ pages, ofPages, lacking, engine }) {
  if (!lacking) return "Ready offline: the whole book.";
  return `Ready offline: ${pages} of ${ofPages} pages, ${engine ? "with" : "not yet"} the calculators.`;
}

function told(state) {
  return `${stands(state)} It is ${named(state)} and takes ${size(state.bytes)}.`;
}

function costs(lacking, fetching) {
  const squeezed = fetching < lacking ? `, or ${size(fetching)} if the server sends them packed` : "";
  return `${size(lacking)} to fetch${squeezed}`;
}

/** Puts the line at the foot of the page that is shown now. */
function place() {
  if (location.protocol === "file:") return; // a copy on a disk is whole: there is nothing to keep
  const foot = document.querySelector(".md-footer-meta__inner");
  if (foot && !foot.querySelector("offline-line")) foot.append(document.createElement("offline-line"));
}

if (globalThis.document$) document$.subscribe(place);
else place();
