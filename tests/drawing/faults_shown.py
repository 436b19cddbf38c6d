"""Plans with faults of fastenings, wedges, steps and of what lies, each to be drawn."""

from __future__ import annotations

from tests.assembly.test_set_together import trayed
from tests.boards_plan import RACK, STRAIGHT
from tests.brackets_plan import LEDGE
from tests.fastened_plan import BOLTED, spoilt
from tests.plans import altered
from tests.proving import (
    test_boards,
    test_brackets,
    test_fastened_bolts,
    test_fastened_screws,
    test_fastened_seats,
    test_wedges,
)
from tests.proving.test_fastened_tools import COVER, SIDE
from tests.proving.test_fittings import HOLES, LAPPED
from tests.proving.test_joints import PLAN as JOINTS
from tests.proving.two_panels import plan_text
from tests.sets import SET

BLOCK = """\
  block:
    pieces: [block]
    steps: [{title: Set the block down, add: [block], text: So.}]
"""
TWO = ("board: 1", "board: 2")
USES = "uses: [stand things on, lean on]\n"


def lapped(side: str, rail: str, fastening: str) -> str:
    head = f"fastenings:\n  - {{{fastening}, joins: [rail.holes, side.holes]}}"
    return plan_text(HOLES % side, HOLES % rail, LAPPED, head)


def _others() -> dict[str, str]:
    bolt = "bolt: bolt-m6x60, nut: lock-nut-m6"
    block = "  block:\n    sheet: ply\n    outline: {rectangle: [200, 200]}\n  board:\n    sheet"
    return {
        "wall-not-behind": altered(STRAIGHT, ("on: back.show", "on: back.back")),
        "joint-kind": JOINTS.replace("JOINT", "tab: side.left.opening, into: rail.tabs"),
        "joint-sheet": JOINTS.replace("JOINT", "tab: back.tab, into: side.left.opening"),
        "lies-otherwise": trayed(720, "foot", ", overhang: 30"),
        "head-proud": test_fastened_bolts.sunk_plan((13, 4)),
        "bolt-out-of-nut": lapped("for: bolt-m6x60", "for: bolt-m6x60", bolt),
        "insert-unfit": lapped(
            "diameter: 8", "for: bolt-m6x30", "bolt: bolt-m6x30, nut: insert-m6"
        ),
        "insert-long": lapped(
            "pilot: insert-m6, depth: 10", "for: bolt-m6x25", "bolt: bolt-m6x25, nut: insert-m6"
        ),
        "screw-pull-unknown": BOLTED,
        "tool-blocked": spoilt(
            ("joints:\n", COVER), (SIDE, SIDE.replace("[side]", "[side, cover]"))
        ),
        "step-lies-otherwise": spoilt(("Screw the shelf on.", "Turn it upside down.")),
        "beside-joined": spoilt(("{title: Shelf, add", "{title: Shelf, beside: true, add")),
        "use-unfit": spoilt(("summary: ", f"{USES}summary: ")),
        "set-unfit": altered(SET, ("sheets:", f"{USES}sheets:")),
        "lies-too-short": altered(SET, ("overhang: 110", "overhang: 200")),
        "lies-off": altered(SET, TWO),
        "lies-unlevel": altered(
            SET,
            ("  board:\n    sheet", block),
            ("makes: {foot: 2,", "makes: {foot: 1, block: 1,"),
            ("supports: [foot]", "supports: [foot, block]"),
            ("  board:\n    pieces", f"{BLOCK}  board:\n    pieces"),
        ),
    }


def plans() -> dict[str, str]:
    """Return a plan for each rule."""
    found = _others()
    for was, now, rule, _ in test_boards.FAULTS.values():
        found.setdefault(rule, altered(RACK, (was, now)))
    for module, spoil in (
        (test_fastened_bolts, spoilt),
        (test_fastened_screws, spoilt),
        (test_fastened_seats, spoilt),
        (test_wedges, test_wedges.trestle),
    ):
        for changes, rule, _ in module.FAULTS.values():
            found.setdefault(rule, spoil(*changes))
    for changes, rule, _ in test_brackets.FAULTS.values():
        found.setdefault(rule, altered(LEDGE, *changes))
    return found
