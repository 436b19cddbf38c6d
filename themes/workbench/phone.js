// The page at the machine: one entry after the other, kept on the page until they are saved as a file.
// It loads nothing and sends nothing; a photo is made small here, and what the camera noted stays behind.

"use strict";

const place = document.currentScript.parentElement;
const find = (name) => place.querySelector(`[data-log="${name}"]`);
const fields = () => [...place.querySelectorAll("[data-key]")];
const data = JSON.parse(find("data").textContent);
const KEPT = `kerfolio-entries:${data.house}`;

const WIDEST = 1400; // px of a photo's longer side: enough to see an edge by
const QUALITY = 0.8;

// ---- what is kept -------------------------------------------------------------------------

// What stands on the page: entries that wait, and what is being typed.
function kept() {
  try {
    return { entries: [], typed: {}, ...JSON.parse(localStorage.getItem(KEPT) || "{}") };
  } catch {
    return { entries: [], typed: {} };
  }
}

let state = kept();

// Keeps the state; where the browser has no room for it, that is told and it stands until the page is closed.
function keep() {
  try {
    localStorage.setItem(KEPT, JSON.stringify(state));
    return true;
  } catch {
    tell("status", say("phonescript-no-room"));
    return false;
  }
}

// ---- from what is typed to an entry -------------------------------------------------------

const text = (key) => (state.typed[key] || "").trim();
const bare = (value) => /^\d+(\.\d+)?$/.test(value);
const withUnit = (value, unit) => (bare(value) ? `${value} ${unit}` : value);
const parts = (value) => value.split(/;|,(?=\s|$)|\s+(?=\d+(?:\.\d+)?$)/).map((each) => each.trim()).filter(Boolean);

// The local day, as a log writes it.
function today(now = new Date()) {
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function fresh(count) {
  const letters = crypto.getRandomValues(new Uint8Array(count));
  return [...letters].map((each) => "abcdefghjkmnpqrstuvwxyz23456789"[each % 31]).join("");
}

// The entry as a log states it; bare numbers get the unit that stands beside their field.
function stated() {
  const plan = data.plans.find(({ name }) => name === text("plan"));
  const length = (key) => withUnit(text(key), data.unit);
  const entry = {
    date: today(),
    title: text("title"),
    plan: text("plan"),
    release: plan ? plan.release : "",
    stock: text("stock"),
    thickness: length("thickness"),
    cutter: text("cutter"),
    speed: withUnit(text("speed"), "rpm"),
    feed: withUnit(text("feed"), `${data.unit}/min`),
    passes: parts(text("passes")).map((each) => withUnit(each, data.unit)),
    fit: length("fit"),
    went: text("went"),
    outcome: text("outcome"),
    marks: data.marks.filter((each) => text(`mark-${each}`)),
    metres: text("metres"),
    minutes: text("minutes"),
    text: text("text"),
  };
  if (state.typed.picture) entry.photo = { alt: text("alt") || say("phonescript-alt") };
  return Object.fromEntries(Object.entries(entry).filter(([, value]) => value.length !== 0));
}

// ---- what the cutter takes ----------------------------------------------------------------

const MM = { mm: 1, in: 25.4 };
const FEEDS = [["mm/min", 1], ["in/min", 25.4], ["m/min", 1000]];

function millimetres(value) {
  const [, number, unit] = /^(\d+(?:\.\d+)?)\s*(mm|in)?$/.exec(value) || [];
  return number === undefined ? null : Number(number) * MM[unit || data.unit];
}

function feed(value) {
  const [unit, scale] = FEEDS.find(([each]) => value.endsWith(each)) || ["", MM[data.unit]];
  const number = value.slice(0, value.length - unit.length).trim();
  return bare(number) ? Number(number) * scale : null;
}

const shown = (mm, decimals) => marked(String(Number((mm / MM[data.unit]).toFixed(decimals + (data.unit === "in" ? 1 : 0)))));

// Chip load, depth and the wood taken away a minute, as far as they are known (shop/chip_load.py).
function figures() {
  const cutter = data.cutters.find(({ name }) => name === text("cutter"));
  if (!cutter) return "";
  const rate = feed(text("feed"));
  const speed = Number(text("speed").replace(/\s*rpm$/, ""));
  const depths = parts(text("passes")).map(millimetres);
  const deepest = depths.length && depths.every(Boolean) ? Math.max(...depths) : 0;
  const words = [];
  if (rate && speed > 0) words.push(say("phonescript-chip", { chip: `${shown(rate / (speed * cutter.flutes), 3)} ${data.unit}` }));
  const range = rangeFor(cutter, deepest);
  if (words.length && range) words.push(say("phonescript-published", { least: shown(range[0], 3), most: `${shown(range[1], 3)} ${data.unit}` }));
  if (deepest) words.push(say("phonescript-depth", { times: marked(String(Number((deepest / cutter.diameter).toFixed(2)))) }));
  if (deepest && rate && !cutter.shaped) {
    const volume = data.unit === "in" ? `${marked(String(Number(((cutter.diameter * deepest * rate) / 16387.064).toFixed(2))))} in³` : `${Math.round((cutter.diameter * deepest * rate) / 1000)} cm³`;
    words.push(say("phonescript-removed", { volume }));
  }
  return words.join(" ");
}

// What tables publish for a cutter on the sheet, less where it goes deep; null where they say nothing.
function rangeFor({ chips }, deepest) {
  const sheet = data.sheets.find(({ name }) => name === text("stock"));
  const range = sheet && chips[sheet.family];
  if (!range) return null;
  const { diameter } = data.cutters.find(({ name }) => name === text("cutter"));
  const share = shareAt(deepest / diameter);
  return range.map((each) => each * share);
}

function shareAt(diameters) {
  const rules = data.depths;
  if (!rules.length || diameters <= rules[0][0]) return 1;
  for (let spot = 1; spot < rules.length; spot += 1) {
    const [[low, share], [high, less]] = [rules[spot - 1], rules[spot]];
    if (diameters <= high) return share + ((less - share) * (diameters - low)) / (high - low);
  }
  return 1;
}

// ---- showing ------------------------------------------------------------------------------

function tell(name, words) {
  const at = find(name);
  if (at.textContent !== words) at.textContent = words;
}

function show() {
  tell("figures", figures());
  const list = find("waiting");
  list.replaceChildren(...state.entries.map(row));
  tell("count", state.entries.length ? say(state.entries.length > 1 ? "phonescript-waiting-many" : "phonescript-waiting", { count: state.entries.length }) : say("phonescript-none"));
  find("save").disabled = !state.entries.length;
  showPicture(find("picture"), state.typed.picture);
  find("drop-photo").hidden = !state.typed.picture;
}

let pictured; // the picture that is shown: decoded once, not with every key

function showPicture(at, picture) {
  at.hidden = !picture;
  if (pictured === picture) return;
  pictured = picture;
  at.replaceChildren();
  if (!picture) return;
  const image = document.createElement("img");
  image.className = "picture";
  image.alt = at.dataset.alt;
  image.src = `data:image/jpeg;base64,${picture}`;
  at.append(image);
}

function row({ id, entry, saved }) {
  const item = document.createElement("li");
  const words = [entry.title, entry.stock, entry.cutter, entry.outcome].filter(Boolean).join(", ");
  const drop = document.createElement("button");
  drop.type = "button";
  drop.textContent = say("phonescript-remove");
  drop.setAttribute("aria-label", say("phonescript-remove-it", { entry: words || id }));
  drop.addEventListener("click", () => {
    if (!saved && !confirm(say("phonescript-sure"))) return;
    state.entries = state.entries.filter((each) => each.id !== id);
    keep();
    show();
    find("count").focus();
  });
  item.append(`${words || id}${saved ? ` (${say("phonescript-saved-already")})` : ""} `, drop);
  return item;
}

// The fields as what was typed; those that are left empty offer what was logged last.
function fill() {
  for (const field of fields()) {
    const value = state.typed[field.dataset.key] || "";
    if (field.type === "radio") field.checked = field.value === value;
    else if (field.type === "checkbox") field.checked = Boolean(value);
    else field.value = value;
  }
}

// Once sheet and cutter are chosen, what stood in the plan or was logged last with them.
function offer() {
  const [plan, stock, cutter] = ["plan", "stock", "cutter"].map(text);
  const here = (each) => each.stock === stock && each.cutter === cutter;
  const own = (data.plans.find(({ name }) => name === plan) || { cuts: [] }).cuts.find(here);
  const found = own || data.settings.find(here);
  if (!found) return;
  for (const key of ["speed", "feed", "passes"]) state.typed[key] = found[key];
  fill();
  tell("status", say(own ? "phonescript-from-plan" : "phonescript-from-log"));
}

// ---- what is done -------------------------------------------------------------------------

function typed({ target }) {
  const { key } = target.dataset;
  if (!key) return;
  if (target.type === "radio" && !target.checked) return;
  state.typed[key] = target.type === "checkbox" ? (target.checked ? "yes" : "") : target.value;
  if (key === "plan") planChosen();
  if (["plan", "stock", "cutter"].includes(key)) offer();
  keep();
  show();
}

// A plan of one sheet says which sheet it is, and its release.
function planChosen() {
  const plan = data.plans.find(({ name }) => name === text("plan"));
  const stocks = plan ? Object.keys(plan.sheets) : [];
  if (stocks.length === 1) state.typed.stock = stocks[0];
  if (plan && plan.cuts.length && !text("cutter")) state.typed.cutter = plan.cuts[0].cutter;
  fill();
}

async function photoTaken({ target }) {
  const [file] = target.files;
  target.value = "";
  if (!file) return;
  try {
    state.typed.picture = await shrunk(file);
    tell("status", say("phonescript-photo"));
  } catch {
    tell("status", say("phonescript-no-photo"));
  }
  keep();
  show();
}

// A photo as a JPEG no longer than WIDEST, in base64: drawn anew, it says nothing of where it was taken.
async function shrunk(file) {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, WIDEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/jpeg", QUALITY).split(",")[1];
}

function entered(event) {
  event.preventDefault();
  const entry = stated();
  if (!entry.stock && !entry.cutter && !entry.outcome && !entry.text) {
    tell("status", say("phonescript-nothing"));
    return;
  }
  const { picture } = state.typed;
  const made = { section: text("job") ? "jobs" : "trials", id: `${entry.date}-${fresh(6)}`, entry };
  state.entries.push(picture ? { ...made, picture } : made);
  // What will be the same in the next entry stays; its outcome and its photo do not.
  const same = ["plan", "stock", "cutter", "thickness", "speed", "feed", "passes", "job"];
  state.typed = Object.fromEntries(Object.entries(state.typed).filter(([key]) => same.includes(key)));
  if (keep()) tell("status", say("phonescript-kept"));
  fill();
  show();
  find("count").focus();
}

function saved() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  const name = `log-${today(now)}-${two(now.getHours())}${two(now.getMinutes())}.entries.json`;
  const entries = state.entries.map(({ section, id, entry, picture }) => (picture ? { section, id, entry, picture } : { section, id, entry }));
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([JSON.stringify({ format: data.format, entries })], { type: "application/json" }));
  link.download = name;
  place.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  for (const each of state.entries) each.saved = true;
  keep();
  show();
  tell("status", say("phonescript-saved", { name }));
}

place.addEventListener("input", typed);
find("form").addEventListener("submit", entered);
find("photo").addEventListener("change", photoTaken);
find("drop-photo").addEventListener("click", () => {
  delete state.typed.picture;
  keep();
  show();
  find("photo").focus();
});
find("save").addEventListener("click", saved);
fill();
show();
