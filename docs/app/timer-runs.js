// A run of the watch in words, and its line in the list of runs.

const WHY = {
  back: "The device's clock was put back during this run. It is reckoned without that.",
  ahead: "The device's clock jumped ahead during this run. It is reckoned by the running time.",
  slept: "The device slept, or its clock was changed, during this run. It is reckoned by the clock.",
  closed: "The device's clock was put back while the page was closed. This run cannot be trusted.",
};

/** The line of one run: its time, a way to leave it out, and what is in doubt about it. */
export function listed(run, place) {
  const made = document.createElement("li");
  made.toggleAttribute("data-out", run.out);
  const said = document.createElement("span");
  said.textContent = run.out ? `${seconds(run.ms)}, left out` : seconds(run.ms);
  const out = button("out", run.out ? "Count it" : "Leave out", place);
  out.setAttribute("aria-label", `${out.textContent}: run ${place + 1}`);
  made.append(said, out);
  if (run.why) {
    const why = document.createElement("p");
    why.textContent = WHY[run.why];
    made.append(why);
  }
  if (run.other !== null) made.append(button("other", `Take ${seconds(run.other)} instead`, place));
  return made;
}

/** A button of the watch. */
export function button(does, label, run) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = label;
  made.dataset.watch = does;
  if (run !== undefined) made.dataset.run = run;
  return made;
}

/** A time as the watch shows it: 53.1 s, or 1:02.4. */
export function seconds(ms) {
  const tenths = Math.round(ms / 100);
  const [minutes, left] = [Math.floor(tenths / 600), (tenths % 600) / 10];
  return minutes ? `${minutes}:${left.toFixed(1).padStart(4, "0")}` : `${left.toFixed(1)}\u00a0s`;
}
