// <calc-scene> shows another moment of a run. Python has drawn one of them and says in
// data-run what every part is at each: {parts: [[part, attribute]], moments: [[value]]}.
// Without this file the drawing and the table of the moments stand as they are.

const seen = new Map(); // slider's id -> {run, value, focused}: an answer may be drawn again

customElements.define(
  "calc-scene",
  class extends HTMLElement {
    connectedCallback() {
      const { parts, moments } = JSON.parse(this.dataset.run);
      const drawn = new Map();
      for (const part of this.querySelectorAll("[data-part]")) drawn.set(part.dataset.part, part);
      const slider = drawn.get("slide");
      const show = () => {
        parts.forEach(([part, attribute], place) => {
          const value = moments[slider.value][place];
          if (attribute === "text") drawn.get(part).textContent = value;
          else drawn.get(part).setAttribute(attribute, value);
        });
      };
      const before = seen.get(slider.id);
      const now = { run: this.dataset.run, value: slider.value, focused: false };
      if (before?.run === now.run) {
        slider.value = now.value = before.value;
        show();
      }
      seen.set(slider.id, now);
      this.querySelector(".scene-slide").hidden = false;
      slider.addEventListener("input", (event) => {
        event.stopPropagation(); // it is no figure of the form
        now.value = slider.value;
        show();
      });
      slider.addEventListener("focus", () => (now.focused = true));
      slider.addEventListener("blur", () => (now.focused = !slider.isConnected));
      if (before?.focused) slider.focus({ preventScroll: true });
    }
  },
);
