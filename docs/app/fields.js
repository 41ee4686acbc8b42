// What stands in the fields of a form, and putting a reply back beside them.

function boxes(field) {
  return [...field.querySelectorAll("input[type=text]:not([data-sure])")];
}

function joined(texts) {
  return texts.map((text) => text.trim()).filter(Boolean).join("; ");
}

/** What a field shows now: its text, the unit beside it, and its plus-or-minus. */
export function shown(field) {
  const picked = field.querySelector("input[type=radio]:checked, [data-pick]");
  if (picked) return { text: picked.value, unit: "" };
  const unit = field.querySelector("select")?.value ?? "";
  const sure = field.querySelector("[data-sure]")?.value.trim() ?? "";
  return { text: joined(boxes(field).map((box) => box.value)), unit, sure };
}

/** What the build put there, in the unit the build chose. */
export function initial(field) {
  const picked = field.querySelector("input[type=radio][checked], [data-pick] > [selected]");
  if (picked) return { text: picked.defaultValue ?? picked.value, unit: "" };
  const unit = field.querySelector("option[selected]")?.value ?? "";
  const sure = field.querySelector("[data-sure]")?.defaultValue ?? "";
  return { text: joined(boxes(field).map((box) => box.defaultValue)), unit, sure };
}

/** Puts the reply for one field in place: error, reading, and the text if its unit changed. */
export function mark(field, { text, unit, reading = "", sure, error }) {
  field.querySelector(".calc-error").textContent = error;
  for (const control of field.querySelectorAll("input, [data-pick]")) {
    if (error) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
  }
  put(field.querySelector(".calc-reading"), "textContent", reading);
  if (unit !== undefined) fill(field, { text, unit, sure });
}

/** Fills a field, or picks an option; what is not given stays as it is. */
export function fill(field, { text, unit, sure }) {
  if (unit) put(field.querySelector("select:not([data-pick])"), "value", unit);
  if (sure !== undefined) put(field.querySelector("[data-sure]"), "value", sure);
  if (text === shown(field).text) return;
  for (const radio of field.querySelectorAll("input[type=radio]")) radio.checked = radio.value === text;
  put(field.querySelector("[data-pick]"), "value", text);
  const texts = text.split(";");
  for (const [place, box] of boxes(field).entries()) box.value = (texts[place] ?? "").trim();
}

function put(element, property, value) {
  if (element && element[property] !== value) element[property] = value;
}
