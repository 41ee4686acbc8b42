const find = (wanted) => document.querySelector(wanted);

async function until(wanted) {
  for (const end = Date.now() + 50_000; Date.now() < end; ) {
    const found = wanted();
    if (found) return found;
    await new Promise((settle) => setTimeout(settle, 20));
  }
  throw new Error(`waited in vain for ${wanted}`);
}

async function change(name, field, text) {
  await customElements.whenDefined("calc-form");
  const box = find(`#${name}-${field}`);
  const form = box.closest("calc-form");
  box.value = text;
  box.dispatchEvent(new Event("input", { bubbles: true }));
  await until(() => form.dataset.state !== "working");
  if (form.dataset.state === "failed") throw new Error(form.querySelector(".calc-state").textContent);
  return form;
}
