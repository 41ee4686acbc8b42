// Brings the forms of a page into the states in which the survey looks at them, as a reader would
// by typing and pressing.
globalThis.states = (() => {
  const PATIENCE = 60_000; // ms, for a busy machine
  const BAD = ["abc", "", "1e30"];
  const all = (selector, within = document) => [...within.querySelectorAll(selector)];

  async function until(wanted, what) {
    for (const end = Date.now() + PATIENCE; Date.now() < end; ) {
      if (wanted()) return;
      await new Promise((settle) => setTimeout(settle, 30));
    }
    throw new Error(`waited in vain for ${what}`);
  }

  function answered(forms) {
    const isDone = ({ dataset: { state } }) => state === "answered" || state === "failed";
    return until(() => forms.every(isDone), "answers");
  }

  function opened() {
    for (const each of all("article details")) each.open = true;
  }

  function typed(box, text) {
    box.value = text;
    box.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function textsOf(form) {
    return all("[data-field]", form).filter((field) => field.querySelector("input[type=text]"));
  }

  /** Every calculator with an answer to the reader's own figures, and its tools used. */
  async function filled() {
    for (const form of all("calc-form")) {
      const [first] = textsOf(form);
      form.use(first.dataset.field, first.querySelector("input[type=text]").value);
      await answered([form]);
      opened();
      await tools(form);
    }
    await sheet(["1"]);
    await elsewhere();
    opened();
  }

  async function tools(form) {
    for (const target of all("[id$=-target]", form)) target.value = "1";
    for (const what of ["backwards", "varied", "code"]) {
      const button = form.querySelector(`.calc-tools button[data-do=${what}]`);
      if (!button) continue; // what is counted has no such tool
      const place = button.parentElement.querySelector("[role=status]") ?? form.querySelector(".calc-code");
      button.click();
      const said = form.querySelector(".calc-state"); // where it says that it took too long
      said.textContent = "";
      await until(() => place.innerHTML || said.textContent, what);
    }
    await until(() => form.querySelector(".calc-job-inside").innerHTML, "the job");
  }

  /** The pages of the job: two visits compared, a what-if of the house, a complaint. */
  async function elsewhere() {
    for (const press of ["calc-jobs [data-do=compare]", "calc-house [data-part=ask] button", ".visit-picks button"]) {
      const button = document.querySelector(press);
      if (!button) continue;
      const around = button.closest("calc-jobs, calc-house, calc-visit");
      const before = around.innerHTML;
      for (const box of all("[data-part=text]", around)) box.value = "1";
      button.click();
      await until(() => around.innerHTML !== before, press);
    }
  }

  /** Every field of every calculator wrong in one of three ways, and those of sheets as well. */
  async function failing() {
    for (const form of all("calc-form")) {
      const names = textsOf(form).map((field) => field.dataset.field);
      form.take(Object.fromEntries(names.map((name, place) => [name, { text: BAD[place % 3] }])), {});
    }
    await answered(all("calc-form"));
    const boxes = all("calc-visit [data-field] input[type=text]");
    for (const box of boxes) typed(box, "abc");
    // a figure that two steps ask for is kept from the one typed in last
    const last = new Map(boxes.map((box) => [box.closest("[data-field]").dataset.field, box]));
    const isRefused = (box) => box.matches("[aria-invalid]");
    await until(() => [...last.values()].every(isRefused), "refusals of the sheet");
    await sheet(BAD);
    opened();
  }

  /** A problem set dealt, with answers to its questions. */
  async function sheet(texts) {
    const course = document.querySelector("calc-course");
    if (!course) return;
    if (!course.querySelector("[data-part=sheet] form")) {
      course.querySelector("[data-part=number]").value = "17";
      course.querySelector("[data-part=number]").form.requestSubmit();
      await until(() => course.querySelector("[data-part=sheet] form"), "the sheet");
    }
    for (const [place, form] of all("[data-part=sheet] form", course).entries()) {
      const box = form.querySelector("input[type=text]");
      if (box) typed(box, texts[place % texts.length]);
      form.requestSubmit();
    }
    const told = () => all("[data-part=sheet] [data-told]", course).every((each) => each.innerHTML);
    await until(told, "marks");
  }

  /** Two figures that cannot both be true, as a link brings them. */
  async function contradicted(form, words) {
    form.dataset.state = "";
    location.hash = [form.dataset.key, ...words].map(encodeURIComponent).join("&").replaceAll("%3D", "=");
    await answered([form]);
  }

  /** Leaves no draft of a sheet to the next page. */
  function forgotten() {
    for (const key of Object.keys(localStorage)) if (key.startsWith("drafts")) localStorage.removeItem(key);
  }

  return { answered, contradicted, failing, filled, forgotten, opened };
})();
