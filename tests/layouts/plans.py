"""Settled plans built by hand for layouts, independent of reading, settling and proving."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.shapes import circle, polygon, rectangle
from kerfolio.model.plan import Plan
from kerfolio.model.stock import CutterStock, SheetStock, Stock
from kerfolio.settling.settled import (
    FitVariant,
    Relieving,
    SettledPart,
    SettledPiece,
    SettledPlan,
    SettledSheet,
)

SETS = Path(__file__).resolve().parent.parent / "data" / "part_sets"
CUTTER = CutterStock(
    name="compression-6",
    title="Compression cutter 6 mm",
    diameter=6.0,
    kind="compression",
    flutes=2,
    cutting_length=22.0,
)


def sheet_of(
    name: str = "ply",
    size: tuple[float, float] = (2440.0, 1220.0),
    margin: float = 10.0,
    gap: float = 8.0,
    *,
    grain: bool = True,
) -> SettledSheet:
    stock = SheetStock(
        name="birch-plywood-18",
        title="Birch plywood 18 mm",
        nominal=18.0,
        actual=17.7,
        least=17.1,
        most=18.1,
        density=685.0,
        sizes=(size,),
        grain=grain,
    )
    return SettledSheet(
        name=name,
        stock=stock,
        thickness=17.8,
        published=(17.8, 17.8),
        fit=0.1,
        size=size,
        margin=margin,
        gap=gap,
        cutter=CUTTER,
        diameter=CUTTER.diameter,
        relief=Relieving(style="dog-bone", diameter=6.1),
    )


def part_of(
    name: str,
    shape: Contour | Region,
    pieces: Sequence[str] = ("",),
    grain: str = "any",
    sheet: str = "ply",
) -> SettledPart:
    routed = shape if isinstance(shape, Region) else region(shape, ())
    box = bounds(routed)
    labels = [f"{name}.{piece}" if piece else name for piece in pieces]
    return SettledPart(
        name=name,
        mark=name[:1].upper(),
        sheet=sheet,
        thickness=17.8,
        pieces=tuple(SettledPiece(label=label, mark=label) for label in labels),
        grain=grain,
        plain=routed,
        routed=routed,
        cuts=(),
        drill_centres=(),
        features=(),
        size=(box.width, box.height),
        area=area(routed),
        mass=1.0,
    )


def plan_of(
    parts: Sequence[SettledPart],
    sheets: Sequence[SettledSheet] = (),
    label: str = "17.8mm",
    title: str = "Trial plan",
) -> SettledPlan:
    return SettledPlan(
        plan=Plan(name="trial-plan", title=title, version="1.0.0", summary="A plan to lay out."),
        stock=Stock(),
        variant=FitVariant(label=label, thickness=()),
        sizes=(),
        sheets=tuple(sheets) or (sheet_of(),),
        parts=tuple(parts),
    )


def two_boards() -> SettledPlan:
    """Two boards of 400 x 300 with their grain along x, and a disc of 100 mm."""
    return plan_of(
        (
            part_of("board", rectangle(0, 0, 400, 300), ("a", "b"), "along x"),
            part_of("disc", circle((50, 50), 100)),
        )
    )


def window_frame(width: float = 500.0) -> Region:
    """A frame whose window is 400 mm wide and high, the part's corner off its own 0,0."""
    outer, inner = rectangle(20, 30, 20 + width, 530), rectangle(70, 80, 470, 480)
    return region(outer, (inner,))


def _ring(corners: Sequence[Sequence[float]]) -> Contour:
    return polygon([(x, y, 0.0) for x, y in corners])


def part_set(number: int) -> tuple[dict[str, Any], SettledPlan]:
    """Return a shared part set as stated and as a settled plan."""
    stated = json.loads((SETS / f"set{number}.json").read_text("utf-8"))
    parts = [
        part_of(
            each["id"],
            region(_ring(each["outline"]), [_ring(window) for window in each["windows"]]),
            [str(copy) for copy in range(each["count"])],
            "along x" if each["rotations"] == [0.0, 180.0] else "any",
        )
        for each in stated["parts"]
    ]
    sheet = sheet_of(size=tuple(stated["sheet"]), margin=stated["edge_margin"], gap=stated["gap"])
    return stated, plan_of(parts, (sheet,))


def at_width(plan: SettledPlan, name: str, shape: Region, label: str) -> SettledPlan:
    """Return another fit variant of a plan, in which one part has another shape."""
    parts = [
        replace(part, routed=shape, plain=shape) if part.name == name else part
        for part in plan.parts
    ]
    variant = FitVariant(label=label, thickness=())
    return replace(plan, parts=tuple(parts), variant=variant)
