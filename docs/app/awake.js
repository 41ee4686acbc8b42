// Keeps the screen on where the browser can. It lets go whenever the page is hidden, so it is asked
// again when the page is back.
let lock;
let wanted = false;

/** Resolves to whether the screen stays on. */
export async function stayAwake() {
  wanted = true;
  try {
    lock ??= await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => { lock = undefined; }, { once: true });
    if (!wanted) rest(); // stopped meanwhile
    return wanted;
  } catch {
    return false; // none here, not over https, or the battery is low
  }
}

export function rest() {
  wanted = false;
  lock?.release();
}

document.addEventListener("visibilitychange", () => {
  if (wanted && !document.hidden) stayAwake();
});
