"""Which elements of a drawing a part is made of: its outline, and what is named inside it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.measures import point
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place
from kerfolio.basis.said import ByUnit, Text, Words, said
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.inside import (
    enclosing,
    innermost_round,
    point_inside,
    reaching_into,
    surrounded,
)
from kerfolio.model.outline import Drawing, Drawn, DrawnElement, DrawnFeatureRule
from kerfolio.settling.scope import FOLLOWS, Scope, unsettled

_SHOWN = 3
"""Elements that advice names."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A part's elements: its outline, and for each rule those inside it that the rule names."""

    outline: DrawnElement
    features: tuple[tuple[DrawnFeatureRule, tuple[DrawnElement, ...]], ...]

    @property
    def every(self) -> tuple[DrawnElement, ...]:
        """All the elements that the part is made of."""
        return (self.outline, *(each for _, found in self.features for each in found))


@lru_cache(maxsize=64)
def chosen(drawn: Drawn, drawing: Drawing, unit: str) -> Chosen:
    """Return the elements of a drawing that a part is made of; ``unit`` is the plan's.

    Of elements named those are left to other parts that lie outside the outline, but inside some
    other closed shape: a drawing of a whole sheet has one layer for the slots of all its parts.
    Raises SettlingError. It is the same at every thickness.
    """
    named = _named(drawing, drawn.outline.name, drawn.outline.place)
    outline = _outline(drawn, drawing, named, unit)
    nested = nested_in(outline, named) if drawn.at else ()
    rules = [
        (each, _named(drawing, each.element.name, each.element.place)) for each in drawn.features
    ]
    every = dict.fromkeys(each for _, found in rules for each in found if each is not outline)
    own = set(_own(outline, nested, drawing, tuple(every)))
    features = tuple((rule, tuple(each for each in found if each in own)) for rule, found in rules)
    _refuse_twice(features)
    return Chosen(outline=outline, features=features)


def path_of(element: DrawnElement) -> Contour:
    """Return an element's path, mm."""
    return Contour(element.vertices, closed=element.closed)


def _own(
    outline: DrawnElement,
    nested: Sequence[DrawnElement],
    drawing: Drawing,
    elements: Sequence[DrawnElement],
) -> tuple[DrawnElement, ...]:
    """Return those of the elements that are of this part; ``nested`` are outlines of its name."""
    paths = [path_of(each) for each in elements]
    inside = reaching_into(path_of(outline), paths)
    inner = surrounded(paths, [path_of(each) for each in nested])
    if all(inside) and not any(inner):
        return tuple(elements)
    others = [path_of(e) for e in drawing.elements if e.closed and e is not outline]
    beside = surrounded(paths, others)
    rows = zip(elements, inside, inner, beside, strict=True)
    return tuple(each for each, here, deeper, there in rows if not (deeper if here else there))


def nested_in(outline: DrawnElement, outlines: Iterable[DrawnElement]) -> tuple[DrawnElement, ...]:
    """Return the closed ones of other outlines that lie as a whole in one, as in its window."""
    others = [each for each in outlines if each.closed and each is not outline]
    inner = surrounded([path_of(each) for each in others], [path_of(outline)])
    return tuple(each for each, inside in zip(others, inner, strict=True) if inside)


def inside_of(outline: DrawnElement, elements: Sequence[DrawnElement]) -> tuple[DrawnElement, ...]:
    """Return the elements that lie inside an outline."""
    reach = reaching_into(path_of(outline), [path_of(each) for each in elements])
    return tuple(each for each, inside in zip(elements, reach, strict=True) if inside)


def _refuse_twice(
    features: Iterable[tuple[DrawnFeatureRule, tuple[DrawnElement, ...]]],
) -> None:
    """Raise SettlingError where two rules have the same element."""
    claimed: dict[DrawnElement, str] = {}
    for rule, elements in features:
        for element in elements:
            owner = claimed.setdefault(element, rule.element.name)
            if owner != rule.element.name:
                message = f"element `{element.name}` is `{owner}` and `{rule.element.name}`"
                advice = "Name each element, group or layer once."
                raise unsettled("drawn-twice", message, rule.element.place, advice)


def _named(drawing: Drawing, name: str, place: Place) -> tuple[DrawnElement, ...]:
    """Return the elements that a name means. Raises SettlingError where there are none."""
    found = tuple(each for each in drawing.elements if each.answers_to(name))
    if not found and name in drawing.unread:
        raise unsettled(FOLLOWS, f"`{name}` could not be read", place)
    if not found:
        known = {name for each in drawing.elements for name in each.every_name}
        message = f"no element `{name}` in `{drawing.file}`"
        raise unsettled("no-element", message, place, did_you_mean(name, known))
    return found


def _outline(
    drawn: Drawn, drawing: Drawing, named: Sequence[DrawnElement], unit: str
) -> DrawnElement:
    """Return the outline among the elements of its name. Raises SettlingError."""
    if drawn.at is not None:
        return _outline_at(drawn, drawing, named, unit)
    name = drawn.outline.name
    if len(named) == 1:
        return named[0]
    inserts = _inserts_of(name, named)
    if len(inserts) == 1:
        index = enclosing([path_of(each) for each in named])
        if index is not None:
            return named[index]
    if len(inserts) > 1:
        message = f"`{name}` is inserted {len(inserts)} times in `{drawing.file}`"
        raise unsettled("many-outlines", message, drawn.outline.place, _one_insert(inserts))
    message = f"`{name}` names {len(named)} elements of `{drawing.file}`"
    advice = _one_of(named, drawing)
    raise unsettled("many-outlines", message, drawn.outline.place, advice)


def _outline_at(
    drawn: Drawn, drawing: Drawing, named: Sequence[DrawnElement], unit: str
) -> DrawnElement:
    assert drawn.at is not None, "asked for where a point is stated"
    scope = Scope(unit=unit)
    at = scope.point(drawn.at)
    closed = [each for each in named if each.closed]
    index = innermost_round(at, [path_of(each) for each in closed])
    if index is None:
        words = said("no closed `{}` lies round {}", drawn.outline.name, point(*at))
        advice: Text = _one_of(named, drawing)
        if closed:
            advice = said("Give a point inside the part, such as {}.", _spot(closed[0]))
        raise unsettled("no-outline", words, drawn.at.place, advice)
    return closed[index]


def _inserts_of(name: str, named: Sequence[DrawnElement]) -> tuple[str, ...]:
    """Return the numbered inserts that a name means, none where it is no block's."""
    if all(name in each.inserts for each in named):
        return (name,)
    own = [next((i for i in e.inserts if i.rpartition(".")[0] == name), "") for e in named]
    return tuple(dict.fromkeys(own)) if all(own) else ()


def _one_insert(inserts: Sequence[str]) -> str:
    shown = ", ".join(f"`{each}`" for each in inserts[:_SHOWN])
    more = f" or {len(inserts) - _SHOWN} more" if len(inserts) > _SHOWN else ""
    return f"Name one by its number: {shown}{more}."


def _one_of(found: Sequence[DrawnElement], drawing: Drawing) -> Words:
    """Return how to tell which of several elements is the outline."""
    is_dxf = drawing.file.lower().endswith(".dxf")
    own = "a layer of its own" if is_dxf else "an id of its own"
    closed = [each for each in found if each.closed]
    if not closed:
        return said("None of them is closed: join their ends, and give the outline {}.", own)
    names = ", ".join(f"`{each.name}`" for each in closed[:_SHOWN])
    more = f" or {len(closed) - _SHOWN} more" if len(closed) > _SHOWN else ""
    words = "Name one: {}{}; or add a point inside it, such as {}; or give the outline {}."
    return said(words, names, more, _spot(closed[0]), own)


def _spot(element: DrawnElement) -> ByUnit:
    """Return a point inside an element as a plan would state it, in either unit."""
    spot = point_inside(path_of(element))
    mm, inch = (
        ", ".join(digits(each / float(MM_PER_UNIT[unit]), places) for each in spot)
        for unit, places in (("mm", 1), ("in", 2))
    )
    return ByUnit(f"`at: [{mm}]`", f"`at: [{inch}]`")
