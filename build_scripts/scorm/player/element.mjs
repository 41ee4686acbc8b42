export function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

export function button(words, press) {
  const made = element("button", { type: "button" }, words);
  made.addEventListener("click", press);
  return made;
}
