"""Proves a layout against a settled plan, whoever made it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import length, number, reading, size
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said
from kerfolio.geometry.contour import Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.packing import Flat, flat_region, flats_too_close, too_close
from kerfolio.geometry.transform import moved, turned
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.layouts.stacks import alike, stacks_of, zones
from kerfolio.layouts.turns import keeps_grain
from kerfolio.layouts.verify import TOLERANCE
from kerfolio.settling.settled import SettledPart, SettledPlan, SettledSheet

_ANEW = "Mend it, or run `kerfolio layout` to compute it anew."


def layout_place(settled: SettledPlan) -> Place:
    """Return where a plan's frozen layout stands, of another sheet's that of its own."""
    own = f"-{settled.laid_for}" if settled.laid_for else ""
    return Place(f"plans/{settled.plan.name}/layout{own}.json")


def layout_faults(layout: Layout, settled: SettledPlan) -> tuple[Finding, ...]:
    """Return what is wrong with a layout at one fit variant; nothing when it proves.

    Every piece lies on exactly one sheet of its material, inside the margin, its grain along the
    sheet's, no nearer to another or to a clamp than the gap; no more offcuts are used than there
    are.
    """
    check = _Check(settled, layout_place(settled))
    found = [*check.pieces(layout)]
    for place, sheet in enumerate(layout.sheets, 1):
        found += check.sheet(sheet, place)
    found += check.offcuts(layout)
    return tuple(found)


def first_faults(layout: Layout, variants: Iterable[SettledPlan]) -> tuple[Finding, ...]:
    """Return the faults at the first variant that has any."""
    return next((found for each in variants if (found := layout_faults(layout, each))), ())


@dataclass(frozen=True, slots=True)
class _Check:
    settled: SettledPlan
    place: Place

    def fault(self, rule: str, words: Text, advice: Text = _ANEW, subject: str = "") -> Finding:
        return error(rule, words, self.place, advice, subject=subject)

    def pieces(self, layout: Layout) -> Iterator[Finding]:
        """Compare the pieces laid out with those of the plan."""
        owners = {piece.label: part.name for part in self.settled.parts for piece in part.pieces}
        laid = [each for sheet in layout.sheets for each in sheet.placements]
        counts = Counter(each.piece for each in laid)
        for label in owners:
            if label not in counts:
                yield self.fault("layout-piece", f"`{label}` lies on no sheet", subject=label)
        for label, count in sorted(counts.items()):
            if label not in owners:
                advice = did_you_mean(label, owners)
                message: Text = f"the plan has no piece `{label}`"
                yield self.fault("layout-piece", message, advice, label)
            elif count > 1:
                message = said("`{}` lies on the sheets {} times", label, number("times", count))
                yield self.fault("layout-piece", message, subject=label)
        for each in laid:
            if owners.get(each.piece, each.part) != each.part:
                message = f"`{each.piece}` is not of the part `{each.part}`"
                advice = f"Write `{owners[each.piece]}`."
                yield self.fault("layout-piece", message, advice, each.piece)

    def sheet(self, layout: SheetLayout, number: int) -> Iterator[Finding]:
        """Look at one sheet and everything on it."""
        if layout.number != number:
            message = f"sheet {layout.number} stands where sheet {number} should"
            yield self.fault("layout-sheet", message)
        stated = {each.name: each for each in self.settled.sheets}
        sheet = stated.get(layout.sheet)
        if sheet is None:
            advice = did_you_mean(layout.sheet, stated)
            yield self.fault("layout-sheet", f"the plan has no sheet `{layout.sheet}`", advice)
            return
        if not any(alike(layout.size, stack.size) for stack in stacks_of(sheet)):
            yield self.fault("layout-sheet", f"sheet {number} has not the size of `{sheet.name}`")
        yield from self._placements(layout, sheet)

    def offcuts(self, layout: Layout) -> Iterator[Finding]:
        """Compare the sheets used with what there is of each size."""
        for sheet in self.settled.sheets:
            sizes = [each.size for each in layout.sheets if each.sheet == sheet.name]
            stacks = stacks_of(sheet)
            for sides in dict.fromkeys(stack.size for stack in stacks):
                same = [stack.count for stack in stacks if alike(stack.size, sides)]
                most = sum(count or 0 for count in same)
                used = sum(alike(sides, each) for each in sizes)
                if None not in same and used > most:
                    fields = number("used", used), size(sides), number("most", most)
                    message = said("{} offcuts of {} are used, there are {}", *fields)
                    yield self.fault("layout-sheet", message, subject=sheet.name)

    def _placements(self, layout: SheetLayout, sheet: SettledSheet) -> Iterator[Finding]:
        parts = {part.name: part for part in self.settled.parts}
        known = [each for each in layout.placements if each.part in parts]
        shapes = [_lying(parts[each.part].routed, each) for each in known]
        for each, shape in zip(known, shapes, strict=True):
            yield from self._placement(each, parts[each.part], shape, sheet, layout.size)
        yield from self._pairs(known, shapes, sheet.gap)
        yield from self._clamped(known, shapes, sheet, layout.size)

    def _placement(
        self,
        each: Placement,
        part: SettledPart,
        shape: Region,
        sheet: SettledSheet,
        sides: tuple[float, float],
    ) -> Iterator[Finding]:
        if part.sheet != sheet.name:
            message = f"`{each.piece}` lies on `{sheet.name}`"
            yield self.fault("layout-sheet", message, f"It is cut from `{part.sheet}`.", each.piece)
        if not keeps_grain(part, sheet, each.turn):
            message = f"`{each.piece}` lies across the grain"
            advice: Text = f"Its grain is {part.grain}: turn it by 90."
            yield self.fault("layout-grain", message, advice, each.piece)
        box, (width, height) = bounds(shape), sides
        least = min(box.x0, box.y0, width - box.x1, height - box.y1)
        if least < sheet.margin - TOLERANCE:
            where = "is off its sheet" if least < 0 else "lies in the sheet's margin"
            margin = length("margin", sheet.margin)
            advice = said("Keep {} clear along every edge. {}", margin, _ANEW)
            yield self.fault("layout-margin", f"`{each.piece}` {where}", advice, each.piece)

    def _pairs(
        self, placements: Sequence[Placement], shapes: Sequence[Region], gap: float
    ) -> Iterator[Finding]:
        for one, other, distance in too_close(shapes, gap - TOLERANCE):
            first, second = placements[one].piece, placements[other].piece
            if distance < 0:
                overlap = f"`{first}` and `{second}` overlap"
                yield self.fault("layout-overlap", overlap, subject=first)
            else:
                advice = said("Keep {} between pieces. {}", length("gap", gap), _ANEW)
                apart = reading("distance", distance)
                message = said("`{}` and `{}` are {} apart", first, second, apart)
                yield self.fault("layout-gap", message, advice, first)

    def _clamped(
        self,
        placements: Sequence[Placement],
        shapes: Sequence[Region],
        sheet: SettledSheet,
        size: tuple[float, float],
    ) -> Iterator[Finding]:
        barred = [Flat(((a, b), (c, b), (c, d), (a, d))) for a, b, c, d in zones(sheet, size)]
        if not barred:
            return
        flats = (*map(flat_region, shapes), *barred)
        for one, other, _ in flats_too_close(flats, sheet.gap - TOLERANCE):
            if one < len(shapes) <= other:
                piece, gap = placements[one].piece, length("gap", sheet.gap)
                message = f"`{piece}` is in the way of a clamp"
                advice = said("Keep {} between pieces and clamps. {}", gap, _ANEW)
                yield self.fault("layout-clamp", message, advice, piece)


def _lying(shape: Region, placement: Placement) -> Region:
    return moved(turned(shape, placement.turn), placement.x, placement.y)
