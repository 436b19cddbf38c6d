"""A workshop that says as much as it may everywhere: every text, word and name at its limit."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from kerfolio.basis.budgets import CELL, LINE, SUMMARY, TITLE, WORD
from tests.broken.good_workshop import png

Fill = Callable[[int], str]
"""Returns a text of so many letters."""


def wide(letters: int) -> str:
    """Return the widest letter in the longest words allowed."""
    words = "W" * letters
    for at in range(WORD.most, letters, WORD.most + 1):
        words = f"{words[:at]} {words[at + 1 :]}"
    return words.strip()


def name(letter: str) -> str:
    """Return a name of the most letters, all but the last of them the widest."""
    return f"{'w' * 39}{letter}"


SIDE, RAIL, SHEET, BOARD = name("p"), name("r"), name("s"), name("b")
BOLT, SLOT, TAB, LEFT, RIGHT = name("h"), name("f"), name("t"), name("l"), name("q")

_WORKSHOP = """\
workshop: {title}
maker: {title}
tagline: {summary}
base-url: https://example.org/{address}
contact: https://example.org/{address}
licence: CC-BY-SA-4.0
circles:
  - {{who: {title}, gives: {title}, gets: {summary}, join: {summary}, link: https://example.org/{address}}}
machine-hour: 99999.99
consumables: [{{what: {title}, each: copy, price: 99999.99}}]
welcome: {prose}
"""
_PLAN = """\
plan: {title}
version: 999999.999999.999999
summary: {summary}
story: {prose}
sizes: {{t: thickness({sheet})}}
sheets:
  {sheet}: {{stock: {sheet}, size: 600 x 400, published-for: 17.8, fit: 0.1}}
boards:
  {board}: {{stock: {board}, length: 300, count: 2}}
parts:
  {side}:
    sheet: {sheet}
    pieces: [{left}, {right}]
    note: {cell}
    outline: {{rectangle: [200, 120]}}
    features:
      {slot}: {{slot: {{at: [100, 60], length: 60, angle: 90, takes: {sheet}}}}}
  {rail}:
    sheet: {sheet}
    grain: along x
    outline: {{rectangle: [250, 120]}}
    features:
      {tab}-l: {{tabs: {{edge: left, at: 30, width: 60, depth: t}}}}
      {tab}-r: {{tabs: {{edge: right, at: 30, width: 60, depth: t}}}}
joints:
  - {{tab: {rail}.{tab}-l, into: {side}.{left}.{slot}, show: out, looking: right}}
  - {{tab: {rail}.{tab}-r, into: {side}.{right}.{slot}, show: out, looking: left}}
hardware: [{{item: {bolt}, count: 10000, for: {cell}}}]
cuts:
  {slot}: {{sheet: {sheet}, cutter: {bolt}, passes: [6, rest],
    speed: 18000 rpm, feed: 3600 mm/min, plunge: 900 mm/min, skim: 0.3, bridges: 4}}
spans:
  {side}: {{part: {rail}, supports: [20, 230], load: {{kg: 5}},
    limit: span/300, safety: 3, lasting: no}}
consumables: [{{what: {title}, each: sheet, price: 99999.99}}]
cautions: [{line}]
steps:
  - title: {title}
    add: [{side}.{left}, {rail}, {side}.{right}]
    tools: [{cell}, {title}]
    hardware: {{{bolt}: 10000}}
    minutes: 10000
    photo: {{file: photos/{picture}.png, alt: {line}, made: {line}}}
    text: {prose}
    by-hand: {line}
    caution: {line}
photos: [{{file: photos/{picture}.png, alt: {line}, cover: true, made: {line}}}]
video: {{url: "https://example.org/{address}", chapters: [{chapter}]}}
questions: [{{q: {line}, a: {prose}}}]
releases:
  999999.999999.999999: {{date: 2107-12-31, changed: {line}, errata: true}}
"""
_STOCK = """\
sheets:
  {sheet}:
    title: {title}
    nominal: 18 mm
    actual: 17.8 mm
    least: 17.2 mm
    most: 18.6 mm
    density: 700
    sizes: [600 x 400]
    family: hardwood-plywood
    stiffness-along: 10000
    stiffness-across: 5000
    strength-along: 40
    strength-across: 30
    creep: 0.8
    swelling: {line}
    prices: {{600 x 400: 99999.99}}
    source: {line}
boards:
  {board}: {{title: {title}, thickness: 20 mm, width: 40 mm, lengths: [2 m],
    density: 500, nominal: {cell}, price-per-metre: 99999.99, source: {line}}}
cutters:
  {bolt}: {{title: {title}, diameter: 6 mm, kind: straight, flutes: 2,
    cutting-length: 25 mm, source: {line}}}
hardware:
  {bolt}: {{title: {title}, kind: bolt, mass: 0.01, price: 99.99,
    inch-twin: {cell}, source: {line}}}
"""
_LOG = """\
trials:
  - {{date: 2107-12-31, title: {title}, plan: brimful, stock: {sheet}, cutter: {bolt},
    public: true, text: {prose}, photo: {{file: {picture}.png, alt: {line}, made: {line}}}}}
  - {{date: 1980-01-01, title: {title}, text: {prose}}}
"""


def lay_down_brimful(folder: Path, fill: Fill = wide) -> Path:
    """Write the workshop; ``fill`` makes its texts."""
    values = {
        "title": json.dumps(fill(TITLE.most), ensure_ascii=False),
        "summary": json.dumps(fill(SUMMARY.most), ensure_ascii=False),
        "line": json.dumps(fill(LINE.most), ensure_ascii=False),
        "cell": json.dumps(fill(CELL.most), ensure_ascii=False),
        "chapter": json.dumps(f"0:00 {fill(TITLE.most)}", ensure_ascii=False),
        "prose": json.dumps(fill(2 * LINE.most), ensure_ascii=False),
        "address": "w" * (WORD.most - len("https://example.org/")),
        "picture": "p" * 80,
        "sheet": SHEET,
        "board": BOARD,
        "side": SIDE,
        "rail": RAIL,
        "left": LEFT,
        "right": RIGHT,
        "slot": SLOT,
        "tab": TAB[-38:],
        "bolt": BOLT,
    }
    title, line = fill(TITLE.most), fill(LINE.most)
    page = f"# {title}\n\n{line}\n\n## {title}\n\n`{fill(WORD.most)}`\n"
    texts = {
        "workshop.yaml": _WORKSHOP,
        "plans/brimful/plan.yaml": _PLAN,
        "stock/own.yaml": _STOCK,
        "log/day.yaml": _LOG,
    }
    files = {file: text.format(**values).encode() for file, text in texts.items()}
    files[f"pages/{name('w')}.md"] = page.encode()
    files |= {f"{each}/{values['picture']}.png": png() for each in ("plans/brimful/photos", "log")}
    for file, content in files.items():
        (folder / file).parent.mkdir(parents=True, exist_ok=True)
        (folder / file).write_bytes(content)
    return folder
