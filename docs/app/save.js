// Hands a text to the reader as a file.
import { head } from "./job-store.js";

export function save(text, type, name) {
  const made = document.createElement("a");
  made.href = URL.createObjectURL(new Blob([text], { type }));
  made.download = name;
  made.click();
  setTimeout(() => URL.revokeObjectURL(made.href), 1000);
}

/** A name for a file of a job, without its ending. */
export function fileName(job) {
  return head(job).replace(/[^\p{L}\p{N}]+/gu, "-");
}
