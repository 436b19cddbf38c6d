"""Drawn parts: outline and features from the elements of a drawing, slots re-fitted."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from kerfolio.basis.lengths import mm_text
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.shapes import circle, slot
from kerfolio.geometry.slot_fit import fitted_slot
from kerfolio.geometry.transform import moved
from kerfolio.model.outline import Drawing, Drawn, DrawnElement, DrawnFeatureRule
from kerfolio.settling.feature import slot_corners
from kerfolio.settling.fitted import Fitting
from kerfolio.settling.outline import check_contour
from kerfolio.settling.scope import unsettled
from kerfolio.settling.settled import Cut, Operation, SettledFeature, Sized
from kerfolio.settling.shaped import Shaped

_WIDTH_SLACK = 1.5
"""A slot may be drawn this much wider or narrower, mm, than the sheet it was drawn for."""

_ROUND = 0.995


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnPart:
    """A drawn part's outline and features, moved so that its box begins at 0,0."""

    outline: Contour
    shapes: tuple[Shaped, ...]


def drawn_part(drawn: Drawn, fitting: Fitting, drawings: Mapping[str, Drawing]) -> DrawnPart:
    """Return the outline and features of a drawn part. Raises SettlingError."""
    drawing = drawings.get(drawn.file)
    if drawing is None:
        message = f"drawing `{drawn.file}` gave no lines"
        raise unsettled("no-drawing", message, drawn.place, did_you_mean(drawn.file, drawings))
    (outline,) = _named(drawing, drawn.outline.name, drawn.outline.place, only=True)
    contour = _closed(outline)
    box = bounds(contour)
    shift = (-box.x0, -box.y0)
    shapes: list[Shaped] = []
    claimed: dict[DrawnElement, str] = {}
    for rule in drawn.features:
        found = _named(drawing, rule.element.name, rule.element.place)
        rest = [each for each in found if each is not outline]
        _claim(rest, rule, claimed)
        for index, element in enumerate(rest, start=1):
            name = rule.element.name if len(rest) == 1 else f"{rule.element.name}.{index}"
            shapes.append(_feature(rule, element, name, shift, fitting, drawn))
    return DrawnPart(outline=moved(contour, *shift), shapes=tuple(shapes))


def _claim(
    elements: Iterable[DrawnElement], rule: DrawnFeatureRule, claimed: dict[DrawnElement, str]
) -> None:
    """Note whose elements these are. Raises SettlingError when another rule has one of them."""
    for element in elements:
        owner = claimed.setdefault(element, rule.element.name)
        if owner != rule.element.name:
            message = f"element `{element.name}` is `{owner}` and `{rule.element.name}`"
            advice = "Name each element, group or layer once."
            raise unsettled("drawn-twice", message, rule.element.place, advice)


def _named(
    drawing: Drawing, name: str, place: Place, *, only: bool = False
) -> tuple[DrawnElement, ...]:
    found = tuple(each for each in drawing.elements if name in each.names)
    if not found:
        known = {name for each in drawing.elements for name in each.names}
        message = f"no element `{name}` in `{drawing.file}`"
        raise unsettled("no-element", message, place, did_you_mean(name, known))
    if only and len(found) > 1:
        message = f"`{name}` names {len(found)} elements of `{drawing.file}`"
        advice = "Give the outline's path an id of its own."
        raise unsettled("many-outlines", message, place, advice)
    return found


def _closed(element: DrawnElement) -> Contour:
    contour = Contour(element.vertices, closed=element.closed)
    check_contour(contour, f"element `{element.name}`", element.place)
    return contour


def _feature(
    rule: DrawnFeatureRule,
    element: DrawnElement,
    name: str,
    shift: Point,
    fitting: Fitting,
    drawn: Drawn,
) -> Shaped:
    if rule.kind == "engrave":
        contour = moved(Contour(element.vertices, closed=element.closed), *shift)
        return _cut_to_depth(rule, contour, name, element, fitting, Operation.ENGRAVE)
    contour = moved(_closed(element), *shift)
    if rule.kind == "slot":
        return _slot(rule, contour, name, element, fitting, drawn)
    if rule.kind == "pocket":
        return _cut_to_depth(rule, contour, name, element, fitting, Operation.POCKET)
    if rule.kind == "hole":
        return _hole(contour, name, element)
    feature = _settled("window", contour, name, element)
    return Shaped(feature=feature, taken=(contour,))


def _slot(
    rule: DrawnFeatureRule,
    contour: Contour,
    name: str,
    element: DrawnElement,
    fitting: Fitting,
    drawn: Drawn,
) -> Shaped:
    fitted = fitted_slot(contour)
    if fitted is None:
        advice = "Draw a slot as a straight rectangle."
        message = f"element `{element.name}` is no straight slot"
        raise unsettled("no-slot", message, element.place, advice)
    if rule.takes is None:
        message = f"`{rule.element.name}` does not say what its slots take"
        raise unsettled("no-slot", message, rule.element.place, "Write `slot: takes SHEET`.")
    sheet = fitting.sheet(rule.takes)
    meant = fitting.scope.mm(drawn.drawn_for) if drawn.drawn_for else sheet.stock.nominal
    # The side that was drawn for the sheet is the width, though it may be the longer one.
    sides = ((fitted.width, fitted.length), (fitted.length, fitted.width))
    width, length = min(sides, key=lambda pair: abs(pair[0] - meant))
    if abs(width - meant) > _WIDTH_SLACK:
        message = f"slot `{element.name}` is {mm_text(width, 2)} wide, drawn for {mm_text(meant)}"
        advice = "State `drawn-for`, the thickness the drawing's slots were made for."
        raise unsettled("drawn-slot-width", message, element.place, advice)
    along = fitted.direction
    if width == fitted.length != fitted.width:
        along = (0.0 - fitted.direction[1], fitted.direction[0])
    wide = fitting.width(rule.takes, None)
    shape = slot(fitted.centre, along, length, wide.value)
    return Shaped(
        feature=SettledFeature(
            name=name,
            kind="slot",
            at=fitted.centre,
            direction=along,
            width=wide,
            length=Sized(length, "as drawn"),
            takes=rule.takes.name,
            shape=(shape,),
            place=element.place,
        ),
        taken=(shape,),
        mating=slot_corners(fitted.centre, along, length, wide.value),
    )


def _hole(contour: Contour, name: str, element: DrawnElement) -> Shaped:
    box = bounds(contour)
    diameter = (box.width + box.height) / 2
    round_hole = circle(box.centre, diameter)
    if min(area(contour), area(round_hole)) < _ROUND * max(area(contour), area(round_hole)):
        message = f"element `{element.name}` is not round"
        advice = "Draw holes as circles, or call it a window."
        raise unsettled("not-round", message, element.place, advice)
    return Shaped(feature=_settled("hole", round_hole, name, element), taken=(round_hole,))


def _cut_to_depth(
    rule: DrawnFeatureRule,
    contour: Contour,
    name: str,
    element: DrawnElement,
    fitting: Fitting,
    operation: Operation,
) -> Shaped:
    if rule.depth is None:
        message = f"`{rule.element.name}` states no depth"
        raise unsettled("no-depth", message, rule.element.place, "Write `depth 6`, say.")
    depth = fitting.scope.positive(rule.depth, "depth")
    kind = "engraving" if operation is Operation.ENGRAVE else "pocket"
    cut = Cut(operation=operation, depth=depth, contours=(contour,), feature=name)
    sized = Sized(depth, f"stated: {rule.depth.text}")
    return Shaped(feature=_settled(kind, contour, name, element, sized), cuts=(cut,))


def _settled(
    kind: str, contour: Contour, name: str, element: DrawnElement, depth: Sized | None = None
) -> SettledFeature:
    box = bounds(contour)
    return SettledFeature(
        name=name,
        kind=kind,
        at=box.centre,
        direction=(1.0, 0.0),
        width=Sized(box.height, "as drawn"),
        length=Sized(box.width, "as drawn"),
        depth=depth,
        shape=(contour,),
        place=element.place,
    )
