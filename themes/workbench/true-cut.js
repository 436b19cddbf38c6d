// The true cut: what a cutter really cuts, reckoned from what was read off the coupon.
//
// Where a program runs a cutter that cuts `e` wider than its name beside a line, openings come out `e`
// wider and tabs `e` narrower, whatever their size. So does play in a drive (backlash), since a cutter
// comes back to the walls from reliefs; an axis that runs long makes both longer, the more the longer
// they are. So the mean of inside and outside, of x and y, is corrected as the cutter's, and what they
// differ by is told as the machine's.
//
// Plain functions of plain data; they stand after fitting.js. Lengths are mm. A coupon is
// {slots: [width], steps: [width], opening: {x, y}, step}, as drawn. What was read is {way, slotX, slotY,
// tabX, tabY}: texts, the way "caliper" (the long slot and the last step of the arms are measured) or
// "hand" (numbers of the first step of a slot, the last of an arm, that goes with a push).

"use strict";

// Limits are common practice, no single source: what a caliper and a hand can tell apart, and more
// than any sound cutter in a sound collet is off by.
const CUT = { nothing: 0.015, apart: { caliper: 0.08, hand: 0.16 }, most: 0.3 };
const PUSH = 0.15; // the least play, both sides together, with which a joint goes in with a push
const COUPON_FIELDS = ["slotX", "slotY", "tabX", "tabY"];

const meanOf = (values) => {
  const known = values.filter((each) => each !== null);
  return known.length ? known.reduce((sum, each) => sum + each, 0) / known.length : null;
};

// What stands in a field of the coupon: {value}, a width or the number of a step; else {fault}.
function couponValue({ coupon }, way, field, text, unit) {
  const slot = field.startsWith("slot");
  if (way === "caliper") {
    const [what, drawn] = slot
      ? ["truecut-long-slot", coupon.opening[field === "slotX" ? "x" : "y"]]
      : ["truecut-last-step", coupon.steps.at(-1)];
    const likely = [drawn - 1, drawn + 1];
    const read = lengthIn(text, likely, likely, 2, say(what, { drawn: told(drawn, unit) }), unit);
    return { value: read.mm, fault: read.fault };
  }
  const { length } = slot ? coupon.slots : coupon.steps;
  const number = /^\d{1,2}$/.test(text.trim()) ? Number(text) : 0;
  if (1 <= number && number <= length) return { value: number };
  return { fault: say("truecut-step", { count: length }) };
}

// By how much more than its name a cutter cuts, {inside: {x, y}, outside: {x, y}}, null where nothing
// was read, and what is wrong with a field, {faults: {slotX: words}}.
function cutsRead(sheet, read, thickness, unit) {
  const faults = {};
  const [slotX, slotY, tabX, tabY] = COUPON_FIELDS.map((field) => {
    if (!read[field].trim()) return null;
    const { value, fault } = couponValue(sheet, read.way, field, read[field], unit);
    if (fault) faults[field] = fault;
    return value ?? null;
  });
  const { slots, steps, opening, step } = sheet.coupon;
  const from = (value, reckon) => (value === null ? null : reckon(value));
  if (read.way === "caliper") {
    const narrower = (mm) => steps.at(-1) - mm;
    const inside = { x: from(slotX, (mm) => mm - opening.x), y: from(slotY, (mm) => mm - opening.y) };
    return { inside, outside: { x: from(tabX, narrower), y: from(tabY, narrower) }, faults };
  }
  // The first step that takes the sheet has the least play of a push, or up to a step more; so has
  // the last step of an arm that goes into the long slot, which lies along x.
  const taken = (number) => thickness + PUSH + step / 2 - slots[number - 1];
  const inside = { x: from(slotX, taken), y: from(slotY, taken) };
  const gone = (number) => PUSH + step - opening.x - (inside.x ?? inside.y ?? 0) + steps[number - 1];
  return { inside, outside: { x: from(tabX, gone), y: from(tabY, gone) }, faults };
}

// How much more a cutter cuts than its name: the mean of inside and outside; null where nothing was read.
function cutOf({ inside, outside }) {
  const found = meanOf([meanOf([inside.x, inside.y]), meanOf([outside.x, outside.y])]);
  return found === null ? null : rounded(found, 2);
}

// What a cutter really cuts, as somebody knows it: {cut} beyond its name, else {fault}. `nominal` is
// null for no cutter: then it is the width that a laser or a saw takes away.
function cutKnown(text, nominal, unit) {
  if (!text.trim()) return { cut: 0 };
  const name = nominal || 0;
  const likely = nominal === null ? [0, 1] : [name - CUT.most, name + CUT.most];
  const what = nominal === null ? say("truecut-takes-away") : say("truecut-really-cuts", { cutter: toldTool(name, unit) });
  const read = lengthIn(text, likely, likely, 3, what, unit);
  if (!read.fault) return { cut: rounded(read.mm - name, 3) };
  const look = say("truecut-look");
  return { fault: nominal === null ? read.fault : `${read.fault} ${look}` };
}

// ---- what is the machine's ----------------------------------------------------------------

// What is no cutter's in what was read, sentence by sentence, with what to do.
function machineWords({ inside, outside }, way, unit) {
  const [apart, found] = [CUT.apart[way], []];
  const less = (one, other) => (one === null || other === null ? 0 : one - other);
  const [slots, tabs] = [less(inside.x, inside.y), less(outside.x, outside.y)];
  const size = Math.max(Math.abs(slots), Math.abs(tabs));
  if (size > apart + 1e-9) {
    const why =
      slots * tabs < 0
        ? say("truecut-longer", { axis: slots > 0 ? "x" : "y" })
        : say("truecut-play-axis");
    found.push(say("truecut-differs", { by: told(rounded(size, 2), unit), why }));
  }
  const play = less(meanOf([outside.x, outside.y]), meanOf([inside.x, inside.y]));
  if (Math.abs(play) > apart + 1e-9) {
    found.push(say("truecut-inside-outside", { by: told(rounded(Math.abs(play), 2), unit) }));
  }
  return found;
}

// ---- where it belongs ---------------------------------------------------------------------

// Where a true cut is corrected: told to the program (the usual way), or built into the files.
function cutWords(nominal, cut, { built, unit }) {
  if (Math.abs(cut) < CUT.nothing) return [];
  const real = rounded((nominal || 0) + cut, 3);
  const sizes = { cutter: toldTool(nominal || 0, unit), cut: toldTool(real, unit) };
  return [say(`truecut-${built ? "built" : "told"}-${nominal === null ? "kerf" : "cutter"}`, sizes)];
}
