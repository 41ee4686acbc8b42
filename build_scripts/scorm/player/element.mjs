/** An element; what it has no property for becomes an attribute. */
export function element(name, properties = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (key in made && key !== "role") made[key] = value;
    else made.setAttribute(key, value);
  }
  made.append(...children);
  return made;
}

export function button(words, press) {
  const made = element("button", { type: "button" }, words);
  made.addEventListener("click", press);
  return made;
}
