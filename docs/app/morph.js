// Turns what stands on the page into what should, and touches only what differs: of an answer that
// is typed for, mostly some figures. So a browser has little to lay out and to paint.

/** Makes the content of an element that of `html`. */
export function turnInto(element, html) {
  const made = document.createElement("template");
  made.innerHTML = html;
  match(element, made.content);
}

function match(old, made) {
  const wanted = [...made.childNodes];
  const there = [...old.childNodes];
  for (const [place, node] of wanted.entries()) {
    const stands = there[place];
    if (!stands) old.append(node);
    else if (stands.nodeName !== node.nodeName || isLive(node)) stands.replaceWith(node);
    else if (node instanceof Element) matchElement(stands, node);
    else if (stands.data !== node.data) stands.data = node.data;
  }
  for (const spare of there.slice(wanted.length)) spare.remove();
}

/** An element of our own starts from what is in it, and only when it comes. */
function isLive(node) {
  return node.nodeName.includes("-");
}

function matchElement(old, made) {
  for (const { name } of [...old.attributes]) {
    if (name !== "open" && !made.hasAttribute(name)) old.removeAttribute(name); // opened by the reader
  }
  for (const { name, value } of made.attributes) {
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
  match(old, made);
}
