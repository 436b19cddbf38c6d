"""How thick sheets are drawn: by how wide slots and notches are, and how deep tabs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.adopting.alike import Draft
from kerfolio.adopting.finger_rows import FingerRow, finger_rows, is_of_fingers
from kerfolio.adopting.prongs import prongs
from kerfolio.adopting.roundness import diameter_of, has_round_ends
from kerfolio.geometry.slot_fit import fitted_slot
from kerfolio.geometry.stretch import in_a_row
from kerfolio.model.feature_kind import NOTCH, SLOT, TAB, FeatureKind

FITTED = 0.6
"""A slot or notch may be drawn so much wider, mm, than the sheet is thick: with its fit."""

_LEAST, _MOST = 2.0, 42.0
"""Sheets thinner or thicker, mm, are none that is cut by a router (common practice)."""

CLUSTER = 0.65
"""Sizes drawn for one sheet differ by no more, mm, fits included."""

_FEW = 4
"""A second sheet is believed in where so many sizes tell of it."""

_DOUBTFUL = 0.3
"""What a size of a row of tabs and gaps tells, where one of its own tells 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thickness:
    """A sheet's thickness as drawn, mm, and how much wider slots are drawn on each side of it."""

    mm: float
    fit: float = 0.0
    told_by: int = 0

    def takes(self, width: float) -> bool:
        """Tell whether a slot or notch of that width takes the sheet."""
        return -0.1 <= width - self.mm - 2 * self.fit <= FITTED / 2


def thicknesses(parts: Sequence[Draft]) -> tuple[Thickness, ...]:
    """Return the sheets that sizes of slots, notches and tabs tell of, the commonest first."""
    sizes = [each for part in parts for each in _sizes(part, ())]
    main = _commonest(sizes)
    if main is not None:  # what lies between fingers tells of no sheet
        depths = [main - CLUSTER / 2, main, main + CLUSTER / 2]
        rows = [finger_rows(part.outline.contour, depths, CLUSTER) for part in parts]
        sizes = [e for part, own in zip(parts, rows, strict=True) for e in _sizes(part, own)]
    found: list[Thickness] = []
    while True:
        best = _commonest(sizes)
        if best is None:
            return tuple(found)
        members = [each for each in sizes if abs(each.mm - best) <= CLUSTER]
        if found and sum(each.worth for each in members if each.sure) < _FEW:
            return tuple(found)
        found.append(_thickness(members))
        sizes = [each for each in sizes if abs(each.mm - best) > 2 * CLUSTER]


@dataclass(frozen=True, slots=True)
class _Size:
    """A size, mm, that may be a sheet's thickness; ``worth`` is how much it tells.

    It is ``sure`` where nothing else can be meant by it.
    """

    mm: float
    kind: FeatureKind
    worth: float
    sure: bool = True


def _sizes(part: Draft, rows: Sequence[FingerRow]) -> Iterator[_Size]:
    """Yield sizes that may be a sheet's thickness; of rows of fingers how deep they are."""
    count = len(part.cuttings)
    every = prongs(part.outline.contour)
    found = [each for each in every if not is_of_fingers(each, rows, CLUSTER)]
    for row in rows:
        yield _Size(row.depth, TAB, count * row.count / 2)
    shared = in_a_row(found)
    for stretch in found:
        size, kind = (stretch.depth, TAB) if stretch.tab else (stretch.width, NOTCH)
        # A gap between two tabs is no notch, nor what stands between two notches a tab.
        worth = count * (_DOUBTFUL if stretch in shared else 1.0)
        if not stretch.tab or stretch.width >= 0.6 * size:
            yield _Size(size, kind, worth, stretch not in shared)
    for opening in part.openings:
        slot = fitted_slot(opening.contour)
        if slot is None or diameter_of(opening.contour) is not None:
            continue
        if not has_round_ends(opening.contour, slot.width):
            yield _Size(slot.width, SLOT, count)


def _commonest(sizes: Iterable[_Size]) -> float | None:
    """Return the size that most others are near to, kinds counted; of equals the exact mode."""
    known = [each for each in sizes if _LEAST <= each.mm <= _MOST]
    exact: dict[float, float] = {}
    for each in known:
        exact[round(each.mm, 2)] = exact.get(round(each.mm, 2), 0.0) + each.worth

    def worth(value: float) -> tuple[float, float, float]:
        near = [each for each in known if abs(each.mm - value) <= CLUSTER]
        told = sum(each.worth for each in near)
        return (told * (1 + len({each.kind for each in near})), exact[value], -value)

    return max(exact, key=worth, default=None)


def _thickness(members: Sequence[_Size]) -> Thickness:
    told_by = round(sum(each.worth for each in members))
    deep = _mode([each for each in members if each.kind is TAB])
    wide = _mode([each for each in members if each.kind is not TAB])
    if deep is not None and wide is not None and deep < wide:
        return Thickness(mm=deep, fit=round((wide - deep) / 2, 3), told_by=told_by)
    mm = wide if wide is not None else deep
    assert mm is not None, "a cluster has members"
    return Thickness(mm=mm, told_by=told_by)


def _mode(sizes: Sequence[_Size]) -> float | None:
    counts: dict[float, float] = {}
    for each in sizes:
        counts[round(each.mm, 2)] = counts.get(round(each.mm, 2), 0.0) + each.worth
    return max(counts, key=lambda size: (counts[size], -size), default=None)
