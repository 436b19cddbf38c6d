"""Checks of what stays below housings, grooves, pockets, blind holes and counterbores."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.measures import number, precise, sold
from kerfolio.basis.said import Text, named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.model.feature_kind import HOLE
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan, SettledSheet
from kerfolio.shop.floor import PLIES, least_floor, least_under_head, skin


@dataclass(frozen=True, slots=True, kw_only=True)
class _Floor:
    """What is cut ``deep`` mm and leaves ``left`` mm here, ``thinnest`` in the thinnest sheet.

    It should leave at least ``least`` mm, for the reason ``why``.
    """

    part: SettledPart
    feature: SettledFeature
    deep: float
    thinnest: float
    least: float
    why: Text

    @property
    def left(self) -> float:
        """What stays below it, mm."""
        return self.part.thickness - self.deep

    @property
    def is_thin(self) -> bool:
        """Whether too little stays; what goes through some sheet is told as that."""
        return self.thinnest > SAME and self.left < self.least - SAME


@after(
    "thin-floor",
    reason="A floor of one ply or less splits, sags or is pushed through.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def floors_stay(settled: SettledPlan) -> Iterator[Finding]:
    """Look for recesses and counterbores that leave little of the sheet below them.

    Engravings keep within their face ply.
    """
    for part, sheet in _with_sheets(settled):
        for each in _recesses(part, sheet):
            if each.is_thin:
                yield _told(warning, "thin-floor", each, each.feature.kind.name, settled)
        for each in _counterbores(part, sheet):
            if each.is_thin and each.thinnest >= skin(sheet.stock, part.thickness):
                yield _told(warning, "thin-floor", each, _BORE, settled)


@after(
    "head-pulls-through",
    reason="A head on a single ply is pulled through it as the bolt is tightened.",
    source=COMMON_PRACTICE,
)
def heads_bear(settled: SettledPlan) -> Iterator[Finding]:
    """Look for counterbores that leave no more than one ply under the head."""
    for part, sheet in _with_sheets(settled):
        for each in _counterbores(part, sheet):
            if each.is_thin and each.thinnest < skin(sheet.stock, part.thickness):
                yield _told(error, "head-pulls-through", each, _BORE, settled)


_BORE = "the counterbore of"


def _told(
    make: Callable[..., Finding], rule: str, each: _Floor, what: str, settled: SettledPlan
) -> Finding:
    name = named(f"{each.part.name}.{each.feature.name}")
    stays = precise("left", each.left), sold("thickness", each.part.thickness)
    message = said("{} {} leaves {} of a sheet of {}", what, name, *stays)
    kept, most = precise("least", each.least), precise("most", each.part.thickness - each.least)
    advice = said("Keep {}, {}: cut it {} deep at most.", kept, each.why, most)
    beside = about(settled, each.part, each.feature)
    return make(rule, message, each.feature.place, advice, **beside)


def _with_sheets(settled: SettledPlan) -> Iterator[tuple[SettledPart, SettledSheet]]:
    return ((part, settled.sheet(part.sheet)) for part in settled.parts)


def _recesses(part: SettledPart, sheet: SettledSheet) -> Iterator[_Floor]:
    """Yield housings, grooves, pockets and blind holes."""
    least, plies = least_floor(sheet.stock, part.thickness), sheet.stock.plies
    why: Text = "half of the sheet" if least >= part.thickness / 2 else "as common practice has it"
    if plies and least < part.thickness / 2:
        why = said("{} of its {} plies", number("of", PLIES), number("plies", plies))
    for feature in part.features:
        if feature.depth is not None and (feature.kind.recessed or feature.kind is HOLE):
            yield _floor(part, feature, sheet, feature.depth.value, least, why)


def _counterbores(part: SettledPart, sheet: SettledSheet) -> Iterator[_Floor]:
    least = least_under_head(part.thickness)
    why = "a third of the sheet, for its bolt pulls on it"
    for feature in part.features:
        if feature.counterbore is not None:
            yield _floor(part, feature, sheet, feature.counterbore[1].value, least, why)


def _floor(
    part: SettledPart,
    feature: SettledFeature,
    sheet: SettledSheet,
    deep: float,
    least: float,
    why: Text,
) -> _Floor:
    thinnest = min(part.thickness, *sheet.published) - deep
    return _Floor(part=part, feature=feature, deep=deep, thinnest=thinnest, least=least, why=why)
