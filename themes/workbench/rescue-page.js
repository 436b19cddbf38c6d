// Saving a piece, on the fitting page: for the sheet, fit and cutter that stand chosen there.

"use strict";

const saving = find("rescue") && JSON.parse(find("rescue-data").textContent);
const wayOut = () => all("wrong").find((each) => each.checked).value;

let secondCuts = null; // a promise of the files that open pieces wider
let asked = 0; // how often it was shown: what comes late is not

function secondCutFiles() {
  secondCuts ||= packedOrFetched(find("second-cuts"), saving.files);
  secondCuts.catch(() => (secondCuts = null));
  return secondCuts;
}

// The files that save a piece, or none, after words on what to do.
async function savingFiles(part, way) {
  if (way === "spoilt") {
    const files = await madeFiles();
    return files.filter(({ name }) => name.split("/").pop().startsWith(`${part.name}-${labelOf(files)}.`));
  }
  const by = wrongBy(find("by").value, way, saving, data.unit).mm;
  if (way === "loose" || by === undefined) return [];
  const choice = last;
  const found = await secondCutFiles();
  const files = fill(found, { ...pointOf(found, choice), reopen: by });
  return files.filter(({ name }) => /^\d/.test(name.split(`/rescue/${part.name}-wider-`)[1] || ""));
}

// What there is to say, and what is wrong with what was typed.
function savingWords(part, way) {
  const none = hopeless(part, way);
  if (none) return { fault: none };
  if (way === "spoilt") {
    const { sides, fault } = offcutOf(find("offcut").value, data.unit);
    if (!sides) return { fault: fault || "" };
    const { fits, words } = lyingOn(part, sides, data.unit);
    return fits ? { words: [words] } : { fault: words };
  }
  const { mm, fault } = wrongBy(find("by").value, way, saving, data.unit);
  if (mm === undefined) return { fault: fault || "" };
  if (way === "loose") return { words: slipWords(part, mm, thicknesses(), saving, data.unit) };
  const cutter = last.cutter;
  if (cutter === null) {
    const command = `kerfolio files --plan ${data.plan} --only ${part.name} --reopen ${digits(mm, 3)} --cutter none`;
    return { fault: say("rescuescript-laser", { maker: data.ask, command }) };
  }
  return { words: [say("rescuescript-wider", { part: part.name, by: toldTool(mm, data.unit) }), saving.laid] };
}

const thicknesses = () => Object.fromEntries(data.sheets.map(({ name }) => [name, summed(last.sheets[name].readings).thickest]));

async function showSaving() {
  const part = saving.parts.find(({ name }) => name === find("piece").value);
  const way = wayOut();
  find("by-row").hidden = way === "spoilt";
  find("offcut-row").hidden = way !== "spoilt";
  const { words, fault } = last ? savingWords(part, way) : { fault: "" };
  tell(find("rescue-fault"), fault || "");
  find("rescue-told").replaceChildren(...(words || []).map((each) => element("p", {}, each)));
  find("rescue-files").replaceChildren();
  const mine = ++asked;
  if (!words) return;
  try {
    const files = await savingFiles(part, way);
    if (mine !== asked) return;
    const buttons = files.map((each) => element("li", {}, fileButton(each, each.name.split("/").pop())));
    find("rescue-files").replaceChildren(...(buttons.length ? [element("ul", { class: "files" }, ...buttons)] : []));
  } catch (trouble) {
    find("status").textContent = trouble instanceof RangeError ? trouble.message : say("fitpage-not-fetched");
  }
}

if (saving) {
  find("rescue").addEventListener("input", showSaving);
  find("rescue").addEventListener("toggle", () => find("rescue").open && showSaving());
  find("form").addEventListener("change", () => find("rescue").open && showSaving());
  find("load").addEventListener("change", () => (find("rescue").open = false));
}
