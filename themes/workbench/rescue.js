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
  if (!parsed(text)) {
    return { fault: say("fitscript-no-number", { text: quoted(text), examples: say("rescuescript-examples") }) };
  }
  const range = way === "tight" ? REOPEN : [leastLoose, LOOSEST];
  return lengthIn(text, range, range, 3, say(`rescuescript-too-${way}`), unit);
}

// An offcut, the side along the grain first, {sides} or {fault}.
function offcutOf(text, unit) {
  if (!text.trim()) return {};
  const parts = text.trim().split(/\s+[xX]\s+|\s*×\s*|(?<=\d)[xX](?=\d)/);
  const example = unit === "in" ? "12 x 16" : "300 x 400";
  const stated = parts.map(parsed);
  if (parts.length !== 2 || stated.includes(null)) {
    return { fault: say("rescuescript-no-size", { text: quoted(text), example }) };
  }
  return { sides: stated.map(({ value, units }) => value * IN_MM[units.length > 1 ? unit : units[0]]) };
}

// What cannot be done for a part, in words; empty where it can.
function hopeless(part, way) {
  if (way === "spoilt") return "";
  if (!part.slips.length) {
    const name = part.goes.length ? "rescuescript-goes-into" : "rescuescript-no-opening";
    return say(name, { part: part.name, others: listed(part.goes, "rescuescript-and") });
  }
  if (way === "loose" || part.wider) return "";
  return say("rescuescript-again", { part: part.name });
}

const listed = (words, last) => (words.length > 1 ? say(last, { head: words.slice(0, -1).join(", "), item: words.at(-1) }) : words.join(""));

const chosenIn = (mm, unit) => (unit === "in" ? `${marked(chosen(mm))} in` : `${marked(digits(mm, 3))} mm`);
const sizeIn = (sides, unit) => `${sides.map((mm) => marked(unit === "in" ? digits(mm / 25.4, 2) : digits(mm, 1))).join(" x ")} ${unit}`;

// What lines openings that are `loose` too loose, line by line; `thickness` of sheets by name.
function slipWords(part, loose, thickness, { slips, leastLoose, glued }, unit) {
  const layers = [];
  let left = Math.floor(loose / leastLoose + 1e-6);
  for (const [name, thick] of slips) {
    const count = Math.floor(left / Math.round(thick / leastLoose));
    left -= count * Math.round(thick / leastLoose);
    const layer = { count, what: name, thick: chosenIn(thick, unit) };
    if (count) layers.push(say(count > 1 ? "rescuescript-layers" : "rescuescript-layer", layer));
  }
  const rows = new Map();
  for (const [name, count, ...sides] of part.slips) {
    const size = sizeIn(sides.map((each) => thickness[each] ?? each), unit);
    const known = rows.get(`${name} ${size}`) || { name, size, count: 0 };
    rows.set(`${name} ${size}`, { ...known, count: known.count + count });
  }
  const head = { thick: chosenIn(loose, unit), layers: listed(layers, "rescuescript-and") };
  return [say("rescuescript-slips", head), ...[...rows.values()].map((row) => say("rescuescript-row", row)), glued];
}

// How a part lies on an offcut, {words, fits}.
function lyingOn(part, [along, across], unit) {
  const found = part.lies.find(([, wide, high]) => wide <= along + 0.01 && high <= across + 0.01);
  if (!found) {
    const least = [...new Set(part.lies.filter(([turn]) => turn % 90 === 0).map(([, ...sides]) => sizeIn(sides, unit)))];
    const told = { part: part.name, offcut: sizeIn([along, across], unit), least: listed(least, "rescuescript-or") };
    return { fits: false, words: say("rescuescript-no-room", told) };
  }
  const lying = { part: part.name, degrees: found[0] };
  return { fits: true, words: say(found[0] ? "rescuescript-fits-turned" : "rescuescript-fits", lying) };
}
