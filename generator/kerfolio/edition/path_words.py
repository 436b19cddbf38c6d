"""What to compare with a toolpath program, layer by layer, in words."""

from __future__ import annotations

from kerfolio.basis.figures import cleared_text, run_text
from kerfolio.basis.thickness import precise_in
from kerfolio.basis.words import counted, listed
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.drawing.path_count import PathCount, drawn_counts
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import Operation, SettledPlan


def path_lines(settled: SettledPlan, layout: SheetLayout, first: str) -> tuple[str, ...]:
    """Return a line for each cut layer: ``opening_through: 2 contours, 1 m``."""
    return tuple(_line(each, first) for each in drawn_counts(cut_sheet(settled, layout)))


def _line(each: PathCount, first: str) -> str:
    words = [f"{counted(each.contours, 'contour')}, {run_text(each.length, first)}"]
    if each.operation is Operation.POCKET:
        words.append(cleared_text(each.area, first))
    if each.diameters:
        holes = [f"{count} × ø {precise_in(wide, first)}" for wide, count in each.diameters]
        words.append(listed(holes))
    return f"{each.layer}: {', '.join(words)}"
