"""Drawn parts: outline and features from the elements of a drawing, slots re-fitted."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from kerfolio.basis.measures import precise
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.said import ByUnit, named, phrase, said
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.shapes import circle, slot
from kerfolio.geometry.slot_fit import FittedSlot, fitted_slot
from kerfolio.geometry.transform import moved
from kerfolio.model.feature_kind import ENGRAVING, HOLE, POCKET, SLOT, WINDOW, FeatureKind
from kerfolio.model.outline import Drawing, Drawn, DrawnElement, DrawnFeatureRule
from kerfolio.model.statement import Named
from kerfolio.settling.drawn_choice import chosen, path_of
from kerfolio.settling.drawn_edge import SLACK, MadeEdges, made_edges
from kerfolio.settling.face_feature import slot_corners
from kerfolio.settling.fitted import Fitting, stated_as
from kerfolio.settling.outline import check_contour
from kerfolio.settling.scope import misshapen, unsettled
from kerfolio.settling.settled import Cut, Operation, SettledFeature, Sized
from kerfolio.settling.shaped import Shaped

_ROUND = 0.995


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnPart:
    """A drawn part's outline and features, moved so that its box begins at 0,0."""

    outline: Contour
    shapes: tuple[Shaped, ...]
    edges: MadeEdges


def drawn_part(drawn: Drawn, fitting: Fitting, drawings: Mapping[str, Drawing]) -> DrawnPart:
    """Return the outline and features of a drawn part. Raises SettlingError."""
    drawing = drawings.get(drawn.file)
    if drawing is None:
        message = f"drawing `{drawn.file}` gave no lines"
        raise unsettled("no-drawing", message, drawn.place, did_you_mean(drawn.file, drawings))
    own = chosen(drawn, drawing, fitting.scope.unit)
    contour = _closed(own.outline)
    box = bounds(contour)
    shift = (-box.x0, -box.y0)
    shapes: list[Shaped] = []
    for rule, elements in own.features:
        for index, element in enumerate(elements, start=1):
            name = rule.element.name if len(elements) == 1 else f"{rule.element.name}.{index}"
            line = path_of(element) if rule.kind is ENGRAVING else _closed(element)
            found = _Found(
                rule=rule,
                element=element,
                name=name,
                contour=moved(line, *shift),
                alike=len(elements),
                drawn=drawn,
                fitting=fitting,
            )
            shapes.append(DRAWN_SHAPES[rule.kind](found))
    try:
        edges = made_edges(drawn, own.outline, moved(contour, *shift), shift, fitting)
    except ShapeError as fault:
        raise misshapen(f"element `{own.outline.name}`", fault, own.outline.place) from fault
    return DrawnPart(outline=edges.outline, shapes=(*edges.shapes, *shapes), edges=edges)


def drawn_features(drawn: Drawn, drawings: Iterable[Drawing], unit: str) -> int:
    """Return how many elements of its drawing become features of a drawn part.

    ``unit`` is the plan's. Raises SettlingError.
    """
    drawing = next((each for each in drawings if each.file == drawn.file), None)
    if drawing is None:
        return 0
    return sum(len(found) for _, found in chosen(drawn, drawing, unit).features)


def _closed(element: DrawnElement) -> Contour:
    contour = path_of(element)
    check_contour(contour, f"element `{element.name}`", element.place, drawn=True)
    return contour


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """An element that becomes a feature: its rule, the feature's name, its contour in the part.

    ``alike`` is how many elements of its name become one.
    """

    rule: DrawnFeatureRule
    element: DrawnElement
    name: str
    contour: Contour
    alike: int
    drawn: Drawn
    fitting: Fitting

    def settled(self, contour: Contour, depth: Sized | None = None) -> SettledFeature:
        """Return the record of a feature that is just as large as it is drawn."""
        box = bounds(contour)
        return SettledFeature(
            name=self.name,
            kind=self.rule.kind,
            at=box.centre,
            direction=(1.0, 0.0),
            width=Sized(box.height, phrase("reasons-as-drawn")),
            length=Sized(box.width, phrase("reasons-as-drawn")),
            depth=depth,
            shape=(contour,),
            place=self.element.place,
        )


def _slot(found: _Found) -> Shaped:
    rule, element = found.rule, found.element
    fitted = fitted_slot(found.contour)
    if fitted is None:
        advice = "Draw a slot as a straight rectangle."
        message = f"element `{element.name}` is no straight slot"
        raise unsettled("no-slot", message, element.place, advice)
    if rule.takes is None:
        message = f"`{rule.element.name}` does not say what its slots take"
        raise unsettled("no-slot", message, rule.element.place, "Write `slot: takes SHEET`.")
    drawn_long, along = _lengthwise(fitted, found, rule.takes)
    fitting = found.fitting.fitted_to(
        (rule.element.name, rule.kind), rule.takes, drawn_long, found.alike
    )
    wide, long = fitting.width(rule.takes, None), fitting.around(drawn_long, rule.takes)
    shape = slot(fitted.centre, along, long.value, wide.value)
    return Shaped(
        feature=SettledFeature(
            name=found.name,
            kind=rule.kind,
            at=fitted.centre,
            direction=along,
            width=wide,
            length=long,
            takes=rule.takes.name,
            shape=(shape,),
            room=fitting.given,
            place=element.place,
        ),
        taken=(shape,),
        mating=slot_corners(fitted.centre, along, long.value, wide.value),
    )


def _lengthwise(fitted: FittedSlot, found: _Found, takes: Named) -> tuple[float, Point]:
    """Return how long a drawn slot is and which way it runs. Raises SettlingError.

    The side that was drawn for the sheet is the width, though it may be the longer one.
    """
    sheet, stated = found.fitting.sheet(takes), found.drawn.drawn_for
    meant = found.fitting.scope.mm(stated) if stated else sheet.stock.nominal
    sides = ((fitted.width, fitted.length), (fitted.length, fitted.width))
    width, length = min(sides, key=lambda pair: abs(pair[0] - meant))
    if abs(width - meant) > SLACK:
        sizes = precise("width", width), precise("drawn-for", meant)
        message = said("slot {} is {} wide, drawn for {}", named(found.element.name), *sizes)
        advice = _width_advice(found)
        raise unsettled("drawn-slot-width", message, found.element.place, advice)
    if width == fitted.length != fitted.width:
        return length, (0.0 - fitted.direction[1], fitted.direction[0])
    return length, fitted.direction


def _width_advice(found: _Found) -> str:
    """Return what to do about a slot that is not as wide as the sheet it was drawn for."""
    if found.drawn.drawn_for:
        return f"`drawn-for` says `{found.drawn.drawn_for.text}`: correct it, or the slot."
    return "State `drawn-for`, the thickness the drawing's slots were made for."


def _hole(found: _Found) -> Shaped:
    contour, element = found.contour, found.element
    box = bounds(contour)
    diameter = (box.width + box.height) / 2
    round_hole = circle(box.centre, diameter)
    if min(area(contour), area(round_hole)) < _ROUND * max(area(contour), area(round_hole)):
        message = f"element `{element.name}` is not round"
        advice = "Draw holes as circles, or call it a window."
        raise unsettled("not-round", message, element.place, advice)
    if found.rule.depth is None:
        return Shaped(feature=found.settled(round_hole), taken=(round_hole,))
    return _cut_to_depth(found, Operation.HOLE, round_hole)


def _window(found: _Found) -> Shaped:
    return Shaped(feature=found.settled(found.contour), taken=(found.contour,))


def _pocket(found: _Found) -> Shaped:
    return _cut_to_depth(found, Operation.POCKET, found.contour)


def _engraving(found: _Found) -> Shaped:
    return _cut_to_depth(found, Operation.ENGRAVE, found.contour)


def _cut_to_depth(found: _Found, operation: Operation, contour: Contour) -> Shaped:
    stated, element = found.rule.depth, found.rule.element
    if stated is None:
        message = f"`{element.name}` states no depth"
        advice = said("Write {}, say.", ByUnit("`depth 6`", "`depth 1/4 in`"))
        raise unsettled("no-depth", message, element.place, advice)
    depth = found.fitting.scope.positive(stated, "depth")
    cut = Cut(operation=operation, depth=depth, contours=(contour,), feature=found.name)
    sized = Sized(depth, stated_as(stated))
    return Shaped(feature=found.settled(contour, sized), cuts=(cut,))


DRAWN_SHAPES: dict[FeatureKind, Callable[[_Found], Shaped]] = {
    SLOT: _slot,
    HOLE: _hole,
    WINDOW: _window,
    POCKET: _pocket,
    ENGRAVING: _engraving,
}
"""What makes the shapes of each kind that may be drawn, from an element of a drawing."""
