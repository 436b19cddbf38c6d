"""Notches and tabs within a drawn outline: made for their sheet where that is said or plain."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.measures import precise
from kerfolio.basis.said import phrase, said
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.stretch import Stretch, in_a_row, steps, stretches, without
from kerfolio.model.feature_kind import NOTCH, OUTLINED, TAB, FeatureKind
from kerfolio.model.outline import Drawn, DrawnEdgeRule, DrawnElement
from kerfolio.model.statement import Named
from kerfolio.settling.edge import EdgeFrame
from kerfolio.settling.edge_feature import ROOT
from kerfolio.settling.fitted import Fitting
from kerfolio.settling.scope import unsettled
from kerfolio.settling.settled import DrawnEdges, SettledFeature, Sized
from kerfolio.settling.shaped import Mating, Shaped

SLACK = 1.5
"""What is drawn for a sheet may be this much larger or smaller, mm, than the sheet is thick."""

_EXACT = 0.05
_NEAR = 0.5
"""What nobody stated is looked at within this, mm, of a sheet's thickness."""

_AS_DRAWN = DrawnEdgeRule()


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeEdges:
    """A drawn outline without what was made anew of it, as ``shapes``.

    ``told`` is what nobody stated; ``drawn`` are the areas of all notches and tabs of a sheet's
    thickness, by kind.
    """

    outline: Contour
    shapes: tuple[Shaped, ...]
    told: tuple[DrawnEdges, ...]
    drawn: tuple[tuple[FeatureKind, Contour], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Look:
    """What is looked at: a part's statement, its outline's element, what was found in it."""

    drawn: Drawn
    element: DrawnElement
    fitting: Fitting
    found: tuple[Stretch, ...]
    shift: Point

    @property
    def meant(self) -> tuple[float, ...]:
        """The thicknesses, mm, that the drawing may have been made for."""
        if self.drawn.drawn_for is not None:
            return (self.fitting.scope.mm(self.drawn.drawn_for),)
        return tuple(each.stock.nominal for each in self.fitting.sheets.values())

    def of(self, kind: FeatureKind) -> list[Stretch]:
        return [each for each in self.found if each.tab == (kind is TAB)]

    def near(self, kind: FeatureKind, slack: float) -> list[Stretch]:
        """Return those of a kind as large as some sheet is thick."""
        return [s for s in self.of(kind) if any(abs(_size(s) - m) <= slack for m in self.meant)]

    def told(
        self, kind: FeatureKind | None, places: Sequence[tuple[float, Point]], takes: str = ""
    ) -> DrawnEdges:
        return DrawnEdges(
            kind=kind,
            size=places[0][0],
            spots=tuple((x - self.shift[0], y - self.shift[1]) for _, (x, y) in places),
            element=self.element.name,
            takes=takes,
            place=self.element.place,
        )


def made_edges(
    drawn: Drawn, element: DrawnElement, outline: Contour, shift: Point, fitting: Fitting
) -> MadeEdges:
    """Return a part's outline with its notches and tabs made for their sheets.

    ``shift`` has moved the outline from its place in the drawing. Raises SettlingError.
    """
    found = stretches(outline)
    look = _Look(drawn=drawn, element=element, fitting=fitting, found=found, shift=shift)
    taken: list[tuple[FeatureKind, Named, Stretch]] = []
    told: list[DrawnEdges] = []
    stepped = [] if drawn.tabs == _AS_DRAWN else _steps(look, outline)
    for kind in OUTLINED:
        rule = drawn.said_of(kind)
        takes = rule.takes if rule else _only_sheet(look)
        if rule is None and kind is TAB and stepped:
            takes = None  # some fingers of a row would follow, those at its ends would not
        wanted = _wanted(look, kind, rule, takes)
        fingers = in_a_row(wanted + _others(look, kind))
        mine = [each for each in wanted if each.level and each not in fingers]
        if takes is not None:
            taken += [(kind, takes, each) for each in mine]
        if rule is None and mine and takes is not None:
            told.append(look.told(kind, _spots(mine), takes.name))
        left = [each for each in wanted if each not in mine]
        if rule is None:
            left = [each for each in look.near(kind, _NEAR) if each not in mine]
        if left:
            told.append(look.told(kind, _spots(left)))
    if stepped:
        told.append(look.told(None, stepped))
    return MadeEdges(
        outline=without(outline, [each for *_, each in taken]) if taken else outline,
        shapes=tuple(_shaped(taken, look)),
        told=tuple(told),
        drawn=tuple(
            (kind, _frame(each).box(*_across(each), *_up(each), 0.0))
            for kind in OUTLINED
            for each in look.near(kind, SLACK)
        ),
    )


def _only_sheet(look: _Look) -> Named | None:
    """Return the one sheet of about the thickness that the plan says the part was drawn for."""
    if look.drawn.drawn_for is None:
        return None
    meant = look.fitting.scope.mm(look.drawn.drawn_for)
    sheets = look.fitting.sheets.items()
    names = [name for name, each in sheets if abs(each.stock.nominal - meant) <= SLACK]
    return Named(names[0], look.drawn.place) if len(names) == 1 else None


def _wanted(
    look: _Look, kind: FeatureKind, rule: DrawnEdgeRule | None, takes: Named | None
) -> list[Stretch]:
    """Return what is to follow a sheet. Raises SettlingError where it is stated and not there."""
    if takes is None:
        return []
    if rule is None:
        return look.near(kind, _EXACT)
    stated = look.drawn.drawn_for
    sheet = look.fitting.sheet(takes)
    meant = look.fitting.scope.mm(stated) if stated else sheet.stock.nominal
    wanted = [each for each in look.of(kind) if abs(_size(each) - meant) <= SLACK]
    if not wanted:
        how = "wide" if kind is NOTCH else "deep"
        words = "the outline `{}` has no {} {} {}"
        message = said(words, look.element.name, kind.name, precise("drawn-for", meant), how)
        advice = f"A {kind.name} has two straight walls and a straight end; `drawn-for` says for "
        advice += "which thickness it was drawn."
        raise unsettled(f"no-{kind.name}", message, takes.place, advice)
    return wanted


def _others(look: _Look, kind: FeatureKind) -> list[Stretch]:
    return look.near(NOTCH if kind is TAB else TAB, _NEAR)


def _steps(look: _Look, outline: Contour) -> list[tuple[float, Point]]:
    """Return how far and where an outline stands back by a sheet's thickness."""
    known = [each for kind in OUTLINED for each in look.near(kind, SLACK)]
    found = steps(outline, known)
    return [each for each in found if any(abs(each[0] - m) <= _EXACT for m in look.meant)]


def _size(stretch: Stretch) -> float:
    """Return what a sheet's thickness is compared with: a notch's width, a tab's depth."""
    return stretch.depth if stretch.tab else stretch.width


def _spots(found: Iterable[Stretch]) -> list[tuple[float, Point]]:
    return [(_size(each), each.middle) for each in found]


def _frame(stretch: Stretch) -> EdgeFrame:
    half = stretch.width / 2
    return EdgeFrame(
        origin=stretch.middle,
        along=stretch.along,
        outward=stretch.outward,
        first=-half,
        last=half,
    )


def _across(stretch: Stretch) -> tuple[float, float]:
    return -stretch.width / 2, stretch.width / 2


def _up(stretch: Stretch) -> tuple[float, float]:
    return (0.0, stretch.depth) if stretch.tab else (-stretch.depth, 0.0)


def _shaped(taken: Sequence[tuple[FeatureKind, Named, Stretch]], look: _Look) -> Iterator[Shaped]:
    for kind, takes, stretch in taken:
        alike = [each for every, *_, each in taken if every is kind]
        number = "" if len(alike) == 1 else f".{alike.index(stretch) + 1}"
        name = f"{kind.outlined}{number}"
        if kind is NOTCH:
            yield _notch(name, takes, stretch, look, len(alike))
        else:
            yield _tab(name, takes, stretch, look)


def _notch(name: str, takes: Named, stretch: Stretch, look: _Look, alike: int) -> Shaped:
    fitting = look.fitting.fitted_to((NOTCH.outlined, NOTCH), takes, stretch.depth, alike)
    frame = _frame(stretch)
    width, depth = fitting.width(takes, None), fitting.deepened(stretch.depth, takes)
    a, b = -width.value / 2, width.value / 2
    over = abs(_rise(stretch)) / 2 + ROOT
    return Shaped(
        feature=SettledFeature(
            name=name,
            kind=NOTCH,
            at=frame.point(0.0, -depth.value),
            direction=stretch.outward,
            width=width,
            length=depth,
            takes=takes.name,
            shape=(frame.box(a, b, -depth.value, 0.0),),
            room=fitting.given,
            place=look.element.place,
        ),
        taken=(frame.box(a, b, -depth.value, over),),
        mating=tuple(Mating(at=frame.point(s, -depth.value), eaten=frame.along) for s in (a, b)),
    )


def _rise(stretch: Stretch) -> float:
    """Return by how much one open corner of a notch lies higher than the other."""
    (ax, ay), (bx, by), (ux, uy) = stretch.start, stretch.end, stretch.outward
    return (bx - ax) * ux + (by - ay) * uy


def _tab(name: str, takes: Named, stretch: Stretch, look: _Look) -> Shaped:
    frame, depth = _frame(stretch), look.fitting.tab_depth(None, takes)
    a, b = _across(stretch)
    longer, (ux, uy) = depth.value - stretch.depth, stretch.outward
    end = [(x + longer * ux, y + longer * uy, bulge) for x, y, bulge in stretch.tip]
    root = [(x - ROOT * ux, y - ROOT * uy, 0.0) for x, y in (stretch.start, stretch.end)]
    return Shaped(
        feature=SettledFeature(
            name=name,
            kind=TAB,
            at=stretch.middle,
            direction=stretch.outward,
            width=Sized(stretch.width, phrase("reasons-as-drawn")),
            length=depth,
            takes=takes.name,
            shape=(frame.box(a, b, 0.0, depth.value),),
            place=look.element.place,
        ),
        added=(tidy(Contour((root[0], *end, root[1]))),),
        mating=tuple(Mating(at=each, eaten=frame.along) for each in (stretch.start, stretch.end)),
    )
