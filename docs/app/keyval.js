// Texts kept by name in IndexedDB: the library's store, of which nothing stays open when a page is left.
import { createStore as open } from "./vendor/idb-keyval.js";

export { del, entries, get, update } from "./vendor/idb-keyval.js";

// WebKit goes on waiting for a transaction whose page was left, and answers no later one until the
// browser is started again. The others end it themselves.
const WAITS_FOR_PAGES_LEFT = navigator.vendor.startsWith("Apple");

export function createStore(...names) {
  const store = open(...names);
  return WAITS_FOR_PAGES_LEFT ? endedWithPage(store) : store;
}

/** The same store; what is under way when the page is left is undone, and done anew if the page comes back. */
export function endedWithPage(store) {
  const underWay = new Set();
  const undone = new WeakSet();
  addEventListener("pagehide", () => underWay.forEach((transaction) => abort(transaction) && undone.add(transaction)));
  return async function ask(mode, work) {
    let mine;
    try {
      return await store(mode, (objects) => {
        mine = objects.transaction;
        underWay.add(mine);
        for (const end of ["complete", "abort"]) mine.addEventListener(end, () => underWay.delete(mine));
        return work(objects);
      });
    } catch (fault) {
      if (!undone.has(mine)) throw fault;
      await new Promise((settle) => addEventListener("pageshow", settle, { once: true }));
      return ask(mode, work);
    }
  };
}

/** Whether there was anything left to undo. */
function abort(transaction) {
  try {
    transaction.abort();
    return true;
  } catch {
    return false;
  }
}
