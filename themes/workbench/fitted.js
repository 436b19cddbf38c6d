// Files for what a maker measured: fills in fitted files at a point and packs them into a zip.
//
// fill(fitted, point) takes the JSON that the program wrote and values such as
// {"thickness.ply": 17.63, "cutter.ply": null} (mm; null: none of it) and returns
// [{name, text}, ...]; it throws a RangeError in words for a point the files are not made for.
// storedZip(files, day, folder) takes these, a day as "2026-10-02" and returns a Uint8Array.
//
// The program does all this too, and both give the same bytes: every number is a double, added up
// in the stated order, and from `steps` on everything is whole numbers.

"use strict";

// ---- digits -------------------------------------------------------------------------------

// A value as a whole number of steps of 10^-decimals, halves up.
function steps(value, decimals) {
  const fine = value * Number(`1e${decimals + 3}`);
  if (!(Math.abs(fine) <= 4e15)) {
    throw new RangeError(`${value} cannot be written to ${decimals} decimals`);
  }
  return Math.floor((Math.floor(fine + 0.5) + 500) / 1000);
}

function rounded(value, decimals) {
  return steps(value, decimals) / Number(`1e${decimals}`);
}

function fixed(value, decimals) {
  const whole = steps(value, decimals);
  const text = String(Math.abs(whole)).padStart(decimals + 1, "0");
  const cut = text.length - decimals;
  return (whole < 0 ? "-" : "") + text.slice(0, cut) + (decimals ? `.${text.slice(cut)}` : "");
}

function digits(value, decimals) {
  const text = fixed(value, decimals);
  return decimals ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
}

// The 64ths of an inch that a thickness read to 0.01 mm is, 0 where it is none.
function soldAs(mm) {
  const parts = steps((mm / 25.4) * 64, 0);
  return steps((parts / 64) * 25.4, 2) === steps(mm, 2) ? parts : 0;
}

function calliper(mm) {
  const parts = soldAs(mm);
  return fixed(parts ? parts / 64 : mm / 25.4, 3);
}

function sold(mm) {
  const parts = soldAs(mm);
  return parts ? fraction(parts) : calliper(mm);
}

// So many 64ths of an inch, reduced: 1 1/8.
function fraction(sixtyFourths) {
  let [parts, below] = [sixtyFourths, 64];
  while (below > 1 && parts % 2 === 0) [parts, below] = [parts / 2, below / 2];
  const whole = Math.floor(Math.abs(parts) / below);
  const rest = Math.abs(parts) % below;
  const sign = parts < 0 ? "-" : "";
  if (!rest) return `${sign}${whole}`;
  return `${sign}${whole ? `${whole} ` : ""}${rest}/${below}`;
}

// A fit or a cutter that somebody chose: the fraction that it is to 0.001 mm, else the fewest
// decimals, three at least, that give it back.
function chosen(mm) {
  const [inches, wanted] = [rounded(mm, 3) / 25.4, steps(mm, 3)];
  const parts = rounded(inches * 64, 0);
  if (parts && steps((parts * 25.4) / 64, 3) === wanted) return fraction(parts);
  const told = [3, 4, 5].map((places) => fixed(inches, places));
  return told.find((each) => steps(Number(each) * 25.4, 3) === wanted);
}

const inAName = (text) => text.replaceAll(" ", "-").replaceAll("/", "-");

const RULES = {
  trimmed: (value, style) => digits(value, style.decimals),
  pointed: (value, style) => {
    const text = digits(value, style.decimals);
    return text.includes(".") ? text : `${text}.0`;
  },
  fixed: (value, style) => fixed(value, style.decimals),
  padded: (value, style) => {
    const text = fixed(value, style.decimals);
    const width = style.width || 0;
    if (text.length > width) throw new RangeError(`${text} is wider than ${width} signs`);
    return text.padStart(width);
  },
  calliper: (value) => calliper(value),
  sold: (value) => sold(value),
  "sold-name": (value) => inAName(sold(value)),
  chosen: (value) => chosen(value),
  "chosen-name": (value) => inAName(chosen(value)),
};

// A number in a style, with the words that belong to it, and blanks up to the room it takes; nothing
// where it is as it need not be said, other words where it is null.
function toldAs(value, style) {
  return said(value, style).padEnd(style.room || 0);
}

function said(value, style) {
  if (value === null) return style.none || "";
  const { decimals, unless } = style;
  if (unless !== undefined && steps(value, decimals) === steps(unless, decimals)) return "";
  const sign = style.signed ? (value < 0 ? "-" : "+") : "";
  const number = RULES[style.rule](sign ? Math.abs(value) : value, style).replace(".", style.mark || ".");
  return (style.before || "") + sign + number + (style.after || "");
}

// ---- filling in ---------------------------------------------------------------------------

function fill(fitted, point) {
  const exact = {};
  for (const number of fitted.numbers) exact[number.name] = exactly(number, point);
  for (const name of Object.keys(point)) {
    if (!(name in exact)) throw new RangeError(`No file depends on ${name}.`);
  }
  const values = fitted.numbers.map(({ name }) => exact[name]);
  return fitted.files.map((file) => {
    const cell = file.cells.find(({ box }) => holds(box, exact));
    if (!cell) throw new RangeError(`There is no file for ${toldPoint(exact)}.`);
    return { name: filled(fitted, cell.name, values), text: filled(fitted, cell.text, values) };
  });
}

function filled(fitted, text, values) {
  return text.map((place) => toldPiece(fitted, fitted.pieces[place], values)).join("");
}

function toldPiece(fitted, piece, values) {
  if (typeof piece === "string") return piece;
  const [place, constant, ...slopes] = piece;
  const style = fitted.styles[place];
  if (style.none && slopes.some((slope, at) => slope && values[at] === null)) return toldAs(null, style);
  const value = slopes.reduce((sum, slope, at) => sum + slope * (values[at] ?? 0), constant);
  return toldAs(value, style);
}

// A number of the point on its own grid; as drawn where it is that, or the point leaves it out.
function exactly(number, point) {
  const { name, least, most, decimals } = number;
  const value = point[name] === undefined ? number.drawn : point[name];
  if (value === null && number.none) return null;
  if (typeof value !== "number" || !(Math.abs(value * Number(`1e${decimals + 3}`)) <= 4e15)) {
    throw new RangeError(`${name} must be a number.`);
  }
  const near = rounded(value, decimals);
  const exact = number.drawn !== null && rounded(number.drawn, decimals) === near ? number.drawn : near;
  if (least <= exact && exact <= most) return exact;
  const [from, to, told] = [least, most, exact].map((each) => digits(each, decimals));
  const why = exact < least ? number.below : number.above;
  const words = `${name} may be ${from} to ${to} mm, not ${told} mm.`;
  throw new RangeError(why ? `${words} ${why}` : words);
}

function holds(box, exact) {
  return Object.entries(box).every(([name, within]) => {
    const value = exact[name];
    if (within === null || value === null) return within === null && value === null;
    return within[0] <= value && value <= within[1];
  });
}

function toldPoint(exact) {
  const told = (value) => (value === null ? "none" : `${digits(value, 4)} mm`);
  return Object.entries(exact).map(([name, value]) => `${name} ${told(value)}`).join(", ");
}

// ---- a zip of stored files ----------------------------------------------------------------
// PKWARE APPNOTE 6.3.4; nothing is deflated, so that no two programs can differ.

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

// CRC-32 of ISO 3309, as zips have it.
function crc32(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ CRC_TABLE[(rest ^ byte) & 0xff];
  return (rest ^ 0xffffffff) >>> 0;
}

// Numbers as little-endian bytes: [value, size], ...
function packed(fields) {
  return fields.flatMap(([value, size]) =>
    Array.from({ length: size }, (_, place) => Math.floor(value / 256 ** place) % 256),
  );
}

// Files ({name, text} or {name, bytes}) in a zip, sorted by name, all of one day.
function storedZip(files, day, folder) {
  const utf8 = new TextEncoder();
  const entries = files.map((file) => ({
    name: folder ? `${folder}/${file.name}` : file.name,
    bytes: file.bytes || utf8.encode(file.text),
  }));
  entries.sort((a, b) => byCodePoint(a.name, b.name));
  const chunks = [];
  const directory = [];
  let at = 0;
  for (const { name, bytes } of entries) {
    const called = utf8.encode(name);
    const flags = called.length > name.length ? 0x800 : 0; // the name is UTF-8
    const common = [
      ...[[20, 2], [flags, 2], [0, 2], [0, 2], [dosDay(day), 2], [crc32(bytes), 4]],
      ...[[bytes.length, 4], [bytes.length, 4], [called.length, 2], [0, 2]],
    ];
    const head = Uint8Array.from([...packed([[0x04034b50, 4], ...common]), ...called]);
    // Made on Unix, a regular file that its owner may write and all may read.
    const entry = [[0x02014b50, 4], [20, 1], [3, 1], ...common, [0, 2], [0, 2], [0, 2]];
    directory.push(...packed([...entry, [0o100644 * 0x10000, 4], [at, 4]]), ...called);
    chunks.push(head, bytes);
    at += head.length + bytes.length;
  }
  const count = entries.length;
  const end = [[0x06054b50, 4], [0, 2], [0, 2], [count, 2], [count, 2], [directory.length, 4]];
  chunks.push(Uint8Array.from(directory), Uint8Array.from(packed([...end, [at, 4], [0, 2]])));
  return joined(chunks);
}

function dosDay(day) {
  const [year, month, date] = day.split("-").map(Number);
  if (year < 1980) return (1 << 5) | 1;
  if (year > 2107) return (127 << 9) | (12 << 5) | 31;
  return ((year - 1980) << 9) | (month << 5) | date;
}

function byCodePoint(a, b) {
  const [first, second] = [Array.from(a), Array.from(b)];
  const place = first.findIndex((sign, index) => sign !== second[index]);
  if (place < 0) return first.length - second.length;
  if (place >= second.length) return 1;
  return first[place].codePointAt(0) - second[place].codePointAt(0);
}

function joined(chunks) {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
