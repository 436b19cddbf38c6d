/* Multiplies the price of one by how many are asked for, and adds it up. It looks only inside the
   element it stands in; without it the places stay blank lines to fill in. */
(() => {
  "use strict";

  const place = document.currentScript.parentElement;
  const rows = [...place.querySelectorAll("[data-count]")];
  const sum = place.querySelector("[data-sum]");
  const blank = sum.textContent;
  const told = (cents) => (cents / 100).toFixed(2);

  const cents = (text) => {
    const found = /^\s*([0-9]{1,6})(?:[.,]([0-9]{1,2}))?\s*$/.exec(text);
    return found ? Number(found[1]) * 100 + Number((found[2] || "0").padEnd(2, "0")) : null;
  };

  place.addEventListener("input", () => {
    let all = 0;
    let known = 0;
    for (const row of rows) {
      const one = cents(row.querySelector("input").value);
      const rowSum = one === null ? null : one * Number(row.dataset.count);
      row.querySelector("output").textContent = rowSum === null ? blank : told(rowSum);
      if (rowSum !== null) {
        all += rowSum;
        known += 1;
      }
    }
    sum.textContent = known ? told(all) : blank;
  });
})();
