"""Which cutters the files of a plan are made for: from the narrowest to the widest that does.

Looked at are the diameters that cutters are sold by, from the plan's own outwards, at the least and
at the most of all thicknesses and fits. A cutter does where everything settles, it passes between
pieces and into every opening, walls keep what they bear with, and corners are relieved as with the
plan's own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.finding import Finding
from kerfolio.basis.reader import Reader
from kerfolio.proving.corners import walls_left
from kerfolio.proving.machining import cutter_enters, kerf_between
from kerfolio.proving.rule import After
from kerfolio.settling.point import point
from kerfolio.settling.settled import FitVariant, SettledPart, SettledPlan, SettledSheet

SOLD = (1.0, 1.5, 2.0, 2.5, 3.0, 3.175, 4.0, 4.763, 5.0, 6.0, 6.35, 8.0, 9.525, 10.0, 12.0, 12.7)
"""Diameters of straight cutters in mm, those of 1/8 in and its multiples among them (common
practice, no single source)."""

_PASSING = (kerf_between, cutter_enters)
"""Rules that ask nothing of the shapes that a cutter makes: looked at before anything settles."""

_BEARING = (walls_left,)

_WHY = {
    "gap-too-small": "pieces lie closer together than it is wide",
    "smaller-than-cutter": "some of what it clears is narrower",
    "relief-eats-wall": "opening the corners for it would eat the walls that bear",
}
"""What readers are told where a rule finds something; its own words are for the maker."""

Settle = Callable[[FitVariant], SettledPlan | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterRange:
    """The least and the most diameter, mm, and in words what is wrong with the next one.

    ``none`` tells whether files are made for no cutter at all, too.
    """

    least: float
    most: float
    below: str = ""
    above: str = ""
    none: bool = True


def cutter_ranges(drawn: SettledPlan, settle: Settle) -> dict[str, CutterRange]:
    """Return the range of each sheet's cutter by the sheet's name."""
    looks = _Looks(drawn, settle)
    ranges = {}
    for sheet in drawn.sheets:
        own = sheet.cutter.diameter
        most, above = looks.furthest(sheet, [each for each in SOLD if each > own])
        least, below = looks.furthest(sheet, [each for each in reversed(SOLD) if each < own])
        ranges[sheet.name] = CutterRange(least=least, most=most, below=below, above=above)
    return ranges


class _Looks:
    """Looks at a plan with one cutter after the other; those of all sheets change together."""

    def __init__(self, drawn: SettledPlan, settle: Settle) -> None:
        self._drawn, self._settle = drawn, settle
        self._seen: dict[tuple[float | None, bool], SettledPlan | None] = {}

    def furthest(self, sheet: SettledSheet, sizes: Sequence[float]) -> tuple[float, str]:
        """Return the last of some diameters, ever further from the own, that does; then why not."""
        low, high, why = -1, len(sizes), ""
        tried = high - 1  # most often all of them do
        while high - low > 1:
            fault = self._fault(sheet, sizes[tried])
            if fault:
                high, why = tried, fault
            else:
                low = tried
            tried = (low + high) // 2
        return (sizes[low] if low >= 0 else sheet.cutter.diameter), why

    def _fault(self, sheet: SettledSheet, diameter: float) -> str:
        """Return in words what is wrong with a diameter, empty where nothing is."""
        words = f"A cutter of {chosen_in(diameter, Reader(unit=self._drawn.plan.units))}"
        for thick in (False, True):
            usual = self._at(None, thick=thick)
            if usual is None:
                return f"{words} does not do for this plan."
            for finding in _findings(_PASSING, _cut_with(diameter, usual), sheet):
                return f"{words} does not do: {_WHY[finding.rule]}."
        for thick in (False, True):
            usual, made = self._at(None, thick=thick), self._at(diameter, thick=thick)
            if usual is None or made is None:
                return f"{words} does not do for this plan."
            for finding in _findings(_BEARING, made, sheet):
                return f"{words} does not do: {_WHY[finding.rule]}."
            if _shapes(made, sheet) != _shapes(usual, sheet):
                return f"{words} does not do: corners would be opened otherwise than planned."
        return ""

    def _at(self, diameter: float | None, *, thick: bool) -> SettledPlan | None:
        """Return the plan at one end of its range with one cutter, None its own."""
        key = (diameter, thick)
        if key not in self._seen:
            sheets = self._drawn.sheets
            self._seen[key] = self._settle(
                point(
                    self._drawn,
                    {each.name: each.published[thick] for each in sheets},
                    {each.name: each.fits[thick] for each in sheets if each.fits},
                    {} if diameter is None else dict.fromkeys((s.name for s in sheets), diameter),
                )
            )
        return self._seen[key]


def _cut_with(diameter: float, settled: SettledPlan) -> SettledPlan:
    """Return a plan as it is, but for the cutter that its sheets name."""
    sheets = tuple(replace(each, diameter=diameter) for each in settled.sheets)
    return replace(settled, sheets=sheets)


def _findings(
    rules: Iterable[After], settled: SettledPlan, sheet: SettledSheet
) -> Iterable[Finding]:
    """Yield what is wrong with the cutter of one sheet."""
    parts = {part.name for part in settled.parts if part.sheet == sheet.name}
    for rule in rules:
        for each in rule.check(settled):
            if each.subject == sheet.name or each.subject.split(".")[0] in parts:
                yield each


def _shapes(settled: SettledPlan, sheet: SettledSheet) -> Mapping[str, object]:
    """Return of each part how its lines follow one another and its reliefs lie."""
    return {part.name: _shape(part) for part in settled.parts if part.sheet == sheet.name}


def _shape(part: SettledPart) -> object:
    lines = [
        (cut.operation, contour.closed, [bulge != 0 for *_, bulge in contour.vertices])
        for cut in part.cuts
        for contour in cut.contours
    ]
    return lines, [(each.features, each.style) for each in part.moved], len(part.bridges)
