"""Published nesting instances as jobs: whole sheets cut apart, and strips."""

from __future__ import annotations

import csv
import json
from pathlib import Path

from kerfolio.geometry.packing import Flat
from kerfolio.layouts.engine import Bed, Blank, Job, Stack
from kerfolio.layouts.question import AskedKind, AskedRoom, Question

DATA = Path(__file__).resolve().parent.parent / "data"
BINS = DATA / "irregular_bins"
STRIPS = DATA / "strips"


def best_known(folder: Path) -> dict[str, dict[str, str]]:
    """Return the rows of a folder's table by instance."""
    with (folder / "best_known.csv").open(encoding="utf-8", newline="") as file:
        return {row["instance"]: row for row in csv.DictReader(file)}


def bin_job(name: str, moves: int, seconds: float = 4.0) -> Job:
    """Return an instance of sheets cut apart without waste: no gap, no margin, no turns."""
    stated = json.loads((BINS / f"{name}.json").read_text("utf-8"))
    blanks = [
        Blank(
            label=f"{item['id']} {copy}",
            shape=Flat(tuple((x, y) for x, y in item["points"])),
            turns=(0.0,),
        )
        for item in stated["items"]
        for copy in range(item["quantity"])
    ]
    sheet = Stack(size=(stated["sheet_width"], stated["sheet_height"]))
    bed = Bed(stacks=(sheet,), margin=0.0, gap=0.0)
    return Job(bed=bed, blanks=tuple(blanks), moves=moves, seconds=seconds)


def strip_question(name: str, seconds: float) -> Question:
    """Return a strip as a question: one room of the strip's width and ten times the length."""
    stated = json.loads((STRIPS / f"{name}.json").read_text("utf-8"))
    longest = 10 * float(best_known(STRIPS)[name]["best_known_length"])
    room = AskedRoom(width=longest, height=stated["strip_width"], count=1, worth=1.0)
    kinds = [
        AskedKind(
            outer=tuple((x, y) for x, y in item["points"]),
            openings=(),
            turns=tuple(item["rotations"]),
            count=item["quantity"],
        )
        for item in stated["items"]
    ]
    return Question(
        engine="spyrrow", rooms=(room,), kinds=tuple(kinds), gap=0.0, seconds=seconds, seed=1
    )
