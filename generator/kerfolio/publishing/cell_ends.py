"""Where fitted files change their form within the range: there their plan is proved besides.

Within a cell all is linear, so that what holds at both its ends holds in between. The ends of the
range itself have been proved before, those of cutters by ``cutter_range``; a true cut that is built
in changes nothing of the plan.
"""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding
from kerfolio.fitted.form import Fitted, Number
from kerfolio.model.stock import Stock
from kerfolio.proving.at_point import prove_at
from kerfolio.proving.prove import Proof
from kerfolio.publishing.fitted_files import CUT, variant_at
from kerfolio.settling.settled import FitVariant, SettledPlan


def found_at_cell_ends(proof: Proof, stock: Stock, fitted: Fitted | None) -> Iterator[Finding]:
    """Yield what is found at the ends of cells, and was not found before."""
    if proof.drawn is None or fitted is None:
        return
    seen: set[object] = set()
    for there in cell_ends(fitted, proof.drawn):
        _, found = prove_at(proof, stock, there)
        for each in found:
            if each.identity not in seen:
                seen.add(each.identity)
                yield each


def cell_ends(fitted: Fitted, drawn: SettledPlan) -> tuple[FitVariant, ...]:
    """Return the points at which cells end within the range of one number, all others as drawn."""
    numbers = {each.name: each for each in fitted.numbers if not each.name.startswith(f"{CUT}.")}
    ends = {
        (name, end)
        for file in fitted.files
        for cell in file.cells
        for name, side in cell.box
        if name in numbers and side is not None
        for end in side
        if _is_inside(end, numbers[name])
    }
    return tuple(variant_at(drawn, {name: end}) for name, end in sorted(ends))


def _is_inside(end: float, number: Number) -> bool:
    return number.least < end < number.most
