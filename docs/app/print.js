// Prints one thing instead of the page.

/** Prints the HTML of a record alone, then takes it away again. */
export function printAlone(html) {
  const sheet = document.createElement("div");
  sheet.className = "sheet md-typeset";
  sheet.innerHTML = html;
  document.body.append(sheet);
  document.body.dataset.printing = "sheet";
  addEventListener(
    "afterprint",
    () => {
      sheet.remove();
      delete document.body.dataset.printing;
    },
    { once: true },
  );
  print();
}
