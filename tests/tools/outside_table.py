"""Writes the table of outside checks: source, published value, ours, difference.

    python -m tests.tools.outside_table > tests/OUTSIDE-CHECKS.md

A test sees to it that the file at the root is what this prints.
"""

from __future__ import annotations

import sys
from string import Template

from tests.shop.outside_check import OutsideCheck
from tests.shop.outside_checks import checks

HEAD = """\
# Outside checks

Figures of the trade as others publish them, and what Kerfolio makes of the same input. *Published*
figures were read at the source; figures *from memory* stand as remembered of the document named and
want checking there; those *worked by hand* were reckoned from a formula of the source, apart from
the program. The tests fail where a difference is larger than the rounding of the published figure,
and than 2 % of those on sitting, pushes, leaning and overhangs. Where ours has to lie to one side
of the figure, *at most* or *at least* stands before it.

A *transcription* compares what the program holds with what it was copied from, or its own formula
with itself: it finds slips of the pen, and judges nothing. $OUTSIDE of the $ALL figures are from
outside: published, and no transcription.

Written by `python -m tests.tools.outside_table` from `tests/shop/outside_checks.py`.

| What | Source | Standing | Published | Ours | Difference |
|---|---|---|---:|---:|---:|
"""

TAIL = """
## Common practice

Values that every shop knows and no table states. They stand in one place each, and no check can say
that they are right, only that the program does as they say.

- Clearance by purpose, by length of contact and by number (`settling/clearance.py`): common
  practice, no single source. Read beside it: a fit clearance of 0.010 to 0.020 in for glued blind
  dadoes, as users of CNC routers give it on a public forum; ours for a glued joint at a fit of
  0.1 mm is 0.3 mm (0.012 in), both sides together.
- How much play is tight, loose, rattling (`model/play.py`), and which purpose wants which
  (`proving/play.py`): common practice, no single source.
- What a coupon told is the machine's and not the cutter's: from 0.08 mm by caliper, 0.16 mm by
  hand; more than 0.3 mm is no cutter's; a joint goes with a push from 0.15 mm of play on, both
  sides together (`themes/workbench/true-cut.js`, `settling/built_in.py`): common practice, no
  single source. What cutter, play and scale do to slots and tabs is geometry, and shapely cuts
  it (`tests/pages/machine.py`).
- Where things live (`model/climate.py`): 65 % in a heated room and 85 % in a shed are those of
  service classes 1 and 2 (EN 1995-1-1, 2.3.1.3, published); 95 % outdoors, 50 % in a dry room and
  what the air falls to are common practice, no single source.
- How thick sheets grow (`content/movements.yaml`): of MDF and of plywood in its plane published, of
  plywood, particleboard and OSB in thickness from memory of CEN/TR 12872; that plywood takes up
  moisture as solid wood does, and solid wood to 12 % when it is bought, common practice. Not
  counted: that a slot itself grows with its sheet, some hundredths of a millimetre to the safe
  side, and that finish slows moisture down without keeping it out.
- How thick coats are (`content/finishes.yaml`): varnish by a datasheet, paint and water-based
  varnish from memory, oil and wax common practice. What sanding takes has no default: a plan
  states it. Read beside it: 0.002 in (0.05 mm) is the least that a wide belt of grit 150 must take
  (a trade magazine's table).
- How far MDF grows in its plane, read beside what is reckoned: a brand says 0.3 % from 30 to 90 %
  humidity (ours 0.43 %), a trade magazine about 0.5 % from 35 to 85 % (ours 0.33 %). A slot has no
  use for it; a long panel has, and the two say how little is known.
- Limits of wood dust: the program states none and reckons with none; the cautions give HSE's words.
- The time of a toolpath that somebody measured was looked for and not found; runs from rest to rest
  are those of kinematics, and how sharp a corner a machine stops at is common practice.
- That a board may move by 0.5 mm before what holds it splits it (`proving/damp.py`): common
  practice, no single source.

## Sealing

What supporters' bundles are sealed with is computed by a library; `tests/sealing/test_vectors.py`
compares it with what standards print. All of these vectors are from memory of the documents named.

- Stretching a key, PBKDF2-HMAC-SHA256: RFC 7914, section 11, both vectors; the cases of RFC 6070
  reckoned for SHA-256, as published widely. 600,000 rounds: OWASP's Password Storage Cheat Sheet.
- Wrapping a content key, AES key wrap: RFC 3394, section 4.6.
- Sealing a chunk, AES-256-GCM: test cases 13, 14 and 16 of McGrew and Viega's proposal, which
  NIST SP 800-38D names.
"""


def table() -> str:
    """Return the document."""
    every = checks()
    counts = {"OUTSIDE": sum(each.outside for each in every), "ALL": len(every)}
    head = Template(HEAD).substitute(counts)
    return head + "".join(f"{_row(each)}\n" for each in every) + TAIL


def _row(check: OutsideCheck) -> str:
    ours = check.ours()
    unit = f" {check.unit}" if check.unit else ""
    share = round((ours - check.value) / check.value * 100, 2)
    cells = (
        check.what,
        check.source,
        f"{check.standing}; transcription" if check.transcription else check.standing,
        f"{check.bound} {_number(check.value)}{unit}".strip(),
        f"{_number(ours)}{unit}",
        f"{share:+.2f} %" if share else "0",
    )
    return f"| {' | '.join(cells)} |"


def _number(value: float) -> str:
    return f"{value:.6g}"


if __name__ == "__main__":
    sys.stdout.write(table())
