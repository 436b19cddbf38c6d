// What the fitting page reckons: readings in mm, widths, play, refusals, a joint's drawing, the card.
//
// Plain functions of plain data, no page among them. They stand after fitted.js and use its digits.
// Lengths are mm. A sheet is one of the page's data: {name, title, stock, sold: [least, most], least,
// most, drawn, fit, planned, cutter, curve, narrow: [{takes, width}], recessed}. A choice is what the
// reader chose: {sheets: {NAME: {readings, fit, cut}}, cutter: mm, null for none, undefined as planned,
// built}; `cut` is by how much a cutter cuts wider than its name, `built` whether files have that built in.

"use strict";

// ---- readings -----------------------------------------------------------------------------

const NUMBER = /^(?:(\d+)[ -](\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+)) ?(mm|cm|inches|inch|in\.?|")?$/;
const IN_MM = { mm: 1, cm: 10, in: 25.4 };

// What somebody wrote, in one spelling: 1½″ is 1 1/2".
function spelt(text) {
  const apart = text.replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize("NFKC")}`);
  return apart.replace(/\u2044/g, "/").replace(/[″”“]|''/g, '"').replace(/\s+/g, " ").trim().toLowerCase();
}

// A number with the units it may be in, the likelier first; null where it is none.
function parsed(text) {
  const found = NUMBER.exec(spelt(text));
  if (!found) return null;
  const [whole, up, down] = found[5] ? [0, found[4], found[5]] : found.slice(1, 4);
  const value = down ? Number(whole) + up / down : Number(found[6].replace(",", "."));
  if (!Number.isFinite(value) || value <= 0) return null;
  const unit = found[7] ? (found[7] === "mm" || found[7] === "cm" ? found[7] : "in") : "";
  if (unit) return { value, units: [unit] };
  return { value, units: down ? ["in"] : ["mm", "in"] };
}

// The readings that a text holds, as they are written: lines, cells of a table, or a row with
// blanks, semicolons or commas between. What has no digit, as a heading, is none.
function readingTexts(text) {
  const parted = text.replace(/[^\s;]+/g, (run) => (run.includes(".") ? run.replaceAll(",", "\t") : run));
  const cells = parted.split(/[\n\r\t;]+|, /).map((each) => each.trim()).filter((each) => /[\d¼-¾⅐-⅞]/.test(each));
  return cells.flatMap((cell) => (parsed(cell) ? [cell] : row(cell)));
}

const ROW = new RegExp(`(?<=^| )${NUMBER.source.slice(1, -1)}(?= |$)`, "g");

// Numbers that only blanks part, each with its unit; a cell that holds anything else stays whole.
function row(cell) {
  const numbers = spelt(cell).match(ROW) || [];
  return numbers.join(" ") === spelt(cell) ? numbers : [cell];
}

const within = (mm, [least, most]) => least <= mm && mm <= most;

// A length within a range of what it can be, {mm}, else {fault} in words. `meant` is the narrower
// range in which a slip of unit or of the point is looked for.
const quoted = (text) => text.trim().slice(0, 24);

function lengthIn(text, likely, meant, decimals, what, unit) {
  const stated = parsed(text);
  if (!stated) return { fault: say("fitscript-no-number", { text: quoted(text), examples: examples(meant, unit) }) };
  const ways = stated.units.map((each) => stated.value * IN_MM[each]);
  const mm = ways.find((each) => within(each, likely));
  if (mm !== undefined) return { mm: rounded(mm, decimals) };
  const slip = slipped(stated, meant);
  if (slip) return { fault: say("fitscript-cannot-be-slip", { text: quoted(text), what, slip }) };
  return { fault: say("fitscript-cannot-be", { text: quoted(text), what }) };
}

// What was meant where the unit is another or the point stands elsewhere: 0.7 mm is 0.7 in.
function slipped({ value, units }, meant) {
  for (const power of [0, 1, -1, 2, -2, 3, -3]) {
    for (const unit of [units[0], units[0] === "in" ? "mm" : "in"]) {
      const moved = power < 0 ? value / 10 ** -power : value * 10 ** power;
      if (within(moved * IN_MM[unit], meant)) return `${marked(digits(moved, unit === "in" ? 4 : 3))} ${unit}`;
    }
  }
  return "";
}

function examples([least, most], unit) {
  const mm = rounded((least + most) / 2, 1);
  const near = sold((Math.round((mm / 25.4) * 32) / 32) * 25.4); // a fraction by which sheets are sold
  const told = [marked(digits(mm, 1)), `${marked(fixed(mm / 25.4, 3))} in`, `${marked(near)} in`];
  const [one, two, three] = unit === "in" ? [told[2], told[1], `${told[0]} mm`] : told;
  return say("fitscript-examples", { one, two, three });
}

const meantFor = ({ least, most }) => [least * 0.93, most * 1.07];

function readingOf(text, sheet, unit) {
  const likely = [sheet.least / 2, sheet.most * 2];
  return lengthIn(text, likely, meantFor(sheet), 2, say("fitscript-thickness", { sheet: sheet.title }), unit);
}

// A cutter's diameter: a bare number below 0.8 is in inches.
function cutterOf(text, unit) {
  return lengthIn(text, [0.8, 26], [1, 13], 3, say("fitscript-cutter"), unit);
}

// The thickest, the thinnest and the mean of readings, which are whole hundredths of a mm.
function summed(readings) {
  const sum = readings.reduce((total, each) => total + Math.round(each * 100), 0);
  return {
    thickest: Math.max(...readings),
    thinnest: Math.min(...readings),
    mean: rounded(sum / readings.length / 100, 2),
  };
}

// ---- telling ------------------------------------------------------------------------------

// What a calliper reads, in both units: 17.83 mm (0.702 in).
function told(mm, unit) {
  const [metric, inch] = [`${marked(digits(mm, 2))} mm`, `${inches(mm)} in`];
  return unit === "in" ? `${inch} (${metric})` : `${metric} (${inch})`;
}

const inches = (mm) => marked(Math.abs(mm) < 1 ? digits(mm / 25.4, 3) : calliper(mm));

// A cutter's diameter or a fit, which have a decimal more: 3.175 mm (0.125 in).
function toldTool(mm, unit) {
  const [metric, inch] = [`${marked(digits(mm, 3))} mm`, `${marked(digits(mm / 25.4, 4))} in`];
  return unit === "in" ? `${inch} (${metric})` : `${metric} (${inch})`;
}

const toldIn = (mm, unit) => (unit === "in" ? inches(mm) : marked(digits(mm, 2)));

function toldRange([least, most], unit) {
  const range = (tell, end) => `${say("fitscript-to", { least: marked(tell(least)), most: marked(tell(most)) })} ${end}`;
  const [a, b] = [range((each) => digits(each, 2), "mm"), range(calliper, "in")];
  return unit === "in" ? `${b} (${a})` : `${a} (${b})`;
}

// ---- fit and play -------------------------------------------------------------------------

// How wide what takes a sheet is in the files for a thickness `made`, and how much wider than the
// sheet where it is thickest and thinnest, mm. `more` is what finish and damp have of it, a side.
function playOf(fit, { made, thickest, thinnest, more = 0 }) {
  const slot = made + 2 * (fit + more);
  return { slot, thick: slot - thickest, thin: slot - thinnest };
}

// Words for a clearance on one side of a joint; `words` are [up to, words], the least first.
function fitWords(side, words) {
  return (words.find(([most]) => side <= most + 1e-9) || words[words.length - 1])[1];
}

function playWords(fit, sum, { unit, fitWords: words, jointFits }) {
  const wants = 2 * (sum.more || 0);
  const { slot, ...bare } = playOf(fit, sum);
  const [thick, thin] = [bare.thick - wants, bare.thin - wants];
  const damp = wants ? "-wants" : "";
  const slots = { slot: told(slot, unit), wants: told(wants, unit) };
  const wide = say(`fitscript-slots${jointFits ? "-own" : ""}${damp}`, slots);
  const most = say("fitscript-play", { play: told(thick, unit), feel: fitWords(thick / 2, words) });
  if (sum.thickest === sum.thinnest) return `${wide} ${say(`fitscript-joint${damp}`, { most })}`;
  const least = `${told(thin, unit)}: ${fitWords(thin / 2, words)}`;
  return `${wide} ${say(`fitscript-joint-range${damp}`, { most, least })}`;
}

// ---- what cannot be -----------------------------------------------------------------------

// Why nothing is made for a thickness, with what can be done; empty where it is within the range.
function refusal(sheet, thickest, data) {
  const { unit, plan, ask } = data;
  const range = [sheet.least, sheet.most];
  if (within(thickest, range)) return "";
  const thin = thickest < sheet.least;
  const measured = { thickness: told(thickest, unit), range: toldRange(range, unit) };
  const why = say(thin ? "fitscript-thinner" : "fitscript-thicker", measured);
  const play = told(sheet.least + 2 * (sheet.fit + (sheet.more || 0)) - thickest, unit);
  const ready = thin
    ? say("fitscript-loose", { least: told(sheet.least, unit), play })
    : say("fitscript-none-in");
  if (!within(thickest, sheet.sold)) {
    const sold = say("fitscript-sold", { sheet: sheet.title, range: toldRange(sheet.sold, unit) });
    return `${why} ${ready} ${sold}`;
  }
  const command = `kerfolio files --plan ${plan} --sheet ${sheet.name}=${digits(thickest, 2)}`;
  return `${why} ${ready} ${say("fitscript-ask", { maker: ask, command })}`;
}

// A spread that no sheet has is told, and nothing more.
function spreadWords({ thickest, thinnest }, unit) {
  const apart = thickest - thinnest;
  return apart > 1 + 1e-9
    ? say("fitscript-apart", { apart: told(apart, unit) })
    : "";
}

// What no longer works with a cutter (mm; null for none) on a sheet, sentence by sentence.
function cutterWords(sheet, cutter, at, { unit, relief }) {
  const found = [];
  if (cutter === null) {
    if (relief) found.push(say("fitscript-square"));
    if (sheet.recessed) found.push(say("fitscript-recessed"));
    return found;
  }
  const widths = sheet.narrow.map(({ takes, width }) => (takes ? at[takes].thickness + 2 * at[takes].fit : width));
  const least = Math.min(...widths);
  if (cutter > least + 0.005) {
    found.push(say("fitscript-too-wide", { cutter: toldTool(cutter, unit), width: told(least, unit) }));
  }
  if (sheet.curve && cutter > 2 * sheet.curve + 0.005) {
    found.push(say("fitscript-curve", { radius: told(sheet.curve, unit) }));
  }
  return found;
}

// ---- ready-made sets ----------------------------------------------------------------------

// The set for each sheet's thickest reading, rounded, else the next thicker; null where none is.
function readySet(data, thickest) {
  const near = data.sheets.map(({ name }) => {
    const known = [...new Set(data.ready.map(({ at }) => at[name]))].sort((a, b) => a - b);
    const same = known.filter((each) => Math.abs(each - thickest[name]) <= data.step / 2 + 1e-9);
    const apart = (each) => Math.abs(each - thickest[name]);
    if (same.length) return same.reduce((best, each) => (apart(each) < apart(best) ? each : best));
    return thickest[name] < known[0] ? undefined : known.find((each) => each > thickest[name]);
  });
  return data.ready.find(({ at }) => data.sheets.every(({ name }, index) => at[name] === near[index])) || null;
}

// ---- the drawing of one joint -------------------------------------------------------------

// A tab in its slot, cut through, to scale, and its edge in a circle twelve times as large. SVG.
function jointDrawing(fit, sum, unit) {
  const { slot, thick, thin } = playOf(fit, sum);
  const by = 84 / sum.thickest;
  const [x, y, wide, tall] = [150, 104, slot * by, 84];
  const tab = sum.thickest * by;
  const [left, right] = [x - wide / 2, x + wide / 2];
  const plies = 2 * Math.floor(sum.thickest / 2.8) + 1;
  const board = (from, to) =>
    `<path class="k-fill-wood" d="M${at(from)} ${y}H${at(to)}V${y + tall}H${at(from)}Z"/>` +
    lines(plies, (part) => `M${at(from)} ${at(y + tall * part)}H${at(to)}`) +
    `<path class="k-line-ink" fill="none" stroke-width="1.4" d="M${at(from)} ${y}H${at(to)}V${y + tall}H${at(from)}Z"/>`;
  const upright =
    `<path class="k-fill-wood-dark" d="M${at(x - tab / 2)} 22H${at(x + tab / 2)}V${y + tall}H${at(x - tab / 2)}Z"/>` +
    lines(plies, (part) => `M${at(x - tab / 2 + tab * part)} 22V${y + tall}`) +
    `<path class="k-line-ink" fill="none" stroke-width="1.4" d="M${at(x - tab / 2)} 22H${at(x + tab / 2)}V${y + tall}H${at(x - tab / 2)}Z"/>`;
  const name = say("fitscript-drawing", { tab: told(sum.thickest, unit), slot: told(slot, unit) });
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 226" role="img" aria-label="${name}">` +
    board(20, left) + board(right, 262) + upright +
    dimension(x - tab / 2, x + tab / 2, 12, toldIn(sum.thickest, unit)) +
    dimension(left, right, y + tall + 14, toldIn(slot, unit)) +
    lens(right, y, by, thick / 2, thin / 2, unit) +
    "</svg>"
  );
}

const at = (value) => digits(value, 2);

const lines = (count, path) =>
  `<path class="k-line-faint" stroke-width="0.6" d="${Array.from({ length: count - 1 }, (_, each) => path((each + 1) / count)).join("")}"/>`;

function dimension(from, to, y, text) {
  const tick = (x) => `M${at(x)} ${y - 4}V${y + 4}`;
  return (
    `<path class="k-line-soft" fill="none" stroke-width="1" d="M${at(from)} ${y}H${at(to)}${tick(from)}${tick(to)}"/>` +
    `<text class="k-fill-ink" x="${at(to + 8)}" y="${y + 5}" font-size="14">${text}</text>`
  );
}

// The gap at one side of the tab: in full the thickest place, dashed the thinnest.
function lens(x, y, by, thick, thin, unit) {
  const [cx, cy, r] = [334, 76, 56];
  const [wall, top] = [cx + 22, cy - 8];
  const [face, dashed] = [thick, thin].map((gap) => wall - gap * by * 12);
  const shown = Math.max(cx - r, face);
  const thinner = thin > thick ? `<path class="k-line-accent" stroke-width="1.4" stroke-dasharray="5 4" d="M${at(Math.max(dashed, cx - r + 6))} ${cy - r}V${cy + r}"/>` : "";
  return (
    `<clipPath id="fitting-lens"><circle cx="${cx}" cy="${cy}" r="${r}"/></clipPath>` +
    `<path class="k-line-soft" fill="none" stroke-width="1" d="M${at(x + 4)} ${at(y - 3)}L${cx - r + 8} ${cy + 24}"/>` +
    `<circle class="k-line-soft" cx="${at(x)}" cy="${y}" r="4.7" fill="none" stroke-width="1"/>` +
    `<g clip-path="url(#fitting-lens)"><circle class="k-fill-paper" cx="${cx}" cy="${cy}" r="${r}"/>` +
    `<path class="k-fill-wood" d="M${wall} ${top}H400V140H${wall}Z"/>` +
    `<path class="k-fill-wood-dark" d="M${cx - r} 0H${at(shown)}V150H${cx - r}Z"/>` +
    `<path class="k-line-ink" fill="none" stroke-width="1.6" d="M400 ${top}H${wall}V140M${at(shown)} 0V150"/>${thinner}</g>` +
    `<circle class="k-line-soft" cx="${cx}" cy="${cy}" r="${r}" fill="none" stroke-width="1"/>` +
    `<text class="k-fill-ink" x="${cx}" y="${cy + r + 20}" font-size="14" text-anchor="middle">${thin > thick ? say("fitscript-to", { least: toldIn(thick, unit), most: toldIn(thin, unit) }) : toldIn(thick, unit)}</text>` +
    `<text class="k-fill-soft" x="${cx}" y="${cy + r + 37}" font-size="13" text-anchor="middle">${say("fitscript-each-side")}</text>`
  );
}

// ---- the build card -----------------------------------------------------------------------

const CARD = "kerfolio-files/1"; // as the program writes it beside files for one point

const same = (mm, other) => steps(mm, 3) === steps(other, 3);

// What was chosen, as a file: from it the same files are made again.
function cardText(data, { sheets, cutter, built }) {
  const rows = data.sheets.map(({ name, stock, planned }) => {
    const { readings, fit, cut } = sheets[name];
    const wide = cutter === undefined ? planned : cutter;
    const real = cut ? { cut, "cut-in": built ? "files" : "program" } : {};
    return [name, { stock, thickness: summed(readings).thickest, fit, cutter: wide, ...real, readings }];
  });
  const { plan, title, release, day } = data;
  const card = { format: CARD, plan, title, release, date: day, unit: "mm", sheets: Object.fromEntries(rows) };
  return `${JSON.stringify(card, null, 1)}\n`;
}

// The choice on a card and what there is to tell of it, {choice, words}; choice null where it is none
// of this plan.
function readCard(text, data) {
  const card = parsedCard(text);
  if (!card) return { choice: null, words: say("fitscript-no-card") };
  const title = String(card.title).slice(0, 80);
  const release = String(card.release).slice(0, 20);
  if (card.plan !== data.plan) {
    return { choice: null, words: say("fitscript-other-card", { card: title, release, plan: data.title }) };
  }
  const choice = { sheets: {}, cutter: undefined, built: false };
  for (const { name, fit, planned } of data.sheets) {
    const found = card.sheets[name] || {};
    const known = (Array.isArray(found.readings) ? found.readings : [found.thickness]).map(Number);
    choice.sheets[name] = {
      readings: known.filter((each) => each > 0 && each < 1000).slice(0, 8),
      fit: found.fit >= 0 ? Number(found.fit) : fit,
      cut: Math.abs(found.cut) < 2 ? Number(found.cut) : 0,
    };
    if (found.cut && found["cut-in"] !== "program") choice.built = true;
    if (found.cutter === null || (found.cutter > 0 && !same(found.cutter, planned))) choice.cutter = found.cutter;
  }
  if (card.release === data.release) return { choice, words: say("fitscript-card") };
  return { choice, words: say("fitscript-old-card", { release, newer: data.release }) };
}

function parsedCard(text) {
  try {
    const card = JSON.parse(text);
    return card.format === CARD && card.sheets && typeof card.sheets === "object" ? card : null;
  } catch {
    return null;
  }
}

// What a set of files was made for, one line for each sheet, and the cutter's.
function cardLines(data, choice) {
  const sheets = data.sheets.map(({ name, title }) => {
    const { thickest } = summed(choice.sheets[name].readings);
    const fit = toldTool(choice.sheets[name].fit, data.unit);
    return say("fitscript-line", { sheet: title, thickness: told(thickest, data.unit), fit });
  });
  const cuts = data.sheets.map(({ name, title, planned }) => {
    const { cut } = choice.sheets[name];
    const nominal = choice.cutter === undefined ? planned : choice.cutter || 0;
    const real = { sheet: title, cut: toldTool(rounded(nominal + cut, 3), data.unit) };
    return cut ? [say(choice.built ? "fitscript-line-built" : "fitscript-line-told", real)] : [];
  });
  const cutter = { undefined: say("fitscript-as-planned"), null: say("fitscript-none") }[choice.cutter] || toldTool(choice.cutter, data.unit);
  return [...sheets, say("fitscript-line-cutter", { cutter }), ...cuts.flat()];
}

// A label to glue underneath, an SVG of real size.
function labelText(data, choice) {
  const rows = cardLines(data, choice);
  const height = 24 + 5.6 * rows.length + (data.newest ? 5.6 : 0);
  const fits = (text, most) => Math.min(most, 82 / (0.56 * text.length));
  const line = (text, y, most, weight) =>
    `<text x="4" y="${at(y)}" font-size="${at(fits(text, most))}"${weight ? ` font-weight="${weight}"` : ""}>${escaped(text)}</text>\n`;
  const head = line(data.title, 9, 5.6, 600) + line(say("fitscript-release", data), 15, 3.6);
  const size = Math.min(...rows.map((text) => fits(text, 3.6))); // all of one size
  const body = rows.map((text, row) => line(text, 22.8 + 5.6 * row, size)).join("");
  const foot = data.newest ? line(data.newest, 22.8 + 5.6 * rows.length, size) : "";
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="${at(height)}mm" viewBox="0 0 90 ${at(height)}" font-family="sans-serif">\n` +
    `<title>${escaped(`${data.title} ${data.release}`)}</title>\n` +
    `<path fill="none" stroke="#000" stroke-width="0.3" d="M0.5 0.5H89.5V${at(height - 0.5)}H0.5ZM4 17.4H86"/>\n` +
    `${head}${body}${foot}</svg>\n`
  );
}

const escaped = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
