// What saves a piece that came out wrong: how much to open it, what to line it with, where it fits.
//
// Plain functions of plain data, no page among them. They stand after fitting.js. Lengths are mm. A
// part is one of the page's data: {name, sheet, wider, goes, slips: [name, count, length, width], lies:
// [turn, along, across]}; a sheet's name in place of a length stands for what that measures.

"use strict";

const REOPEN = [0.02, 1];
const LOOSEST = 3;

// By how much a joint is too tight or too loose, {mm} or {fault}; nothing for an empty text.
function wrongBy(text, way, { leastLoose }, unit) {
  if (!text.trim()) return {};
  if (!parsed(text)) return { fault: `“${text.trim().slice(0, 24)}” is no number: write 0.15 mm or 0.006 in.` };
  const range = way === "tight" ? REOPEN : [leastLoose, LOOSEST];
  return lengthIn(text, range, range, 3, `what a joint is too ${way} by`, unit);
}

// An offcut, the side along the grain first, {sides} or {fault}.
function offcutOf(text, unit) {
  if (!text.trim()) return {};
  const parts = text.trim().split(/\s+[xX]\s+|\s*×\s*|(?<=\d)[xX](?=\d)/);
  const example = unit === "in" ? "12 x 16" : "300 x 400";
  const stated = parts.map(parsed);
  if (parts.length !== 2 || stated.includes(null)) return { fault: `“${text.trim().slice(0, 24)}” is no size: write the side along the grain first, ${example}.` };
  return { sides: stated.map(({ value, units }) => value * IN_MM[units.length > 1 ? unit : units[0]]) };
}

// What cannot be done for a part, in words; empty where it can.
function hopeless(part, way) {
  if (way === "spoilt") return "";
  if (!part.slips.length) {
    const into = part.goes.length ? ` It goes into ${listed(part.goes)}: choose that piece.` : "";
    return `${part.name} has no opening that a sheet goes into.${into}`;
  }
  if (way === "loose" || part.wider) return "";
  return `${part.name} cannot be laid by its edges for a second cut, or its files follow no rule: cut it again, with more play.`;
}

const listed = (words) => (words.length > 1 ? `${words.slice(0, -1).join(", ")} and ${words.at(-1)}` : words.join(""));

const chosenIn = (mm, unit) => (unit === "in" ? `${chosen(mm)} in` : `${digits(mm, 3)} mm`);
const sizeIn = (sides, unit) => `${sides.map((mm) => (unit === "in" ? digits(mm / 25.4, 2) : digits(mm, 1))).join(" x ")} ${unit}`;

// What lines openings that are `loose` too loose, line by line; `thickness` of sheets by name.
function slipWords(part, loose, thickness, { slips, leastLoose, glued }, unit) {
  const layers = [];
  let left = Math.floor(loose / leastLoose + 1e-6);
  for (const [name, thick] of slips) {
    const count = Math.floor(left / Math.round(thick / leastLoose));
    left -= count * Math.round(thick / leastLoose);
    if (count) layers.push(`${count} ${count > 1 ? "layers" : "layer"} of ${name} (${chosenIn(thick, unit)})`);
  }
  const rows = new Map();
  for (const [name, count, ...sides] of part.slips) {
    const row = `${name}: # of ${sizeIn(sides.map((each) => thickness[each] ?? each), unit)}`;
    rows.set(row, (rows.get(row) || 0) + count);
  }
  const head = `Slips of about ${chosenIn(loose, unit)}: ${listed(layers)}, as each usually is thick.`;
  return [head, ...[...rows].map(([row, count]) => row.replace("#", count)), glued];
}

// How a part lies on an offcut, {words, fits}.
function lyingOn(part, [along, across], unit) {
  const found = part.lies.find(([, wide, high]) => wide <= along + 0.01 && high <= across + 0.01);
  if (!found) {
    const least = [...new Set(part.lies.filter(([turn]) => turn % 90 === 0).map(([, ...sides]) => sizeIn(sides, unit)))];
    return { fits: false, words: `${part.name} finds no room on ${sizeIn([along, across], unit)}. It takes ${least.join(" or ")} at least, along the grain and across it, with its margin.` };
  }
  const turned = found[0] ? `turned by ${found[0]} degrees` : "as drawn";
  return { fits: true, words: `${part.name} fits, ${turned}, with the margin of its sheet all round.` };
}
