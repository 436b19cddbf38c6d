// The fitting page itself: reads what was typed, shows what fitting.js makes of it, saves files.
// It looks only inside the element it stands in, and fetches at most the fitted files beside it.

"use strict";

const place = document.currentScript.parentElement;
const find = (name, within = place) => within.querySelector(`[data-fit="${name}"]`);
const all = (name, within = place) => [...within.querySelectorAll(`[data-fit="${name}"]`)];
const data = JSON.parse(find("data").textContent);
const boxes = data.sheets.map(({ name }) => [...place.querySelectorAll("[data-sheet]")].find((each) => each.dataset.sheet === name));

let reckoned = {}; // what the readings of each sheet come to, as they were shown last
let last = null; // the choice that stands, null while something is refused
let fitted = null; // a promise of the fitted files

// ---- what was chosen ----------------------------------------------------------------------

// The readings of a sheet, and the first fault; none is found in a field that is being typed in.
function readingsIn(box, sheet, typing) {
  const found = { readings: [], fault: "" };
  for (const field of all("reading", box)) {
    const read = field.value.trim() ? readingOf(field.value, sheet, data.unit) : {};
    if (read.mm) found.readings.push(read.mm);
    if (field === typing) continue;
    found.fault ||= read.fault || "";
    field.setAttribute("aria-invalid", String(Boolean(read.fault)));
  }
  return found;
}

function fitIn(box, sheet) {
  const picked = all("fit", box).find((each) => each.checked);
  return picked ? Number(picked.value) : sheet.fit;
}

// The cutter that was chosen: undefined as planned, null for none, else mm; and what is wrong with it.
function cutterIn(typing) {
  const picked = all("cutter").find((each) => each.checked);
  if (!picked || picked.value === "planned") return { fault: "" };
  if (picked.value === "none") return { cutter: null, fault: "" };
  const field = find("width");
  if (!field.value.trim()) return { fault: field === typing ? "" : say("fitpage-say-cutter") };
  const read = cutterOf(field.value, data.unit);
  return { cutter: read.mm, fault: field === typing ? "" : read.fault || outOfRange(read.mm) };
}

// What a reader knows of the true cut of a sheet's cutter, `nominal` wide: {cut} beyond its name, {words}
// on the machine, {fault}. Where the coupon's fields are typed in they fill in the other.
function cutIn(box, sheet, { thickest }, nominal, typing) {
  if (!find("true-cut", box)) return { cut: 0, words: [], fault: "" };
  const way = all("way", box).find((each) => each.checked).value;
  const fields = COUPON_FIELDS.map((field) => find(field, box));
  const read = Object.fromEntries(fields.map((each) => [each.dataset.fit, each.value]));
  const found = cutsRead(sheet, { way, ...read }, thickest, data.unit);
  for (const each of fields) each.setAttribute("aria-invalid", String(each !== typing && each.dataset.fit in found.faults));
  const field = find("cut", box);
  const cut = cutOf(found);
  if (typing !== field && cut !== null) field.value = `${marked(digits((nominal || 0) + cut, 3))} mm`;
  const known = cutKnown(field.value, nominal, data.unit);
  const fault = fields.includes(typing) ? "" : Object.values(found.faults)[0] || (typing === field ? "" : known.fault) || "";
  return { cut: known.cut || 0, words: machineWords(found, way, data.unit), fault };
}

// Whether true cuts are to be built into the files; it is asked only where there is one.
function builtIn({ sheets }) {
  const where = find("where");
  if (!where) return false;
  where.hidden = !data.sheets.some(({ name }) => Math.abs(sheets[name].cut) >= CUT.nothing);
  return !where.hidden && all("built").find((each) => each.checked).value === "files";
}

// Whether files follow a cutter as wide as this one really cuts.
const canFollow = ({ cutter }) => cutter && cutter.least < cutter.most;

// Why a cutter cannot be had, in the words of the plan; empty where every sheet takes it.
function outOfRange(cutter) {
  const { cutter: range, title } = data.sheets.find(({ cutter: each }) => each && (cutter < each.least || cutter > each.most)) || {};
  if (!range) return "";
  const [least, most] = [toldTool(range.least, data.unit), toldTool(range.most, data.unit)];
  const words = say("fitpage-cutters", { sheet: title, least, most });
  const why = cutter < range.least ? range.below : range.above;
  return why ? `${words} ${why}` : words;
}

// ---- showing ------------------------------------------------------------------------------

function show(typing) {
  const { cutter, fault: cutterFault } = cutterIn(typing);
  if (find("cutter-fault")) tell(find("cutter-fault"), cutterFault);
  if (find("width-read")) tell(find("width-read"), cutter ? toldTool(cutter, data.unit) : "");
  const choice = { sheets: {}, cutter };
  const sums = {};
  let sound = !cutterFault;
  data.sheets.forEach((sheet, index) => {
    const { readings, fault } = readingsIn(boxes[index], sheet, typing);
    const sum = readings.length ? summed(readings) : summed([sheet.drawn]);
    const refused = readings.length ? refusal(sheet, sum.thickest, data) : "";
    tell(find("fault", boxes[index]), fault || refused || spreadWords(sum, data.unit));
    const nominal = cutter === undefined ? sheet.planned : cutter;
    const real = cutIn(boxes[index], sheet, sum, nominal, typing);
    const far = real.fault || (real.cut && cutter !== null && canFollow(sheet) ? outOfRange(nominal + real.cut) : "");
    if (find("cut-fault", boxes[index])) tell(find("cut-fault", boxes[index]), far);
    showSum(find("sum", boxes[index]), readings.length, sum);
    choice.sheets[sheet.name] = { readings: readings.length ? readings : [sheet.drawn], fit: fitIn(boxes[index], sheet), cut: real.cut };
    sums[sheet.name] = { ...sum, measured: readings.length > 0, nominal, machine: real.words };
    sound &&= !fault && !refused && !far;
  });
  choice.built = builtIn(choice);
  last = sound ? choice : null;
  reckoned = sums;
  if (find("sent")) find("sent").hidden = !Object.values(sums).some((each) => each.measured);
  showResults(choice, sums, sound);
}

// Words change only where they differ, so that nothing is read out twice.
function tell(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

function showSum(list, count, { thickest, thinnest, mean }) {
  const rows = count > 1 ? [["most", thickest], ["mean", mean], ["least", thinnest]] : count ? [["once", thickest]] : [];
  list.replaceChildren(
    ...rows.map(([name, mm]) => element("div", {}, element("dt", {}, say(`fitpage-${name}`)), element("dd", {}, toldIn(mm, data.unit)))),
  );
}

function showResults(choice, sums, sound) {
  const thickest = Object.fromEntries(data.sheets.map(({ name }) => [name, sums[name].thickest]));
  const set = data.made ? null : readySet(data, thickest);
  for (const { name } of data.sheets) sums[name].made = set ? set.at[name] : thickest[name];
  for (const { name, more } of data.sheets) sums[name].more = more;
  const at = Object.fromEntries(data.sheets.map(({ name }) => [name, { thickness: sums[name].thickest, fit: choice.sheets[name].fit }]));
  const shown = sound ? data.sheets.map((sheet) => resultOf(sheet, choice, sums[sheet.name], at)) : [];
  if (sound && set) shown.unshift(element("h3", {}, say("fitpage-take-set", { folder: `cut/${set.label}` })));
  find("results").replaceChildren(...shown);
  find("save").hidden = !sound;
  if (sound && find("each")?.open) showFiles();
}

function resultOf(sheet, choice, sum, at) {
  const { fit } = choice.sheets[sheet.name];
  const figure = element("figure", { class: "art" });
  figure.innerHTML = jointDrawing(fit, sum, data.unit); // numbers and words of ours alone
  const caption = sum.thickest > sum.thinnest ? "fitpage-caption-dashed" : "fitpage-caption";
  figure.append(element("figcaption", {}, say(caption, { sheet: sheet.title })));
  const made = say(sum.measured ? "fitpage-made-for" : "fitpage-as-drawn", { thickness: told(sum.made, data.unit) });
  const cutter = choice.cutter === undefined ? [] : cutterWords(sheet, choice.cutter, at, data);
  const cut = [...cutWords(sum.nominal, choice.sheets[sheet.name].cut, { built: choice.built && sheet.built, unit: data.unit }), ...sum.machine];
  const words = [playWords(fit, sum, data), ...cut, ...cutter].map((each) => element("p", {}, each));
  return element("div", { class: "fit-result" }, element("div", {}, element("h3", {}, made), ...words), figure);
}

function element(tag, attributes, ...content) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...content);
  return made;
}

// Several readings pasted at once, each into a field from this one on; true where they were several.
function spread(field, text) {
  const [readings, fields] = [readingTexts(text), all("reading", field.closest("[data-sheet]"))];
  if (readings.length < 2) return false;
  const room = fields.slice(fields.indexOf(field));
  readings.slice(0, room.length).forEach((each, spot) => (room[spot].value = each));
  settled();
  const left = readings.length - room.length;
  const missed = { fields: room.length, count: readings.length, texts: readings.slice(-left).join(", ") };
  if (left > 0) find("status").textContent = say(left > 1 ? "fitpage-left-out-many" : "fitpage-left-out", missed);
  return true;
}

// What is told once a field is left: results, to who hears the page too.
function settled() {
  show();
  find("status").textContent = "";
  find("told").textContent = [...find("results").querySelectorAll("h3, p")].map((each) => each.textContent).join(" ");
}

// ---- files --------------------------------------------------------------------------------

// The fitted files: in the page itself, else fetched from beside it, once.
function fittedFiles() {
  fitted ||= packedOrFetched(find("fitted"), data.files);
  fitted.catch(() => (fitted = null)); // asked anew the next time
  return fitted;
}

// What stands packed in an element of the page, else a file beside it.
async function packedOrFetched(inside, file) {
  if (inside) return unpacked(inside.textContent);
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

// What stands packed in the page: JSON, deflated, in base64.
async function unpacked(text) {
  if (typeof DecompressionStream === "undefined") throw new RangeError(say("fitpage-too-old"));
  const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"))).json();
}

// The choice as a point of the fitted files: what they do not depend on is left out.
function pointOf({ numbers }, choice) {
  const point = {};
  for (const { name: sheet } of data.sheets) {
    const wanted = {
      thickness: summed(choice.sheets[sheet].readings).thickest,
      fit: choice.sheets[sheet].fit,
      cutter: cutterAt(data.sheets.find(({ name }) => name === sheet), choice),
      cut: choice.built ? choice.sheets[sheet].cut : undefined,
    };
    for (const [number, value] of Object.entries(wanted)) {
      const known = numbers.some(({ name }) => name === `${number}.${sheet}`);
      if (known && value !== undefined) point[`${number}.${sheet}`] = value;
    }
  }
  return point;
}

// The cutter that files of a sheet are for: as wide as it really cuts, where files follow that.
function cutterAt(sheet, { sheets, cutter, built }) {
  const { cut } = sheets[sheet.name];
  const nominal = cutter === undefined ? sheet.planned : cutter;
  return cut && !(built && sheet.built) && nominal !== null && canFollow(sheet) ? rounded(nominal + cut, 3) : cutter;
}

async function madeFiles() {
  const choice = last;
  try {
    const found = await fittedFiles();
    return fill(found, pointOf(found, choice));
  } catch (trouble) {
    find("status").textContent = trouble instanceof RangeError ? trouble.message : say("fitpage-not-fetched");
    return [];
  }
}

function saved(name, content, kind) {
  const link = element("a", { href: URL.createObjectURL(new Blob([content], { type: kind })), download: name });
  place.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  find("status").textContent = say("fitpage-saved", { name });
}

const stem = () => {
  const labels = data.sheets.map(({ name }) => digits(summed(last.sheets[name].readings).thickest, 2));
  return `${data.plan}-${data.release}-${labels.join("-")}mm`;
};

// What files are called by their point, which is also the folder of the first: cut/17.63mm/...
const labelOf = ([{ name }]) => name.split("/")[1];
const stemOf = (files) => `${data.plan}-${data.release}-${labelOf(files)}`;

// The files by folder, each called by what is its own: the label of the point is in all names.
async function showFiles() {
  const files = await madeFiles();
  const label = files.length ? labelOf(files) : "";
  const shelves = new Map();
  for (const file of files) {
    const own = file.name.replaceAll(`${label}/`, "").replaceAll(`-${label}`, "").replaceAll(`${label}-`, "");
    const shelf = own.split("/").slice(0, -1).join("/");
    if (!shelves.has(shelf)) shelves.set(shelf, []);
    shelves.get(shelf).push(fileButton(file, own.split("/").pop()));
  }
  const shown = [...shelves].flatMap(([shelf, buttons]) => [
    element("h4", { class: "caps soft" }, shelf),
    element("ul", { class: "files" }, ...buttons.map((each) => element("li", {}, each))),
  ]);
  find("files").replaceChildren(...shown);
}

function fileButton({ name, text }, called) {
  const button = element("button", { type: "button" }, called);
  button.addEventListener("click", () => saved(name.split("/").pop(), text, "application/octet-stream"));
  return button;
}

// ---- the build card -----------------------------------------------------------------------

// Fields of the coupon say nothing any more where the true cut itself is stated.
function emptied(box) {
  for (const each of COUPON_FIELDS.map((field) => find(field, box))) if (each) each.value = "";
}

function restore({ sheets, cutter, built }) {
  data.sheets.forEach(({ name }, index) => {
    all("reading", boxes[index]).forEach((field, spot) => {
      field.value = spot in sheets[name].readings ? `${marked(digits(sheets[name].readings[spot], 2))} mm` : "";
    });
    const fits = all("fit", boxes[index]);
    const near = fits.map((each) => Math.abs(Number(each.value) - sheets[name].fit));
    if (fits.length) fits[near.indexOf(Math.min(...near))].checked = true;
  });
  const value = cutter === undefined ? "planned" : cutter === null ? "none" : "other";
  for (const each of all("cutter")) each.checked = each.value === value;
  for (const each of all("built")) each.checked = each.value === (built ? "files" : "program");
  if (find("width")) find("width").value = value === "other" ? `${marked(digits(cutter, 3))} mm` : "";
  data.sheets.forEach(({ name, planned }, index) => {
    const { cut } = sheets[name];
    const nominal = cutter === undefined ? planned : cutter || 0;
    emptied(boxes[index]);
    if (find("cut", boxes[index])) find("cut", boxes[index]).value = cut ? `${marked(digits(nominal + cut, 3))} mm` : "";
  });
}

async function load(field) {
  const [file] = field.files;
  if (!file) return;
  const { choice, words } = readCard(await file.text(), data);
  if (choice) restore(choice);
  show();
  find("status").textContent = words;
  field.value = "";
}

// ---- at work ------------------------------------------------------------------------------

find("without", place.parentElement)?.remove();
data.sheets.forEach((sheet, index) => tell(find("examples", boxes[index]), examples(meantFor(sheet), data.unit)));
find("form").hidden = false;
find("form").addEventListener("submit", (event) => event.preventDefault());
find("form").addEventListener("input", ({ target }) => {
  if (target.dataset.fit === "cut") emptied(target.closest("[data-sheet]"));
  show(target);
});
find("form").addEventListener("change", settled);
find("form").addEventListener("paste", (event) => {
  if (event.target.dataset.fit === "reading" && spread(event.target, event.clipboardData.getData("text"))) event.preventDefault();
});
find("width")?.addEventListener("focus", () => {
  for (const each of all("cutter")) each.checked = each.value === "other";
});
find("zip")?.addEventListener("click", async () => {
  const files = await madeFiles();
  if (files.length) saved(`${stemOf(files)}.zip`, storedZip(files, data.day, stemOf(files)), "application/zip");
});
find("each")?.addEventListener("toggle", ({ target }) => target.open && last && showFiles());
find("send")?.addEventListener("click", () => {
  const told = { went: find("went").value, outcome: find("outcome").value };
  const ids = data.sheets.map(() => byChance(12));
  saved(`measured-${data.plan}-${data.release}.entries.json`, sentText(data, last, reckoned, told, ids), "application/json");
});
find("card").addEventListener("click", () => saved(`${stem()}.card.json`, cardText(data, last), "application/json"));
find("label").addEventListener("click", () => saved(`${stem()}.label.svg`, labelText(data, last), "image/svg+xml"));
find("load").addEventListener("change", ({ target }) => load(target));
show();
