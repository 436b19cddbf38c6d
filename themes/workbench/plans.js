/* Finds plans by what they are. A classic script at a page's end: without it all plans show. What is
   looked for stands in the address, so that it can be kept and sent. */

const form = document.getElementById("finder");
const told = document.getElementById("found");
const more = document.getElementById("more");
const entries = [...document.querySelectorAll(".entries > .entry")];
const STEP = 24;
let shown = STEP;

const answers = (entry, asked) => {
  for (const [name, wanted] of asked) {
    const fits =
      name === "word"
        ? wanted.toLowerCase().split(/\s+/).every((each) => entry.textContent.toLowerCase().includes(each))
        : entry.dataset[name].split("\n").includes(wanted);
    if (!fits) return false;
  }
  return true;
};

const look = () => {
  const asked = [...new FormData(form)].map(([name, value]) => [name, value.trim()]).filter(([, value]) => value);
  const found = entries.filter((each) => answers(each, asked));
  const seen = new Set(found.slice(0, shown));
  for (const each of entries) each.hidden = !seen.has(each);
  more.hidden = found.length <= shown;
  told.textContent = found.length ? say("planscript-found", { found: found.length, all: entries.length }) : say("planscript-none");
  return new URLSearchParams(asked).toString();
};

const remembered = () => {
  const asked = new URLSearchParams(location.hash.slice(1));
  for (const each of form.elements) if (each.name) each.value = asked.get(each.name) ?? "";
  look();
};

form.addEventListener("input", () => {
  shown = STEP;
  history.replaceState(null, "", `#${look()}`);
});
form.addEventListener("submit", (event) => event.preventDefault());
more.addEventListener("click", () => {
  const first = entries.filter((each) => !each.hidden).length;
  shown += STEP;
  look();
  entries.filter((each) => !each.hidden)[first]?.querySelector("a").focus();
});
addEventListener("hashchange", remembered);
form.hidden = false;
remembered();
