"""The published cutting instances under tests/data, as the tests and benches use them."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

from kerfolio.layouts.boards import BoardPiece
from kerfolio.layouts.saw_levels import Stock

DATA = Path(__file__).resolve().parent.parent / "data"


def known(folder: str) -> dict[str, dict[str, str]]:
    """Return the table of best known values of a set, by instance."""
    with (DATA / folder / "best_known.csv").open(encoding="utf-8", newline="") as table:
        return {row["instance"]: row for row in csv.DictReader(table)}


def instance(folder: str, name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((DATA / folder / f"{name}.json").read_text("utf-8"))
    return found


def board_pieces(name: str) -> tuple[list[BoardPiece], float]:
    """Return the pieces of a board instance and the length of its boards."""
    stated = instance("boards1d", name)
    pieces = [
        BoardPiece(label=f"{length}.{number}", length=float(length))
        for length, count in stated["pieces"]
        for number in range(count)
    ]
    return pieces, float(stated["board_length"])


def saw_stock(name: str, *, rotatable: bool) -> Stock:
    """Return a guillotine instance as the saw's search takes it; no kerf, sizes whole."""
    stated = instance("guillotine2d", name)
    room = (stated["sheet_width"], stated["sheet_height"])
    sizes: list[tuple[tuple[int, int], ...]] = []
    for width, height, count in stated["items"]:
        ways = {(width, height), (height, width)} if rotatable else {(width, height)}
        fits = sorted(way for way in ways if way[0] <= room[0] and way[1] <= room[1])
        sizes += [tuple(fits)] * count
    return Stock(room, tuple(sizes))
