import { byChance, Sitting } from "./sitting.mjs";
import { VARIANTS } from "./deck.mjs";
import { draw } from "./page.mjs";

const book = globalThis.coursework; // set.js
let sitting;

function practise(number) {
  const dealt = Number.isInteger(number) && number >= 1 && number <= VARIANTS;
  sitting = new Sitting(book, window, dealt ? number : byChance());
  draw(sitting, practise);
}

practise();

// Phones end pages without an unload; a page that comes back from the cache begins anew.
addEventListener("pagehide", () => sitting.mode === "normal" && sitting.lms.finish());
addEventListener("visibilitychange", () => {
  if (document.hidden && sitting.mode === "normal" && sitting.lms.open) sitting.lms.commit();
});
addEventListener("pageshow", (event) => event.persisted && location.reload());
