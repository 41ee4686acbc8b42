// <pail-timer> stands beside an input whose readings are timed. Its buttons move the one watch of
// this device; the runs go into the form, and from there, once Python answers, into the job.
import { rest, stayAwake } from "./awake.js";
import { linked } from "./link.js";
import * as stopwatch from "./stopwatch.js";
import { keepRuns, putBack } from "./timer-job.js";
import { listed, seconds } from "./timer-runs.js";

const LOOK = 100; // ms between two looks at the watch; none of them counts time

customElements.define(
  "pail-timer",
  class extends HTMLElement {
    #looking;
    #shown = "";
    #filled = "";
    #deaf = () => {};

    connectedCallback() {
      this.hidden = false;
      // the moment of touching is the moment meant; a click, from a key or a reader of the screen,
      // comes without one
      this.#part("press").addEventListener("pointerdown", ({ button }) => button || this.#press());
      this.addEventListener("click", this);
      this.#looking = setInterval(() => this.#look(document.hidden), LOOK);
      document.addEventListener("visibilitychange", this);
      this.#deaf = stopwatch.onMoved(() => this.#draw());
      this.#draw();
      if (this.#mine && !this.#linked) this.#fill();
      if (stopwatch.watch().started !== null) this.#awake();
    }

    disconnectedCallback() {
      clearInterval(this.#looking);
      document.removeEventListener("visibilitychange", this);
      this.#deaf();
    }

    handleEvent({ type, target, detail }) {
      if (type === "visibilitychange") return this.#look(true);
      const button = target.closest("[data-watch]");
      if (!button) return;
      const does = {
        press: () => detail === 0 && this.#press(),
        lap: () => this.#moved(() => stopwatch.lap(this.#most)),
        undo: () => this.#moved(stopwatch.undo),
        anew: () => this.#moved(stopwatch.anew),
        out: () => this.#moved(() => stopwatch.leaveOut(Number(button.dataset.run))),
        other: () => this.#moved(() => stopwatch.otherWay(Number(button.dataset.run))),
        keep: () => this.#tell(keepRuns(this, button.dataset.place)),
        back: () => this.#tell(putBack(this)),
      };
      does[button.dataset.watch]();
    }

    get form() {
      return this.closest("calc-form");
    }

    get #most() {
      return Number(this.dataset.most);
    }

    get #where() {
      return `${location.pathname}#${this.form.dataset.key}`;
    }

    /** Whether the watch was last started here, so that its runs belong into this form. */
    get #mine() {
      return stopwatch.watch().where === this.#where;
    }

    /** Whether the address already says what stands in this form. */
    get #linked() {
      return linked()[0] === this.form.dataset.key;
    }

    #part(name) {
      return this.querySelector(`[data-part=${name}], [data-watch=${name}]`);
    }

    #press() {
      if (!stopwatch.press(this.#most, this.#where)) return;
      this.#say("");
      navigator.vibrate?.(30);
      this.#draw();
      if (stopwatch.watch().started === null) {
        rest();
        this.#fill();
      } else this.#awake();
    }

    async #awake() {
      const isOn = await stayAwake();
      const on = isOn ? "The screen stays on while the watch runs." : "The screen may go dark: the watch keeps time all the same.";
      const lost = stopwatch.isLost() ? " This browser keeps nothing: do not leave the page." : "";
      this.#say(on + lost);
    }

    #moved(how) {
      how();
      if (stopwatch.watch().started === null) rest();
      else this.#awake();
      this.#draw();
      this.#fill();
    }

    #look(wasHidden) {
      stopwatch.look(wasHidden);
      const state = stopwatch.watch();
      if (state.started !== null) this.#part("face").textContent = seconds(stopwatch.elapsed(state).ms);
    }

    #draw() {
      const state = stopwatch.watch();
      const runs = stopwatch.counted(state);
      const isOn = state.started !== null;
      this.toggleAttribute("data-running", isOn);
      const press = this.#part("press");
      press.textContent = isOn ? "Stop" : runs.length ? `Start run ${state.runs.length + 1}` : "Start";
      press.disabled = !isOn && runs.length >= this.#most;
      this.#part("lap").disabled = !isOn || runs.length + 1 >= this.#most;
      this.#part("undo").disabled = !state.past.length;
      this.#part("keep").hidden = isOn || !state.runs.length;
      if (!isOn) this.#part("face").textContent = seconds(state.runs.at(-1)?.ms ?? 0);
      this.#part("spread").textContent = this.#spread(runs);
      this.#runs(state.runs);
    }

    #runs(runs) {
      const text = JSON.stringify(runs);
      if (text === this.#shown) return; // what has the focus keeps it
      this.#shown = text;
      this.#part("runs").replaceChildren(...runs.map(listed));
    }

    #spread(runs) {
      if (!runs.length) return "";
      const { mean, scatter } = stopwatch.spread(runs);
      const more = Number(this.dataset.fewest) - runs.length;
      const needed = more > 0 ? ` ${more} more, at least.` : "";
      if (scatter === null) return `One run of ${seconds(mean)}.${needed}`;
      const share = (100 * scatter).toPrecision(2);
      return `${runs.length} runs, mean ${seconds(mean)}, scatter of one run ${share}\u00a0%.${needed}`;
    }

    /** Puts the runs that count into the form; at most as many as it has boxes. */
    async #fill() {
      const runs = stopwatch.counted(stopwatch.watch()).slice(0, this.#most);
      const text = runs.map(({ ms }) => (ms / 1000).toFixed(2)).join("; ");
      if (!text || text === this.#filled) return;
      this.#filled = text;
      await customElements.whenDefined("calc-form");
      const times = this.dataset.times;
      this.form.take({ [times]: { text, unit: "s" } }, { [times]: "timed here" });
    }

    #say(text) {
      this.#part("told").textContent = text;
    }

    async #tell(doing) {
      this.#say("Working it out…");
      this.#say(await doing.catch(({ message }) => message));
    }
  },
);
