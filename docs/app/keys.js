// The theme by keys. It opens its drawer, its lists and its search by labels of hidden boxes, of which
// the build has made buttons. Here they say whether they are open, take Space as well as Enter, and
// hand the focus on to what they open and back.
const BUTTON = "label[role=button]";
const WRITING = "input, select, textarea";
const drawer = document.getElementById("__drawer");

function pressed(event) {
  const { key, target } = event;
  if (key === "Escape" && drawer.checked) {
    drawer.click();
    document.querySelector(`${BUTTON}[for=__drawer]`).focus();
  } else if (key === " " && target.matches(BUTTON)) {
    event.preventDefault(); // it would scroll
    target.click();
  }
  // The theme turns pages at single letters, which a spoken word is full of.
  const isLetter = key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey;
  if (isLetter && !target.matches(WRITING)) event.stopPropagation();
}

function toggled({ target: box }) {
  if (!box.matches(".md-toggle")) return;
  const labels = [...document.querySelectorAll(`${BUTTON}[for="${box.id}"]`)];
  for (const label of labels) if (label.ariaExpanded) label.ariaExpanded = String(box.checked);
  if (!labels.includes(document.activeElement)) return; // a hand has done it, or a link
  const opened = box === drawer ? document.querySelector(".md-sidebar--primary") : box.parentElement;
  const stops = [...opened.querySelectorAll(`a[href], ${BUTTON}`)].filter((each) => each.checkVisibility({ visibilityProperty: true }));
  const isHidden = !document.activeElement.checkVisibility({ visibilityProperty: true });
  // a list is still on its way in, and would be scrolled to where it comes from
  if ((box === drawer && box.checked) || isHidden) stops[0]?.focus({ preventScroll: true });
}

// Whoever goes on past the last link of the drawer must see where.
function left({ target }) {
  if (drawer.checked && !target.closest(".md-sidebar--primary, .md-header")) drawer.click();
}

/** The theme wraps wide tables in boxes that scroll, of which not every browser makes a stop. */
function reachable() {
  for (const box of document.querySelectorAll(".md-typeset__scrollwrap")) {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute("tabindex");
  }
}

addEventListener("resize", reachable);
globalThis.document$?.subscribe(() => setTimeout(reachable)); // the theme's own wrapping comes first
document.addEventListener("keydown", pressed);
document.addEventListener("change", toggled);
document.addEventListener("focusin", left);
