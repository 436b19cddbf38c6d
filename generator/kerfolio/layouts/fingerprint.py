"""What a layout was computed from, and how it came out, each as one short text."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from typing import Any

from kerfolio.basis.digits import rounded
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import contours_of
from kerfolio.layouts.layout import COORDINATE_DECIMALS, Placement, SheetLayout
from kerfolio.settling.settled import SettledPart, SettledPlan, SettledSheet

_PLACES = 4


def fingerprint(variants: Sequence[SettledPlan]) -> str:
    """Return the SHA-256 of all that a layout depends on, in hexadecimal.

    That is: shapes of parts at every variant (to 1e-4 mm), the labels of their pieces, grain,
    and sizes, margin, gap and clamps of the sheets. Titles, texts and features' names play no part.
    """
    stated = [
        {
            "sheets": [_sheet(each) for each in variant.sheets],
            "parts": [_part(each) for each in variant.parts],
        }
        for variant in variants
    ]
    return _digest(stated)


def placements_digest(sheets: Sequence[SheetLayout]) -> str:
    """Return a digest of where every piece lies (to 1e-3 mm), which a move by hand changes."""
    return _digest([_laid(each) for each in sheets])


def _laid(sheet: SheetLayout) -> list[Any]:
    size = [rounded(side, COORDINATE_DECIMALS) for side in sheet.size]
    return [sheet.number, sheet.sheet, *size, *map(_lying, sheet.placements)]


def _lying(each: Placement) -> list[Any]:
    lies = (rounded(value, COORDINATE_DECIMALS) for value in (each.turn, each.x, each.y))
    return [each.part, each.piece, *lies]


def _digest(stated: Any) -> str:
    text = json.dumps(stated, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def _sheet(sheet: SettledSheet) -> list[Any]:
    lengths = [_rounded(each) for each in (*sheet.size, sheet.margin, sheet.gap)]
    more: list[Any] = []
    if sheet.also or sheet.offcuts or sheet.clamps:
        more = [
            [_rounded(side) for size in sheet.also for side in size],
            [[each.count, *map(_rounded, each.size)] for each in sheet.offcuts],
            [
                [each.edge, *map(_rounded, (each.at, each.width, each.depth))]
                for each in sheet.clamps
            ],
        ]
    return [sheet.name, sheet.stock.grain, *lengths, *more]


def _part(part: SettledPart) -> list[Any]:
    labels = [piece.label for piece in part.pieces]
    shape = [_contour(each) for each in contours_of(part.routed)]
    return [part.name, part.sheet, part.grain, labels, shape]


def _contour(contour: Contour) -> list[list[float]]:
    return [[_rounded(value) for value in vertex] for vertex in contour.vertices]


def _rounded(value: float) -> float:
    return round(value, _PLACES) + 0.0  # the sum turns -0.0 into 0.0
